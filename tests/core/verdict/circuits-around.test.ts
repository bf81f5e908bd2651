/** Circuits round the loop that no standard draws, against published and hand-worked currents. */
import { describe, expect, test } from 'vitest';
import { checkLink } from '../../../src/core/verdict/check.ts';
import type { LinkVerdict } from '../../../src/core/verdict/check.ts';
import { makeJack, makeLead, wires } from '../../../src/core/wiring/link.ts';
import type { Jack } from '../../../src/core/wiring/link.ts';
import { notesIn, verdictFor } from './build.ts';

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

describe('a foreign supply', () => {
  const part = (found: LinkVerdict, name: string): { readonly amperes: number; readonly watts: number } => {
    const one = found.readings.idle.parts.find(({ part: { element } }) => element.name === name);
    return { amperes: Math.abs(one?.amperes ?? NaN) * 1e3, watts: one?.watts ?? NaN };
  };

  test('of 12 V drives the published 46 mA and 500 mW through an input, to 5 %', () => {
    const found = verdict({ circuit: 'driver-off' }, { values: { foreignAcrossVolts: 12 } });
    const { amperes, watts } = part(found, 'in0 resistor');
    expect(Math.abs(amperes / 46 - 1)).toBeLessThan(0.05);
    expect(Math.abs(watts / 0.5 - 1)).toBeLessThan(0.05);
    expect(found.sentence).toMatch(
      /^Do not connect: the 220 ohm resistor of the input: 0\.49 W, rated 0\.25 W/,
    );
    expect(found.danger).toContain('the LED of the optocoupler: 47 mA, rated 25 mA');
    expect(found.steps[0]?.text).toContain('no supply');
    expect(found.steps[1]?.text).toMatch(/^47 mA leaves the foreign supply of the input/);
    expect(found.steps.at(-1)?.text).toBe(
      'That is the other side of the foreign supply: the loop is closed.',
    );
  });

  test('of -12 V drives the published 77 mA and 1.3 W through an output, to 5 %, and is to be taken off', () => {
    const found = verdict({ values: { foreignSourceVolts: -12 } }, {});
    const { amperes, watts } = part(found, 'out source resistor');
    expect(Math.abs(amperes / 77 - 1)).toBeLessThan(0.05);
    expect(Math.abs(watts / 1.3 - 1)).toBeLessThan(0.05);
    expect(found.sentence).toMatch(/^Do not connect: /);
    expect(found.danger).toContain('the 220 ohm source resistor: 1.30 W, rated 0.25 W');
    expect(found.change).toBe('Do not connect it as it is. At the output: take the foreign supply off.');
  });

  test('of 48 V behind 6810 ohm across an input never lets it go: 7 mA into what is all but a short', () => {
    // (48 - 1.46) / (6810 + 220) = 6.62 mA beside what the loop adds.
    const found = verdict({}, { values: { foreignAcrossVolts: 48, foreignOhms: 6810 } });
    expect(found.outcome).toBe('always-on');
    expect(found.change).toBe('At the input: take the foreign supply off.');
  });
});

