import { checkLink, lineByLine } from '../../../src/core/verdict/index.ts';
import { makeJack, makeLead, wires } from '../../../src/core/wiring/index.ts';
import type { Fault, Jack, Lead } from '../../../src/core/wiring/index.ts';
import { leadFor, oneLink, verdictFor } from './build.ts';
import { describe, expect, it } from 'vitest';

const dinOut = makeJack('out', 'din5', 'din');
const dinIn = makeJack('in', 'din5', 'din');
const dinLead = (more: Partial<Lead> = {}): Lead =>
  makeLead('din5', 'din5', wires('4-4', '5-5', '2-2'), more);
const withFault = (fault: Fault): string =>
  checkLink(oneLink(dinOut, dinIn, dinLead({ faults: [fault] }))).change;

describe('line by line', () => {
  it('joins the lines that both jacks have', () => {
    expect(lineByLine(dinOut, makeJack('in', 'trs-3.5', 'type-a'))).toEqual(
      wires('4-ring', '5-tip', '2-sleeve'),
    );
    expect(lineByLine(dinOut, makeJack('in', 'ts-3.5', 'two-contact'))).toEqual(wires('4-tip', '5-sleeve'));
  });

  it('lets the source stand in for a shield that the output lacks, where the input needs a way back', () => {
    const output = makeJack('out', 'trs-3.5', 'two-contact', { circuit: 'driver-3v3' });
    const input = makeJack('in', 'trs-3.5', 'tip-signal', { circuit: 'receiver-logic' });
    expect(lineByLine(output, input)).toEqual(wires('sleeve-tip', 'tip-sleeve'));
    expect(verdictFor(output, input, 'sleeve-tip', 'tip-sleeve').outcome).toBe('flows');
    // Without it everything hangs on grounds that may be joined elsewhere, or not.
    expect(verdictFor(output, input, 'sleeve-tip').byGrounding).toEqual({
      separate: 'no-path',
      joined: 'flows',
    });
  });
});

