import { describe, expect, test } from 'vitest';
import { readySets } from '../../../src/core/class/ready-sets.ts';
import { readSet, setHash, setFromHash, tasksOfSet } from '../../../src/core/class/work-set.ts';
import { TASKS_BY_LESSON } from '../../../src/core/learn/index.ts';

const LESSONS = Object.keys(TASKS_BY_LESSON);

describe('Ready Sets', () => {
  test.each(LESSONS)('of %s are whole, and open from their links', async (lesson) => {
    for (const set of readySets(
      lesson,
      'A title that is so long that no room is left for more words in it',
    )) {
      expect(readSet(set)).toEqual({ ok: true, value: set });
      expect(await setFromHash(await setHash(set))).toEqual({ ok: true, value: set });
    }
  });

  test('begin with three tasks for all alike, practise every kind twice, and end with each kind once', () => {
    const [first, practice, last] = readySets('five-milliamp-loop', 'Loop');
    const kinds = TASKS_BY_LESSON['five-milliamp-loop']?.length ?? 0;
    expect(
      [first, practice, last].map((set) => set && [set.title, tasksOfSet(set, 1).length, set.show]),
    ).toEqual([
      ['Loop: to begin with', 3, 'each'],
      ['Loop: practice', 2 * kinds, 'each'],
      ['Loop: test', kinds, 'end'],
    ]);
    expect(first && tasksOfSet(first, 1)).toEqual(first && tasksOfSet(first, 2));
    expect(last && tasksOfSet(last, 1)).not.toEqual(last && tasksOfSet(last, 2));
  });

  test('are none for a lesson without tasks', () => {
    expect(readySets('no such lesson', 'Nothing')).toEqual([]);
  });
});
