/** Tasks on boards that hang in a chain or behind a hub: leads, silence and depth. All is asked of the boards' floors. */
import { hearers } from '../../../board/index.ts';
import { boardFacts } from '../../../planner/index.ts';
import { counted } from '../../say.ts';
import { someOf } from '../chance.ts';
import { EXACT, aNumber, eachOf, inRows } from '../forms.ts';
import { cheapestBoard } from './price-task.ts';
import { defendChoice } from './defend-task.ts';
import { mixedThru } from './thru-task.ts';
import { CONTROLLER, PEDALS, waysOf, type Shape, type Way } from '../../boards.ts';
import { leadRows, planOfLeads } from '../told-boards.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';

/** How a board of a shape is told in words. */
function sayBoard(shape: Shape, pedals: number): string {
  const half = Math.ceil(pedals / 2);
  return {
    chain: `${pedals} pedals in one chain`,
    hub: `a hub that feeds ${pedals} pedals`,
    both: `a hub with two chains behind it, one of ${counted(half, 'pedal')} and one of ${counted(pedals - half, 'pedal')}`,
    'hub behind': `one pedal, and behind its THRU a hub that feeds ${pedals - 1} more`,
    'two hubs': `two hubs, the second behind the first, that feed ${pedals} pedals together`,
  }[shape];
}

const SHAPES: readonly Shape[] = ['chain', 'hub', 'both', 'hub behind', 'two hubs'];
/** Shapes and sizes by turns. */
const sized = (shapes: readonly Shape[], sizes: readonly number[]) =>
  sizes.flatMap((pedals) => shapes.map((shape) => ({ shape, pedals })));

const COUNT_LEADS_SAID = {
  "hub's own lead forgotten": 'A hub has to be fed too. One lead leads to its input.',
  'first lead forgotten':
    'Those are the leads between the pedals. One more leads from the foot controller to the first.',
  'no hub counted': 'Each hub has an input, and one lead leads to it.',
  'foot controller counted': 'The foot controller hears nobody here. Count only the boxes that listen.',
  'chains counted twice': 'A pedal that is fed by another pedal needs no lead from the hub as well.',
};

function countLeads(level: Level, chance: Chance): Drawn {
  const { shape, pedals } = chance.turn(
    level < 2 ? sized(SHAPES.slice(0, 3), [4, 3, 5]) : sized(SHAPES, level === 2 ? [4, 5, 6] : [5, 6, 4]),
  );
  const ways = waysOf(shape, someOf(PEDALS, pedals, chance));
  const { leads, hubs } = boardFacts(planOfLeads(ways));
  const boxes = counted(pedals, 'pedal') + (hubs > 0 ? ` and ${counted(hubs, 'hub')}` : '');
  return {
    ask: `A foot controller, and ${sayBoard(shape, pedals)}. How many leads does that take?`,
    ...aNumber(leads, 'leads', EXACT, COUNT_LEADS_SAID, {
      "hub's own lead forgotten": hubs > 0 && leads - 1,
      'first lead forgotten': hubs === 0 && leads - 1,
      'no hub counted': hubs > 1 && pedals,
      'foot controller counted': leads + 1,
      'chains counted twice': shape === 'both' && leads + pedals - 2,
    }),
    hints: [
      'Each box that listens has one input in use, and one lead leads to it.',
      'So count boxes, and not the ways between them.',
      'Leave out the foot controller, but not a hub.',
    ],
    steps: [`The boxes that listen: ${boxes}.`, `One lead to each: ${counted(leads, 'lead')}.`],
  };
}

/** A board told lead by lead, and the boxes on it that listen. */
function toldBoard(level: Level, chance: Chance, sizes: readonly number[]) {
  const { shape, pedals } = chance.turn(sized(level < 2 ? SHAPES.slice(0, 3) : SHAPES, sizes));
  const ways = waysOf(shape, someOf(PEDALS, pedals, chance));
  return { ways: level < 2 ? ways : chance.shuffled(ways), boxes: ways.map(([, , to]) => to) };
}

/** Boxes on the way to one, itself left out. */
function before(ways: readonly Way[], name: string): readonly string[] {
  const [from] = ways.find(([, , to]) => to === name) ?? [];
  return from === undefined || from === CONTROLLER ? [] : [from, ...before(ways, from)];
}

const SAFE = 'A box that is off copies nothing, and a hub is a box with one supply. Who hears through it?';
const SILENT_SAID = {
  'bypass is off': 'Bypass takes the effect out of the sound. The power stays on, and so does the THRU.',
  'a hub is safe': SAFE,
  'a box that is off still copies': SAFE,
  'only the next one': 'And who hears through those? Follow the leads on to their end.',
  'those before it': 'Those come before it. They hear as they did; look at what comes after it.',
  'the whole board': 'Not all of them hear through this box. Follow the leads that begin at it.',
};

