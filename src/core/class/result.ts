/** A result: what a student hands in. No score stands in it: the answers are solved again by whoever marks it. */
import { readTaskId } from '../learn/index.ts';
import { fileName, listOf, miss, only, record, text, whole } from '../plan/index.ts';
import type { Of } from '../plan/index.ts';
import { packAs, readText, readValue, unpackAs, writeText } from './reading.ts';
import type { FileKind, Reading } from './reading.ts';
import { CLASS_LIMITS } from './limits.ts';
import { WORK_SET } from './work-set.ts';

/** Longest task as it is written, and longest answer, characters; most answers, with several tries at each task. */
const MOST = { task: 60, answer: 300, attempts: 200 } as const;

/** Days that an answer can be given on: up to the year 2243, which no clock of a tablet shows by mistake. */
const MOST_DAY = 100_000;

const ATTEMPT = record(
  { task: text(MOST.task), answer: text(MOST.answer, 0), hints: whole([0, 3]), day: whole([0, MOST_DAY]) },
  {
    inline: true,
    check: ({ task }, place, problems) => {
      if (typeof readTaskId(task) === 'string')
        miss(problems, `${place}.task`, "a kind, a level and a seed such as 'lay-lead.2.7F3K'", task);
    },
  },
);

const RESULT_FORMAT = 'five-milliamps-result';

const RESULT = record({
  format: only(RESULT_FORMAT),
  version: only(1),
  set: WORK_SET,
  number: whole([1, CLASS_LIMITS.number]),
  name: text(CLASS_LIMITS.name, 0),
  attempts: listOf(ATTEMPT, MOST.attempts),
});
/** What a student hands in: the Set, the number in the class list, a name or none, and the answers in their order. */
export type Result = Of<typeof RESULT>;

const RESULT_FILE: FileKind<Result> = { format: RESULT_FORMAT, version: 1, shape: RESULT };

/** Read a result from parsed JSON. */
export const readResult = (value: unknown): Reading<Result> => readValue(RESULT_FILE, value);

/** Read a result from the text of a file. */
export const readResultText = (json: string): Reading<Result> => readText(RESULT_FILE, json);

/** A result as the text of a file. */
export const writeResultText = (result: Result): string => writeText(result);

const RESULT_KEY = '#result=';

/** The end of an address that holds a result, from '#' on. */
export async function resultHash(result: Result): Promise<string> {
  return RESULT_KEY + (await packAs(RESULT_FILE, result));
}

/** The name of a result's file: 'loop-test-07-ann.json'. */
export function resultFileName({ set, number, name }: Result): string {
  return fileName(set.title, 'class-work', { number, name }, 'json');
}

/** Read a result from what stands in its address behind '#result='; never throws. */
export const readResultLink = (packed: string): Promise<Reading<Result>> => unpackAs(RESULT_FILE, packed);
