/** Invented boards from a seed, with places, leads, hubs and prices. No device or price stands for a real one. */
import { PLAN_LIMITS } from '../../../src/core/plan/kinds.ts';
import { LIBRARY, planJack } from '../../../src/core/plan/library.ts';
import { makePlan } from '../../../src/core/plan/parts.ts';
import type { Device, JackPlace, Plan, PlanJack, StockLead } from '../../../src/core/plan/plan.ts';
import type { Connector } from '../../../src/core/wiring/connectors.ts';
import { makeLead, wires } from '../../../src/core/wiring/link.ts';
import type { Direction, Lead } from '../../../src/core/wiring/link.ts';
import { seededRandom } from '../../support/random.ts';
import type { Random } from '../../support/random.ts';

/** A device of the library by the start of its name. */
export function fromLibrary(start: string): Device {
  const found = LIBRARY.find(({ name }) => name.startsWith(start));
  if (!found) throw new Error(`library: no device whose name starts with '${start}'`);
  return found;
}

/** A lead on offer. */
export function stockLead(
  name: string,
  from: Connector,
  to: Connector,
  conductors: readonly string[],
  price: number,
  owned = 0,
  more: Partial<Lead> = {},
): StockLead {
  return { lead: makeLead(from, to, wires(...conductors), { name, ...more }), price, owned };
}

const STRAIGHT_DIN = ['4-4', '5-5', '2-2'];
const DIN_TYPE_A = ['4-ring', '5-tip', '2-sleeve'];
const STRAIGHT_TRS = ['tip-tip', 'ring-ring', 'sleeve-sleeve'];

/** An invented shop and drawer. */
export const STOCK: readonly StockLead[] = [
  stockLead('DIN lead of 1 m', 'din5', 'din5', STRAIGHT_DIN, 9, 0, { lengthMetres: 1 }),
  stockLead('DIN lead of 3 m', 'din5', 'din5', STRAIGHT_DIN, 14, 0, { lengthMetres: 3 }),
  stockLead('my DIN lead of 1.5 m', 'din5', 'din5', STRAIGHT_DIN, 0, 2, { lengthMetres: 1.5 }),
  stockLead('TRS lead of 0.6 m', 'trs-3.5', 'trs-3.5', STRAIGHT_TRS, 5, 0, { lengthMetres: 0.6 }),
  stockLead('my TRS lead of 1 m', 'trs-3.5', 'trs-3.5', STRAIGHT_TRS, 0, 1, { lengthMetres: 1 }),
  stockLead('adapter, DIN jack to Type A plug', 'din5', 'trs-3.5', DIN_TYPE_A, 7, 0, {
    from: { connector: 'din5', form: 'jack' },
    lengthMetres: 0.2,
  }),
];

/** A board of `count` devices to be fed, on a grid, from a seed. */
export function randomBoard(seed: number, count: number): Plan {
  const random = seededRandom(seed);
  const columns = Math.ceil(Math.sqrt(count * 2));
  const devices = Array.from({ length: count }, (_, at): Device => ({
    ...randomPedal(random),
    name: `pedal ${at + 1}`,
    kind: 'pedal',
    channel: (at % 16) + 1,
    xCentimetres: 12 * (at % columns) + random.integer(0, 2),
    yCentimetres: 18 + 18 * Math.floor(at / columns),
    widthCentimetres: random.integer(6, 9),
    depthCentimetres: random.integer(11, 13),
  }));
  const outputs = count > 8 ? 2 : random.integer(1, 2);
  const controller: Device = {
    name: 'switcher',
    kind: 'controller',
    widthCentimetres: 40,
    depthCentimetres: 10,
    yCentimetres: 22 + 18 * Math.ceil(count / columns),
    jacks: Array.from({ length: outputs }, (_, at) =>
      planJack(`OUT ${at + 1}`, 'out', 'din5', 'din', { alongCentimetres: 6 + 6 * at }),
    ),
  };
  return makePlan({
    title: 'An invented board',
    devices: [controller, ...devices],
    stock: STOCK,
    hubs: [fromLibrary('hub with five'), fromLibrary('hub with eight')].map((hub) => ({
      ...hub,
      price: random.integer(15, 60),
    })),
    making: { plugs: { din5: 3 }, plug: 2, wirePerMetre: 1.5, perLead: 4 },
    press: devices.map(({ name }, at) => ({
      device: name,
      send: 'program' as const,
      program: (at % 128) + 1,
    })),
  });
}

