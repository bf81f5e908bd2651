/** All results marked: a row for every input, and for each Set what was right and which mistakes were made. */
import type { Level } from '../learn/index.ts';
import { notesOn } from './hints.ts';
import { MARKS, makeMarker, markOne } from './mark.ts';
import type { Mark, MarkedResult, Refused } from './mark.ts';
import { writeResultText } from './result.ts';
import type { Result } from './result.ts';
import { titleByCode } from './set-code.ts';
import type { HandedIn } from './taken.ts';
import { sameWork } from './work-set.ts';
import type { WorkSet } from './work-set.ts';

/** A row for one input. `set` is the place of its Set in the list of Sets. */
export type MarkedRow =
  | Refused
  | (MarkedResult & {
      readonly set: number;
      /** Whether it counts in the tables: the same work handed in a second time does not, under another name neither. */
      readonly counts: boolean;
      readonly notes: readonly string[];
    });

/** How many students stand how at one task of a Set. */
interface TaskCount {
  readonly title: string;
  readonly level: Level;
  readonly marks: Readonly<Record<Mark, number>>;
}

/** How many students made a mistake at a kind of task, of all who handed in. */
interface MistakeCount {
  readonly title: string;
  /** Undefined: wrong, by no mistake that is known. */
  readonly mistake: string | undefined;
  readonly students: number;
  readonly of: number;
  /** What is said to it. */
  readonly sentence: string;
}

/** What one Set has brought. */
export interface MarkedSet {
  readonly set: WorkSet;
  readonly students: number;
  /** The numbers that handed in, each once, in order. How many students there are is not known here. */
  readonly numbers: readonly number[];
  readonly tasks: readonly TaskCount[];
  /** The commonest first. */
  readonly mistakes: readonly MistakeCount[];
}

/** All that was handed in, marked. */
export interface Marked {
  readonly rows: readonly MarkedRow[];
  /** The Set with the most results first. */
  readonly sets: readonly MarkedSet[];
}

/** Mark everything that was handed in. The rows stand in the order of the inputs. */
export function markResults(inputs: readonly HandedIn[]): Marked {
  const marker = makeMarker();
  const marked = inputs.map((one) => markOne(one, marker));
  const results = marked.filter((one) => 'result' in one);
  const groups = [...Map.groupBy(results, ({ result }) => sameWork(result.set)).values()].toSorted(
    (one, other) => other.length - one.length,
  );
  const rows = new Map<MarkedResult, MarkedRow>();
  const sets = groups.map((group, set) => {
    const firsts = new Map<string, MarkedResult>();
    for (const one of group) {
      const key = workKey(one.result);
      const first = firsts.get(key);
      if (first) rows.set(one, { ...one, set, counts: false, notes: [saySame(one, first)] });
      else firsts.set(key, one);
    }
    const counted = [...firsts.values()];
    const notes = notesOn(counted, marker);
    counted.forEach((one, at) => rows.set(one, { ...one, set, counts: true, notes: notes[at] ?? [] }));
    return markedSet(counted);
  });
  return { rows: marked.map((one) => ('result' in one ? (rows.get(one) as MarkedRow) : one)), sets };
}

/** What makes two results the same work: number and answers, under whatever title and name. With no answer there is only the name. */
function workKey(result: Result): string {
  const { set, name, attempts } = result;
  const who = attempts.length > 0 ? '' : name;
  return writeResultText({ ...result, set: { ...set, title: '' }, name: who });
}

const saySame = ({ result: { name } }: MarkedResult, { source, result: first }: MarkedResult): string =>
  name === first.name
    ? `The same result as ${source}.`
    : `The same answers as ${source}, which was handed in ${first.name === '' ? 'without a name' : `by ${first.name}`} under the same number: they count once.`;

/** The numbers up to `most` that are not among those that handed in. */
export function numbersMissing(numbers: readonly number[], most: number): readonly number[] {
  return Array.from({ length: most }, (_, at) => at + 1).filter((one) => !numbers.includes(one));
}

/** The counts of one Set. */
function markedSet(counted: readonly MarkedResult[]): MarkedSet {
  const [first] = counted as readonly [MarkedResult];
  // Who opened the work by its code has no title for it: one who has names it for all.
  const titled = counted.find(({ result: { set } }) => set.title !== titleByCode(set)) ?? first;
  return {
    set: titled.result.set,
    students: counted.length,
    numbers: [...new Set(counted.map(({ result }) => result.number))].toSorted((one, other) => one - other),
    tasks: first.tasks.map(({ task }, at) => ({
      title: task.title,
      level: task.id.level,
      marks: Object.fromEntries(
        MARKS.map((mark) => [mark, counted.filter(({ tasks }) => tasks[at]?.mark === mark).length]),
      ) as Record<Mark, number>,
    })),
    mistakes: mistakesOf(counted),
  };
}

/** Each student counts once for a mistake at a kind, however often it was made. */
function mistakesOf(counted: readonly MarkedResult[]): readonly MistakeCount[] {
  const found = new Map<string, Omit<MistakeCount, 'students' | 'of'> & { readonly by: Set<MarkedResult> }>();
  for (const one of counted)
    for (const { task, misses } of one.tasks)
      for (const { mistake, sentence } of misses) {
        const key = JSON.stringify([task.id.kind, mistake]);
        const known = found.get(key) ?? { title: task.title, mistake, sentence, by: new Set() };
        known.by.add(one);
        found.set(key, known);
      }
  return [...found.values()]
    .map(({ by, ...rest }) => ({ ...rest, students: by.size, of: counted.length }))
    .toSorted((one, other) => other.students - one.students);
}

/** A mistake in one line: '11 of 28: pair swapped (Lay a lead)'. */
export function sayMistake({ title, mistake, students, of }: MistakeCount): string {
  return `${students} of ${of}: ${mistake ?? 'wrong in a way that we do not know'} (${title})`;
}
