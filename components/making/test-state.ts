/** What the reader ticked in the test of a lead, row by row, kept between visits. */
import {
  BEEPS,
  CONDUCTOR_ANSWERS,
  fullRows,
  fullTable,
  proofRows,
  sayPlace,
} from '../../src/core/making/index.ts';
import type { ProofReading, ProofRow, RowAnswer } from '../../src/core/making/index.ts';
import type { Lead } from '../../src/core/wiring/index.ts';
import { noteKind } from '../keep/kind.ts';
import type { Kind } from '../keep/kind.ts';
import { fieldOf, keepNote, keptNote } from '../keep/notes.ts';
import { wiringOf } from './sheet-state.ts';
import { dropStored } from '../keep/shelf.ts';

/** A test as far as it has come. Answers are kept by the words of their row. */
export interface TestState {
  readonly full: boolean;
  readonly answers: ReadonlyMap<string, RowAnswer>;
  readonly extra: readonly ProofReading[];
  /** What a test with a computer interface found, in a sentence; empty where none was made. */
  readonly computer: string;
}

/** A test that has not begun. */
export const NOT_BEGUN: TestState = { full: false, answers: new Map(), extra: [], computer: '' };

/** Tests are kept for so many leads, the newest last: somebody who makes whole sets tests them in turn (our choice). */
export const MOST_KEPT = 200;

/** The shelf of the test of a lead: every test is kept under the wiring of its lead. */
export function testShelf(lead: Lead): string {
  return `proof ${wiringOf(lead)}`;
}

/** Put the test of a lead last in the list of those kept, and forget the oldest above the limit. */
export function rememberTest(lead: Lead): void {
  const shelf = testShelf(lead);
  const known = keptNote('proofs');
  const names = (Array.isArray(known) ? known : []).filter(
    (one): one is string => typeof one === 'string' && one !== shelf,
  );
  const kept = [...names, shelf];
  kept.slice(0, -MOST_KEPT).forEach(dropStored);
  keepNote('proofs', kept.slice(-MOST_KEPT));
}

/** The test of a lead as the keeper of its shelf knows it; what does not belong to this lead is left out. */
export function testKind(lead: Lead): Kind<TestState> {
  return noteKind<TestState>(
    'test of this lead',
    (note) => readTest(lead, note),
    ({ full, answers, extra, computer }) => ({
      full,
      answers: [...answers],
      extra: extra.map((reading) => [sayPlace(reading), reading.says]),
      computer,
    }),
    ({ answers, extra }, note) =>
      answers.size === pairsOf(fieldOf(note, 'answers')).length &&
      extra.length === pairsOf(fieldOf(note, 'extra')).length,
  );
}

/** Characters of a sentence that are read back. */
const MOST_SAID = 400;

function readTest(lead: Lead, note: unknown): TestState {
  const full = fieldOf(note, 'full') === true;
  const rows = full ? fullRows(lead) : proofRows(lead);
  const answers = pairsOf(fieldOf(note, 'answers')).flatMap(([words, given]): [string, RowAnswer][] => {
    const row = rows.find((one) => one.words === words);
    const answer = row && answerOf(row, given);
    return row && answer ? [[row.words, answer]] : [];
  });
  const places = fullTable(lead);
  const extra = pairsOf(fieldOf(note, 'extra')).flatMap(([words, given]): ProofReading[] => {
    const place = places.find((one) => sayPlace(one) === words);
    const says = BEEPS.find((one) => one === given);
    return place && says ? [{ ...place, says }] : [];
  });
  const said = fieldOf(note, 'computer');
  const computer = typeof said === 'string' ? said.slice(0, MOST_SAID) : '';
  return { full, answers: new Map(answers), extra, computer };
}

function pairsOf(value: unknown): readonly (readonly [unknown, unknown])[] {
  return (Array.isArray(value) ? value : []).map((one: unknown) =>
    Array.isArray(one) ? [one[0] as unknown, one[1] as unknown] : [undefined, undefined],
  );
}

function answerOf(row: ProofRow, given: unknown): RowAnswer | undefined {
  if (row.expects === 'beep') {
    const said = CONDUCTOR_ANSWERS.find(([one]) => one === fieldOf(given, 'said'))?.[0];
    return said && { of: 'conductor', said };
  }
  const beeping = fieldOf(given, 'beeping');
  if (!Array.isArray(beeping)) return undefined;
  return {
    of: 'apart',
    beeping: beeping.filter((at): at is number => Number.isInteger(at) && at >= 0 && at < row.places.length),
  };
}
