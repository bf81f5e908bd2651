/** The outcomes and notes of a link, each in words: the one table that every view asks. */

/** How good an outcome is, for the colour beside its word and icon. */
export type Grade = 'good' | 'doubtful' | 'bad';

/** Label, meaning and grade of an outcome. */
interface OutcomeWords {
  readonly label: string;
  readonly means: string;
  readonly grade: Grade;
}

/** Every outcome, from best to worst; one that could not be solved is worse than any that was. */
export const OUTCOMES = [
  'flows',
  'weak',
  'starved',
  'unclear',
  'inverted',
  'always-on',
  'backwards',
  'no-path',
  'unsolved',
] as const;

/** What a link does. */
export type Outcome = (typeof OUTCOMES)[number];

const OUTCOME_WORDS: Readonly<Record<Outcome, OutcomeWords>> = {
  flows: {
    label: 'Works',
    means: 'off at rest and on while a 0 is sent, at typical values and with every part at its worst',
    grade: 'good',
  },
  weak: {
    label: 'Marginal',
    means: 'works at typical values, not with every part at its worst',
    grade: 'doubtful',
  },
  starved: {
    label: 'Too little current',
    means: 'current flows the right way while a 0 is sent, too little to switch the receiver',
    grade: 'bad',
  },
  unclear: {
    label: 'Between high and low',
    means: 'the input sees neither a high nor a low',
    grade: 'doubtful',
  },
  inverted: { label: 'Upside down', means: 'on at rest, off while a 0 is sent', grade: 'bad' },
  'always-on': { label: 'Always on', means: 'on at rest as well as while a 0 is sent', grade: 'bad' },
  backwards: {
    label: 'Reversed',
    means: 'current flows the wrong way while a 0 is sent, through the protection diode',
    grade: 'bad',
  },
  'no-path': { label: 'No path', means: 'almost no current reaches the receiver', grade: 'bad' },
  unsolved: { label: 'Not solved', means: 'no solution of the circuit was found', grade: 'bad' },
};

/** A part over its rating outranks every outcome. */
const DO_NOT_CONNECT: OutcomeWords = {
  label: 'Do not connect',
  means: 'a part carries more than it is rated for',
  grade: 'bad',
};

/** What every view shows of a link: what it does, and in words what in it is over its rating. */
export interface LinkOutcome {
  readonly outcome: Outcome;
  readonly danger: string | undefined;
}

/** The word, meaning and grade of a link: a part over its rating comes first, whatever the outcome. */
export function linkWords({ outcome, danger }: LinkOutcome): OutcomeWords {
  return danger === undefined ? OUTCOME_WORDS[outcome] : DO_NOT_CONNECT;
}

/** Whether a link works, at typical values at least, and harms nothing. */
export function works({ outcome, danger }: LinkOutcome): boolean {
  return danger === undefined && (outcome === 'flows' || outcome === 'weak');
}

const NOTE_LABELS = {
  'over-rating': 'a part over its rating',
  'foreign-supply': 'a foreign supply on a contact',
  'source-shorted': 'source line shorted',
  'stage-shorted': 'output stage shorted',
  'depends-on-grounds': 'depends on how grounds are joined',
  'grounds-joined': 'grounds joined by this lead',
  'shield-open': 'shield not connected',
  'may-stay-on': 'may stay on at rest',
  split: 'more than one input on an output',
  merged: 'more than one output on an input',
  'too-long': 'longer than the standard',
  'plug-does-not-fit': 'plug does not fit',
  'crossed-inside': 'a jack wired otherwise inside',
  'spare-pins': 'spare pins carried',
  'pin-2-on-shell': 'pin 2 on the shell',
  'pin-2-tied': 'pin 2 tied at the input',
  'round-the-loop': 'more round the loop than the standard draws',
  'other-resistor': "a resistor of another value than the standard's",
  'other-supply': "a supply outside the standard's",
  practice: 'practice, not a standard',
} as const;

/** What a note can be about. */
export type NoteKind = keyof typeof NOTE_LABELS;

/** Every kind of note, the gravest first. */
export const NOTES = Object.keys(NOTE_LABELS) as readonly NoteKind[];

/** A note beside an outcome; `detail` says in words what and where. */
export interface Note {
  readonly kind: NoteKind;
  readonly detail: string;
}

/** An outcome in words. */
export function outcomeWords(outcome: Outcome): OutcomeWords {
  return OUTCOME_WORDS[outcome];
}

/** A note's label in words. */
export function noteLabel(kind: NoteKind): string {
  return NOTE_LABELS[kind];
}

/** The worse of two outcomes. */
export function worse(a: Outcome, b: Outcome): Outcome {
  return OUTCOMES.indexOf(a) >= OUTCOMES.indexOf(b) ? a : b;
}
