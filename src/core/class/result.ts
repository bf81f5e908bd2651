/** A result: what a student hands in. No score stands in it: the answers are solved again by whoever marks it. */
import { readTaskId } from '../learn/index.ts';
import { fileName, listOf, miss, only, record, text, whole } from '../plan/index.ts';
import type { Of } from '../plan/index.ts';
import { packAs, readJson, readText, readValue, unpackAs, writeText } from './reading.ts';
import type { FileKind, Reading } from './reading.ts';
import { CLASS_LIMITS } from './limits.ts';
import { takenIn } from './taken.ts';
import type { HandedIn, Taken } from './taken.ts';
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

/** What was taken in, read; the work in it is read as if it had just come. */
export function handedInOf(taken: Taken): HandedIn {
  const { source } = taken;
  return {
    source,
    reading: 'result' in taken ? readResult(taken.result) : { ok: false, problems: taken.problems },
  };
}

/** Results in a text: a file of one or of several, or any text with links in it, each of them one. Never throws. */
export async function resultsIn(source: string, text: string): Promise<readonly HandedIn[]> {
  const links = [...text.matchAll(/#result=([\w-]*)/g)];
  if (links.length === 0 || /^\s*\uFEFF?\{/.test(text)) return severalIn(source, text);
  return Promise.all(
    links.map(async ([, packed = ''], at) => ({
      source: links.length === 1 ? source : `${source}, link ${at + 1}`,
      reading: await unpackAs(RESULT_FILE, packed),
    })),
  );
}

/** Results in the text of a file: several, or one. */
function severalIn(source: string, text: string): readonly HandedIn[] {
  const file = readJson(text);
  const several = file.ok ? takenIn(file.value) : undefined;
  if (!file.ok) return [{ source, reading: file }];
  if (!several) return [{ source, reading: readResult(file.value) }];
  const problem = {
    place: 'results',
    expected: 'work that was handed in',
    got: `${several.spoiled} that are none`,
  };
  const lost: readonly Taken[] = several.spoiled > 0 ? [{ source, problems: [problem] }] : [];
  return [...several.taken, ...lost].map(handedInOf);
}
