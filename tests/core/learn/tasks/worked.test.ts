/** The way to an answer leads to it, hints stop short of it, and what can hurt is said where it can: read as a learner reads. */
import { describe, expect, it } from 'vitest';
import { TASKS_BY_LESSON, makeTask } from '../../../../src/core/learn/index.ts';
import type { Level, Task } from '../../../../src/core/learn/index.ts';
import { numberIn, optionsOf } from './school.ts';

const LEVELS: readonly Level[] = [0, 1, 2, 3];
const LESSONS = [
  'contacts-and-where-to-look-from',
  'why-makers-differ',
  'reading-a-manual',
  'ask-the-jack',
  'solder-it',
  'prove-it',
  'when-nothing-answers',
  'one-output-one-input',
];
const KINDS = LESSONS.flatMap((lesson) => (TASKS_BY_LESSON[lesson] ?? []).map(({ kind }) => kind));

/** Tasks of each kind at every level, a dozen seeds of each, made once for all that is asked of them. */
const DRAWN = new Map<string, readonly Task[]>();
const SEEDS = 12;
function drawn(kind: string): readonly Task[] {
  const made =
    DRAWN.get(kind) ??
    LEVELS.flatMap((level) =>
      Array.from({ length: SEEDS }, (_, at) => {
        const task = makeTask({ kind, level, seed: at * 53 + 11 });
        if (typeof task === 'string') throw new Error(task);
        return task;
      }),
    );
  DRAWN.set(kind, made);
  return made;
}