function whoFallsSilent(level: Level, chance: Chance): Drawn {
  const { ways, boxes } = toldBoard(level, chance, [4, 5]);
  const plan = planOfLeads(ways);
  const { silentWithout } = boardFacts(plan);
  const heard = silentWithout.map(({ device }) => device);
  const passing = heard.filter((one) => !one.includes('hub'));
  const bypass = level === 3 && passing.length > 0 && chance.pick([true, false, false]);
  const off = chance.pick(bypass ? passing : level < 2 ? heard : boxes);
  const behind = silentWithout.find(({ device }) => device === off)?.silent ?? [];
  const silent = bypass ? [] : behind;
  const next = ways.filter(([from]) => from === off).map(([, , to]) => to);
  const ahead = before(ways, off);
  return {
    ask: bypass
      ? `'${off}' is in bypass: its effect is off, its power is on. Which of the other boxes hear nothing?`
      : `The power of '${off}' goes off. Which of the other boxes hear nothing now?`,
    shows: inRows(leadRows(ways)),
    material: { on: 'board', plan },
    ...eachOf(
      boxes.filter((one) => one !== off),
      chance,
      {
        text: (one) => one,
        right: (one) => silent.includes(one),
        said: SILENT_SAID,
        ticks: {
          'bypass is off': (one) => behind.includes(one),
          'a hub is safe': off.includes('hub') && (() => false),
          'a box that is off still copies': !off.includes('hub') && (() => false),
          'only the next one': (one) => next.includes(one),
          'those before it': (one) => ahead.includes(one),
          'the whole board': () => true,
        },
      },
    ),
    hints: [
      'A box that is off copies nothing. Whatever hears through it goes silent.',
      `Follow the leads that begin at '${off}', and on from there.`,
      'What comes before it, or from another output, is not touched. Bypass is not off.',
    ],
    steps: [
      behind.length === 0 ? `No lead begins at '${off}'.` : `Through '${off}' hear: ${behind.join(', ')}.`,
      bypass
        ? 'In bypass it still has its power, and copies what it hears: none go silent.'
        : silent.length === 0
          ? 'So none of the others go silent.'
          : `These go silent: ${silent.join(', ')}.`,
    ],
  };
}

const HOW_DEEP_SAID = {
  'a hub is no link': 'A hub has an input, and that shifts edges too: one link leads to it, and one from it.',
  'first link forgotten': 'The lead from the foot controller is a link too.',
  'boxes counted': 'You counted the foot controller. Count the leads on the way, not the boxes.',
  'all leads counted': 'Count only the leads on the way to this one.',
};

function howDeep(level: Level, chance: Chance): Drawn {
  const { ways, boxes } = toldBoard(level, chance, [4, 5, 6]);
  const pedals = boxes.filter((one) => !one.includes('hub'));
  const name = chance.pick(pedals.slice(1));
  const plan = planOfLeads(ways);
  const links = hearers(plan, CONTROLLER).hearings.find(({ device }) => device === name)?.hops ?? 0;
  const way = before(ways, name).toReversed();
  const hubs = way.filter((one) => one.includes('hub')).length;
  return {
    ask: `How many links is '${name}' from the foot controller?`,
    shows: inRows(leadRows(ways)),
    material: { on: 'board', plan },
    ...aNumber(links, 'links', EXACT, HOW_DEEP_SAID, {
      'a hub is no link': hubs > 0 && links - hubs,
      'first link forgotten': hubs === 0 && links - 1,
      'boxes counted': links + 1,
      'all leads counted': ways.length,
    }),
    hints: [
      'A link is one output, one lead and one input.',
      `Go back from '${name}': which lead ends there, and where does it begin?`,
      'Go on until you stand at the foot controller, and count the leads.',
    ],
    steps: [`The way: ${[CONTROLLER, ...way, name].join(', then ')}.`, `That is ${counted(links, 'link')}.`],
  };
}

/** The tasks of the lesson. */
export const HUB_TASKS: readonly TaskKind[] = [
  { kind: 'count-leads', title: 'Count the leads', draw: countLeads },
  { kind: 'who-falls-silent', title: 'Who falls silent?', draw: whoFallsSilent },
  { kind: 'how-deep', title: 'How many links?', draw: howDeep },
  { kind: 'cheapest-board', title: 'The cheapest board', draw: cheapestBoard },
  { kind: 'mixed-thru', title: 'Hardware and software', draw: mixedThru },
  { kind: 'defend-choice', title: 'Defend your choice', draw: defendChoice, selfMarked: true },
];
