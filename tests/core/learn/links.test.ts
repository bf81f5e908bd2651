import { describe, expect, test } from 'vitest';
import {
  firstLead,
  linkFrom,
  planFrom,
  say,
  sayValue,
  searchFor,
  solve,
  unbroken,
} from '../../../src/core/learn/index.ts';
import type { AuthoredLink, Quantity } from '../../../src/core/learn/index.ts';
import { linkOf } from '../../../src/core/plan/index.ts';
import { CIRCUITS, PARTS, valuesOf } from '../../../src/core/wiring/index.ts';
import { dinLink } from './authored.ts';

/** Type A into Type B by a straight lead: the current flows backwards. */
const TURNED: AuthoredLink = {
  output: { connector: 'trs-3.5', style: 'type-a' },
  input: { connector: 'trs-3.5', style: 'type-b' },
  leads: [{ ends: ['trs-3.5', 'trs-3.5'], wires: ['tip-tip', 'ring-ring', 'sleeve-sleeve'] }],
  outcome: 'backwards',
};
/** A ground-referenced output into an input of the same kind. */
const LEVEL: AuthoredLink = {
  output: { connector: 'trs-3.5', style: 'tip-signal' },
  input: { connector: 'trs-3.5', style: 'tip-signal' },
  leads: [{ ends: ['trs-3.5', 'trs-3.5'], wires: ['tip-tip', 'sleeve-sleeve'] }],
  outcome: 'flows',
};

describe('A link as an author writes it', () => {
  test('has the usual circuits, a lead of 1 m and nothing wrong where nothing is said', () => {
    const { output, branches } = linkFrom(dinLink());
    expect(output).toMatchObject({ direction: 'out', circuit: 'driver-5v', values: {} });
    expect(branches[0]?.input).toMatchObject({
      direction: 'in',
      circuit: 'receiver-isolated',
      part: '6N138',
    });
    expect(branches[0]?.leads[0]).toMatchObject({ lengthMetres: 1, faults: [], from: { form: 'plug' } });
    expect(branches[0]?.leads[0]?.conductors).toEqual([
      { from: '4', to: '4' },
      { from: '5', to: '5' },
      { from: '2', to: '2' },
    ]);
  });

  test('takes what is said: circuit, part, values, metres, a socket for a first end, faults', () => {
    const fault = { kind: 'open', side: 'from', contact: '4' } as const;
    const { output, branches } = linkFrom({
      output: { connector: 'din5', style: 'din', circuit: 'driver-3v3', values: { sourceOhms: 47 } },
      input: { connector: 'trs-3.5', style: 'type-b', part: 'H11L1' },
      leads: [{ ends: ['din5', 'trs-3.5'], wires: ['4-tip'], metres: 3, firstEnd: 'jack', faults: [fault] }],
      outcome: 'no-path',
    });
    expect(output).toMatchObject({ circuit: 'driver-3v3', values: { sourceOhms: 47 } });
    expect(branches[0]?.input).toMatchObject({ style: 'type-b', part: 'H11L1' });
    expect(branches[0]?.leads[0]).toMatchObject({
      lengthMetres: 3,
      from: { connector: 'din5', form: 'jack' },
      to: { connector: 'trs-3.5', form: 'plug' },
      faults: [fault],
    });
  });

  test('lays a conductor once that is written twice', () => {
    const twice = { ...dinLink(), leads: [{ ends: ['din5', 'din5'], wires: ['4-4', '4-4'] }] } as const;
    expect(firstLead(twice).conductors).toEqual([{ from: '4', to: '4' }]);
  });

  test('is the same link when it is laid on a bench as a plan', () => {
    for (const authored of [dinLink('PC900V'), TURNED, LEVEL]) {
      const plan = planFrom(authored);
      const [planned] = plan.links;
      if (planned === undefined) throw new Error('expected the plan to have a link');
      expect(plan.links).toHaveLength(1);
      const { output, branches } = linkOf(plan, planned);
      const solved = linkFrom(authored);
      expect(output).toMatchObject(solved.output);
      expect(branches[0]?.input).toMatchObject(solved.branches[0]?.input ?? {});
      expect(branches[0]?.leads[0]?.conductors).toEqual(solved.branches[0]?.leads[0]?.conductors);
    }
  });

  test('finds by search the lead that it has itself, and that leads which do not work are none of those', () => {
    const key = (conductors: readonly { from: string; to: string }[]) =>
      conductors
        .map(({ from, to }) => `${from}-${to}`)
        .sort()
        .join(' ');
    const found = (authored: AuthoredLink) =>
      searchFor(authored).leads.map(({ conductors }) => key(conductors));
    expect(found(dinLink())).toContain(key(firstLead(dinLink()).conductors));
    expect(solve(TURNED).outcome).toBe('backwards');
    expect(found(TURNED)).not.toContain(key(firstLead(TURNED).conductors));
    expect(found(TURNED)[0]).toBe('ring-tip sleeve-sleeve tip-ring');
  });
});

