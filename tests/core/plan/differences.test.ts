import { describe, expect, test } from 'vitest';
import { differences } from '../../../src/core/plan/differences.ts';
import type { Plan } from '../../../src/core/plan/plan.ts';
import { plainPlan, randomPlan } from './plans.ts';

/** The plan with one jack changed. */
function withJack(plan: Plan, device: number, change: object): Plan {
  return {
    ...plan,
    devices: plan.devices.map((one, at) =>
      at === device ? { ...one, jacks: one.jacks.map((jack) => ({ ...jack, ...change })) } : one,
    ),
  };
}

describe("A student's plan against the teacher's", () => {
  const teacher = plainPlan();

  test('has no differences from itself', () => {
    for (let seed = 0; seed < 30; seed++) expect(differences(randomPlan(seed), randomPlan(seed))).toEqual([]);
  });

  test('may have leads of its own, another title and another order of devices', () => {
    const student: Plan = {
      ...teacher,
      title: 'mine',
      devices: [...teacher.devices].reverse(),
      leads: teacher.leads.map((lead) => ({ ...lead, conductors: [], lengthMetres: 3 })),
    };
    expect(differences(teacher, student)).toEqual([]);
  });

  test('names a changed circuit, a changed value and a value left at its default', () => {
    expect(differences(teacher, withJack(teacher, 0, { circuit: 'driver-3v3' }))).toEqual([
      "jack 'out' of 'switcher': circuit must be 'driver-5v', got 'driver-3v3'",
    ]);
    expect(differences(teacher, withJack(teacher, 0, { values: { sourceOhms: 100 } }))).toEqual([
      "jack 'out' of 'switcher': sourceOhms must be the default, got 100",
    ]);
    expect(differences(withJack(teacher, 1, { values: { seriesOhms: 100 } }), teacher)).toEqual([
      "jack 'in' of 'echo': seriesOhms must be 100, got the default",
    ]);
  });

  test('names what was changed of a jack that a file may leave out, and nothing where the default is written out', () => {
    expect(differences(withJack(teacher, 0, { supplyOnSpares: true }), teacher)).toEqual([
      "jack 'out' of 'switcher': supplyOnSpares must be 'true', got 'false'",
    ]);
    expect(differences(teacher, withJack(teacher, 1, { thru: 'software' }))).toEqual([
      "jack 'in' of 'echo': thru must be 'hardware', got 'software'",
    ]);
    expect(differences(teacher, withJack(teacher, 0, { role: 'plain', supplyOnSpares: false }))).toEqual([]);
  });

  test('names a missing jack and a missing link', () => {
    const renamed = withJack(teacher, 1, { name: 'other' });
    expect(differences(teacher, { ...renamed, links: [] })).toEqual([
      "jack 'in' of 'echo' is missing",
      "link 'link 1' from jack 'out' of 'switcher' to jack 'in' of 'echo' is missing",
    ]);
  });

  test('compares the inputs of a link in any order', () => {
    const [link] = teacher.links;
    if (!link) throw new Error('the plain plan has a link');
    const [first] = link.inputs;
    if (!first) throw new Error('the plain link has an input');
    const second = { ...first, device: 'second' };
    const two = (inputs: readonly (typeof first)[]): Plan => ({ ...teacher, links: [{ ...link, inputs }] });
    expect(differences(two([first, second]), two([second, first]))).toEqual([]);
  });
});
