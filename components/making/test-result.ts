/** What the test of a lead has come to: on the screen, and on the paper that is printed after it. */
import {
  agrees,
  fullRows,
  otherContact,
  proofRows,
  proveLead,
  readingsOf,
  sayAlike,
} from '../../src/core/making/index.ts';
import type { Proof, ProofReading, ProofRow, RowAnswer } from '../../src/core/making/index.ts';
import { sayList } from '../../src/core/verdict/index.ts';
import type { Grade } from '../../src/core/verdict/index.ts';
import type { Lead } from '../../src/core/wiring/index.ts';
import type { TestState } from './test-state.ts';

/** A test as far as it has come, and what its readings say. */
interface TestResult {
  readonly rows: readonly ProofRow[];
  readonly readings: readonly ProofReading[];
  /** Undefined where nothing is read yet. */
  readonly found: Proof | undefined;
  /** Every row reads as planned. */
  readonly done: boolean;
}

/** A test as it stands on paper: what was ticked, and what it comes to. */
export type PaperTest = TestResult & Pick<TestState, 'answers' | 'computer'>;

/** Explanations listed; more are counted. */
export const SETS_SHOWN = 8;

/** What the readings of a lead say so far. */
export function resultOf(lead: Lead, { full, answers, extra }: TestState): TestResult {
  const rows = full ? fullRows(lead) : proofRows(lead);
  const answered = rows.map((row) => [row, answers.get(row.words)] as const);
  const readings = [...answered.flatMap(([row, given]) => (given ? readingsOf(row, given) : [])), ...extra];
  return {
    rows,
    readings,
    found: readings.length === 0 ? undefined : proveLead(lead, readings),
    done: answered.every(([row, given]) => given !== undefined && agrees(row, given)),
  };
}

/** How a test stands, in a few words. */
export function standingOf({ found, done }: Pick<TestResult, 'found' | 'done'>): {
  readonly words: string;
  readonly grade: Grade;
} {
  if (found?.state === 'faults') return { words: 'Not as planned', grade: 'bad' };
  if (found?.state === 'not-explained')
    return { words: 'These readings fit no one or two faults', grade: 'bad' };
  return done
    ? { words: 'Tested: as planned', grade: 'good' }
    : { words: 'Not tested yet', grade: 'doubtful' };
}

/** The smallest sets of faults that explain a test, those that no reading tells apart in one group; so many groups at most. */
export function groupsOf(lead: Lead, found: Proof | undefined): readonly (readonly string[])[] {
  return found ? sayAlike(lead, found).slice(0, SETS_SHOWN) : [];
}

/** What was seen in a row, as it is written beside the row on paper. */
export function saySeen(row: ProofRow, answer: RowAnswer): string {
  if (answer.of === 'conductor') {
    if (answer.said === 'beep' || answer.said === 'silent') return answer.said;
    return answer.said === 'still' ? 'beep, not moved' : 'flickers';
  }
  const beeping = row.places.filter((_, at) => answer.beeping.includes(at));
  return beeping.length === 0 ? 'silent' : `beeps to ${sayList(beeping.map(otherContact))}`;
}
