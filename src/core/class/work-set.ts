/** A Set: a recipe of tasks that a teacher hands out. Which tasks a student gets follows from it and from the student's number. */
import { LEVELS, MOST_SEED, TASKS_BY_LESSON, writeTaskId } from '../learn/index.ts';
import type { Level, TaskId } from '../learn/index.ts';
import { left, listOf, miss, oneNumberOf, oneOf, only, record, text, truth, whole } from '../plan/index.ts';
import type { Of, Shape } from '../plan/index.ts';
import { readText, readValue, writeText, unpackAs, packAs } from './reading.ts';
import type { FileKind, Reading } from './reading.ts';
import { CLASS_LIMITS, DRAWS, SHOWS } from './limits.ts';
import { mixedTasks } from './mixed-tasks.ts';

/** Longest name of a kind, letters. */
const KIND_LETTERS = 40;

const LEVEL = oneNumberOf(LEVELS) as Shape<Level>;

/** Kinds of tasks by name, with what each is called and the lesson that it belongs to. */
export const KINDS: ReadonlyMap<string, { readonly title: string; readonly lesson: string }> = new Map(
  Object.entries(TASKS_BY_LESSON).flatMap(([lesson, kinds]) =>
    kinds.map(({ kind, title }) => [kind, { title, lesson }] as const),
  ),
);

const ITEM = record(
  { kind: text(KIND_LETTERS), level: LEVEL, count: whole([1, CLASS_LIMITS.count]) },
  {
    inline: true,
    check: ({ kind }, place, problems) => {
      if (!KINDS.has(kind)) miss(problems, `${place}.kind`, 'a kind of task that there is', kind);
    },
  },
);
/** Some tasks of one kind and level. */
export type SetItem = Of<typeof ITEM>;

const SET_FORMAT = 'five-milliamps-set';

/**
 * The shape of a Set. `seed` decides jack, value and fault; with `perStudent` every student gets others. `draw` says how; a Set from
 * before there were two ways has none, and its students get what they got then.
 */
export const WORK_SET = record(
  {
    format: only(SET_FORMAT),
    version: only(1),
    title: text(CLASS_LIMITS.title),
    seed: whole([0, MOST_SEED]),
    perStudent: truth,
    items: listOf(ITEM, CLASS_LIMITS.items, 1),
    show: oneOf(SHOWS),
    draw: left(oneOf(DRAWS), 'turns'),
  },
  {
    check: (set, _, problems) => {
      const tasks = set.items.reduce((sum, { count }) => sum + count, 0);
      if (tasks > CLASS_LIMITS.tasks)
        miss(problems, 'items', `at most ${CLASS_LIMITS.tasks} tasks in all`, tasks);
    },
  },
);
/** A Set. */
export type WorkSet = Of<typeof WORK_SET>;

const SET_FILE: FileKind<WorkSet> = { format: SET_FORMAT, version: 1, shape: WORK_SET };

/** Read a Set from parsed JSON. */
export const readSet = (value: unknown): Reading<WorkSet> => readValue(SET_FILE, value);

/** Read a Set from the text of a file. */
export const readSetText = (json: string): Reading<WorkSet> => readText(SET_FILE, json);

/** A Set as the text of a file. */
export const writeSetText = (set: WorkSet): string => writeText(set);

/** Where a Set stands in an address. */
const SET_KEY = '#set=';

/** The end of an address that holds a Set, from '#' on. */
export async function setHash(set: WorkSet): Promise<string> {
  return SET_KEY + (await packAs(SET_FILE, set));
}

/** The Set in a text that holds the end of an address; undefined where there is none. */
export async function setFromHash(hash: string): Promise<Reading<WorkSet> | undefined> {
  const packed = /#set=([\w-]*)/.exec(hash)?.[1];
  return packed === undefined ? undefined : unpackAs(SET_FILE, packed);
}

/** The tasks of a student, by the number in the class list (1 on). */
export function tasksOfSet(set: WorkSet, number: number): readonly TaskId[] {
  const row = set.perStudent ? number : 0;
  return set.draw === 'mixed' ? mixedTasks(set.seed, set.items, row) : turnTasks(set, row);
}

/**
 * Tasks of one kind have seeds that follow one another, from student to student too, so that the cases of a kind come to all by turns.
 * Kinds of which a student gets as many have the same seeds, so that their cases come together.
 */
function turnTasks({ seed, items }: WorkSet, row: number): readonly TaskId[] {
  const each = new Map<string, number>();
  for (const { kind, count } of items) each.set(kind, (each.get(kind) ?? 0) + count);
  const taken = new Map<string, number>();
  return items.flatMap(({ kind, level, count }) => {
    const before = taken.get(kind) ?? 0;
    taken.set(kind, before + count);
    const start = seed + row * (each.get(kind) ?? 0) + before;
    return Array.from({ length: count }, (_, at) => ({
      kind,
      level,
      seed: (start + at) % (MOST_SEED + 1),
    }));
  });
}

/** What makes two Sets the same work: all but the title that stands above it, and how its tasks are told by items. */
export function sameWork(set: WorkSet): string {
  return JSON.stringify([set.perStudent, set.show, ...tasksOfSet(set, 1).map(writeTaskId)]);
}
