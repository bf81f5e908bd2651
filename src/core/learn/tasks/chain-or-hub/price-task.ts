/** The task on what a board costs. The cheapest board is found by the planner. */
import { makePlan } from '../../../plan/index.ts';
import type { Plan } from '../../../plan/index.ts';
import { planBoard } from '../../../planner/index.ts';
import type { LinkMemory } from '../../../verdict/index.ts';
import { STRAIGHT_DIN, makeLead } from '../../../wiring/index.ts';
import { remembered, someOf } from '../chance.ts';
import { CONTROLLER, PEDALS, hubOf, pedalOf, planOfWays, senderOf, waysOf } from '../../boards.ts';
import { EXACT, aNumber, casesAt, inRows } from '../forms.ts';
import { planOfLeads } from '../told-boards.ts';
import type { Chance, Drawn, Level, Material } from '../task.ts';
import { runThrough } from '../../../signal/index.ts';

/** A board to be bought: for each pedal whether it has a THRU, the wish for few links (0 for none), prices in coins, leads there. */
interface Bought {
  readonly thrus: readonly boolean[];
  readonly mostHops: number;
  readonly leadPrice: number;
  readonly hubPrice: number;
  readonly owned: number;
}

/** Outputs of the hub that can be bought. */
const HUB_OUTPUTS = 6;

/** Links solved once for all tasks. */
const memory: LinkMemory = new Map();

function planOf({ thrus, mostHops, leadPrice, hubPrice, owned }: Bought): Plan {
  const lead = makeLead('din5', 'din5', STRAIGHT_DIN, { name: 'DIN lead', lengthMetres: 1 });
  return makePlan({
    title: 'Board of a task (invented)',
    devices: [
      senderOf(CONTROLLER),
      ...thrus.map((thru, at) => pedalOf(PEDALS[at] ?? '', at + 1, { thru: thru ? 'hardware' : 'none' })),
    ],
    stock: [
      { lead, price: leadPrice, owned: 0 },
      ...(owned > 0 ? [{ lead: { ...lead, name: 'own DIN lead' }, price: 0, owned }] : []),
    ],
    hubs: [{ ...hubOf(HUB_OUTPUTS), price: hubPrice }],
    wishes: { noHub: false, noSoldering: true, mostHops, spareOutlets: 0 },
  });
}

/** What the cheapest board that passes every check costs, in coins, and whether it has a hub. */
const cheapest = remembered((bought: Bought) => {
  const end = runThrough(planBoard(planOf(bought), memory));
  if (!end.ok) throw new Error(`task: no board, ${end.why}`);
  return { coins: Math.round(end.best.cost), hub: end.best.facts.hubs > 0 };
});

/** Boards by turns: for each pedal a T where it has a THRU or a - where it has none, and the wish for few links. The first are easy. */
const BOARDS: readonly Pick<Bought, 'thrus' | 'mostHops'>[] = (
  [
    ['TTT', 0],
    ['-T-', 0],
    ['TTTT', 0],
    ['----', 0],
    ['T-T', 0],
    ['TTT', 2],
    ['TT-T', 0],
    ['T--T', 0],
    ['TTTT', 3],
  ] as const
).map(([boxes, mostHops]) => ({ thrus: [...boxes].map((box) => box === 'T'), mostHops }));

function sayWhy({ thrus, mostHops }: Bought): string {
  const without = thrus.filter((thru) => !thru).length;
  if (without > 1)
    return `${without} pedals have no THRU, and a chain ends at the first of them: a hub is needed.`;
  if (mostHops > 0 && mostHops < thrus.length)
    return `A chain puts the last pedal ${thrus.length} links away, and at most ${mostHops} are allowed: a hub is needed.`;
  return without === 1
    ? 'Only one pedal has no THRU. Put it at the end, and a chain does it.'
    : 'Every pedal has a THRU: a chain does it.';
}

