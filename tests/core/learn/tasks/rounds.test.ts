/** Rounds of the fault page in the record: kept as attempts like all others, and graded as the page graded them. */
import { describe, expect, it } from 'vitest';
import { faultName, gradeFault, hideNumberedFault } from '../../../../src/core/faults/index.ts';
import {
  NO_RECORD,
  attemptOfRound,
  mergeRecords,
  readRecord,
  roundsIn,
  standings,
  withAttempt,
} from '../../../../src/core/learn/index.ts';
import type { Attempt, LearnRecord } from '../../../../src/core/learn/index.ts';
import { followGuide } from '../../../support/guided.ts';

const recordOf = (...attempts: readonly Attempt[]): LearnRecord => ({ ...NO_RECORD, attempts });

const NUMBERS = [1, 2, 5, 6, 9999];

describe('A round', () => {
  it('is an attempt that a record file takes, and comes back from it and from a union as it was', () => {
    const round = attemptOfRound(
      { board: 'chain', number: 33, named: 'lead 1: open', made: ['outlet'] },
      20_000,
    );
    expect(round).toEqual({
      task: 'find-fault.3.11',
      answer: 'lead 1: open | outlet',
      hints: 0,
      day: 20_000,
    });
    const record = withAttempt(NO_RECORD, round);
    expect(readRecord(JSON.parse(JSON.stringify(record)))).toEqual(record);
    expect(mergeRecords(record, record)).toEqual(record);
  });

  it.each(['link', 'chain'] as const)('on the board %s is graded as the page grades it', (board) => {
    for (const number of NUMBERS) {
      const hidden = hideNumberedFault(board, number);
      const made = followGuide(hidden);
      for (const [named, seen] of [
        [faultName(hidden.fault), made],
        [faultName(hidden.fault), []],
        ['sender: supply-off', made],
      ] as const) {
        const { right, proved } = gradeFault(
          hidden,
          named === faultName(hidden.fault) ? hidden.fault : { place: 'sender', kind: 'supply-off' },
          seen,
        );
        const attempt = attemptOfRound({ board, number, named, made: seen.map(({ id }) => id) }, 1);
        expect(roundsIn(recordOf(attempt)), `${board} ${number} ${named}`).toEqual([
          { board, tried: 1, found: Number(right), settled: Number(proved) },
        ]);
      }
    }
  });

  it('counts by its first name: a second one for the same fault changes nothing', () => {
    const { fault } = hideNumberedFault('link', 2);
    const give = (named: string): Attempt => attemptOfRound({ board: 'link', number: 2, named, made: [] }, 1);
    const [wrong, right] = [give('pedal 1: supply-off'), give(faultName(fault))];
    expect(roundsIn(recordOf(wrong, right))).toMatchObject([{ tried: 1, found: 0 }]);
    expect(roundsIn(recordOf(right, wrong))).toMatchObject([{ tried: 1, found: 1 }]);
  });

  it('that names no fault, check or number of the board counts nowhere, and no round counts as a kind of task', () => {
    const good = attemptOfRound({ board: 'link', number: 2, named: 'lead 1: open', made: ['outlet'] }, 1);
    const spoiled = [
      { ...good, answer: 'lead 9: open | ' },
      { ...good, answer: 'lead 1: open | a look at the moon' },
      { ...good, task: 'find-fault.2.0' },
      { ...good, task: 'find-fault.2.9OG' },
      { ...good, task: 'find-fault.1.2' },
      { ...good, task: 'lay-lead.2.2' },
    ];
    expect(roundsIn(recordOf(...spoiled))).toEqual([]);
    expect(standings(recordOf(good))).toEqual(standings(NO_RECORD));
  });
});
