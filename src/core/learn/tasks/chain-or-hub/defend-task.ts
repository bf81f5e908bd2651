/** The task to defend a choice in two sentences, held against points that readers tick themselves. Counts are the planner's. */
import { boardFacts } from '../../../planner/index.ts';
import { boardFrom } from '../../boards.ts';
import { mostSilent } from '../../shown.ts';
import { aText } from '../forms.ts';
import type { Chance, Drawn, Level } from '../task.ts';

type Points = Parameters<typeof aText>[0];
type Chosen = 'chain' | 'hub' | 'both';

/** Counts of a board that a text may name; `silent` are the most boxes that go silent with one other. */
function countsOf(layout: Chosen, pedals: number) {
  const facts = boardFacts(boardFrom({ layout, pedals }));
  return { pedals, leads: facts.leads, deepest: facts.deepestLinks, silent: mostSilent(facts) };
}

/** A choice to defend: how it stands, the points in the order of their weight, and a text that holds the first two. */
interface Choice {
  readonly chosen: Chosen;
  readonly told: string;
  readonly choice: string;
  readonly points: Points;
  readonly model: (counts: ReturnType<typeof countsOf>) => string;
}

const point = (text: string, slip: string, says: string): Points[number] => ({
  text,
  wanted: true,
  slip,
  says,
});

const PRICE_ONLY: Points[number] = {
  text: 'The price is the only reason that it gives.',
  wanted: false,
  slip: 'price only',
  says: 'Price alone does not defend a choice. Say what happens when one box is off, or how far the last pedal is.',
};

const CHOICES: readonly Choice[] = [
  {
    chosen: 'chain',
    told: 'have a hardware THRU each, and none is ever switched off alone.',
    choice: 'a chain',
    points: [
      point(
        'It says what it takes: leads and boxes.',
        'no count',
        'Count for the reader: the leads, and no box. A hub would take one lead more, and its own price.',
      ),
      point(
        'It says what happens when one pedal is off, and why that does no harm here.',
        'silence left out',
        'Say who goes silent: all pedals behind the one that is off. Here no pedal is switched off alone.',
      ),
      point(
        'It says how far the last pedal is from the foot controller.',
        'depth left out',
        'Count the links to the last pedal. They have to be within what its input can read.',
      ),
    ],
    model: ({ leads, silent, deepest }) =>
      `A chain takes ${leads} leads and no box, with the last pedal ${deepest} links away. One pedal off silences up to ${silent}, but here none is off alone.`,
  },
  {
    chosen: 'hub',
    told: 'stand on one board, and now one and now another is switched off.',
    choice: 'a hub',
    points: [
      point(
        'It says who goes silent when a pedal is off.',
        'silence left out',
        'That is the strongest reason here: behind a hub a pedal that is off silences no other.',
      ),
      point(
        'It says what it takes more than a chain.',
        'no count',
        'Say the price of it too: a box, and one lead more than a chain takes.',
      ),
      point(
        'It says that all depend on the hub.',
        'calls the hub safe',
        'A hub moves the risk into one box. With it off, no pedal hears anything.',
      ),
    ],
    model: ({ leads, silent }) =>
      `Behind a hub a pedal that is off silences no other; only the hub itself would silence all ${silent}. That is worth a box and one lead more, ${leads} in all.`,
  },
  {
    chosen: 'both',
    told: 'stand in two groups, far from one another. Each has quick inputs and a hardware THRU.',
    choice: 'a hub with two chains behind it',
    points: [
      point(
        'It says how far the last pedal is from the foot controller.',
        'depth left out',
        'Count the links to the last pedal. One long chain would put it further away.',
      ),
      point(
        'It says who goes silent with which box.',
        'silence left out',
        'A pedal that is off silences those behind it in its own chain. With the hub off, all are silent.',
      ),
      point('It counts the leads.', 'no count', 'Count the leads: one for each pedal, and one for the hub.'),
    ],
    model: ({ deepest, leads, silent }) =>
      `Two chains start over at the hub, so the last pedal is ${deepest} links away. It takes ${leads} leads; a pedal silences its own chain at most, the hub all ${silent}.`,
  },
];

/** Points in a rubric besides the one that spoils a text, by level. */
const POINTS = [2, 2, 3, 3] as const;

/** Defend a choice in two sentences. */
export function defendChoice(level: Level, chance: Chance): Drawn {
  const { chosen, told, choice, points, model } = chance.turn(CHOICES);
  const counts = countsOf(chosen, chance.pick(chosen === 'both' ? [4, 5, 6] : [3, 4, 5]));
  const wanted = points.slice(0, POINTS[level]);
  return {
    ask: `${counts.pedals} pedals ${told} You choose ${choice}. Defend that in two sentences. Then look at the points, and tick each one that your text holds.`,
    ...aText([...wanted, PRICE_ONLY], model(counts), chance),
    hints: [
      'A choice is defended by what it does better here, and by what it costs.',
      'Think of three things: leads and boxes, who goes silent, how far the last pedal is.',
      'Put a number into each sentence.',
    ],
    steps: [...wanted.map(({ says }) => says), `One text that holds them: ${model(counts)}`],
  };
}