describe('what to change', () => {
  it('is nothing where current flows, but for a shield that is left open', () => {
    expect(verdictFor(dinOut, dinIn, '4-4', '5-5', '2-2').change).toBe('Nothing needs to change.');
    expect(verdictFor(dinOut, dinIn, '4-4', '5-5').change).toBe(
      'Nothing needs to change for the current. Join the shield too: the standard wants it at both ends.',
    );
  });

  it('of a link that works tells what is to be put right all the same, what can harm first', () => {
    const still = (input: Partial<Jack>, ...pairs: readonly string[]): string =>
      verdictFor(dinOut, { ...dinIn, ...input }, ...pairs).change;
    const shell = 'Join the shield to pin 2 at both ends, and to no shell: the standard wants it so.';
    expect(still({}, '4-4', '5-5', '2-shell')).toBe(`Nothing needs to change for the current. ${shell}`);
    const tied = { extras: ['shield-tied'] } as const;
    expect(still(tied, '4-4', '5-5', '2-2')).toBe(
      'Nothing needs to change for the current. Where it hums, part the shield contact of the input from ground: the standard leaves it open.',
    );
    const faint = { values: { foreignAcrossVolts: 0.1, foreignOhms: 1e6 }, ...tied };
    expect(still(faint, '4-4', '5-5', '2-shell')).toBe(
      'Nothing needs to change for the current. Take the foreign supply off before anything is plugged in.',
    );
  });

  it('names the pairs to part and the pairs to join', () => {
    const typeA = makeJack('out', 'trs-3.5', 'type-a');
    const typeB = makeJack('in', 'trs-3.5', 'type-b');
    expect(verdictFor(typeA, typeB, 'tip-tip', 'ring-ring', 'sleeve-sleeve').change).toBe(
      'Take away what joins tip (sink) to tip (source) and ring (source) to ring (sink). ' +
        'Join ring (source) to tip (source) and tip (sink) to ring (sink) (output first, input second).',
    );
    const led = makeJack('in', 'trs-3.5', 'tip-signal', { circuit: 'receiver-led' });
    expect(verdictFor(dinOut, led, '5-tip', '4-sleeve').change).toBe(
      'Take away what joins pin 4 (source) to sleeve (shield). ' +
        'Join pin 2 (shield) to sleeve (shield) (output first, input second).',
    );
  });

  it('asks for the fault to be mended, at its end, with its kind', () => {
    expect(withFault({ kind: 'open', side: 'to', contact: '5' })).toBe(
      'Mend the lead: the joint at pin 5, input end, is open.',
    );
    expect(withFault({ kind: 'joint', side: 'from', contact: '4', ohms: 2200 })).toBe(
      'Mend the lead: the joint at pin 4, output end, has 2.2 kohm.',
    );
    expect(withFault({ kind: 'short', side: 'to', between: ['4', '5'] })).toBe(
      'Mend the lead: pin 4 and pin 5 touch at the input end.',
    );
  });

  it('asks for TRS plugs where a TS plug joins ring and sleeve', () => {
    const lead = makeLead('ts-3.5', 'ts-3.5', wires('tip-tip', 'sleeve-sleeve'));
    const { change } = checkLink(
      oneLink(makeJack('out', 'trs-3.5', 'type-a'), makeJack('in', 'trs-3.5', 'type-a'), lead),
    );
    expect(change).toMatch(/^Use a lead with TRS plugs: /);
  });

  it('asks for less resistance where a lead is too thin and long for its input', () => {
    // 100 m of 30 AWG is 2 x 33.9 ohm: 5.38 mA falls to about 4.9 mA.
    const input = makeJack('in', 'din5', 'din', { values: { turnOnAmperes: 3.9e-3 } });
    const verdict = checkLink(oneLink(dinOut, input, dinLead({ lengthMetres: 100, gauge: 30 })));
    expect(verdict.outcome).toBe('weak');
    expect(verdict.change).toBe(
      'The right contacts are joined, but the lead has too much resistance: take a shorter one, thicker wire or cleaner contacts.',
    );
  });

  it('asks for one output an input where a split starves them', () => {
    const part = makeJack('in', 'din5', 'din', { part: 'PC900V' });
    const verdict = checkLink({
      output: dinOut,
      branches: [1, 2].map(() => ({
        input: part,
        leads: [leadFor(dinOut, part, wires('4-4', '5-5', '2-2'))],
      })),
    });
    expect(verdict.change).toBe('Give each input an output of its own: a THRU, or a hub.');
  });

  it('names the pairs even where the link is marginal at its best, and says so', () => {
    const output = makeJack('out', 'trs-3.5', 'type-a');
    const input = makeJack('in', 'trs-3.5', 'type-b', { values: { turnOnAmperes: 4.5e-3 } });
    expect(verdictFor(output, input, 'tip-tip', 'ring-ring', 'sleeve-sleeve').change).toBe(
      'Take away what joins tip (sink) to tip (source) and ring (source) to ring (sink). ' +
        'Join ring (source) to tip (source) and tip (sink) to ring (sink) (output first, input second). ' +
        'Even then the link is marginal: with every tolerance at its worst the input may not switch.',
    );
    expect(verdictFor(output, input, 'tip-ring', 'ring-tip', 'sleeve-sleeve').change).toMatch(
      /^The conductors are not to blame/,
    );
    const torn = leadFor(output, input, wires('tip-ring', 'ring-tip', 'sleeve-sleeve'));
    const open: Fault = { kind: 'open', side: 'from', contact: 'tip' };
    expect(checkLink(oneLink(output, input, { ...torn, faults: [open] })).change).toMatch(
      /^Mend the lead: the joint at tip, output end, is open\. Even then the link is marginal/,
    );
  });

  it.each([
    ['as a 3.3 V output', 'driver-3v3', { sourceOhms: 220, sinkOhms: 220 }],
    ['as a 5 V output run at 3.3 V', 'driver-5v', { supplyVolts: 3.3 }],
  ] as const)('first gives a 3.3 V sender the resistors of the standard: %s', (_, circuit, values) => {
    // 3.3 V less 1.1 V over 660 ohm is 3.3 mA; with 33 and 10 ohm 8.25 mA, and this part needs 4 mA.
    const sender = makeJack('out', 'din5', 'din', { circuit, values });
    const verdict = verdictFor(
      sender,
      makeJack('in', 'din5', 'din', { part: 'PC900V' }),
      '4-4',
      '5-5',
      '2-2',
    );
    expect(verdict.outcome).toBe('starved');
    expect(verdict.change).toBe(
      'Change the source resistor of the output to 33 ohm and the sink resistor of the output to 10 ohm, as the standard has them.',
    );
  });

  it('names the receiver resistor where that alone is to blame, and the lead as well where both are', () => {
    const input = makeJack('in', 'din5', 'din', { values: { seriesOhms: 4700 } });
    const change = 'Change the receiver resistor of the input to 220 ohm, as the standard has it.';
    expect(verdictFor(dinOut, input, '4-4', '5-5', '2-2').change).toBe(change);
    expect(verdictFor(dinOut, input, '4-5', '5-4', '2-2').change).toBe(
      `${change} Take away what joins pin 4 (source) to pin 5 (sink) and pin 5 (sink) to pin 4 (source). ` +
        'Join pin 4 (source) to pin 4 (source) and pin 5 (sink) to pin 5 (sink) (output first, input second).',
    );
  });

  it('says that no passive lead can where that is the truth', () => {
    const output = makeJack('out', 'trs-3.5', 'tip-signal');
    expect(verdictFor(output, makeJack('in', 'trs-3.5', 'type-a'), 'tip-tip', 'sleeve-sleeve').change).toBe(
      'No passive lead can join these two: it needs a powered converter, or another output.',
    );
    const weakest = makeJack('in', 'trs-3.5', 'both-ways', { part: 'PC900V' });
    expect(verdictFor(dinOut, weakest, '4-ring', '5-tip', '2-sleeve').change).toMatch(
      /^No passive lead can join these two: line to line, too little current/,
    );
  });

  it('is to switch the output on where its supply is off', () => {
    const off = makeJack('out', 'din5', 'din', { circuit: 'driver-off' });
    const verdict = verdictFor(off, dinIn, '4-4', '5-5', '2-2');
    expect(verdict.outcome).toBe('no-path');
    expect(verdict.sentence).toBe('No path: the output has no supply, so nothing drives a current.');
    expect(verdict.change).toBe('Switch the output on first: no lead can do anything without its supply.');
  });

  it('is to choose ends that fit where a plug does not go in', () => {
    const verdict = checkLink(oneLink(makeJack('out', 'trs-3.5', 'type-a'), dinIn, dinLead()));
    expect(verdict.outcome).toBe('no-path');
    expect(verdict.change).toBe('Choose ends that fit: a 5-pin DIN plug does not go into a 3.5 mm TRS jack.');
  });
});

describe('the way of the current', () => {
  it('goes on through a second supply where two of them stand in series', () => {
    const led = makeJack('in', 'trs-3.5', 'tip-signal', { circuit: 'receiver-led' });
    const verdict = verdictFor(dinOut, led, '2-tip', '5-sleeve');
    const told = verdict.steps.map(({ text }) => text);
    expect(verdict.outcome).toBe('always-on');
    expect(told.join('\n')).toContain('passes through the 5 V supply, then the output stage (switched high)');
    expect(told.at(-1)).toBe('That is the ground of the supply it came from: the loop is closed.');
  });
});
