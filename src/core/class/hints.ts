/** What stands out in results that were handed in: hints for the teacher to ask about, never a proof. */
import { readTaskId, writeTaskId } from '../learn/index.ts';
import type { MarkedResult, Marker } from './mark.ts';
import { CLASS_LIMITS } from './limits.ts';
import { rowOfMixed } from './mixed-tasks.ts';
import { sameWork, tasksOfSet } from './work-set.ts';

/** Wrong answers that two results share and no other gave, from which on they are pointed out (our choice): one may be chance. */
const SHARED_WRONG = 2;

/** Answers that two results must have in common to be compared at all (our choice). */
const LEAST_ANSWERS = 3;

const who = ({ result: { number, name } }: MarkedResult): string =>
  name === '' ? `number ${number}` : `number ${number} (${name})`;

/** The student whose tasks these are, or undefined where they are nobody's: all strange tasks of a result must be. */
function ownerOf({ result, strange }: MarkedResult): number | undefined {
  const { set } = result;
  if (!set.perStudent) return undefined;
  const first = readTaskId(strange[0] ?? '');
  const known = set.draw === 'mixed' && typeof first !== 'string' ? rowOfMixed(set.seed, first) : undefined;
  const numbers =
    known === undefined ? Array.from({ length: CLASS_LIMITS.number }, (_, at) => at + 1) : [known];
  return numbers.find((number) => {
    if (number === result.number || number < 1 || number > CLASS_LIMITS.number) return false;
    const theirs = tasksOfSet(set, number).map(writeTaskId);
    return strange.every((task) => theirs.includes(task));
  });
}

/** What is said of answers to tasks that are not the student's. */
function sayStrange(marked: MarkedResult, marker: Marker): readonly string[] {
  const { result, strange } = marked;
  if (strange.length === 0) return [];
  const owner = ownerOf(marked);
  if (owner === undefined)
    return [
      strange.length === 1
        ? 'One answer is to a task that is not in this Set: it was changed, and counts as not right.'
        : `${strange.length} answers are to tasks that are not in this Set: they were changed, and count as not right.`,
    ];
  const right = result.attempts.filter(({ task, answer }) => {
    const made = strange.includes(task) ? marker.task(task) : undefined;
    return made !== undefined && marker.grade(task, made, answer).right;
  }).length;
  return [
    `These are the tasks of number ${owner}, handed in as number ${result.number}: none counts as right. For number ${owner}, ${right} of ${strange.length} would be.`,
  ];
}

/** The answers of a result, task by task, as one text. */
const answersOf = ({ tasks }: MarkedResult): string =>
  JSON.stringify(tasks.map(({ answer }) => answer ?? null));

/** What is said of results whose answers are the same in all, with wrong ones that nobody else gave. */
function sayCopies(all: readonly MarkedResult[]): ReadonlyMap<MarkedResult, string> {
  const givers = Map.groupBy(
    all.flatMap((marked) =>
      marked.tasks.flatMap(({ mark, answer }, at) =>
        mark === 'wrong' ? [{ marked, key: `${at} ${answer}` }] : [],
      ),
    ),
    ({ key }) => key,
  );
  const alike = Map.groupBy(
    all.filter(({ tasks }) => tasks.filter(({ answer }) => answer !== undefined).length >= LEAST_ANSWERS),
    answersOf,
  );
  const said = new Map<MarkedResult, string>();
  for (const group of alike.values()) {
    if (group.length < 2) continue;
    const [first] = group as [MarkedResult];
    const own = first.tasks.filter(
      ({ answer }, at) => givers.get(`${at} ${answer}`)?.length === group.length,
    ).length;
    if (own < SHARED_WRONG) continue;
    for (const one of group)
      said.set(
        one,
        `The same answers in all as ${group
          .filter((other) => other !== one)
          .map(who)
          .join(', ')}, ${own} of them wrong in a way that nobody else was.`,
      );
  }
  return said;
}

/** What is said of results that share a number: of one student who handed in again, or of two names. */
function sayShared({ result: { number, name } }: MarkedResult, twice: readonly MarkedResult[]): string {
  const named = twice.filter((other) => other.result.name !== name);
  const see = twice.map(({ source }) => source).join(', ');
  return named.length === 0
    ? `Number ${number} handed in more than once: see ${see}.`
    : `Number ${number} also came under another name (${named.map(({ result }) => result.name || 'no name').join(', ')}): see ${see}. Ask whose number it is.`;
}

/** Notes on each result of one Set, in their order. `counted` are those that are no second copy of the same result. */
export function notesOn(counted: readonly MarkedResult[], marker: Marker): readonly (readonly string[])[] {
  const copies = sayCopies(counted);
  const numbers = Map.groupBy(counted, ({ result }) => `${sameWork(result.set)} ${result.number}`);
  return counted.map((marked) => {
    const twice = (numbers.get(`${sameWork(marked.result.set)} ${marked.result.number}`) ?? []).filter(
      (other) => other !== marked,
    );
    const copy = copies.get(marked);
    return [
      ...sayStrange(marked, marker),
      ...(twice.length > 0 ? [sayShared(marked, twice)] : []),
      ...(copy === undefined ? [] : [copy]),
    ];
  });
}
