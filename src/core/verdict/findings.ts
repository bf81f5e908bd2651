/** What is known of a link, the more the deeper it was looked into. */
import type { Grounding, Line, Link, Part } from '../wiring/index.ts';
import type { InputVerdict } from './judge.ts';
import type { LinkOutcome, Note, Outcome } from './outcomes.ts';
import type { Reach } from './reach.ts';
import type { StateReading } from './readings.ts';

/** The outcome of a link. Amperes and volts are those of `grounding`, the worse of the two ways grounds can be joined. */
export interface Judgement extends LinkOutcome {
  /** The link as it was judged: where a part is not known, with the usual parts that leave the least. */
  readonly link: Link;
  /** What comes of each usual part, where a part is not known; else empty. */
  readonly byPart: readonly { readonly part: Part; readonly outcome: Outcome }[];
  readonly grounding: Grounding;
  readonly byGrounding: Readonly<Record<Grounding, Outcome>>;
  readonly inputs: readonly InputVerdict[];
  /** Number of the input that decides the outcome. */
  readonly decides: number;
  /** What has no solution, in words, where the outcome is 'unsolved'. */
  readonly unsolved: string | undefined;
}

/** The outcome and every note that applies. */
export interface NotedJudgement extends Judgement {
  readonly notes: readonly Note[];
}

/** A link solved, judged and read in full. */
export interface Findings extends NotedJudgement {
  readonly readings: Readonly<Record<'idle' | 'active', StateReading>>;
  readonly reach: readonly Reach[];
  /** The line each conductor carries, by branch, lead and conductor. */
  readonly lines: readonly (readonly (readonly (Line | 'spare')[])[])[];
}

/** Judgements by how deep and by the link's own values; a page keeps one, and gives it to every check. */
export type LinkMemory = Map<string, Judgement>;

/** The judge as the advice asks it: the outcome of a link alone. */
export type Judge = (link: Link, depth: 'outcome', memory?: LinkMemory) => Judgement;
