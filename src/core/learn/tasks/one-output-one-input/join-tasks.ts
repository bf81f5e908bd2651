/** Tasks on joining boxes: what belongs between, and a split to be found. All boards are checked by their floor. */
import { checkBoard } from '../../../board/index.ts';
import { boardFacts } from '../../../planner/index.ts';
import type { LinkMemory } from '../../../verdict/index.ts';
import { boardFrom, type Way } from '../../boards.ts';
import { oneOf } from '../forms.ts';
import { drawnPedals, leadRows, leadsOf, planOfLeads, type Shape } from '../told-boards.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';

/** Links solved once for all tasks. */
const memory: LinkMemory = new Map();

/** What may stand between boxes. */
const BETWEEN = {
  split: 'A plain Y lead',
  chain: 'A lead from THRU to IN',
  hub: 'A hub',
  merger: 'A merger',
} as const;
type Between = keyof typeof BETWEEN;

/** A wish for a board. */
interface Wished {
  readonly told: string;
  readonly senders: 1 | 2;
  readonly pedals: number;
  /** Whether the pedals have a THRU, and whether one of them must not silence another. */
  readonly thru: boolean;
  readonly alone: boolean;
}

const WISHED: readonly Wished[] = [
  ...[2, 4].map((pedals) => ({
    told: `A foot controller with one OUT is to feed ${pedals} pedals. None of them has a THRU.`,
    senders: 1 as const,
    pedals,
    thru: false,
    alone: false,
  })),
  {
    told: 'A foot controller and a keyboard are both to play one pedal. Both may play at once.',
    senders: 2,
    pedals: 1,
    thru: true,
    alone: false,
  },
  {
    told: 'A foot controller with one OUT is to feed two pedals. Both have a THRU, and both are always on.',
    senders: 1,
    pedals: 2,
    thru: true,
    alone: false,
  },
  {
    told: 'A foot controller and a keyboard are both to play one pedal. They are never used at the same time.',
    senders: 2,
    pedals: 1,
    thru: true,
    alone: false,
  },
  {
    told: 'A foot controller with one OUT is to feed three pedals. All have a THRU, but any one of them may be switched off, and the others must play on.',
    senders: 1,
    pedals: 3,
    thru: true,
    alone: true,
  },
  {
    told: 'A foot controller with one OUT is to feed two pedals. Both have a THRU, but either may be switched off, and the other must play on.',
    senders: 1,
    pedals: 2,
    thru: true,
    alone: true,
  },
];

/** Whether what stands between serves a wish, whatever part is in the pedals. */
function serves(between: Between, { senders, pedals, thru, alone }: Wished): boolean {
  if (between === 'chain' && (!thru || senders > 1)) return false;
  if ((between === 'hub' && senders > 1) || (between === 'merger' && senders === 1)) return false;
  const layout = between === 'split' && senders > 1 ? 'two senders' : between;
  const plan = boardFrom({ layout, pedals, part: 'unknown' });
  const silences = boardFacts(plan).silentWithout.some(
    ({ device }) => device !== 'hub' && device !== 'merger',
  );
  return checkBoard(plan, memory).passes && !(alone && silences);
}

function saidToBetween(between: Between, { senders, thru, alone }: Wished): readonly [string, string] {
  if (between === 'split')
    return senders > 1
      ? [
          'joins by wire if one is quiet',
          'An output at rest still holds its lines. A box has to read both and let them take turns.',
        ]
      : [
          'splits by wire',
          'What each input then gets depends on parts that nobody has seen. One output feeds one input.',
        ];
  if (between === 'merger')
    return [
      'merger for hub',
      'A merger brings several senders together into one. Here one sender feeds several inputs.',
    ];
  if (senders > 1)
    return between === 'hub'
      ? ['hub for merger', 'A hub has one input. Here two senders have to come together.']
      : ['THRU joins senders', 'A THRU sends on what its own IN hears. It cannot take in a second sender.'];
  if (between === 'hub')
    return [
      'a box too many',
      'A hub would do it. But these pedals can pass on by themselves, and cost nothing more.',
    ];
  if (!thru) return ['THRU that is not there', 'These pedals have no THRU, and an IN passes nothing on.'];
  return alone
    ? [
        'THRU of a box that is off',
        'A THRU copies only while its own box is on. What comes after it goes silent.',
      ]
    : ['says THRU', 'Ask what is to be joined: one to many, or many to one?'];
}

/** From the least to buy to the most. */
const BY_COST = ['split', 'chain', 'hub', 'merger'] as const;
const leastFor = new Map<Wished, Between>();

