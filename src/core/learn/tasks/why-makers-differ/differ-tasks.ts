/** Tasks on why makers differ: types, straight and crossed leads, and leads to lay. What works is solved. */
import { checkLink, linkFor, works } from '../../../verdict/index.ts';
import { STRAIGHT_TRS, makeJack, makeLead, styleEntry, wires } from '../../../wiring/index.ts';
import type { Conductor, Line, Style } from '../../../wiring/index.ts';
import { inRows, whichOf, whichText } from '../forms.ts';
import { layLead, missingLine, sayOutcome } from './lay-tasks.ts';
import { sayPair, type Pair } from '../pairs.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';

const CROSSED_TRS = wires('tip-ring', 'ring-tip', 'sleeve-sleeve');

/** Words that tell a type without naming it, by the contact that each line is on. */
const PHRASINGS: readonly ((lines: Readonly<Partial<Record<Line, string>>>) => string)[] = [
  ({ source, sink, shield }) =>
    [source && `${source} = pin 4`, sink && `${sink} = pin 5`, shield && `${shield} = pin 2`]
      .filter(Boolean)
      .join(', '),
  ({ source, sink, shield }) =>
    [shield && `${shield}: pin 2`, sink && `${sink}: pin 5`, source && `${source}: pin 4`]
      .filter(Boolean)
      .join('. '),
  ({ source, sink }) =>
    source
      ? `Current leaves on the ${source} and returns on the ${sink ?? ''}`
      : `The data is on the ${sink ?? ''}. Nothing else is used but the ground`,
];

/** Types of a phone jack with three contacts, and what they are called in a list of answers. */
const TYPES: readonly Style[] = ['type-a', 'type-b', 'ring-signal', 'tip-signal'];

function sayLines(style: Style): string {
  const { source, sink } = styleEntry(style).lines;
  return source
    ? `${styleEntry(style).label}: source on the ${source}, sink on the ${sink ?? ''}`
    : styleEntry(style).label;
}

/** What a jack has on its contacts, in a sentence. */
function sayHas(who: string, style: Style): string {
  const { label, lines } = styleEntry(style);
  if (style === 'both-ways') return `${who} ${label}.`;
  return `${who} ${lines.source ? 'is' : 'has'} ${sayLines(style)}.`;
}

function phraseType(level: Level, chance: Chance): Drawn {
  const style = chance.turn(level >= 2 ? TYPES : TYPES.slice(0, 3));
  const words = chance.pick(PHRASINGS)(styleEntry(style).lines);
  return {
    ask: `A manual says of its output: '${words}'. Which type is it?`,
    ...whichOf(
      TYPES,
      style,
      sayLines,
      (one) => [`takes it for ${styleEntry(one).label}`, saidToType(one, style)],
      chance,
    ),
    hints: [
      'Write the line beside each contact.',
      'Pin 4 is the source, pin 5 the sink, pin 2 the shield.',
      'Look only at the tip and the ring.',
    ],
    steps: [
      `Source, sink and shield are on: ${(['source', 'sink', 'shield'] as const).map((line) => styleEntry(style).lines[line] ?? 'nothing').join(', ')}.`,
      `It is ${sayLines(style)}.`,
    ],
  };
}

function saidToType(said: Style, right: Style): string {
  const pair = [said, right].every((one) => one === 'type-a' || one === 'type-b');
  if (pair) return 'These two differ only in which of the pair is on the tip. Pin 4 is the source.';
  return styleEntry(right).lines.source === undefined
    ? 'Nothing is said of a source line: this output sends against ground.'
    : 'This output has a source line and a sink line: it is a loop.';
}

/** Every pair of jacks with three contacts on both sides. */
const TRS_PAIRS: readonly Pair[] = TYPES.flatMap((out) =>
  [...TYPES, 'both-ways' as const].map((into) => ({
    output: makeJack('out', 'trs-3.5', out),
    input: makeJack('in', 'trs-3.5', into),
  })),
);

const worksWith = ({ output, input }: Pair, conductors: readonly Conductor[]): boolean =>
  works(checkLink(linkFor(output, input, conductors), 'outcome'));

const LEAD_CHOICES = {
  straight: 'A straight lead: each contact to its like',
  crossed: 'A lead with tip and ring crossed',
  either: 'Either of the two',
  neither: 'Neither of the two',
} as const;

