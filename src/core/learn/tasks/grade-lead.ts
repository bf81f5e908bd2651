/** A lead as an answer: it is solved, never held against one right lead. A wrong one is named by what it does. */
import { checkLink, lineByLine, linkFor, wiredContacts, works } from '../../verdict/index.ts';
import type { LinkVerdict, Outcome } from '../../verdict/index.ts';
import { lineAt, styleEntry } from '../../wiring/index.ts';
import type { Conductor, Jack, Line } from '../../wiring/index.ts';
import { NO_LEAD, answerOfLead, conductorsOf } from './answers.ts';
import { canServe } from './pairs.ts';
import type { Grading, Slip } from './task.ts';

/** What is said to a wrong lead, by what it does. */
const SAID_TO: Readonly<Record<Exclude<Outcome, 'flows' | 'weak'>, readonly [name: string, says: string]>> = {
  starved: [
    'too little current',
    'The way is whole, but too little current gets through. Look at what else is joined to it.',
  ],
  unclear: [
    'between high and low',
    'The input sees neither a high nor a low. Ask whether it looks for a current or for a voltage.',
  ],
  inverted: [
    'pair swapped',
    'The receiver is on when it should rest. Source has to meet source, and sink has to meet sink.',
  ],
  'always-on': [
    'always on',
    'The receiver never goes off: one of its lines goes to a contact that never changes.',
  ],
  backwards: [
    'pair swapped',
    'Current comes in where it should go out. The pair is swapped: source and sink have changed places.',
  ],
  'no-path': ['no path', 'Follow the loop with a finger, out and back. Somewhere it ends.'],
  unsolved: ['not solved', 'This wiring has no solution. Start again from the three lines.'],
};

const HARM = ['harm', 'This may damage a device: a part carries more than it can bear.'] as const;
const GAVE_UP = [
  'gave up',
  'There is a lead that works. Write down what each contact carries, then join like to like.',
] as const;
const NO_WAY_BACK = [
  'no way back',
  'Current has a way out and no way back. Which contact is the sink line on?',
] as const;
const NO_WAY_OUT = [
  'no way out',
  'There is a way back, but nothing feeds it. Which contact is the source line on?',
] as const;

/** What is said to each mistake in a lead, by its name, before what the lead does. */
export const SAID_TO_LEADS: ReadonlyMap<string, string> = new Map([
  ...Object.values(SAID_TO),
  HARM,
  GAVE_UP,
  NO_WAY_BACK,
  NO_WAY_OUT,
]);

/** Whether a conductor joins this line at both jacks. */
function joins(line: Line, { from, to }: Conductor, output: Jack, input: Jack): boolean {
  return lineAt(output.style, from) === line && lineAt(input.style, to) === line;
}

/** Whether a line has no conductor at either end that reaches it. */
function leftOut(line: Line, conductors: readonly Conductor[], output: Jack, input: Jack): boolean {
  const needed =
    styleEntry(output.style).lines[line] !== undefined && styleEntry(input.style).lines[line] !== undefined;
  return (
    needed &&
    !conductors.some(
      ({ from, to }) => lineAt(output.style, from) === line || lineAt(input.style, to) === line,
    )
  );
}

/** The name of the mistake in a wrong lead, and what is said to it. */
function mistakeIn(
  verdict: LinkVerdict,
  conductors: readonly Conductor[],
  output: Jack,
  input: Jack,
): readonly [string, string] {
  if (verdict.danger !== undefined) return HARM;
  if (leftOut('sink', conductors, output, input)) return NO_WAY_BACK;
  if (leftOut('source', conductors, output, input)) return NO_WAY_OUT;
  const { outcome } = verdict;
  return outcome === 'flows' || outcome === 'weak' ? HARM : SAID_TO[outcome];
}

/** What is worth saying of a lead that works. */
function noteOn(
  verdict: LinkVerdict,
  conductors: readonly Conductor[],
  output: Jack,
  input: Jack,
): string | undefined {
  if (leftOut('shield', conductors, output, input))
    return 'It works, but the shield is left out: noise has an easier way in. Join the shield too.';
  if (verdict.outcome === 'weak') return 'It works, with little to spare.';
  if (conductors.some(({ from, to }) => !lineAt(output.style, from) || !lineAt(input.style, to)))
    return 'It works; one conductor sits on a contact that carries nothing.';
  return undefined;
}

/** Judge a lead between two jacks by solving it. `answer` is one that `readAnswer` has read. */
export function gradeLead(answer: string, output: Jack, input: Jack): Grading {
  const can = canServe({ output, input });
  if (answer === NO_LEAD)
    return can
      ? {
          right: false,
          readable: true,
          mistake: GAVE_UP[0],
          sentence: GAVE_UP[1],
        }
      : {
          right: true,
          readable: true,
          sentence: 'No plain lead can: these two need a powered converter, or another jack.',
        };
  const conductors = conductorsOf(answer);
  const verdict = checkLink(linkFor(output, input, conductors));
  if (works(verdict)) {
    const alsoNote = noteOn(verdict, conductors, output, input);
    return { right: true, readable: true, sentence: verdict.sentence, ...(alsoNote ? { alsoNote } : {}) };
  }
  const [mistake, says] = mistakeIn(verdict, conductors, output, input);
  const none = can ? '' : ' Ask yourself whether any plain lead can.';
  return { right: false, readable: true, mistake, sentence: `${says} ${verdict.sentence}${none}` };
}

const wrongBetween = new Map<string, readonly Slip[]>();
/** Wrong leads that people make between two jacks, each with the mistake that solving it finds; found once for each pair. */
export function wrongLeads(output: Jack, input: Jack): readonly Slip[] {
  const key = JSON.stringify([output, input]);
  const found = wrongBetween.get(key) ?? findWrongLeads(output, input);
  wrongBetween.set(key, found);
  return found;
}

function findWrongLeads(output: Jack, input: Jack): readonly Slip[] {
  const whole = lineByLine(output, input);
  const lineOf = (one: Conductor): Line | undefined =>
    (['source', 'sink', 'shield'] as const).find((line) => joins(line, one, output, input));
  const without = (line: Line): readonly Conductor[] => whole.filter((one) => lineOf(one) !== line);
  const pair = whole.filter((one) => lineOf(one) === 'source' || lineOf(one) === 'sink');
  const swapped = whole.map((one) => {
    const other = pair.find((two) => two !== one);
    return pair.includes(one) && other ? { from: one.from, to: other.to } : one;
  });
  const ins = wiredContacts(input);
  const like = wiredContacts(output).flatMap((from) => (ins.includes(from) ? [{ from, to: from }] : []));
  const answers = [
    ...new Set([
      NO_LEAD,
      ...[swapped, without('sink'), without('source'), like]
        .filter((one) => one.length > 0)
        .map(answerOfLead),
    ]),
  ];
  return answers.flatMap((answer) => {
    const { right, mistake, sentence } = gradeLead(answer, output, input);
    return right || mistake === undefined ? [] : [{ name: mistake, answer, sentence }];
  });
}
