/** The facts of a board against counting along its wires, layout by layout. */
import { describe, expect, test } from 'vitest';
import { boardFacts } from '../../../src/core/planner/index.ts';
import { boardFrom } from '../../../src/core/learn/index.ts';
import { makePlan } from '../../../src/core/plan/index.ts';
import type { Plan } from '../../../src/core/plan/index.ts';

const BOARDS: readonly Plan[] = (['chain', 'hub', 'both', 'merger'] as const).flatMap((layout) =>
  [1, 2, 3, 4, 5, 6].map((pedals) => boardFrom({ layout, pedals })),
);

/** Devices that a device feeds, by the links of the plan alone. */
const fedBy = (plan: Plan, device: string): readonly string[] =>
  plan.links.flatMap(({ output, inputs }) =>
    output.device === device ? inputs.map((input) => input.device) : [],
  );

/** Everything downstream of a device. */
function below(plan: Plan, device: string): readonly string[] {
  const found: string[] = [];
  const walk = (here: string): void => {
    for (const next of fedBy(plan, here)) {
      if (found.includes(next)) continue;
      found.push(next);
      walk(next);
    }
  };
  walk(device);
  return found;
}
const controllers = (plan: Plan): readonly string[] =>
  plan.devices.flatMap(({ name, kind }) => (kind === 'controller' ? [name] : []));

describe('The facts of a board', () => {
  test('name for each box everything that hears only through it', () => {
    for (const plan of BOARDS) {
      const { silentWithout } = boardFacts(plan);
      for (const { name } of plan.devices) {
        const wanted = controllers(plan).includes(name) ? [] : below(plan, name);
        const said = silentWithout.find(({ device }) => device === name)?.silent ?? [];
        expect([...said].sort(), `${name} of ${plan.devices.length}`).toEqual([...wanted].sort());
      }
    }
  });

  test('count the links of the longest way from any controller', () => {
    const depth = (plan: Plan, device: string): number =>
      Math.max(0, ...fedBy(plan, device).map((next) => 1 + depth(plan, next)));
    for (const plan of BOARDS)
      expect(boardFacts(plan).deepestLinks).toBe(
        Math.max(...controllers(plan).map((name) => depth(plan, name))),
      );
  });

  test('count each lead once, and the boxes that only carry', () => {
    for (const plan of BOARDS) {
      const { leads, hubs } = boardFacts(plan);
      expect(leads).toBe(plan.leads.length);
      expect(hubs).toBe(plan.devices.filter(({ kind }) => kind === 'hub').length);
    }
  });

  test('take a delay of one slowest edge a link, and a byte and the device’s own time for each copy by software', () => {
    // H11L1: 1.2 µs. Software: 320 µs and 1 ms where nothing is given.
    for (const pedals of [1, 2, 5]) {
      const plain = boardFacts(boardFrom({ layout: 'chain', pedals }));
      expect(plain.worstDelaySeconds).toBeCloseTo(pedals * 1.2e-6, 10);
      const soft = boardFacts(boardFrom({ layout: 'chain', pedals, thru: 'software' }));
      expect(soft.worstDelaySeconds).toBeCloseTo(pedals * 1.2e-6 + (pedals - 1) * 1.32e-3, 9);
    }
  });

  test('are nothing at all for a plan of nothing', () => {
    expect(boardFacts(makePlan({}))).toEqual({
      leads: 0,
      hubs: 0,
      worstDelaySeconds: 0,
      deepestLinks: 0,
      silentWithout: [],
    });
  });

  test('count nothing beyond a link that is taken out', () => {
    const chain = boardFrom({ layout: 'chain', pedals: 4 });
    const cut = { ...chain, links: chain.links.filter((_, at) => at !== 1) };
    const facts = boardFacts(cut);
    expect(facts.deepestLinks).toBe(1);
    expect(facts.silentWithout).toEqual([]);
    expect(facts.leads).toBe(3);
  });
});
