/** Boards from a seed that no careful person would draw, each one that the reader takes: odd names, prices, wishes, devices and links. */
import { LIBRARY } from '../../../src/core/plan/library.ts';
import { PLAN_LIMITS } from '../../../src/core/plan/kinds.ts';
import type { Device, Plan, StockLead } from '../../../src/core/plan/plan.ts';
import { readPlan } from '../../../src/core/plan/read-plan.ts';
import { GOODS } from '../../../src/core/wiring/index.ts';
import { seededRandom } from '../../support/random.ts';
import type { Random } from '../../support/random.ts';
import { randomPlan } from '../plan/plans.ts';

/** A plan from a seed: half of them random throughout, half boards of library devices with a controller among them. */
export function wildPlan(seed: number): Plan {
  if (seed % 2 === 0) return randomPlan(seed + 1);
  const random = seededRandom(seed);
  const count = random.integer(1, 5);
  const devices = Array.from({ length: count }, (_, at) => wildDevice(random, at));
  const names = devices.map(({ name }) => name);
  const file = {
    format: 'five-milliamps-plan',
    version: 1,
    title: '',
    devices,
    leads: [],
    links: [],
    stock: Array.from({ length: random.integer(0, 5) }, (_, at) => wildStock(random, at)),
    hubs: Array.from({ length: random.integer(0, 2) }, (_, at) => ({
      ...random.pick(LIBRARY.filter(({ kind }) => kind === 'hub' || kind === 'converter')),
      name: longName(random, at + 1),
      price: wildPrice(random),
    })),
    making: {
      plugs: random.chance(0.5) ? { din5: wildPrice(random) } : {},
      plug: wildPrice(random),
      wirePerMetre: wildPrice(random),
      perLead: wildPrice(random),
    },
    wishes: {
      noHub: random.chance(0.2),
      noSoldering: random.chance(0.15),
      mostHops: random.pick([0, 0, 2, 3]),
      spareOutlets: random.pick([0, 0, 0, 1, 2]),
    },
    press: Array.from({ length: random.integer(0, 4) }, () => ({
      device: random.pick(names),
      send: 'program',
      program: random.integer(1, 128),
    })),
    pressLimitSeconds: random.pick([0, 0.001, 60]),
  };
  const reading = readPlan(JSON.parse(JSON.stringify(file)));
  if (!reading.ok) throw new Error(`seed ${seed}: ${JSON.stringify(reading.problems[0])}`);
  return reading.plan;
}

function wildDevice(random: Random, at: number): Device {
  const found = at === 0 ? LIBRARY.find(({ kind }) => kind === 'controller') : random.pick(LIBRARY);
  const placed = random.chance(0.6);
  return {
    ...(found as Device),
    name: longName(random, at),
    channel: random.integer(0, 3),
    power: random.pick(['unknown', 'spare-pins', 'shared']),
    toBuy: random.chance(0.3),
    price: wildPrice(random),
    xCentimetres: random.integer(0, 1000),
    yCentimetres: random.integer(0, 1000),
    ...(placed ? {} : { widthCentimetres: 0 }),
  };
}

/** Names that end alike, of the most characters there may be; hubs on offer may share one with a device. */
function longName(random: Random, at: number): string {
  const end = ` ${at + 1}`;
  return random.chance(0.3) ? 'x'.repeat(PLAN_LIMITS.nameCharacters - end.length) + end : `device${end}`;
}

function wildPrice(random: Random): number {
  return random.pick([0, 0, 0.01, 3, 17.5, PLAN_LIMITS.price]);
}

function wildStock(random: Random, at: number): StockLead {
  const { lead } = random.pick(GOODS);
  return {
    lead: { ...lead, name: `stock ${at}`, lengthMetres: random.pick([0.1, 1, 3, 20]) },
    price: wildPrice(random),
    owned: random.chance(0.4) ? random.integer(1, 3) : 0,
  };
}
