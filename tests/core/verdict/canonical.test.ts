import { checkLink } from '../../../src/core/verdict/index.ts';
import { prepareLink, solveState } from '../../../src/core/verdict/prepare.ts';
import type { LinkVerdict } from '../../../src/core/verdict/index.ts';
import { PARTS, makeJack, makeLead, wires } from '../../../src/core/wiring/index.ts';
import type { Jack, Part, Role, State } from '../../../src/core/wiring/index.ts';
import { bare, milliamperes, notesIn, oneLink, verdictFor } from './build.ts';
import { describe, expect, it } from 'vitest';

const din = (values: Jack['values'] = {}): Jack => makeJack('out', 'din5', 'din', { values });
const din3v3 = (values: Jack['values'] = {}): Jack =>
  makeJack('out', 'din5', 'din', { circuit: 'driver-3v3', values });
const dinIn = (part: Part = '6N138', values: Jack['values'] = {}): Jack =>
  makeJack('in', 'din5', 'din', { part, values });
const LINES = ['4-4', '5-5', '2-2'] as const;
const typeA = makeJack('out', 'trs-3.5', 'type-a');
const typeB = makeJack('out', 'trs-3.5', 'type-b');
const inA = makeJack('in', 'trs-3.5', 'type-a');
const STRAIGHT = ['tip-tip', 'ring-ring', 'sleeve-sleeve'] as const;
const tsLead = makeLead('ts-3.5', 'ts-3.5', wires('tip-tip', 'sleeve-sleeve'));

const activeOf = (verdict: LinkVerdict): number => milliamperes(verdict.inputs[0]?.active ?? NaN);
const partOf = (verdict: LinkVerdict, state: State, place: 'output' | 'input', role: Role): number =>
  verdict.readings[state].parts.find(({ part }) => part.owner.place === place && part.role === role)
    ?.amperes ?? NaN;

