/** Tasks on one lead between two jacks: to lay it, to say what it does, to find what is missing. All are solved. */
import { checkLink, lineByLine, linkFor, linkWords } from '../../../verdict/index.ts';
import { contactWords, lineAt, makeJack, styleEntry, wires, wiringWords } from '../../../wiring/index.ts';
import type { Conductor, Connector, Jack, Style } from '../../../wiring/index.ts';
import { NO_LEAD, answerOfLead } from '../answers.ts';
import { whichOf, whichText } from '../forms.ts';
import { gradeLead, wrongLeads } from '../grade-lead.ts';
import { canServe, sayPair, type Pair } from '../pairs.ts';
import type { Chance, Drawn, Level } from '../task.ts';

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

const isLoop = (pair: Pair): boolean =>
  [pair.output, pair.input].every(({ style }) => styleEntry(style).family === 'loop');

/** A lead between two jacks. */
export function layLead(level: Level, chance: Chance): Drawn {
  const pair = chance.turn(level === 3 ? PAIRS : PAIRS.filter(isLoop));
  const { output, input } = pair;
  const can = canServe(pair);
  const whole = lineByLine(output, input);
  const first = whole[0];
  return {
    ask: `${sayPair(pair)} Wire a lead that works${level === 3 ? ', or say that no plain lead can' : ''}.`,
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
    steps: [
      sayBoth(pair),
      can ? `Line by line: ${wiringWords(whole)}.` : gradeLead(NO_LEAD, output, input).sentence,
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

const sayBoth = ({ output, input }: Pair): string =>
  `The sender: ${sayAllLines(output)}. The listener: ${sayAllLines(input)}.`;

/** Wirings that people make between two jacks: the right one, the pair swapped, a line left out, like to like. */
function wiringsOf({ output, input }: Pair): readonly (readonly Conductor[])[] {
  const whole = lineByLine(output, input);
  const wrong = wrongLeads(output, input).flatMap(({ answer }) =>
    answer === NO_LEAD ? [] : [wires(...answer.split(' '))],
  );
  return [whole, ...wrong];
}

const OUTCOMES_ASKED = ['flows', 'backwards', 'no-path', 'inverted', 'always-on'] as const;
type Asked = (typeof OUTCOMES_ASKED)[number];
const wordsOf = (outcome: Asked) => linkWords({ outcome, danger: undefined });

/** What a lead does between two jacks. */
export function sayOutcome(level: Level, chance: Chance): Drawn {
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
    ask: `${sayPair({ output, input })} This lead joins them. What happens?`,
    shows: { shows: 'lead', output, input, conductors },
    ...whichOf(
      OUTCOMES_ASKED,
      verdict.outcome as Asked,
      (outcome) => `${wordsOf(outcome).label}: ${wordsOf(outcome).means}`,
      (outcome) => [
        `says ${wordsOf(outcome).label}`,
        'Write the line beside each contact, and follow the current from the source, out and back.',
      ],
      chance,
    ),
    hints: [
      'Write the line beside each contact of both jacks.',
      'Follow the source line from the sender: where does it arrive?',
      'Then follow the current back to the sink of the sender.',
    ],
    steps: [sayBoth({ output, input }), verdict.sentence],
  };
}

const MISSING = {
  source: 'The source line',
  sink: 'The sink line',
  shield: 'The shield',
  none: 'None, all three lines are joined',
} as const;
const LINES_ASKED = Object.keys(MISSING) as readonly (keyof typeof MISSING)[];

/** Which line a lead leaves out. */
export function missingLine(level: Level, chance: Chance): Drawn {
  const cases = PAIRS.filter((pair) => isLoop(pair) && canServe(pair)).flatMap((pair) =>
    LINES_ASKED.slice(0, level >= 2 ? 4 : 3).map((line) => ({ ...pair, line })),
  );
  const { output, input, line } = chance.turn(cases);
  const conductors = lineByLine(output, input).filter(({ from }) => lineAt(output.style, from) !== line);
  return {
    ask: `${sayPair({ output, input })} Which line is missing in this lead?`,
    shows: { shows: 'lead', output, input, conductors },
    ...whichText(
      MISSING,
      line,
      (one) => [
        `says ${one}`,
        'Write the line beside each contact of the sender. Which one has no conductor?',
      ],
      chance,
    ),
    hints: [
      'There are three lines: source, sink and shield.',
      `The sender has them so: ${sayAllLines(output)}.`,
      'Tick them off, conductor by conductor.',
    ],
    steps: [
      `The sender: ${sayAllLines(output)}.`,
      `Joined: ${wiringWords(conductors)}. Missing: ${MISSING[line].toLowerCase()}.`,
    ],
  };
}