/** Words without capitals, quotation marks and full stops. */
const plain = (words: string): string => words.toLowerCase().replaceAll(/[.‘’']/g, '');

/** The right answer in words: what is chosen or ticked, the things in order, a number. */
function rightWords(task: Task): readonly string[] {
  const { form, right } = task;
  const places = right === '-' ? [] : right.split(' ').map(Number);
  switch (form.form) {
    case 'choice':
    case 'several':
      return places.map((place) => plain(optionsOf(task)[place] ?? ''));
    case 'order':
      return places.map((place) => plain(form.items[place] ?? ''));
    default:
      return [plain(right)];
  }
}

/** Kinds whose last step says the answer in other words than the answers do: each is asked below in its own way. */
const OTHER_WORDS: readonly string[] = [
  'say-outcome',
  'strip-length',
  'still-and-moved',
  'share-current',
  'lit-parts',
  'lay-lead',
];

describe('the way to the answer', () => {
  it.each(KINDS.filter((kind) => !OTHER_WORDS.includes(kind)))(
    'of %s ends with the right answer in its words',
    (kind) => {
      for (const task of drawn(kind)) {
        const last = plain(task.steps.at(-1) ?? '');
        for (const words of rightWords(task)) expect(last, task.ask).toContain(words);
      }
    },
  );

  it('of an order has its things in that order', () => {
    for (const task of drawn('order-steps')) {
      const last = plain(task.steps.at(-1) ?? '');
      const places = rightWords(task).map((words) => last.indexOf(words));
      expect(places).toEqual(places.toSorted((a, b) => a - b));
    }
  });

  it('of a current ends with the number, worked out by hand and solved', () => {
    for (const task of drawn('share-current')) {
      const [byHand = NaN, solved = NaN] = [...(task.steps.at(-1) ?? '').matchAll(/([\d.]+) mA/g)].map(
        ([, one]) => Number(one),
      );
      expect(Math.abs(solved - Number(task.right))).toBeLessThan(0.006);
      if (task.form.form === 'number') expect(Math.abs(byHand / solved - 1)).toBeLessThan(task.form.share);
    }
  });

  it('of parts names each that turns on, and no other', () => {
    for (const task of drawn('lit-parts')) {
      const [, named = ''] = /^Turned on: (.+)\.$/.exec(task.steps.at(-1) ?? '') ?? [];
      const parts =
        task.right === '-'
          ? ['none']
          : task.right.split(' ').map((at) => optionsOf(task)[Number(at)]?.split(',')[0]);
      expect(named.split(', ').toSorted()).toEqual(parts.toSorted());
    }
  });

  it('of a bare end says how much of it stands free, less the cup and no less than nothing', () => {
    for (const task of drawn('strip-length')) {
      const [, bare = NaN, cup = NaN] = (
        /^([\d.]+) mm bare, ([\d.]+) mm in the cup/.exec(task.steps[0] ?? '') ?? []
      ).map(Number);
      const over = Math.max(0, Number((bare - cup).toFixed(2)));
      expect(task.steps[0]).toContain(over > 0 ? `: ${over} mm stays bare` : ': nothing stays bare');
      expect(numberIn(task.ask)).toBe(bare);
    }
  });

  it('of joints names each joint of the right answer', () => {
    for (const task of drawn('still-and-moved'))
      for (const joint of rightWords(task).flatMap((words) => words.split(' and ')))
        expect(plain(task.steps.at(-1) ?? '')).toContain(joint);
  });

  it('of an outcome begins with its name', () => {
    for (const task of drawn('say-outcome')) {
      const [name = ''] = (optionsOf(task)[Number(task.right)] ?? '').split(':');
      expect(task.steps.at(-1)).toMatch(new RegExp(`^${name}`));
    }
  });
});

describe('hints', () => {
  // A hint may repeat a short word of an answer; it must not say an answer of five words or more.
  const LONG = 5;

  it.each(KINDS)('of %s do not say the answer', (kind) => {
    for (const task of drawn(kind))
      for (const words of rightWords(task).filter((one) => one.split(' ').length >= LONG))
        for (const hint of task.hints) expect(plain(hint), task.ask).not.toContain(words);
  });
});

describe('what can hurt', () => {
  it.each(['solder-it', 'when-nothing-answers'])('is said with every task of %s', (lesson) => {
    for (const { kind } of TASKS_BY_LESSON[lesson] ?? [])
      for (const { caution } of drawn(kind)) expect(caution, kind).toMatch(/rules/i);
  });

  it('where an iron is used names fume, eyes and hands; where leads are swapped the power', () => {
    for (const kind of ['order-steps', 'judge-joints', 'still-and-moved'])
      for (const { caution } of drawn(kind)) expect(caution).toMatch(/fume.*eyes.*hands/);
    for (const kind of ['next-check', 'who-fights', 'menu-first'])
      for (const { caution } of drawn(kind)) expect(caution).toMatch(/power off/);
  });
});

describe('the levels of a task', () => {
  it.each(KINDS)('of %s give a worked example at the first and at no other', (kind) => {
    for (const { id, example } of drawn(kind)) expect(example !== undefined).toBe(id.level === 0);
  });

  it.each([
    // Answers to choose from at levels 1, 2 and 3, counted in the lesson's own words.
    ['ts-plug', [4, 4, 5]],
    ['four-beeps', [5, 5, 6]],
    ['manual-words', [4, 4, 5]],
    ['hidden-pin', [5, 5, 5]],
    ['which-view', [3, 3, 3]],
    ['drawing-style', [4, 4, 4]],
    ['missing-line', [4, 4, 4]],
    ['source-contact', [3, 3, 3]],
    ['may-be', [4, 4, 4]],
    ['stop-or-go', [4, 4, 4]],
    ['solder-cups', [5, 5, 5]],
    ['strip-length', [4, 4, 4]],
    ['judge-joints', [4, 5, 5]],
    ['bench-hazards', [5, 6, 6]],
    ['beep-at-ohms', [4, 4, 4]],
    ['best-reading', [4, 4, 4]],
    ['next-check', [4, 4, 4]],
    ['who-fights', [4, 4, 4]],
    ['which-box', [4, 4, 4]],
    ['worked-for-years', [3, 3, 3]],
  ] as const)('of %s offer %j answers', (kind, counts) => {
    for (const [at, level] of ([1, 2, 3] as const).entries())
      for (const task of drawn(kind).filter(({ id }) => id.level === level))
        expect(optionsOf(task), `${level}`).toHaveLength(counts[at] ?? 0);
  });
});