function whichBox(level: Level, chance: Chance): Drawn {
  const wished = chance.turn(level < 2 ? WISHED.slice(0, 5) : WISHED);
  const right = leastFor.get(wished) ?? BY_COST.find((between) => serves(between, wished));
  if (right === undefined) throw new Error(`task: nothing serves '${wished.told}'`);
  leastFor.set(wished, right);
  return {
    ask: `${wished.told} Nobody knows the parts inside. What is the least that is sure to do it?`,
    ...oneOf(
      BY_COST.map((between) => {
        const text = BETWEEN[between];
        const [slip, says] = saidToBetween(between, wished);
        return between === right ? { text, right: true } : { text, slip, says };
      }),
      chance,
    ),
    hints: [
      'One output feeds one input.',
      'Is it one sender to many, or many senders to one?',
      'One to many: can each box pass on by itself, and is it always on? Many to one: they have to take turns.',
    ],
    steps: [
      wished.senders > 1
        ? 'Two senders: a box has to read both and let them take turns.'
        : wished.thru && !wished.alone
          ? 'One sender, and each pedal can pass on what it hears while it is on.'
          : 'One sender, and no pedal can be counted on to pass on what it hears.',
      `${BETWEEN[right]}.`,
    ],
  };
}

/** Boards in which a split may hide, and how many pedals they have. */
const HIDING: readonly (readonly [shape: Shape, pedals: number, split: boolean])[] = [
  ['chain', 3, true],
  ['hub', 3, true],
  ['chain', 4, false],
  ['both', 4, true],
  ['hub behind', 4, true],
  ['both', 4, false],
  ['two hubs', 4, true],
];

/** The leads with one moved to an output before it that feeds another input already, so that two share it. */
function withSplit(ways: readonly Way[], chance: Chance): readonly Way[] {
  const moved = chance.pick(ways.slice(1));
  const [from, jack] = chance.pick(ways.slice(0, ways.indexOf(moved)));
  return ways.map((way): Way => (way === moved ? [from, jack, way[2], way[3]] : way));
}

/** What is said to an output that feeds one input. */
function saidToOutput(output: string): { readonly slip: string; readonly says: string } {
  if (output.endsWith('THRU'))
    return {
      slip: 'THRU passes current',
      says: 'A THRU is an output of its own, with its own current. What comes after it takes nothing from the output before.',
    };
  return output.startsWith('foot controller')
    ? {
        slip: 'all hang on the first output',
        says: 'One lead begins there, and it ends at one box. The other boxes are fed by outputs of their own.',
      }
    : {
        slip: 'takes a hub for a split',
        says: 'Each output of a hub has parts of its own. One lead begins at this one.',
      };
}

function findSplit(level: Level, chance: Chance): Drawn {
  const [shape, pedals, split] = chance.turn(level < 2 ? HIDING.slice(0, 4) : HIDING);
  const whole = leadsOf(shape, drawnPedals(pedals, chance));
  const ways = chance.shuffled(split ? withSplit(whole, chance) : whole);
  const found = checkBoard(planOfLeads(ways), memory).findings.find(({ kind }) => kind === 'split');
  const outputs = [...new Set(ways.map(([from, jack]) => `${from} ${jack}`))];
  const links = new Set(found?.where.links);
  const at = ways.findIndex((_, place) => links.has(`link ${place + 1}`));
  const right = at < 0 ? 'none' : `${ways[at]?.[0] ?? ''} ${ways[at]?.[1] ?? ''}`;
  const none = 'none of them';
  const asked = [...new Set([...(right === 'none' ? [] : [right]), ...chance.shuffled(outputs)])].slice(0, 4);
  return {
    ask: 'Which output of this board feeds two inputs by plain wire?',
    shows: { shows: 'rows', rows: leadRows(ways) },
    ...oneOf(
      [...asked, none].map((one) => {
        if (one === right || (one === none && right === 'none')) return { text: one, right: true };
        if (one === none)
          return {
            text: one,
            slip: 'takes a split for none',
            says: 'Go through the leads by where they begin. One beginning stands there twice.',
          };
        return { text: one, ...saidToOutput(one) };
      }),
      chance,
    ),
    hints: [
      'A split is one output with two leads.',
      'Go through the leads, and look only at where each begins.',
      'Two outputs of a hub are two; so are an OUT and a THRU.',
    ],
    steps: [
      `The leads begin at: ${ways.map(([from, jack]) => `${from} ${jack}`).join('; ')}.`,
      right === 'none' ? 'Each beginning stands there once: none of them.' : `Twice stands: ${right}.`,
    ],
  };
}

/** The tasks on joining boxes. */
export const JOIN_TASKS: readonly TaskKind[] = [
  { kind: 'which-box', title: 'What belongs between?', draw: whichBox },
  { kind: 'find-split', title: 'Find the split', draw: findSplit },
];
