/** Tasks on one lead between two jacks: to lay it, to say what it does, to find what is missing. All are solved. */
import { checkLink, lineByLine, linkFor, linkWords } from '../../../verdict/index.ts';
import { contactWords, lineAt, makeJack, styleEntry, wires } from '../../../wiring/index.ts';
import type { Conductor, Connector, Jack, Style } from '../../../wiring/index.ts';
import { NO_LEAD, answerOfLead } from '../answers.ts';
import { oneOf } from '../forms.ts';
import { gradeLead, wrongLeads } from '../grade-lead.ts';
import { canServe, sayJack, type Pair } from '../pairs.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';

const LAID_STYLES: readonly (readonly [Connector, Style])[] = [
  ['din5', 'din'],
  ['trs-3.5', 'type-a'],
  ['trs-3.5', 'type-b'],
  ['trs-6.35', 'ring-signal'],
  ['trs-6.35', 'tip-signal'],
];

/** Pairs to lay a lead between; those that no plain lead can serve come at level 3 alone. */
const PAIRS: readonly Pair[] = LAID_STYLES.flatMap(([outConnector, out]) =>
  LAID_STYLES.map(([inConnector, into]) => ({
    output: makeJack('out', outConnector, out),
    input: makeJack('in', inConnector, into),
  })),
);

function layLead(level: Level, chance: Chance): Drawn {
  const loop = PAIRS.filter(
    ({ output, input }) =>
      styleEntry(output.style).family === 'loop' && styleEntry(input.style).family === 'loop',
  );
  const pair = chance.turn(level === 3 ? PAIRS : loop);
  const { output, input } = pair;
  const can = canServe(pair);
  const whole = lineByLine(output, input);
  const first = whole[0];
  return {
    ask: `From ${sayJack(output)}, out, to ${sayJack(input)}, in. Wire a lead that works${level === 3 ? ', or say that no plain lead can' : ''}.`,
    form: { form: 'lead', output, input },
    right: can ? answerOfLead(whole) : NO_LEAD,
    slips: wrongLeads(output, input),
    hints: [
      'Source has to meet source, sink has to meet sink, shield has to meet shield.',
      first
        ? `Begin so: ${contactWords(first.from)} of the sender goes to ${contactWords(first.to)} of the listener.`
        : 'Ask what the listener needs that the sender has.',
      can
        ? 'Write the line beside each contact of both jacks, then join line by line.'
        : 'An isolated input needs a source line. Does this sender have one?',
    ],
    steps: can
      ? [
          `The sender: ${sayAllLines(output)}. The listener: ${sayAllLines(input)}.`,
          `Line by line: ${whole.map(({ from, to }) => `${contactWords(from)} to ${contactWords(to)}`).join(', ')}.`,
        ]
      : [
          `The sender: ${sayAllLines(output)}. The listener: ${sayAllLines(input)}.`,
          gradeLead(NO_LEAD, output, input).sentence,
        ],
  };
}

function sayAllLines({ style }: Jack): string {
  return (['source', 'sink', 'shield'] as const)
    .flatMap((line) => {
      const contact = styleEntry(style).lines[line];
      return contact === undefined ? [] : [`${line} on ${contactWords(contact)}`];
    })
    .join(', ');
}

/** Wirings that people make between two jacks: the right one, the pair swapped, a line left out, like to like. */
function wiringsOf({ output, input }: Pair): readonly (readonly Conductor[])[] {
  const whole = lineByLine(output, input);
  const wrong = wrongLeads(output, input).flatMap(({ answer }) =>
    answer === NO_LEAD ? [] : [wires(...answer.split(' '))],
  );
  return [whole, ...wrong];
}

const LINES_ASKED = ['source', 'sink', 'shield', 'none'] as const;
const OUTCOMES_ASKED = ['flows', 'backwards', 'no-path', 'inverted', 'always-on'] as const;

function sayOutcome(level: Level, chance: Chance): Drawn {
  const pairs = PAIRS.filter(
    (pair) => (level === 3 || styleEntry(pair.input.style).family === 'loop') && canServe(pair),
  );
  const { output, input } = chance.turn(pairs);
  const conductors = chance.pick(
    wiringsOf({ output, input }).filter((one) => {
      const { danger, outcome } = checkLink(linkFor(output, input, one), 'outcome');
      return danger === undefined && OUTCOMES_ASKED.some((asked) => asked === outcome);
    }),
  );
  const verdict = checkLink(linkFor(output, input, conductors));
  return {
    ask: `From ${sayJack(output)}, out, to ${sayJack(input)}, in, through this lead. What happens?`,
    shows: { shows: 'lead', output, input, conductors },
    ...oneOf(
      OUTCOMES_ASKED.map((outcome) => {
        const { label, means } = linkWords({ outcome, danger: undefined });
        const text = `${label}: ${means}`;
        return outcome === verdict.outcome
          ? { text, right: true }
          : {
              text,
              slip: `says ${label}`,
              says: 'Write the line beside each contact, and follow the current from the source, out and back.',
            };
      }),
      chance,
    ),
    hints: [
      'Write the line beside each contact of both jacks.',
      'Follow the source line from the sender: where does it arrive?',
      'Then follow the current back to the sink of the sender.',
    ],
    steps: [`The sender: ${sayAllLines(output)}. The listener: ${sayAllLines(input)}.`, verdict.sentence],
  };
}

function missingLine(level: Level, chance: Chance): Drawn {
  const pairs = PAIRS.filter(
    (pair) =>
      styleEntry(pair.output.style).family === 'loop' &&
      styleEntry(pair.input.style).family === 'loop' &&
      canServe(pair),
  );
  const cases = pairs.flatMap((pair) =>
    LINES_ASKED.filter((line) => level >= 2 || line !== 'none').map((line) => ({ ...pair, line })),
  );
  const { output, input, line } = chance.turn(cases);
  const conductors = lineByLine(output, input).filter(({ from }) => lineAt(output.style, from) !== line);
  const choices = {
    source: 'The source line',
    sink: 'The sink line',
    shield: 'The shield',
    none: 'None: all three lines are joined',
  } as const;
  return {
    ask: `From ${sayJack(output)}, out, to ${sayJack(input)}, in. Which line is missing in this lead?`,
    shows: { shows: 'lead', output, input, conductors },
    ...oneOf(
      (['source', 'sink', 'shield', 'none'] as const).map((one) =>
        one === line
          ? { text: choices[one], right: true }
          : {
              text: choices[one],
              slip: `says ${one}`,
              says: 'Write the line beside each contact of the sender. Which one has no conductor?',
            },
      ),
      chance,
    ),
    hints: [
      'There are three lines: source, sink and shield.',
      `The sender has them so: ${sayAllLines(output)}.`,
      'Tick them off, conductor by conductor.',
    ],
    steps: [
      `The sender: ${sayAllLines(output)}.`,
      `Joined: ${conductors.map(({ from, to }) => `${contactWords(from)} to ${contactWords(to)}`).join(', ')}. ${choices[line]}.`,
    ],
  };
}

/** The tasks on one lead. */
export const LAY_TASKS: readonly TaskKind[] = [
  { kind: 'lay-lead', title: 'Lay a lead', draw: layLead },
  { kind: 'say-outcome', title: 'What does it do?', draw: sayOutcome },
  { kind: 'missing-line', title: 'Which line is missing?', draw: missingLine },
];