const SAID_TO_LEAD = {
  straight:
    'Write the line beside each contact of both jacks. A straight lead joins like contacts, not like lines.',
  crossed: 'Crossing swaps the pair. Do these two jacks need that?',
  either: 'Only an input that takes both directions does not mind. Is this one?',
  neither: 'Try both with a finger: is there one where source meets source and sink meets sink?',
};

function straightOrCrossed(level: Level, chance: Chance): Drawn {
  const loop = TRS_PAIRS.filter(({ output, input }) =>
    [output, input].every(({ style }) => style === 'type-a' || style === 'type-b' || style === 'both-ways'),
  );
  const pair = chance.turn(level === 3 ? TRS_PAIRS : loop);
  const straight = worksWith(pair, STRAIGHT_TRS);
  const crossed = worksWith(pair, CROSSED_TRS);
  const right = straight ? (crossed ? 'either' : 'straight') : crossed ? 'crossed' : 'neither';
  return {
    ask: `${sayPair(pair)} Which lead works between them?`,
    ...whichText(LEAD_CHOICES, right, (one) => [`says ${one}`, SAID_TO_LEAD[one]], chance),
    hints: [
      'Write the line beside each contact of both jacks.',
      'Source has to meet source, and sink has to meet sink.',
      'Alike on both sides: straight. Tip and ring changed: crossed.',
    ],
    steps: [
      `${sayHas('The sender', pair.output.style)} ${sayHas('The listener', pair.input.style)}`,
      `Solved, a straight lead ${straight ? 'works' : 'does not work'}, a crossed one ${crossed ? 'works' : 'does not'}. ${LEAD_CHOICES[right]}.`,
    ],
  };
}

/** How many leads stand in a row in a task on crossings, by level. */
const IN_A_ROW = [2, 2, 3, 4] as const;

const ARRIVES = { yes: 'Yes', no: 'No: the pair arrives swapped' } as const;
const SAID_TO_COUNT = 'Even crossings are straight, odd ones crossed. Then ask what the two jacks need.';

function countCrossings(level: Level, chance: Chance): Drawn {
  const pair = chance.turn(
    TRS_PAIRS.filter(({ output, input }) =>
      [output, input].every(({ style }) => style === 'type-a' || style === 'type-b'),
    ),
  );
  const crossed = Array.from({ length: IN_A_ROW[level] }, () => chance.pick([true, false]));
  // All but the last end in a jack that takes the next one's plug: two plugs join nothing.
  const leads = crossed.map((one, at) =>
    makeLead('trs-3.5', 'trs-3.5', one ? CROSSED_TRS : STRAIGHT_TRS, {
      to: { connector: 'trs-3.5', form: at === crossed.length - 1 ? 'plug' : 'jack' },
    }),
  );
  const right = works(checkLink({ output: pair.output, branches: [{ input: pair.input, leads }] }, 'outcome'))
    ? 'yes'
    : 'no';
  const count = crossed.filter(Boolean).length;
  return {
    ask: `${sayPair(pair)} Between them are a lead and extension leads, all in a row. Do notes get through?`,
    shows: inRows(crossed.map((one, at) => [`lead ${at + 1}`, one ? 'tip and ring crossed' : 'straight'])),
    ...whichText(ARRIVES, right, (one) => [`says ${one}`, SAID_TO_COUNT], chance),
    hints: [
      'Two crossings undo one another.',
      'Count the crossed leads.',
      'Even is straight, odd is crossed. Then compare the two jacks.',
    ],
    steps: [
      `${count} of ${crossed.length} are crossed: together they are ${count % 2 === 0 ? 'straight' : 'crossed'}.`,
      `The two jacks are ${pair.output.style === pair.input.style ? 'alike' : 'of different types'}. ${ARRIVES[right]}.`,
    ],
  };
}

/** The tasks of the lesson. */
export const DIFFER_TASKS: readonly TaskKind[] = [
  { kind: 'phrase-type', title: 'Which type is it?', draw: phraseType },
  { kind: 'straight-or-crossed', title: 'Straight or crossed?', draw: straightOrCrossed },
  { kind: 'lay-lead', title: 'Lay a lead', draw: layLead },
  { kind: 'say-outcome', title: 'What does it do?', draw: sayOutcome },
  { kind: 'missing-line', title: 'Which line is missing?', draw: missingLine },
  { kind: 'count-crossings', title: 'Leads in a row', draw: countCrossings },
];