describe('what is inside a jack that no standard draws', () => {
  const straight = (output: Partial<Jack>, input: Partial<Jack>): LinkVerdict => verdict(output, input);

  test('an LED in series, or a second input, starves an input that needs 4 mA, and is to be taken out', () => {
    // 5 V less 1.79 and 1.08 V over 660 ohm; less twice 1.08 V over 880 ohm.
    const lit = straight({}, { part: 'PC900V', extras: ['activity-in-series'] });
    expect(milliamperes(lit, 'active')).toBeCloseTo(3.21, 1);
    expect([lit.outcome, lit.change]).toEqual([
      'starved',
      'At the input: take the activity LED out of the loop.',
    ]);
    const two = straight({}, { part: 'PC900V', extras: ['second-in-series'] });
    expect(milliamperes(two, 'active')).toBeCloseTo(3.22, 1);
    expect([two.outcome, two.change]).toEqual([
      'starved',
      'At the input: take the second input out of the loop.',
    ]);
  });

  test('a turned diode keeps the LED dark, and the way of the current says so', () => {
    const found = straight({}, { extras: ['turned-diode'] });
    expect([found.outcome, found.change]).toEqual([
      'no-path',
      'At the input: turn the protection diode round.',
    ]);
    expect(found.steps.some(({ text }) => text.endsWith('It goes past the LED, which stays dark.'))).toBe(
      true,
    );
  });

  test('without a diode, exchanged lines put all of the supply on the LED in reverse', () => {
    const exchanged = (supplyVolts: number): LinkVerdict =>
      straight({ values: { supplyVolts }, extras: ['crossed-inside'] }, { extras: ['no-diode'] });
    expect(exchanged(5).danger).toBeUndefined();
    expect(exchanged(6).danger).toBe('the LED of the optocoupler: 6.0 V in reverse, rated 5 V');
    expect(exchanged(6).change).toContain('At the output: exchange them back.');
  });

  test('another diode changes nothing while the lines are right, and the drop while they are not', () => {
    const usual = milliamperes(straight({}, {}), 'active');
    for (const extra of ['no-diode', 'rectifier-diode', 'schottky-diode'] as const) {
      const found = straight({}, { extras: [extra] });
      expect([found.outcome, found.notes.map(({ kind }) => kind)]).toEqual(['flows', ['round-the-loop']]);
      expect(milliamperes(found, 'active')).toBeCloseTo(usual, 4);
    }
    const turned = (extras: Jack['extras']): number =>
      straight({ extras: ['crossed-inside'] }, { extras: extras ?? [] }).inputs[0]?.reverseAmperes.active ??
      NaN;
    expect(turned(['schottky-diode'])).toBeGreaterThan(turned(['rectifier-diode']));
    expect(turned(['rectifier-diode'])).toBeGreaterThan(turned([]));
  });

  test('two jacks exchanged alike inside work with one another, and with no other', () => {
    expect(straight({ extras: ['crossed-inside'] }, { extras: ['crossed-inside'] }).outcome).toBe('flows');
    expect(straight({ extras: ['crossed-inside'] }, {}).outcome).toBe('backwards');
    expect(straight({}, { extras: ['crossed-inside'] }).change).toBe('At the input: exchange them back.');
  });

  test('pin 2 tied at the input changes no current, and joins the grounds', () => {
    const found = straight({}, { extras: ['shield-tied'] });
    expect(milliamperes(found, 'active')).toBeCloseTo(milliamperes(straight({}, {}), 'active'), 6);
    expect(found.notes.map(({ kind }) => kind)).toEqual(['pin-2-tied']);
  });

  test('a shield contact of an output tied to nothing takes no current from the loop, and joins no grounds', () => {
    const found = straight({ extras: ['shield-untied'] }, { extras: ['shield-tied'] });
    expect(milliamperes(found, 'active')).toBeCloseTo(milliamperes(straight({}, {}), 'active'), 6);
    expect(found.notes.map(({ kind }) => kind)).toEqual(['shield-open', 'pin-2-tied']);
    const [open, tied] = found.notes.map(({ detail }) => detail);
    expect(open).toMatch(/^pin 2 of the output is tied to nothing inside: /);
    expect(tied).not.toContain('the lead joins the grounds');
  });

  test('a shield contact tied to nothing leaves a level input without its way back, unless grounds meet elsewhere', () => {
    const logic = makeJack('in', 'trs-3.5', 'tip-signal', { circuit: 'receiver-logic' });
    const through = (extras: Jack['extras']) =>
      verdictFor(makeJack('out', 'din5', 'din', { ...(extras && { extras }) }), logic, '5-tip', '2-sleeve');
    expect(through(undefined).byGrounding).toEqual({ separate: 'flows', joined: 'flows' });
    expect(through(['shield-untied']).byGrounding).toEqual({ separate: 'no-path', joined: 'flows' });
    expect(notesIn(through(undefined))).toContain('grounds-joined');
    expect(notesIn(through(['shield-untied']))).not.toContain('grounds-joined');
  });
});
