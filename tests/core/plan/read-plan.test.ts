import { describe, expect, test } from 'vitest';
import { PLAN_LIMITS } from '../../../src/core/plan/kinds.ts';
import { sayProblem } from '../../../src/core/plan/reading.ts';
import { readPlan, readPlanText, sayProblems, writePlanText } from '../../../src/core/plan/read-plan.ts';
import { seededRandom } from '../../support/random.ts';
import { PATIENCE, mutate, plainFile, plainPlan, randomPlan, randomTexts } from './plans.ts';

/** Everything the reader says of the plain plan after one change at a path such as 'devices.0.name'. */
function afterChange(path: string, value: unknown): readonly string[] {
  const file = plainFile();
  const keys = path.split('.');
  const last = keys.pop() ?? '';
  const holder = keys.reduce<Record<string, unknown>>((at, key) => at[key] as Record<string, unknown>, file);
  if (value === undefined) Reflect.deleteProperty(holder, last);
  else holder[last] = value;
  const reading = readPlan(file);
  return reading.ok ? [] : reading.problems.map(sayProblem);
}

describe('Reading a plan', { timeout: PATIENCE }, () => {
  test('takes a plain plan and fills in what was left out', () => {
    const plan = plainPlan();
    expect(plan.title).toBe('');
    expect(plan.devices[0]?.jacks[0]).toMatchObject({ part: '6N138', values: {} });
    expect(plan.leads[0]).toMatchObject({ contactOhms: 0.03, faults: [] });
  });

  test('gives back what was written, for a hundred seeded plans', () => {
    for (let seed = 0; seed < 100; seed++) {
      const plan = randomPlan(seed);
      expect(readPlanText(writePlanText(plan))).toEqual({ ok: true, plan });
    }
  });

  test('writes the same text for the same plan', () => {
    const text = writePlanText(randomPlan(3));
    const reading = readPlanText(text);
    expect(reading.ok && writePlanText(reading.plan)).toBe(text);
  });

  test('takes a text that begins with a byte order mark', () => {
    expect(readPlanText(`\uFEFF${writePlanText(plainPlan())}`).ok).toBe(true);
  });

  test.each([
    ['format', 'other', "format: expected one of five-milliamps-plan, got 'other'"],
    ['version', 2, 'version: expected 1: this file was made by a newer workbook, got 2'],
    ['version', 0, 'version: expected one of 1, got 0'],
    ['devices', undefined, 'devices: expected a list of 0 to 64, got nothing'],
    ['devices.0.name', '', "devices[0].name: expected text of 1 to 80 characters, got ''"],
    ['devices.0.jacks.0.direction', 'up', "devices[0].jacks[0].direction: expected one of out, in, got 'up'"],
    [
      'leads.0.contactOhms',
      1e-7,
      'leads[0].contactOhms: expected a number from 0 to 10 ohm, 0 or at least 0.000001, got 1e-7',
    ],
    ['leads.0.lengthMetres', -2, 'leads[0].lengthMetres: expected a number from 0.01 to 100 m, got -2'],
    ['leads.0.gauge', 25, 'leads[0].gauge: expected one of 20, 22, 24, 26, 28, 30, got 25'],
    [
      'links.0.output.device',
      'echo 2',
      "links[0].output.device: expected the name of a device in this plan, got 'echo 2'",
    ],
    ['links.0.inputs.0.leads', [], 'links[0].inputs[0].leads: expected a list of 1 to 4, got a list of 0'],
    [
      'links.0.inputs.0.leads.0',
      'lead 9',
      "links[0].inputs[0].leads[0]: expected the name of a lead in this plan, got 'lead 9'",
    ],
  ])('says of %s = %j where, what was expected and what came', (path, value, message) => {
    expect(afterChange(path, value)).toContain(message);
  });

  test('names an unknown field and lists the fields there are', () => {
    expect(afterChange('leads.0.colour', 'red')[0]).toMatch(
      /^leads\[0\]\.colour: expected no field of this name \(there are name, from, to, .*\), got 'red'$/,
    );
  });

  test('refuses a contact that the connector does not have', () => {
    expect(afterChange('leads.0.conductors.0', { from: 'tip', to: '4' })).toEqual([
      "leads[0].conductors[0].from: expected a contact of din5 (1, 2, 3, 4, 5, shell), got 'tip'",
    ]);
  });

  test('refuses a conductor that is laid twice', () => {
    expect(afterChange('leads.0.conductors.1', { from: '4', to: '4' })).toEqual([
      "leads[0].conductors[1]: expected each conductor once, got '4 to 4'",
    ]);
  });

  test('refuses a jack that cannot be, and a value out of range', () => {
    expect(afterChange('devices.0.jacks.0.style', 'type-a')).toEqual([
      "devices[0].jacks[0]: expected a jack that can be, got style 'type-a' does not suit a din5 jack",
    ]);
    expect(afterChange('devices.0.jacks.0.values', { supplyVolts: 99 })).toEqual([
      'devices[0].jacks[0]: expected a jack that can be, got values.supplyVolts: must be at least 0.5 V and at most 24 V, got 99 V',
    ]);
  });

  test('refuses a name used twice and a link from an input', () => {
    expect(afterChange('devices.1.name', 'switcher')).toContain(
      "devices[1].name: expected a name used once, got 'switcher'",
    );
    expect(afterChange('links.0.output', { device: 'echo', jack: 'in' })).toEqual([
      "links[0].output.jack: expected a jack with direction 'out', got 'in'",
    ]);
  });

  test('refuses what is not JSON, what is not an object and what is too long', () => {
    expect(readPlanText('{"format":')).toMatchObject({
      ok: false,
      problems: [{ place: 'the file', expected: 'JSON', got: expect.stringMatching(/^other text \(.+\)$/) }],
    });
    expect(readPlan([])).toMatchObject({
      ok: false,
      problems: [{ place: 'the file', expected: 'an object' }],
    });
    expect(readPlanText(' '.repeat(PLAN_LIMITS.characters + 1))).toEqual({
      ok: false,
      problems: [{ place: 'the file', expected: 'at most 1000000 characters', got: '1000001 characters' }],
    });
  });

  test('names five problems and counts the rest', () => {
    const problem = { place: 'a', expected: 'b', got: 'c' };
    expect(sayProblems(Array.from({ length: 7 }, () => problem))).toBe(
      `${Array.from({ length: 5 }, () => 'a: expected b, got c').join('; ')}; and 2 more`,
    );
  });

  test('answers 5 000 spoiled files with a plan or with messages that each name a place, and leaves the value alone', () => {
    const random = seededRandom(41);
    const texts = randomTexts(50);
    let refused = 0;
    for (let round = 0; round < 5000; round++) {
      let value: unknown = JSON.parse(random.pick(texts));
      for (let change = random.integer(1, 3); change > 0; change--) value = mutate(value, random);
      const before = JSON.stringify(value);
      const reading = readPlan(value);
      if (JSON.stringify(value) !== before)
        throw new Error(`round ${round}: the reader changed what it read`);
      if (reading.ok) continue;
      refused++;
      const told = reading.problems.filter((one) => one.place && one.expected && one.got);
      if (told.length === 0 || told.length < reading.problems.length)
        throw new Error(`round ${round}: a message without its place: ${JSON.stringify(reading.problems)}`);
    }
    expect(refused).toBeGreaterThan(3000);
  });

  test('answers 5 000 texts cut short, overwritten or doubled without a throw', () => {
    const random = seededRandom(42);
    const texts = randomTexts(50);
    let refused = 0;
    for (let round = 0; round < 5000; round++) {
      const text = random.pick(texts);
      const at = random.integer(0, text.length);
      const spoiled = random.pick([
        () => text.slice(0, at),
        () => text.slice(0, at) + String.fromCharCode(random.integer(0, 0xffff)) + text.slice(at + 1),
        () => text + text.slice(at),
      ])();
      const reading = readPlanText(spoiled);
      if (reading.ok) continue;
      refused++;
      if (reading.problems.some(({ place }) => place === ''))
        throw new Error(`round ${round}: no place named`);
    }
    expect(refused).toBeGreaterThan(3000);
  });
});
