/** Tasks on joining boxes: what belongs between, and a split to be found. All boards are checked by their floor. */
import { checkBoard } from '../../../board/index.ts';
import { boardFacts } from '../../../planner/index.ts';
import type { LinkMemory } from '../../../verdict/index.ts';
import { PEDALS, boardFrom, waysOf, type Shape, type Way } from '../../boards.ts';
import { remembered, someOf } from '../chance.ts';
import { casesAt, inRows, met, whichOf, whichText } from '../forms.ts';
import { leadRows, planOfLeads } from '../told-boards.ts';
import type { Chance, Drawn, Level } from '../task.ts';

/** Links solved once for all tasks. */
const memory: LinkMemory = new Map();

/** What may stand between boxes, from the least to buy to the most. */
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

const ONE_OUT = 'A foot controller with one OUT is to feed';
const TWO_SENDERS = 'A foot controller and a keyboard are both to play one pedal.';
const facts = (senders: 1 | 2, pedals: number, thru: boolean, alone: boolean): Omit<Wished, 'told'> => ({
  senders,
  pedals,
  thru,
  alone,
});

const WISHED: readonly Wished[] = [
  ...[2, 4].map((pedals) => ({
    told: `${ONE_OUT} ${pedals} pedals. None of them has a THRU.`,
    ...facts(1, pedals, false, false),
  })),
  { told: `${TWO_SENDERS} Both may play at once.`, ...facts(2, 1, true, false) },
  {
    told: `${ONE_OUT} two pedals. Both have a THRU, and both are always on.`,
    ...facts(1, 2, true, false),
  },
  { told: `${TWO_SENDERS} They are never used at the same time.`, ...facts(2, 1, true, false) },
  {
    told: `${ONE_OUT} three pedals. All have a THRU, but any one of them may be switched off, and the others must play on.`,
    ...facts(1, 3, true, true),
  },
  {
    told: `${ONE_OUT} two pedals. Both have a THRU, but either may be switched off, and the other must play on.`,
    ...facts(1, 2, true, true),
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

const SAID_TO_BETWEEN = {
  'joins by wire if one is quiet':
    'An output at rest still holds its lines. A box has to read both and let them take turns.',
  'splits by wire':
    'What each input then gets depends on parts that nobody has seen. One output feeds one input.',
  'merger for hub':
    'A merger brings several senders together into one. Here one sender feeds several inputs.',
  'hub for merger': 'A hub has one input. Here two senders have to come together.',
  'THRU joins senders': 'A THRU sends on what its own IN hears. It cannot take in a second sender.',
  'a box too many': 'A hub would do it. But these pedals can pass on by themselves, and cost nothing more.',
  'THRU that is not there': 'These pedals have no THRU, and an IN passes nothing on.',
  'THRU of a box that is off': 'A THRU copies only while its own box is on. What comes after it goes silent.',
};

function mistakenBetween(between: Between, { senders, thru }: Wished): keyof typeof SAID_TO_BETWEEN {
  if (between === 'split') return senders > 1 ? 'joins by wire if one is quiet' : 'splits by wire';
  if (between === 'merger') return 'merger for hub';
  if (senders > 1) return between === 'hub' ? 'hub for merger' : 'THRU joins senders';
  if (between === 'hub') return 'a box too many';
  return thru ? 'THRU of a box that is off' : 'THRU that is not there';
}

/** The least that serves a wish. @throws where nothing does. */
const leastFor = remembered((wished: Wished): Between => {
  const found = (Object.keys(BETWEEN) as readonly Between[]).find((between) => serves(between, wished));
  if (found === undefined) throw new Error(`task: nothing serves '${wished.told}'`);
  return found;
});

/** What belongs between boxes. */
export function whichBox(level: Level, chance: Chance): Drawn {
  const wished = chance.turn(casesAt(level, WISHED, [5, WISHED.length]));
  const right = leastFor(wished);
  return {
    ask: `${wished.told} Nobody knows the parts inside. What is the least that is sure to do it?`,
    ...whichText(BETWEEN, right, (one) => met(SAID_TO_BETWEEN, mistakenBetween(one, wished)), chance),
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

const NONE = 'none of them';

const SAID_TO_OUTPUT = {
  'takes a split for none': 'Go through the leads by where they begin. One beginning stands there twice.',
  'THRU passes current':
    'A THRU is an output of its own, with its own current. What comes after it takes nothing from the output before.',
  'all hang on the first output':
    'One lead begins there, and it ends at one box. The other boxes are fed by outputs of their own.',
  'takes a hub for a split': 'Each output of a hub has parts of its own. One lead begins at this one.',
};

/** What it means to take an output that feeds one input for a split, or a split for none. */
function mistakenOutput(output: string): keyof typeof SAID_TO_OUTPUT {
  if (output === NONE) return 'takes a split for none';
  if (output.endsWith('THRU')) return 'THRU passes current';
  return output.startsWith('foot controller') ? 'all hang on the first output' : 'takes a hub for a split';
}

/** Which output feeds two inputs by plain wire. */
export function findSplit(level: Level, chance: Chance): Drawn {
  const [shape, pedals, split] = chance.turn(casesAt(level, HIDING, [4, HIDING.length]));
  const whole = waysOf(shape, someOf(PEDALS, pedals, chance));
  const ways = chance.shuffled(split ? withSplit(whole, chance) : whole);
  const found = checkBoard(planOfLeads(ways), memory).findings.find(({ kind }) => kind === 'split');
  const outputs = [...new Set(ways.map(([from, jack]) => `${from} ${jack}`))];
  const links = new Set(found?.where.links);
  const at = ways.findIndex((_, place) => links.has(`link ${place + 1}`));
  const right = at < 0 ? NONE : `${ways[at]?.[0] ?? ''} ${ways[at]?.[1] ?? ''}`;
  const others = chance.shuffled(outputs);
  const asked = [...new Set(right === NONE ? others : [right, ...others])].slice(0, 4);
  return {
    ask: 'Which output of this board feeds two inputs by plain wire?',
    shows: inRows(leadRows(ways)),
    ...whichOf(
      [...asked, NONE],
      right,
      (one) => one,
      (one) => met(SAID_TO_OUTPUT, mistakenOutput(one)),
      chance,
    ),
    hints: [
      'A split is one output with two leads.',
      'Go through the leads, and look only at where each begins.',
      'Two outputs of a hub are two; so are an OUT and a THRU.',
    ],
    steps: [
      `The leads begin at: ${ways.map(([from, jack]) => `${from} ${jack}`).join('; ')}.`,
      right === NONE ? 'Each beginning stands there once: none of them.' : `Twice stands: ${right}.`,
    ],
  };
}
