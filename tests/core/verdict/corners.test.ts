import { setValue } from '../../../src/core/circuit/index.ts';
import { checkLink, lineByLine } from '../../../src/core/verdict/index.ts';
import { prepareLink, readInput, settleState } from '../../../src/core/verdict/prepare.ts';
import { worstCase } from '../../../src/core/verdict/corners.ts';
import type { PreparedLink } from '../../../src/core/verdict/prepare.ts';
import { GROUNDINGS, PARTS, STATES, circuitsFor, hasLed, makeJack } from '../../../src/core/wiring/index.ts';
import type { Jack, State } from '../../../src/core/wiring/index.ts';
import { leadFor, oneLink } from './build.ts';
import { describe, expect, it } from 'vitest';

type Place = 'low' | 'high' | 'nominal';

/** The least or greatest value of the input over every way to set every tolerance to one of some places. */
function everyCorner(
  prepared: PreparedLink,
  state: State,
  places: readonly Place[],
): { least: number; most: number } {
  const { spreads } = prepared.model;
  let least = Infinity;
  let most = -Infinity;
  const visit = (at: number): void => {
    const spread = spreads[at];
    if (spread === undefined) {
      const failed = settleState(prepared, state);
      if (failed) throw new Error(failed.reason);
      const { value } = readInput(prepared, 0);
      least = Math.min(least, value);
      most = Math.max(most, value);
      return;
    }
    for (const place of places) {
      spread.parts.forEach((part, index) => setValue(prepared.compiled, part, spread[place][index] ?? NaN));
      visit(at + 1);
    }
    spread.parts.forEach((part, index) => setValue(prepared.compiled, part, spread.nominal[index] ?? NaN));
  };
  visit(0);
  return { least, most };
}

/** One output of each circuit that feeds something, and one input of each circuit and part: styles only name the contacts. */
const OUTPUTS: readonly Jack[] = [
  ...circuitsFor('out', 'type-a').map((circuit) => makeJack('out', 'trs-3.5', 'type-a', { circuit })),
  makeJack('out', 'trs-3.5', 'two-contact', { circuit: 'driver-3v3' }),
  makeJack('out', 'trs-3.5', 'tip-signal'),
];
const INPUTS: readonly Jack[] = (['type-a', 'both-ways', 'tip-signal'] as const).flatMap((style) =>
  circuitsFor('in', style).flatMap((circuit) =>
    (hasLed(circuit) ? PARTS.filter((part) => part !== 'unknown') : (['6N138'] as const)).map((part) =>
      makeJack('in', 'trs-3.5', style, { circuit, part }),
    ),
  ),
);
const PAIRS = OUTPUTS.flatMap((output) =>
  INPUTS.map(
    (input) =>
      [`${output.style} ${output.circuit} to ${input.circuit} ${input.part}`, output, input] as const,
  ),
);

/** Coordinate search and enumeration solve the same circuits: they may differ by the last digits of Newton's method only. */
const same = (found: number, sought: number): void =>
  expect(Math.abs(found - sought)).toBeLessThanOrEqual(1e-9 + 1e-5 * Math.abs(sought));

describe('the worst corner, found by moving one tolerance at a time', () => {
  it.each(PAIRS)('is the worst of all 2^n: %s', (_, output, input) => {
    const link = oneLink(output, input, leadFor(output, input, lineByLine(output, input)));
    for (const grounding of GROUNDINGS) {
      const prepared = prepareLink(link, grounding);
      if (grounding === 'joined' && !prepared.model.groundMatters) continue;
      for (const state of STATES) {
        const { least, most } = everyCorner(prepared, state, ['low', 'high']);
        const nominal = (settleState(prepared, state), readInput(prepared, 0).value);
        same(worstCase(prepared, state, 0, 1).value, Math.min(least, nominal));
        same(worstCase(prepared, state, 0, -1).value, Math.max(most, nominal));
        // Everything is back at nominal.
        settleState(prepared, state);
        expect(readInput(prepared, 0).value).toBe(nominal);
      }
    }
  });

  it.each(PAIRS.filter(([, output, input]) => output.circuit === 'driver-5v' && input.part === '6N138'))(
    'is the worst of all 3^n with nominal in between: %s',
    (_, output, input) => {
      const prepared = prepareLink(
        oneLink(output, input, leadFor(output, input, lineByLine(output, input))),
        'joined',
      );
      const { least, most } = everyCorner(prepared, 'active', ['low', 'high', 'nominal']);
      same(worstCase(prepared, 'active', 0, 1).value, least);
      same(worstCase(prepared, 'active', 0, -1).value, most);
    },
  );

  it('puts a 5 V loop at low supply, high resistors and a high LED voltage', () => {
    const output = makeJack('out', 'din5', 'din');
    const input = makeJack('in', 'din5', 'din');
    const verdict = checkLink(oneLink(output, input, leadFor(output, input, lineByLine(output, input))));
    expect(verdict.inputs[0]?.worstCorner).toEqual({
      supply: 'low',
      'source resistor': 'high',
      'sink resistor': 'high',
      'receiver resistor': 'high',
      'LED voltage': 'high',
      contacts: 'high',
      wire: 'high',
    });
    // 4.5 V less 1.74 V over 693 ohm and half an ohm of lead.
    expect(verdict.inputs[0]?.worstActive).toBeCloseTo(3.98e-3, 5);
  });

  it('keeps the corner of the input that is asked about where several hang on one output', () => {
    const output = makeJack('out', 'din5', 'din');
    const input = makeJack('in', 'din5', 'din');
    const lead = leadFor(output, input, lineByLine(output, input));
    const verdict = checkLink({ output, branches: [1, 2].map(() => ({ input, leads: [lead] })) });
    // What takes current from one input gives it to the other.
    for (const one of verdict.inputs) {
      const corner = Object.entries(one.worstCorner);
      expect(corner.filter(([name]) => name.startsWith('LED voltage'))).toHaveLength(2);
    }
    expect(verdict.inputs[0]?.worstCorner['LED voltage of input 1']).toBe('high');
    expect(verdict.inputs[0]?.worstCorner['LED voltage of input 2']).toBe('low');
    expect(verdict.inputs[1]?.worstCorner['LED voltage of input 2']).toBe('high');
  });
});
