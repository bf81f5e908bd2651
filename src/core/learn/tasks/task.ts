/** A task: what is asked, in what form it is answered, the right answer, and the mistakes that are known. Plain data, made by a seed. */
import type { BenchBoard } from '../../faults/index.ts';
import type { LeadFault } from '../../making/index.ts';
import type { Plan } from '../../plan/index.ts';
import type { Evidence, TakenReading, UnderTest } from '../../readings/index.ts';
import type { Conductor, DinView, Jack, Lead } from '../../wiring/index.ts';

/** How much is given: 0 a worked example beside it, 1 all but the last step, 2 nothing, 3 nothing and with traps. */
export const LEVELS = [0, 1, 2, 3] as const;
/** How much is given. */
export type Level = (typeof LEVELS)[number];

/** Which task: its kind, how much is given, and the seed that decides jack, value and fault (0 to `MOST_SEED`). */
export interface TaskId {
  readonly kind: string;
  readonly level: Level;
  readonly seed: number;
}

/** Units of an answer in numbers, each with its size in the first unit of its row. */
export const UNIT_ROWS = [
  { A: 1, mA: 1e-3, µA: 1e-6 },
  { ohm: 1, kohm: 1e3 },
  { s: 1, ms: 1e-3, µs: 1e-6 },
  { V: 1, mV: 1e-3 },
  { m: 1, cm: 1e-2 },
  { links: 1 },
  { leads: 1 },
  { coins: 1 },
  { bytes: 1 },
  { readings: 1 },
] as const satisfies readonly Readonly<Record<string, number>>[];

type KeysOf<T> = T extends unknown ? keyof T : never;
/** The unit of an answer. */
export type Unit = KeysOf<(typeof UNIT_ROWS)[number]>;

/**
 * How a task is answered. The answer is text: the number of a choice ('2'), of several ('0 2', or '-' for none of them), a
 * number with or without its unit ('5.4', '5.4 mA'), the numbers of items in order ('2 0 1'), bytes in hex ('C0 04'), or the
 * conductors of a lead ('4-ring 5-tip', or 'none' where no plain lead can). To a rubric it is the places of the points that the
 * reader's own text holds, and the text: '0 2 | A hub keeps each pedal apart.'; readers mark it themselves.
 */
export type Form =
  | { readonly form: 'choice'; readonly options: readonly string[] }
  | { readonly form: 'several'; readonly options: readonly string[] }
  | { readonly form: 'number'; readonly unit: Unit; readonly share: number }
  | { readonly form: 'order'; readonly items: readonly string[] }
  | { readonly form: 'bytes' }
  | { readonly form: 'rubric'; readonly points: readonly string[] }
  | { readonly form: 'lead'; readonly output: Jack; readonly input: Jack };

/** A known mistake: the answer that it gives here, and what is said to it. */
export interface Slip {
  readonly name: string;
  readonly answer: string;
  readonly sentence: string;
}

/**
 * A connector as it is drawn. `labels` stand on its contacts, from left to right on a DIN face and from the tip on a phone plug; ''
 * leaves a contact bare. Where `untold` is set, neither the drawing nor its words say which side it is.
 */
export interface ShownFace extends DinView {
  readonly labels: readonly string[];
  readonly name: string;
  readonly untold?: true;
}

/** What a task shows beside its question. */
export type Shows =
  | {
      readonly shows: 'lead';
      readonly output: Jack;
      readonly input: Jack;
      readonly conductors: readonly Conductor[];
    }
  | { readonly shows: 'faces'; readonly faces: readonly ShownFace[] }
  | { readonly shows: 'bits'; readonly levels: readonly boolean[] }
  | { readonly shows: 'rows'; readonly rows: readonly (readonly [what: string, value: string])[] };

/**
 * What lies on a tool of the workbook where the task is done there: the whole of it, with what is asked. The tool shows what a
 * reader could see who stood before it.
 */
export type Material =
  /** A lead as it was planned, and the faults that it was made with. */
  | { readonly on: 'lead test'; readonly lead: Lead; readonly faults: readonly LeadFault[] }
  /** A board with a fault of this name, and the checks that were made, by name. */
  | {
      readonly on: 'fault page';
      readonly board: BenchBoard;
      readonly fault: string;
      readonly made: readonly string[];
    }
  /** A jack, a lead or a link that two probes can be held to. */
  | { readonly on: 'meter'; readonly under: UnderTest }
  /** What is known of a jack beforehand, and readings taken on it. */
  | { readonly on: 'finder'; readonly evidence: Evidence; readonly taken: readonly TakenReading[] }
  /** A board with its leads; where the leads are what is asked for, one without any, and as it is once they are there. */
  | { readonly on: 'board'; readonly plan: Plan; readonly solved?: Plan };

/** What a kind draws from a seed. */
export interface Drawn {
  readonly ask: string;
  readonly shows?: Shows;
  readonly material?: Material;
  readonly form: Form;
  /** An answer that is right. */
  readonly right: string;
  readonly slips: readonly Slip[];
  /** The principle; where to begin; the next step. */
  readonly hints: readonly [string, string, string];
  /** What can hurt where this is done for real. */
  readonly caution?: string;
  /** The way to the right answer, step by step; the last step holds the answer. */
  readonly steps: readonly string[];
}

/** A task, whole. */
export interface Task extends Drawn {
  readonly id: TaskId;
  /** Name of the lesson that it belongs to, as in the lesson's address. */
  readonly lesson: string;
  /** What the kind is called. */
  readonly title: string;
  /** A worked example of the same kind with other values, at level 0 only. */
  readonly example?: Drawn;
}

/** What is said to an answer. A known mistake is named; a lead may be right and still have something worth saying. */
export interface Grading {
  readonly right: boolean;
  /** Whether the answer could be read at all; one that cannot is no attempt. */
  readonly readable: boolean;
  readonly mistake?: string;
  readonly sentence: string;
  readonly alsoNote?: string;
  /** True where the reader marked the answer: it is counted apart. */
  readonly selfMarked?: true;
}

/** A kind of task. `draw` is pure: the same level and chance give the same task. */
export interface TaskKind {
  readonly kind: string;
  readonly title: string;
  readonly draw: (level: Level, chance: Chance) => Drawn;
  /** True where readers mark their own answers, against a rubric. */
  readonly selfMarked?: boolean;
}

/** What decides a task, all of it from the seed. */
export interface Chance {
  /** One of a list by turns: two seeds in a row never give the same. */
  readonly turn: <T>(list: readonly T[]) => T;
  readonly pick: <T>(list: readonly T[]) => T;
  readonly shuffled: <T>(list: readonly T[]) => readonly T[];
}
