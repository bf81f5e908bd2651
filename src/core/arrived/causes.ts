/** The causes that are told apart, and what a candidate for one of them is. */
import type { ReceivedByte, ReceiverOptions, Waveform } from '../signal/index.ts';
import type { Code } from './log.ts';
import type { Odds } from './compare.ts';

/** Every cause, in the order in which equal ones are listed. */
export const CAUSES = [
  'upside down',
  'swapped and lit',
  'slow to release',
  'slow to turn on',
  'clock off',
  'wrong speed',
  'weak',
  'ground missing',
  'two senders',
  'running status',
  'real-time inside',
  'full buffer',
  'program count',
  'channel count',
  'hidden real-time',
  'empty as FF',
] as const;
/** Why what arrived is not what was sent. */
export type Cause = (typeof CAUSES)[number];

interface CandidateBase {
  readonly cause: Cause;
  /** How strong it is, in the unit of its cause: seconds late, fraction of a clock, bits a second, share of pulses; 0 where it has none. */
  readonly amount: number;
}

/** A change of the line that is certain: simulated once for each spacing. */
export interface LineCandidate extends CandidateBase {
  readonly kind: 'line';
  readonly change: (line: Waveform) => Waveform;
  readonly receiver?: ReceiverOptions;
}

/** A reader that misunderstands bytes which arrive well. */
export interface ReaderCandidate extends CandidateBase {
  readonly kind: 'reader';
  readonly understood: (bytes: readonly number[]) => readonly number[];
}

/** A cause that strikes now and then: its odds byte by byte, and one run of it by a seeded chance. */
export interface ChanceCandidate extends CandidateBase {
  readonly kind: 'chance';
  readonly odds: (sent: readonly Code[], marked: boolean) => Odds;
  readonly run: (line: Waveform, sent: readonly number[], chance: () => number) => readonly ReceivedByte[];
}

/** One cause with one strength. */
export type Candidate = LineCandidate | ReaderCandidate | ChanceCandidate;

/** Numbers from one to another by equal steps, both ends included. */
export function steps(from: number, to: number, step: number): readonly number[] {
  return Array.from({ length: Math.floor((to - from) / step + 1e-9) + 1 }, (_, at) => from + at * step);
}
