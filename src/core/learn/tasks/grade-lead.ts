/** A lead as an answer: it is solved, never held against one right lead. A wrong one is named by what it does. */
import { checkLink, lineByLine, linkFor, wiredContacts, works } from '../../verdict/index.ts';
import type { LinkVerdict, Outcome } from '../../verdict/index.ts';
import { lineAt, styleEntry } from '../../wiring/index.ts';
import type { Conductor, Jack, Line } from '../../wiring/index.ts';
import { NO_LEAD, answerOfLead, conductorsOf } from './answers.ts';
import { remembered } from './chance.ts';
import { canServe } from './pairs.ts';
import type { Grading, Slip } from './task.ts';

/** What is said to each mistake in a lead, before what the lead does. */
const SAID = {
  'too little current':
    'The way is whole, but too little current gets through. Look at what else is joined to it.',
  'between high and low':
    'The input sees neither a high nor a low. Ask whether it looks for a current or for a voltage.',
  'always on': 'The receiver never goes off: one of its lines goes to a contact that never changes.',
  'pair swapped':
    'Current comes in where it should go out. The pair is swapped: source and sink have changed places.',
  'no path': 'Follow the loop with a finger, out and back. Somewhere it ends.',
  'not solved': 'This wiring has no solution. Start again from the three lines.',
  harm: 'This may damage a device: a part carries more than it can bear.',
  'gave up': 'There is a lead that works. Write down what each contact carries, then join like to like.',
  'no way back': 'Current has a way out and no way back. Which contact is the sink line on?',
  'no way out': 'There is a way back, but nothing feeds it. Which contact is the source line on?',
};

/** The same of a pair that is swapped where the receiver looks at a level. */
const ON_AT_REST =
  'The receiver is on when it should rest. Source has to meet source, and sink has to meet sink.';

type Mistake = keyof typeof SAID;
/** The mistake in a wrong lead, by what it does. */
const BY_OUTCOME: Readonly<Record<Exclude<Outcome, 'flows' | 'weak'>, Mistake>> = {
  starved: 'too little current',
  unclear: 'between high and low',
  inverted: 'pair swapped',
  'always-on': 'always on',
  backwards: 'pair swapped',
  'no-path': 'no path',
  unsolved: 'not solved',
};

/** What is said to each mistake in a lead, by its name. */
export const SAID_TO_LEADS: ReadonlyMap<string, string> = new Map(Object.entries(SAID));

/** Whether both jacks have this line, and no conductor reaches it at either end. */
function leftOut(line: Line, conductors: readonly Conductor[], output: Jack, input: Jack): boolean {
  const [out, into] = [output, input].map(({ style }) => styleEntry(style).lines[line]);
  const needed = out !== undefined && into !== undefined;
  return needed && !conductors.some(({ from, to }) => from === out || to === into);
}

function mistakeIn(
  verdict: LinkVerdict,
  conductors: readonly Conductor[],
  output: Jack,
  input: Jack,
): Mistake {
  if (verdict.danger !== undefined) return 'harm';
  if (leftOut('sink', conductors, output, input)) return 'no way back';
  if (leftOut('source', conductors, output, input)) return 'no way out';
  const { outcome } = verdict;
  return outcome === 'flows' || outcome === 'weak' ? 'harm' : BY_OUTCOME[outcome];
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
  if (answer === NO_LEAD && can)
    return { right: false, readable: true, mistake: 'gave up', sentence: SAID['gave up'] };
  if (answer === NO_LEAD)
    return {
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
  const mistake = mistakeIn(verdict, conductors, output, input);
  const isUp = mistake === 'pair swapped' && verdict.outcome === 'inverted';
  const says = isUp ? ON_AT_REST : SAID[mistake];
  const none = can ? '' : ' Ask yourself whether any plain lead can.';
  return { right: false, readable: true, mistake, sentence: `${says} ${verdict.sentence}${none}` };
}

/** Wrong leads that people make between two jacks, each with the mistake that solving it finds. */
export const wrongLeads = remembered((output: Jack, input: Jack): readonly Slip[] => {
  const whole = lineByLine(output, input);
  const lineOf = ({ from, to }: Conductor): Line | undefined => {
    const line = lineAt(output.style, from);
    return line === lineAt(input.style, to) ? line : undefined;
  };
  const without = (line: Line): readonly Conductor[] => whole.filter((one) => lineOf(one) !== line);
  const pair = whole.filter((one) => lineOf(one) === 'source' || lineOf(one) === 'sink');
  const swapped = whole.map((one) => {
    const other = pair.find((two) => two !== one);
    return pair.includes(one) && other ? { from: one.from, to: other.to } : one;
  });
  const ins = wiredContacts(input);
  const like = wiredContacts(output).flatMap((from) => (ins.includes(from) ? [{ from, to: from }] : []));
  const leads = [swapped, without('sink'), without('source'), like].filter(({ length }) => length > 0);
  return [...new Set([NO_LEAD, ...leads.map(answerOfLead)])].flatMap((answer) => {
    const { right, mistake, sentence } = gradeLead(answer, output, input);
    return right || mistake === undefined ? [] : [{ name: mistake, answer, sentence }];
  });
});