describe('links whose currents are known', () => {
  it('gives 5 V into a 6N138 5.38 mA, and flows', () => {
    const verdict = verdictFor(din(), dinIn(), ...LINES);
    expect(verdict.outcome).toBe('flows');
    expect(activeOf(verdict)).toBeCloseTo(5.38, 2);
    expect(verdict.inputs[0]?.idle).toBeLessThan(1e-9);
  });

  it('gives 3.3 V into a 6N138 6.99 mA within 0.01 mA, and flows', () => {
    const verdict = verdictFor(din3v3(), dinIn(), ...LINES);
    expect(verdict.outcome).toBe('flows');
    expect(Math.abs(activeOf(verdict) - 6.99)).toBeLessThanOrEqual(0.01);
  });

  it('sends 6.56 mA within 0.01 mA backwards where the styles are opposite and the lead straight', () => {
    const verdict = verdictFor(typeA, makeJack('in', 'trs-3.5', 'type-b'), ...STRAIGHT);
    expect(verdict.outcome).toBe('backwards');
    expect(
      Math.abs(milliamperes(verdict.inputs[0]?.reverseAmperes.active ?? NaN) - 6.56),
    ).toBeLessThanOrEqual(0.01);
    // The LED sees about -0.67 V, far from its -5 V.
    const led = verdict.readings.active.parts.find(({ part }) => part.role === 'led');
    expect(led?.volts).toBeCloseTo(-0.67, 2);
    expect(notesIn(verdict)).not.toContain('over-rating');
  });

  it('sends 9.91 mA backwards at 3.3 V', () => {
    const output = makeJack('out', 'trs-3.5', 'type-a', { circuit: 'driver-3v3' });
    const verdict = checkLink(
      oneLink(output, makeJack('in', 'trs-3.5', 'type-b'), bare(output, inA, ...STRAIGHT)),
    );
    expect(milliamperes(verdict.inputs[0]?.reverseAmperes.active ?? NaN)).toBeCloseTo(9.91, 2);
  });

  it('shorts the source line of a Type A output by a plain TS lead', () => {
    const verdict = checkLink(oneLink(typeA, inA, tsLead));
    expect(verdict.outcome).toBe('no-path');
    expect(notesIn(verdict)).toContain('source-shorted');
    // In active sink, source and shield are all at ground: nothing drives the LED.
    expect(Math.abs(verdict.inputs[0]?.active ?? NaN)).toBeLessThan(1e-6);
    // 5 V/220 ohm.
    expect(milliamperes(partOf(verdict, 'active', 'output', 'source-resistor'))).toBeCloseTo(22.7, 1);
    // In idle the stage is high: 5 V through 220 ohm, the protection diode and 220 ohm to ground.
    expect(milliamperes(verdict.inputs[0]?.reverseAmperes.idle ?? NaN)).toBeCloseTo(9.78, 2);
    expect(verdict.sentence).toMatch(/^No path/);
    expect(verdict.notes.find(({ kind }) => kind === 'source-shorted')?.detail).toBe(
      '23 mA through the 220 ohm source resistor in idle, 5.00 V across it',
    );
  });

  it('takes a 3.3 V Type A output over the rating of its rail by a TS lead', () => {
    // 3.3/33.06 = 99.8 mA against 50 mA; 0.33 W stays under the resistor's 0.5 W.
    const output = makeJack('out', 'trs-3.5', 'type-a', { circuit: 'driver-3v3' });
    const verdict = checkLink(oneLink(output, inA, tsLead));
    expect(verdict.notes.find(({ kind }) => kind === 'over-rating')?.detail).toBe(
      'the 3.3 V supply of the output: 100 mA, rated 50 mA',
    );
    expect(milliamperes(verdict.readings.active.supplyAmperes)).toBeCloseTo(99.8, 1);
  });

  it('burns the source resistor of a 3.3 V output at the worst corner: 111 mA and 0.383 W', () => {
    // MMA CA-033, p. 5: 3.465 V across 31.35 ohm.
    const output = makeJack('out', 'trs-3.5', 'type-a', {
      circuit: 'driver-3v3',
      values: { supplyVolts: 3.465, sourceOhms: 31.35 },
    });
    const bridged = makeLead('ts-3.5', 'ts-3.5', wires('tip-tip', 'sleeve-sleeve'), { contactOhms: 0 });
    const verdict = checkLink(oneLink(output, inA, bridged));
    const resistor = verdict.readings.active.parts.find(({ part }) => part.role === 'source-resistor');
    expect(resistor?.amperes).toBeCloseTo(0.111, 3);
    expect(resistor?.watts).toBeCloseTo(0.383, 3);
    expect(resistor?.over).toBeUndefined();
  });

  it('shorts the output stage of a Type B output by a TS lead', () => {
    const verdict = checkLink(oneLink(typeB, makeJack('in', 'trs-3.5', 'type-b'), tsLead));
    expect(notesIn(verdict)).toContain('stage-shorted');
    expect(notesIn(verdict)).not.toContain('source-shorted');
    // High in idle: 5 V/220 ohm through the stage.
    expect(milliamperes(Math.abs(partOf(verdict, 'idle', 'output', 'sink-resistor')))).toBeCloseTo(22.7, 1);
    // The sink line lies at ground for good, so the input is lit at rest too.
    expect(verdict.outcome).toBe('always-on');
  });
});

