/** The outcomes and notes of a link, each in words: the one table that every view asks. */

/** How good an outcome is, for the colour beside its word and icon. */
export type Grade = 'good' | 'doubtful' | 'bad';

/** Label, meaning and grade of an outcome. */
interface OutcomeWords {
  readonly label: string;
  readonly means: string;
  readonly grade: Grade;
}

/** Every outcome, from best to worst. */
export const OUTCOMES = [
  'flows',
  'weak',
  'starved',
  'unclear',
  'inverted',
  'always-on',
  'backwards',
  'no-path',
] as const;

/** What a link does. */
export type Outcome = (typeof OUTCOMES)[number];

const OUTCOME_WORDS: Readonly<Record<Outcome, OutcomeWords>> = {
  flows: {
    label: 'Current flows',
    means: 'off in idle and on in active, at nominal and at every corner of the tolerances',
    grade: 'good',
  },
  weak: {
    label: 'Weak',
    means: 'right at nominal, not at every corner of the tolerances',
    grade: 'doubtful',
  },
  starved: {
    label: 'Starved',
    means: 'current flows the right way in active, too little to switch the receiver',
    grade: 'bad',
  },
  unclear: { label: 'Unclear', means: 'the input sits between low and high', grade: 'doubtful' },
  inverted: { label: 'Inverted', means: 'on in idle, off in active', grade: 'bad' },
  'always-on': { label: 'Always on', means: 'on in both states', grade: 'bad' },
  backwards: {
    label: 'Backwards',
    means: 'current flows the wrong way in active, through the protection diode',
    grade: 'bad',
  },
  'no-path': { label: 'No path', means: 'no current to speak of reaches the receiver', grade: 'bad' },
};

const NOTE_LABELS = {
  'over-rating': 'a part over its rating',
  'source-shorted': 'source line shorted',
  'stage-shorted': 'output stage shorted',
  'depends-on-grounds': 'depends on how grounds are joined',
  'grounds-joined': 'grounds joined by this lead',
  'shield-open': 'shield not connected',
  split: 'more than one input on an output',
  'too-long': 'longer than the standard',
  'plug-does-not-fit': 'plug does not fit',
  'spare-pins': 'spare pins carried',
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
