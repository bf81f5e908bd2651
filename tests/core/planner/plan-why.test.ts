import { describe, expect, test } from 'vitest';
import { planBoard } from '../../../src/core/planner/plan-it.ts';
import type { PlanAnswer } from '../../../src/core/planner/plan-it.ts';
import type { Plan, Wishes } from '../../../src/core/plan/plan.ts';
import { WISH_DEFAULTS } from '../../../src/core/plan/plan.ts';
import { randomBoard, wiredBoard } from '../board/boards.ts';
import { runThrough } from '../../../src/core/signal/index.ts';

function answerTo(plan: Plan): PlanAnswer {
  return runThrough(planBoard(plan));
}

const wishing = (plan: Plan, wishes: Partial<Wishes>): Plan => ({
  ...plan,
  wishes: { ...WISH_DEFAULTS, ...wishes },
});

describe('A board that cannot be planned', () => {
  test('names the wish that stands in the way', () => {
    // Five DIN pedals with a THRU each: one chain of five links, so a wish for two needs a hub, and 'no hub' forbids it.
    const chain = { ...wiredBoard(5), hubs: randomBoard(1, 5).hubs ?? [] };
    expect(answerTo(chain).ok).toBe(true);
    const one = {
      ...chain,
      devices: chain.devices.map((device, at) => (at > 0 ? device : withOneOut(device))),
    };
    expect(answerTo(wishing(one, { mostHops: 2, noHub: true }))).toMatchObject({
      ok: false,
      why: "No plan reaches every device: 2 outputs are missing. What you asked for stands in the way: without 'no hub', or without 'at most so many links' there is a plan.",
    });
  });

  test('says so when soldering would be needed', () => {
    const bare = { ...wiredBoard(3), stock: [] };
    expect(answerTo(wishing(bare, { noSoldering: true }))).toMatchObject({
      ok: false,
      why: "No lead or hub available can feed 'pedal 1', 'pedal 2', 'pedal 3'. What you asked for stands in the way: without 'no soldering' there is a plan.",
    });
  });

  test('asks for a hub when no wish is to blame', () => {
    const plan = wiredBoard(3);
    const devices = plan.devices.map((device, at) => ({
      ...device,
      jacks: device.jacks.filter(({ name }) => (at === 0 ? name === 'OUT 1' : name === 'IN')),
    }));
    expect(answerTo({ ...plan, devices, links: [], leads: [], hubs: [] })).toEqual({
      ok: false,
      why: 'No plan reaches every device: 2 outputs are missing. Add a hub or a converter with enough outputs to what is available, or give the devices more THRU jacks.',
    });
  });
});

function withOneOut(device: Plan['devices'][number]): Plan['devices'][number] {
  return { ...device, jacks: device.jacks.filter(({ name }) => name === 'OUT 1') };
}