describe('predicted LED currents, driver low taken as 0 V', () => {
  // Worked out from the diode fits of the data sheets; cable and contacts left out. One row a circuit, one column a part.
  const rows: readonly [string, Jack, Jack['values'], Readonly<Partial<Record<Part, number>>>][] = [
    ['5 V, three times 220 ohm', din(), {}, { '6N138': 5.38, H11L1: 5.81, PC900V: 5.88 }],
    ['3.3 V, 33, 10 and 220 ohm', din3v3(), {}, { '6N138': 6.99, H11L1: 8.04, PC900V: 8.25 }],
    [
      '3.3 V left at 220 and 220 ohm',
      din3v3({ sourceOhms: 220, sinkOhms: 220 }),
      {},
      { '6N138': 2.84, H11L1: 3.29, PC900V: 3.34 },
    ],
    [
      '5 V with 33 and 10 ohm',
      din({ sourceOhms: 33, sinkOhms: 10 }),
      {},
      { '6N138': 13.34, H11L1: 14.35, PC900V: 14.6 },
    ],
    [
      '4.5 V, resistors 5 % high',
      din({ supplyVolts: 4.5, sourceOhms: 231, sinkOhms: 231 }),
      { seriesOhms: 231 },
      { '6N138': 4.41, H11L1: 4.83, PC900V: 4.89 },
    ],
    [
      '3.135 V, resistors 5 % high',
      din3v3({ supplyVolts: 3.135, sourceOhms: 34.65, sinkOhms: 10.5 }),
      { seriesOhms: 231 },
      { '6N138': 6.09, H11L1: 7.09, PC900V: 7.28 },
    ],
  ];
  it.each(rows)('%s', (_, output, values, expected) => {
    for (const part of PARTS) {
      const want = expected[part];
      if (want === undefined) continue;
      const input = dinIn(part, values);
      const point = solveState(
        prepareLink(oneLink(output, input, bare(output, input, ...LINES)), 'separate'),
        'active',
      );
      if (!point.ok) throw new Error(point.reason);
      // Printed to two places: half a hundredth, and as much again for the 0.5 mohm of the lead and the rounding of the fits.
      expect(Math.abs(milliamperes(point.amperes('in0 LED')) - want), part).toBeLessThanOrEqual(0.01);
    }
  });

  it('loses 0.03 mA in 15 m of 26 AWG', () => {
    const lead = makeLead('din5', 'din5', wires(...LINES), { lengthMetres: 15, contactOhms: 0 });
    expect(activeOf(checkLink(oneLink(din(), dinIn(), lead)))).toBeCloseTo(5.35, 2);
  });
});

describe('one output split to several inputs', () => {
  const cases: readonly [string, Jack, number, readonly [number, number, number]][] = [
    ['5 V to two', din(), 2, [3.25, 3.52, 3.55]],
    ['5 V to three', din(), 3, [2.33, 2.52, 2.54]],
    ['3.3 V to two', din3v3(), 2, [6.03, 6.94, 7.11]],
  ];
  it.each(cases)('gives each receiver its share: %s', (_, output, inputs, [a, b, c]) => {
    for (const [part, want] of [
      ['6N138', a],
      ['H11L1', b],
      ['PC900V', c],
    ] as const) {
      const input = dinIn(part);
      const verdict = checkLink({
        output,
        branches: Array.from({ length: inputs }, () => ({ input, leads: [bare(output, input, ...LINES)] })),
      });
      for (const one of verdict.inputs)
        expect(Math.abs(milliamperes(one.active) - want)).toBeLessThanOrEqual(0.01);
      expect(notesIn(verdict)).toContain('split');
    }
  });

  it('is enough for two 6N138 and too little for two PC900V at 5 V: it depends on the part', () => {
    const outcome = (part: Part): string => {
      const input = dinIn(part);
      return checkLink({
        output: din(),
        branches: [1, 2].map(() => ({ input, leads: [bare(din(), input, ...LINES)] })),
      }).outcome;
    };
    expect(outcome('6N138')).toBe('flows');
    expect(outcome('PC900V')).toBe('starved');
  });

  it('explains the input that decides, along its own lead', () => {
    const verdict = checkLink({
      output: din(),
      branches: [
        { input: dinIn('6N138'), leads: [bare(din(), dinIn(), ...LINES)] },
        {
          input: dinIn('PC900V', { turnOnAmperes: 6e-3 }),
          leads: [bare(din(), dinIn(), ...LINES)],
        },
      ],
    });
    expect(verdict.decides).toBe(1);
    expect(verdict.sentence).toMatch(/^Too little current: only 4\.\d mA flows through the LED of input 2;/);
    const told = verdict.steps.map(({ text }) => text).join('\n');
    expect(told).toContain('input 2');
    expect(told).not.toContain('input 1');
  });
});