describe('What a lesson prints of a link', () => {
  test('is the current of the standard loop at rest, in use and at its worst', () => {
    // Facts sheet, section 3: 5.38 mA without cable; 1 m of lead and its contacts take a hundredth. Worst: 4.5 V, R + 5 %, LED + 0.3 V.
    expect(say(dinLink(), 'idle')).toBe('0 mA');
    expect(say(dinLink(), 'active')).toBe('5.4 mA');
    // (4.5 - 1.44 - 0.3) V / 693 ohm: about 3.98 mA.
    expect(Number.parseFloat(say(dinLink(), 'worst'))).toBeCloseTo(3.98, 1);
    expect(say(dinLink(), 'needed')).toBe('1.6 mA');
    expect(say(dinLink('PC900V'), 'needed')).toBe('4 mA');
  });

  test('is the voltage that the LED keeps, and what the source resistor and the rail carry', () => {
    // 6N138 at 5.38 mA: N VT ln(I / IS) + I RS = 1.44 x 25.865 mV x 38.76 + 5 mV = 1.45 V.
    expect(say(dinLink(), 'LED volts')).toBe('1.45 V');
    expect(say(dinLink(), 'source resistor')).toBe('5.4 mA');
    expect(say(dinLink(), 'rail')).toBe('5.4 mA');
  });

  test('is the current that flows backwards, in use but not at rest', () => {
    // Facts sheet, section 2: 6.56 mA at 5 V without cable; 0.4 ohm of lead in 660 take 0.004 mA of it.
    expect(say(TURNED, 'backwards')).toBe('6.6 mA');
    expect(say(TURNED, 'backwards at rest')).toBe('0 mA');
    expect(say(TURNED, 'active')).toBe('0 mA');
    expect(say(dinLink(), 'backwards')).toBe('0 mA');
  });

  test('is in volts where the input is a level', () => {
    for (const quantity of ['idle', 'active', 'worst', 'needed', 'high from'] as const)
      expect(say(LEVEL, quantity)).toMatch(/ V$/);
    // Low below 0.8 V and high from 2.0 V (common practice).
    expect(say(LEVEL, 'needed')).toBe('0.80 V');
    expect(say(LEVEL, 'high from')).toBe('2.00 V');
  });

  test('is refused where the link has no such part', () => {
    expect(() => say(LEVEL, 'LED volts')).toThrow("lesson link: has no part 'led' to print");
    expect(() => say(LEVEL, 'source resistor')).toThrow(
      "lesson link: has no part 'source-resistor' to print",
    );
  });

  test('never says more digits than a meter shows', () => {
    const all: readonly Quantity[] = ['idle', 'active', 'worst', 'needed', 'backwards', 'LED volts', 'rail'];
    for (const authored of [dinLink(), dinLink('H11L1'), TURNED])
      for (const quantity of all) expect(say(authored, quantity)).toMatch(/^−?\d+(\.\d{1,3})? (mA|V)$/);
  });
});

describe('A value of a circuit in a lesson', () => {
  test('is printed in its own unit', () => {
    expect(sayValue('driver-5v', 'supplyVolts')).toBe('5 V');
    expect(sayValue('driver-5v', 'sourceOhms')).toBe('220 ohm');
    expect(sayValue('driver-3v3', 'sourceWatts')).toBe('0.5 W');
    expect(sayValue('receiver-logic', 'pullUpOhms')).toBe('10 kohm');
    expect(sayValue('receiver-isolated', 'turnOnAmperes', 'PC900V')).toBe('4 mA');
    expect(sayValue('receiver-isolated', 'toOffSeconds', 'H11L1')).toBe('1.2 µs');
    expect(sayValue('receiver-isolated', 'gain')).toBe('1300 %');
  });

  test('is printed without the dust of binary fractions, whichever it is', () => {
    for (const circuit of CIRCUITS)
      for (const part of PARTS)
        for (const { name } of valuesOf(circuit, part))
          expect(sayValue(circuit, name, part), `${circuit} ${part} ${name}`).toMatch(
            /^\d+(\.\d{1,3})? \S+$/,
          );
  });

  test('is refused where the circuit has no such value', () => {
    expect(() => sayValue('driver-5v', 'seriesOhms')).toThrow(
      "lesson: circuit 'driver-5v' has no value 'seriesOhms'",
    );
  });
});

test('Words that belong together stay on one line', () => {
  expect(unbroken('5 mA at 3 V')).toBe('5\u00a0mA\u00a0at\u00a03\u00a0V');
  expect(unbroken('')).toBe('');
});
