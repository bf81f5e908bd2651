/** Circuits round the loop that no standard draws, against published and hand-worked currents. */
import { describe, expect, test } from 'vitest';
import { checkLink } from '../../../src/core/verdict/check.ts';
import type { LinkVerdict } from '../../../src/core/verdict/check.ts';
import { makeJack, makeLead, wires } from '../../../src/core/wiring/link.ts';
import type { Jack } from '../../../src/core/wiring/link.ts';

function verdict(output: Partial<Jack>, input: Partial<Jack>): LinkVerdict {
  return checkLink({
    output: makeJack('out', 'din5', 'din', output),
    branches: [
      {
        input: makeJack('in', 'din5', 'din', input),
        leads: [makeLead('din5', 'din5', wires('4-4', '5-5', '2-2'))],
      },
    ],
  });
}
const milliamperes = (found: LinkVerdict, state: 'idle' | 'active'): number =>
  (found.inputs[0]?.[state] ?? NaN) * 1e3;

describe('a stage that swings to another voltage than its rail', () => {
  const mixed = (part: Jack['part'], supplyVolts = 5): LinkVerdict =>
    verdict({ values: { stageVolts: 3.3, supplyVolts } }, { part });

  test('leaves the idle currents that are worked out by hand', () => {
    // 5 V and 3.3 V by 220 ohm each, 660 ohm in all, each part on its own curve.
    for (const [part, idle] of [
      ['6N138', 0.52],
      ['H11L1', 0.97],
      ['PC900V', 0.99],
      ['6N137', 0.49],
      ['PC817', 1.05],
    ] as const)
      expect(Math.abs(milliamperes(mixed(part), 'idle') - idle), part).toBeLessThan(0.01);
    expect(milliamperes(mixed('6N138', 4.5), 'idle')).toBeCloseTo(0.007, 3);
    expect(milliamperes(mixed('H11L1', 4.5), 'idle')).toBeCloseTo(0.3, 1);
  });

  test('is marginal, since the input may stay on at rest, and says so', () => {
    for (const part of ['6N138', 'H11L1', 'PC900V'] as const) {
      const found = mixed(part);
      expect(found.outcome, part).toBe('weak');
      expect(
        found.notes.map(({ kind }) => kind),
        part,
      ).toContain('may-stay-on');
    }
    expect(verdict({}, {}).outcome).toBe('flows');
  });
});

describe('3.3 V by 47 and 47 ohm into a Schmitt part', () => {
  const output: Partial<Jack> = { circuit: 'driver-3v3-push-pull', values: { sourceOhms: 47, sinkOhms: 47 } };

  test('gives the 6.7 mA that a builder measured, and 5.9 with an activity LED, to 5 %', () => {
    // The builder names no resistor at the activity LED; 220 ohm is ours.
    const plain = milliamperes(verdict(output, { part: 'H11L1' }), 'active');
    const shared = milliamperes(verdict(output, { part: 'H11L1', values: { activityOhms: 220 } }), 'active');
    expect(Math.abs(plain / 6.7 - 1)).toBeLessThan(0.05);
    expect(Math.abs(shared / 5.9 - 1)).toBeLessThan(0.05);
  });
});

describe('published currents of plain loops', () => {
  test('5 V, 660 ohm and an LED of 1.2 V give 5.758 mA; 4 V, 150 + 150 + 220 ohm and one of 1.6 V give 4.6 mA', () => {
    // Both take the LED as a fixed voltage. The curve is shifted to pass through it: PC900V 1.1153 V at 5.758 mA, 6N138 1.4421 V
    // at 4.615 mA, by their fits. The lead's 0.4 ohm takes 0.06 %.
    const first = verdict({}, { part: 'PC900V', values: { ledShiftVolts: 1.2 - 1.1153 } });
    expect(milliamperes(first, 'active') / 5.758).toBeCloseTo(1, 2);
    const second = verdict(
      { values: { supplyVolts: 4, sourceOhms: 150, sinkOhms: 150 } },
      { part: '6N138', values: { ledShiftVolts: 1.6 - 1.4421 } },
    );
    expect(milliamperes(second, 'active')).toBeCloseTo(4.6, 1);
  });
});

describe('a load between pins 4 and 2', () => {
  test('takes from the input what the source resistor cannot give, and more the smaller it is', () => {
    const at = (tapOhms: number): LinkVerdict => verdict({ values: { tapOhms } }, {});
    // By hand: 4.0984 V behind 180.33 ohm into 440 ohm and the LED's 1.44 V.
    expect(milliamperes(at(1000), 'active')).toBeCloseTo(4.28, 2);
    expect(at(100).outcome).toBe('starved');
  });
});