/** A pedal with an input of some kind and, two times in three, a way to pass it on. */
function randomPedal(random: Random): Pick<Device, 'jacks'> {
  const [connector, style] = random.pick([
    ['din5', 'din'],
    ['trs-3.5', 'type-a'],
    ['trs-3.5', 'type-b'],
    ['trs-6.35', 'type-a'],
  ] as const);
  const part = random.pick(['H11L1', '6N138', 'PC900V'] as const);
  const into = planJack('IN', 'in', connector, style, { part, alongCentimetres: 2 });
  const thru = planJack('THRU', 'out', connector, style, {
    role: random.chance(0.8) ? 'thru' : 'out-or-thru',
    thru: random.chance(0.8) ? 'hardware' : 'software',
    alongCentimetres: 5,
  });
  return { jacks: random.chance(0.67) ? [into, thru] : [into] };
}

/** A board that is wired already: `count` pedals in one chain, each lead of a length of its own, so that no two links are alike. */
export function wiredBoard(count: number): Plan {
  const source = randomBoard(1, count);
  const straight = wires(...STRAIGHT_DIN);
  const devices = source.devices.map((device, at): Device => {
    if (at === 0) return device;
    const thru = at % 20 === 0 ? 'software' : 'hardware';
    return {
      ...device,
      jacks: [
        planJack('IN', 'in', 'din5', 'din', { part: 'H11L1', alongCentimetres: 2 }),
        planJack('THRU', 'out', 'din5', 'din', { role: 'thru', thru, alongCentimetres: 5 }),
      ],
    };
  });
  const leads = devices
    .slice(1)
    .map((_, at) =>
      makeLead('din5', 'din5', straight, { name: `lead ${at + 1}`, lengthMetres: 4 + at / 100 }),
    );
  return {
    ...source,
    devices,
    leads,
    links: leads.map(({ name }, at) => ({
      name: `link ${at + 1}`,
      output: { device: devices[at]?.name ?? '', jack: at === 0 ? 'OUT 1' : 'THRU' },
      inputs: [{ device: devices[at + 1]?.name ?? '', jack: 'IN', leads: [name] }],
    })),
  };
}

/** As many links as a file may hold, each with jacks of its own and a lead that does not work, so that nothing is solved once for two. */
export function dearestBoard(): Plan {
  const count = PLAN_LIMITS.links;
  const half = PLAN_LIMITS.devices / 2;
  const perDevice = count / half;
  const jacks = (direction: Direction, from: number): readonly PlanJack[] =>
    Array.from({ length: perDevice }, (_, at) =>
      planJack(`jack ${at}`, direction, 'din7', 'din', {
        values: direction === 'out' ? { sourceOhms: 220 + (from * perDevice + at) / 100 } : {},
      }),
    );
  const lead = makeLead('din7', 'din7', wires('1-1', '2-2', '4-1', '5-3', 'shell-shell'));
  const all = Array.from({ length: count }, (_, at) => at);
  const place = (side: string, at: number): JackPlace => ({
    device: `${side} ${Math.floor(at / perDevice)}`,
    jack: `jack ${at % perDevice}`,
  });
  const devices = Array.from({ length: half }, (_, at) => [
    { name: `from ${at}`, kind: 'controller' as const, jacks: jacks('out', at) },
    { name: `to ${at}`, kind: 'pedal' as const, jacks: jacks('in', at) },
  ]).flat();
  return makePlan({
    devices,
    leads: all.map((at) => ({ ...lead, name: `lead ${at}`, lengthMetres: 1 + at / 100 })),
    links: all.map((at) => ({
      name: `link ${at}`,
      output: place('from', at),
      inputs: [{ ...place('to', at), leads: [`lead ${at}`] }],
    })),
  });
}