/** The boxes as they stand before a lead is bought, and the cheapest board: a pedal without THRU ends a chain. */
function onBoard(names: readonly string[], thrus: readonly boolean[], hub: boolean): Material {
  const kinds = Object.fromEntries(
    names.map((name, at) => [name, thrus[at] ? ('hardware' as const) : ('none' as const)]),
  );
  const ends = names.filter((name) => kinds[name] === 'none');
  const ways = waysOf(hub ? 'hub' : 'chain', [...names.filter((name) => !ends.includes(name)), ...ends]);
  const boxes = names.map((name, at) => pedalOf(name, at + 1, { thru: kinds[name] ?? 'none' }));
  return {
    on: 'board',
    plan: planOfWays([senderOf(CONTROLLER), ...boxes], []),
    solved: planOfLeads(ways, { thrus: kinds }),
  };
}

const PRICE_SAID = {
  'price only': 'A chain would be the cheapest, but it ends at a pedal that has no THRU.',
  "hub's own lead forgotten": 'The hub has to be fed too: one lead more than there are pedals.',
  'hub not paid': 'Those are the leads. The hub has a price too.',
  'a hub that is not needed': 'That is the board with a hub. Here a chain reaches every pedal for less.',
  'first lead forgotten': 'One lead leads from the foot controller to the first pedal.',
  'own leads paid again': 'You have some of the leads already. Take them off.',
};
const TOO_FAR = 'A chain would be the cheapest, but it puts the last pedal too far away.';

/** What the cheapest board costs. */
export function cheapestBoard(level: Level, chance: Chance): Drawn {
  const board = chance.turn(casesAt(level, BOARDS, [4, 9]));
  const names = someOf(PEDALS, board.thrus.length, chance);
  const bought: Bought = {
    ...board,
    leadPrice: chance.pick([8, 10, 12, 15]),
    hubPrice: chance.pick([50, 65, 80]),
    owned: level === 3 ? chance.pick([1, 2]) : 0,
  };
  const { coins, hub } = cheapest(bought);
  const { leadPrice, hubPrice, owned, mostHops, thrus } = bought;
  const leads = thrus.length + (hub ? 1 : 0);
  const chain = (thrus.length - owned) * leadPrice;
  const said = mostHops > 0 ? { ...PRICE_SAID, 'price only': TOO_FAR } : PRICE_SAID;
  return {
    ask: `What does the cheapest board cost that reaches every pedal and splits no output${mostHops > 0 ? `, with no pedal more than ${mostHops} links from the foot controller` : ''}? The foot controller has one OUT. All prices are invented.`,
    shows: inRows([
      ...names.map((name, at): readonly [string, string] => [name, thrus[at] ? 'has a THRU' : 'has no THRU']),
      ['a lead', `${leadPrice} coins`],
      ['a hub with six outputs', `${hubPrice} coins`],
      owned > 0 && ['leads that you have already', String(owned)],
    ]),
    material: onBoard(names, thrus, hub),
    ...aNumber(coins, 'coins', EXACT, said, {
      'price only': hub && chain,
      "hub's own lead forgotten": hub && coins - leadPrice,
      'hub not paid': hub && coins - hubPrice,
      'a hub that is not needed': !hub && hubPrice + chain + leadPrice,
      'first lead forgotten': !hub && coins - leadPrice,
      'own leads paid again': owned > 0 && coins + owned * leadPrice,
    }),
    hints: [
      'A chain takes one lead for each pedal. A hub takes one more, and its own price.',
      'Can a chain do it? Ask which pedals have a THRU, and how long it may be.',
      owned > 0 ? 'Leads that you have cost nothing.' : 'Count the leads, and add up.',
    ],
    steps: [
      sayWhy(bought),
      `${leads} leads${owned > 0 ? `, ${owned} of them there already` : ''}: ${(leads - owned) * leadPrice} coins.`,
      `${hub ? `With the hub at ${hubPrice} coins: ` : ''}${coins} coins in all.`,
    ],
  };
}
