/** Where kinds stand, held to a plain count that grades every attempt. */
import { describe, expect, it } from 'vitest';
import {
  LEVELS,
  NO_RECORD,
  TASKS_BY_LESSON,
  gradeAnswer,
  makeTask,
  readTaskId,
  standings,
  writeTaskId,
} from '../../../../src/core/learn/index.ts';
import type { Attempt } from '../../../../src/core/learn/index.ts';
import { seededRandom } from '../../../support/random.ts';

/** Kinds that are quick to make. */
const KINDS = ['loop-current', 'rank-loops', 'trace-to-hex', 'list-time'] as const;

function isRight({ task, answer }: Attempt): boolean {
  const id = readTaskId(task);
  const made = typeof id === 'string' ? id : makeTask(id);
  return typeof made !== 'string' && gradeAnswer(made, answer).right;
}

/** Attempts drawn by chance: right and wrong, with and without hints, some of them second answers. */
function drawn(seed: number, count: number, shareRight: number): readonly Attempt[] {
  const random = seededRandom(seed);
  return Array.from({ length: count }, (_, at): Attempt => {
    const made = makeTask({
      kind: random.pick(KINDS),
      level: random.pick(LEVELS),
      seed: random.integer(0, 12),
    });
    if (typeof made === 'string') throw new Error(made);
    return {
      task: writeTaskId(made.id),
      answer: random.chance(shareRight) ? made.right : (made.slips[0]?.answer ?? ''),
      hints: random.chance(0.3) ? 1 : 0,
      day: 20_000 + Math.floor(at / 3) - (random.chance(0.1) ? 5 : 0),
    };
  });
}

/** What is said of a kind, counted from the oldest attempt on with every one of them graded. */
function counted(kind: string, attempts: readonly Attempt[]) {
  const own = attempts.filter(({ task }) => task.startsWith(`${kind}.`));
  const firsts = own.filter((one, at) => own.findIndex(({ task }) => task === one.task) === at);
  const unaided = firsts.filter((one) => isRight(one) && one.hints === 0);
  const row = firsts.reduce((sum, one) => (isRight(one) ? sum + (one.hints === 0 ? 1 : 0) : 0), 0);
  const last = Math.max(...firsts.map(({ day }) => day));
  return {
    tried: firsts.length,
    unaided: Math.min(3, unaided.length),
    done: own.some(isRight),
    known: new Set(unaided.map(({ day }) => day)).size >= 2,
    due: firsts.length === 0 ? undefined : last + ([1, 1, 3, 7][row] ?? 21),
  };
}

describe('where kinds stand', () => {
  for (const shareRight of [0, 0.3, 0.7, 1])
    it(`is what grading every attempt says, where ${shareRight * 10} of 10 answers are right`, () => {
      for (const seed of [1, 2, 3, 4, 5, 6]) {
        const attempts = drawn(seed, 8 * seed, shareRight);
        const all = standings({ ...NO_RECORD, attempts });
        for (const kind of KINDS)
          expect(all.find((one) => one.kind === kind)).toMatchObject(counted(kind, attempts));
      }
    });

  it('is told of every kind, tried or not, and an attempt at a kind that is gone counts for none', () => {
    const kinds = Object.values(TASKS_BY_LESSON).flat();
    const gone = { task: 'no-such-kind.0.1', answer: '1', hints: 0, day: 1 };
    const all = standings({ ...NO_RECORD, attempts: [gone] });
    expect(all.map(({ kind }) => kind)).toEqual(kinds.map(({ kind }) => kind));
    expect(all.filter(({ tried }) => tried > 0)).toEqual([]);
  });
});
