import { describe, expect, it } from 'vitest';
import { checkLink } from '../../../src/core/verdict/index.ts';
import { makeJack, wires } from '../../../src/core/wiring/index.ts';
import type { Jack, Link } from '../../../src/core/wiring/index.ts';
import { leadFor, milliamperes, notesIn } from './build.ts';

const LINES = wires('4-4', '5-5', '2-2');
const din = (circuit: Jack['circuit'] = 'driver-5v'): Jack => makeJack('out', 'din5', 'din', { circuit });

function twoOnOne(output: Jack, other: Jack, input: Jack, conductors = LINES): Link {
  const branch = { input, leads: [leadFor(output, input, conductors)] };
  return { output, branches: [branch], rivals: [{ output: other, branches: [{ ...branch, shares: 0 }] }] };
}

describe('two outputs on one input', () => {
  it('are solved: one sends against the other, which holds its own sink line high', () => {
    const verdict = checkLink(twoOnOne(din(), din(), makeJack('in', 'din5', 'din')));
    // Two rails over 220 ohm each are 5 V behind 110; two sink lines, one low and one high, are 2.5 V behind 110. What is left
    // of 2.5 V after 1.42 V of LED drives 110 + 110 + 220 ohm and half a lead: 2.46 mA, and a 6N138 needs 1.6 mA.
    expect(milliamperes(verdict.inputs[0]?.active ?? NaN)).toBeCloseTo(2.46, 2);
    // With every part at its worst 1.05 V less the LED's spread leaves too little.
    expect(verdict.outcome).toBe('weak');
    expect(notesIn(verdict)).toContain('merged');
  });

  it('work where both let go of the line at rest, which the standard forbids all the same', () => {
    const verdict = checkLink(twoOnOne(din('driver-3v3'), din('driver-3v3'), makeJack('in', 'din5', 'din')));
    expect(verdict.outcome).toBe('flows');
    expect(verdict.notes.find(({ kind }) => kind === 'merged')?.detail).toMatch(
      /^2 outputs end on the input;/,
    );
  });

  it('are cured by a merger, and only where that is true', () => {
    const hungry = makeJack('in', 'din5', 'din', { part: 'PC900V' });
    const verdict = checkLink(twoOnOne(din(), din(), hungry));
    expect(verdict.outcome).toBe('starved');
    expect(verdict.change).toBe('Put a merger in front of the input, so that one output ends on it.');
    const open = checkLink(twoOnOne(din(), din(), hungry, wires('4-4')));
    expect(open.change).not.toContain('merger');
  });

  it('find a part that is over its rating only while the other output sends', () => {
    // Sink line of one on source line of the other: 3.3 V over 33 and 10 ohm is 77 mA once the other pulls low.
    const input = makeJack('in', 'din5', 'din');
    const branch = { input, leads: [leadFor(din(), input, LINES)] };
    const crossed = { input, leads: [leadFor(din(), input, wires('4-5', '5-4', '2-2'))], shares: 0 };
    const verdict = checkLink({
      output: din('driver-3v3'),
      branches: [branch],
      rivals: [{ output: din('driver-3v3'), branches: [crossed] }],
    });
    expect(verdict.danger).toMatch(/the 3\.3 V supply of the output: /);
    expect(verdict.sentence).toMatch(/^Do not connect: /);
  });

  it('stand beside a split to three inputs with grounds of their own', () => {
    const input = makeJack('in', 'trs-3.5', 'tip-signal', { circuit: 'receiver-logic' });
    const output = makeJack('out', 'trs-3.5', 'tip-signal');
    const branch = { input, leads: [leadFor(output, input, wires('tip-tip', 'sleeve-sleeve'))] };
    const rival = { output, branches: [{ ...branch, shares: 2 }, branch] };
    const verdict = checkLink({ output, branches: [branch, branch, branch], rivals: [rival] });
    expect(verdict.inputs).toHaveLength(3);
    // One pulls to 0 V and one to 5 V, each behind 220 ohm: 2.5 V at all of them, and a tenth more behind the pull-ups: high.
    expect(verdict.outcome).toBe('no-path');
    for (const { active } of verdict.inputs) expect(active).toBeCloseTo(2.6, 1);
  });

  it('say the same whichever of two alike is asked', () => {
    const input = makeJack('in', 'din5', 'din');
    const [one, two] = [din(), din('driver-3v3')];
    const there = checkLink(twoOnOne(one, two, input));
    expect(checkLink(twoOnOne(one, two, input)).inputs).toEqual(there.inputs);
    expect(checkLink(twoOnOne(two, one, input)).danger === undefined).toBe(there.danger === undefined);
  });
});
