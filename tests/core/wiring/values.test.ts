import { describe, expect, it } from 'vitest';
import {
  CIRCUITS,
  PARTS,
  VALUES,
  circuitEntry,
  circuitsFor,
  hasLed,
  jackProblem,
  makeJack,
  newJack,
  valueAt,
  valuesOf,
} from '../../../src/core/wiring/index.ts';
import type {
  CircuitKind,
  Jack,
  Part,
  Style,
  ValueEntry,
  ValueName,
} from '../../../src/core/wiring/index.ts';
import { factor } from '../../../src/core/wiring/values.ts';

/** Every circuit with every part that it can have. */
const BEHIND = CIRCUITS.flatMap((circuit) =>
  (hasLed(circuit) ? PARTS : (['6N138'] as const)).map((part) => ({ circuit, part })),
);

/** A jack that can hold the circuit. */
function jackWith(circuit: CircuitKind, part: Part, values: Jack['values']): Jack {
  const [direction, style]: ['out' | 'in', Style] = circuit.startsWith('driver-')
    ? ['out', circuitEntry(circuit).family === 'loop' ? 'type-a' : 'tip-signal']
    : [
        'in',
        circuit === 'receiver-both-ways'
          ? 'both-ways'
          : circuitEntry(circuit).family === 'loop'
            ? 'type-a'
            : 'tip-signal',
      ];
  return makeJack(direction, 'trs-3.5', style, { circuit, part, values });
}

/** A value that goes with another must keep its order: low below high. */
const others = (name: ValueName): Jack['values'] =>
  name === 'lowVolts' ? { highVolts: 12 } : name === 'highVolts' ? { lowVolts: 0.1 } : {};

describe('a value that a reader changes', () => {
  it('may stand at either of its bounds, in every circuit', () => {
    for (const { circuit, part } of BEHIND)
      for (const { name, least, most } of valuesOf(circuit, part))
        for (const value of [least, most]) {
          const problem = jackProblem(jackWith(circuit, part, { ...others(name), [name]: value }));
          expect(problem, `${circuit} ${part} ${name} ${value}`).toBeUndefined();
        }
  });

  it('is refused just beyond either bound, with the bounds, the unit and what came', () => {
    for (const { circuit, part } of BEHIND)
      for (const { name, least, most, unit } of valuesOf(circuit, part))
        for (const value of [least - Math.max(1e-9, Math.abs(least) / 1e6), most * 1.000001]) {
          const jack = jackWith(circuit, part, { ...others(name), [name]: value });
          expect(jackProblem(jack)).toBe(
            `values.${name}: must be at least ${least} ${unit} and at most ${most} ${unit}, got ${value} ${unit}`,
          );
        }
  });

  it('wins over the default, and leaves every other value alone', () => {
    for (const { circuit, part } of BEHIND) {
      const entries = valuesOf(circuit, part);
      const [changed] = entries as [ValueEntry];
      const jack = jackWith(circuit, part, { [changed.name]: changed.most });
      expect(valueAt(jack, changed.name)).toBe(changed.most);
      for (const { name, value } of entries.slice(1)) expect(valueAt(jack, name)).toBe(value);
    }
  });

  it('stands once in the list of its circuit, under a label that no other there has', () => {
    for (const { circuit, part } of BEHIND) {
      const entries = valuesOf(circuit, part);
      for (const each of [entries.map(({ name }) => name), entries.map(({ label }) => label)])
        expect(new Set(each).size, `${circuit} ${part}`).toBe(each.length);
    }
  });

  it('is of use somewhere: no name is known that no circuit has', () => {
    const used = new Set(
      BEHIND.flatMap(({ circuit, part }) => valuesOf(circuit, part).map(({ name }) => name)),
    );
    expect(VALUES.filter((name) => !used.has(name))).toEqual([]);
  });

  it('has the unit that its name ends in', () => {
    const UNITS = { Volts: 'V', Ohms: 'ohm', Watts: 'W', Amperes: 'A', Seconds: 's' } as const;
    for (const { circuit, part } of BEHIND)
      for (const { name, unit } of valuesOf(circuit, part)) {
        const ending = Object.entries(UNITS).find(([end]) => name.endsWith(end));
        expect(unit, name).toBe(ending?.[1] ?? '%');
      }
  });

  it('is a figure of a document only with that document named', () => {
    for (const { circuit, part } of BEHIND)
      for (const { name, status, source } of valuesOf(circuit, part))
        if (status === 'C') expect(source, name).toMatch(/CA-033|data sheet|switching test/);
  });
});

describe('a tolerance', () => {
  it('is the same share up and down', () => {
    expect(factor(0.05)).toEqual({ kind: 'factor', low: 0.95, high: 1.05 });
    expect(factor(0)).toEqual({ kind: 'factor', low: 1, high: 1 });
  });

  it('is 10 % of a 5 V supply, 5 % of a 3.3 V one and 5 % of every resistor', () => {
    // MMA CA-033, fig. 1.
    const spread = (circuit: CircuitKind, name: ValueName) =>
      valuesOf(circuit, '6N138').find((one) => one.name === name)?.spread;
    expect(spread('driver-5v', 'supplyVolts')).toEqual(factor(0.1));
    expect(spread('driver-3v3', 'supplyVolts')).toEqual(factor(0.05));
    expect(spread('driver-3v3-push-pull', 'supplyVolts')).toEqual(factor(0.05));
    for (const [circuit, name] of [
      ['driver-5v', 'sourceOhms'],
      ['driver-5v', 'sinkOhms'],
      ['driver-3v3', 'sourceOhms'],
      ['driver-3v3', 'sinkOhms'],
      ['receiver-isolated', 'seriesOhms'],
    ] as const)
      expect(spread(circuit, name)).toEqual(factor(0.05));
  });

  it('reaches the worst cases that the 2014 update works out', () => {
    // (3.135 - 1.9) V / (263 x 1.05) ohm = 4.472 mA; a shorted RA carries 3.465 V / 31.35 ohm = 0.111 A.
    const at = (circuit: CircuitKind, name: ValueName, end: 'low' | 'high'): number => {
      const entry = valuesOf(circuit, '6N138').find((one) => one.name === name) as ValueEntry;
      return entry.value * (entry.spread?.[end] ?? 1);
    };
    const ohms =
      at('driver-3v3', 'sourceOhms', 'high') +
      at('driver-3v3', 'sinkOhms', 'high') +
      at('receiver-isolated', 'seriesOhms', 'high');
    expect(((at('driver-3v3', 'supplyVolts', 'low') - 1.9) / ohms) * 1e3).toBeCloseTo(4.472, 3);
    const shorted = at('driver-3v3', 'supplyVolts', 'high') / at('driver-3v3', 'sourceOhms', 'low');
    expect(shorted).toBeCloseTo(0.111, 3);
  });
});

describe('a jack of a device that nobody has opened', () => {
  it('has the usual circuit of its style, and a part that is not known where it has an optocoupler', () => {
    expect(newJack('in', 'din5', 'din')).toEqual(makeJack('in', 'din5', 'din', { part: 'unknown' }));
    expect(newJack('in', 'trs-3.5', 'both-ways').part).toBe('unknown');
    expect(newJack('out', 'din5', 'din')).toEqual(makeJack('out', 'din5', 'din'));
    const [usual] = circuitsFor('in', 'tip-signal');
    expect(newJack('in', 'ts-6.35', 'tip-signal')).toMatchObject({ circuit: usual, part: '6N138' });
  });
});
