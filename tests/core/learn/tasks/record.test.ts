import { describe, expect, it } from 'vitest';
import {
  NO_RECORD,
  isDue,
  makeTask,
  mergeRecords,
  readRecord,
  readTaskId,
  standings,
  tasksOfLesson,
  tasksToPractise,
  untried,
  withAttempt,
  writeTaskId,
} from '../../../../src/core/learn/index.ts';
import type { Attempt, LearnRecord, Standing } from '../../../../src/core/learn/index.ts';

/** An answer to a task of one kind: right, or wrong by its first mistake. */
function attempt(seed: number, day: number, right = true, hints = 0): Attempt {
  const made = makeTask({ kind: 'loop-current', level: 2, seed });
  if (typeof made === 'string') throw new Error(made);
  return {
    task: writeTaskId(made.id),
    answer: right ? made.right : (made.slips[0]?.answer ?? ''),
    hints,
    day,
  };
}

const recordOf = (...attempts: readonly Attempt[]): LearnRecord => attempts.reduce(withAttempt, NO_RECORD);
const standing = (record: LearnRecord) => standings(record).find(({ kind }) => kind === 'loop-current');

const untriedAnew = ({ kind, lesson, selfMarked }: Standing): Standing =>
  untried({ kind, lesson, selfMarked });

describe('where a kind of task stands', () => {
  it('is not due and not done before it was tried', () => {
    expect(standing(NO_RECORD)).toEqual({
      kind: 'loop-current',
      lesson: 'five-milliamp-loop',
      tried: 0,
      unaided: 0,
      done: false,
      known: false,
      selfMarked: false,
      due: undefined,
    });
  });

  it('is untried for every kind of a record without attempts', () => {
    expect(standings(NO_RECORD)).toEqual(standings(NO_RECORD).map(untriedAnew));
  });

  it('comes back after 1, 3, 7 and 21 days as right answers follow one another', () => {
    const days = [100, 101, 104, 111, 132];
    const due = days.map(
      (_, at) => standing(recordOf(...days.slice(0, at + 1).map((day, place) => attempt(place, day))))?.due,
    );
    expect(due).toEqual([101, 104, 111, 132, 153]);
  });

  it('goes back to one day after a miss', () => {
    expect(standing(recordOf(attempt(1, 10), attempt(2, 11), attempt(3, 14, false)))?.due).toBe(15);
  });

  it('is known after unaided right answers on two different days, and not on one', () => {
    expect(standing(recordOf(attempt(1, 10), attempt(2, 10)))?.known).toBe(false);
    expect(standing(recordOf(attempt(1, 10), attempt(2, 11, true, 1)))?.known).toBe(false);
    expect(standing(recordOf(attempt(1, 10), attempt(2, 11)))?.known).toBe(true);
  });

  it('counts a second answer to the same task as done, and neither as unaided nor as another try', () => {
    expect(standing(recordOf(attempt(1, 10, false), attempt(1, 10)))).toMatchObject({
      tried: 1,
      unaided: 0,
      done: true,
      due: 11,
    });
  });

  it('loses nothing when the clock is set back', () => {
    const record = recordOf(attempt(1, 100), attempt(2, 40));
    expect(standing(record)).toMatchObject({ tried: 2, unaided: 2, known: true, due: 103 });
  });
});

describe('a record', () => {
  it('is read as it was written, and merged with itself it is itself', () => {
    const record = recordOf(attempt(1, 10), attempt(2, 11, false), attempt(3, 12));
    expect(readRecord(JSON.parse(JSON.stringify(record)))).toEqual(record);
    expect(mergeRecords(record, record)).toEqual(record);
  });

  it('merged with another holds what either holds, by day', () => {
    const [one, two, three] = [attempt(1, 12), attempt(2, 10), attempt(3, 11)] as const;
    expect(mergeRecords(recordOf(one, two), recordOf(two, three)).attempts).toEqual([two, three, one]);
  });

  it('says what is wrong with a file', () => {
    expect(readRecord(7)).toBe("record: expected a file with the format 'five-milliamps-record'");
    expect(readRecord({ format: 'five-milliamps-record', version: 2, attempts: [] })).toBe(
      'record: version must be 1, got 2',
    );
    expect(readRecord({ ...NO_RECORD, attempts: 'x' })).toBe('record: attempts must be a list');
    expect(readRecord({ ...NO_RECORD, attempts: [attempt(1, 10), { task: 'x' }] })).toBe(
      'record: attempt 2 needs a task, an answer, hints from 0 to 3 and a day',
    );
  });
});

describe('which tasks come next', () => {
  it('at the end of a lesson are six of its own, two of each of the first three levels, and two from earlier lessons', () => {
    const tasks = tasksOfLesson('bits-on-the-wire', 7);
    expect(tasks.slice(0, 6).map(({ level }) => level)).toEqual([0, 0, 1, 1, 2, 2]);
    expect(new Set(tasks.map(({ kind }) => kind)).size).toBe(8);
    expect(tasksOfLesson('five-milliamp-loop', 7)).toHaveLength(6);
    for (const id of tasks) expect(readTaskId(writeTaskId(id))).toEqual(id);
  });

  it('in practice are those of the lessons asked for, at the level that the reader has reached', () => {
    const record = recordOf(attempt(1, 10), attempt(2, 11));
    const tasks = tasksToPractise(standings(record), ['five-milliamp-loop'], 11, 10, 3);
    expect(tasks).toHaveLength(10);
    expect(tasks.find(({ kind }) => kind === 'loop-current')?.level).toBe(2);
    expect(tasks.find(({ kind }) => kind === 'rank-loops')?.level).toBe(0);
  });

  it('are those that are due, and none where nothing is', () => {
    const record = recordOf(attempt(1, 10));
    expect(tasksToPractise(standings(record), 'due', 10, 10, 3)).toEqual([]);
    expect(tasksToPractise(standings(record), 'due', 11, 10, 3).map(({ kind }) => kind)).toEqual([
      'loop-current',
    ]);
    expect(standings(record).filter((one) => isDue(one, 11))).toHaveLength(1);
  });
});
