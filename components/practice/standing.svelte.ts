/** Where the reader stands, worked out in the background. */
import type { LearnRecord, Standing } from '../../src/core/learn/index.ts';
import { onMount } from 'svelte';
import { NO_RECORD, isDue, untried } from '../../src/core/learn/index.ts';
import { dayNow } from '../keep/moments.ts';
import { Background } from '../parts/background.svelte.ts';
import { startWorker } from '../parts/start-worker.ts';
import { keptRecord } from '../keep/stored-record.ts';
import standingsWorker from './standings-worker.ts?worker&url';

/** A kind of task as the page of practice lists it. */
interface ListedKind {
  readonly kind: string;
  readonly title: string;
  readonly selfMarked: boolean;
}

/** A lesson that has tasks, with its kinds of tasks. */
export interface PractisedLesson {
  readonly name: string;
  readonly title: string;
  readonly kinds: readonly ListedKind[];
}

/** Where every kind of these lessons stands without a record: that needs no work. */
export function untriedOf(lessons: readonly PractisedLesson[]): readonly Standing[] {
  return lessons.flatMap(({ name, kinds }) =>
    kinds.map(({ kind, selfMarked }) => untried({ kind, lesson: name, selfMarked })),
  );
}

/** How a kind of task stands, in one word for its mark. */
export type Stands = 'not tried yet' | 'not right yet' | 'right' | 'known';

/** How a kind of task stands. */
export function standsAs({ tried, done, known }: Standing): Stands {
  if (known) return 'known';
  if (done) return 'right';
  return tried > 0 ? 'not right yet' : 'not tried yet';
}

/** When a kind of task comes back, told on a day. */
export function sayBack({ due }: Standing, today: number): string {
  if (due === undefined) return 'at any time';
  if (due <= today) return 'today';
  return due === today + 1 ? 'tomorrow' : `in ${due - today} days`;
}

/** Where a record stands; asked again whenever it changes. Made while a component starts. */
export class Standings {
  readonly #asked = new Background<LearnRecord, readonly Standing[]>(() => startWorker(standingsWorker));
  readonly #without: readonly Standing[];
  readonly #record: () => LearnRecord;

  /** `without` is where every kind stands without a record. */
  constructor(without: readonly Standing[], record: () => LearnRecord) {
    this.#without = without;
    this.#record = record;
    $effect(() => {
      if (record().attempts.length > 0) this.#asked.ask(record());
    });
  }

  /** Every kind; as if untried as long as that is not known. */
  get all(): readonly Standing[] {
    return this.#isEmpty ? this.#without : (this.#asked.answer ?? this.#without);
  }

  /** Whether it is still worked out. */
  get waiting(): boolean {
    return !this.#isEmpty && this.#asked.waiting;
  }

  /** Why it is not known. */
  get problem(): string {
    return this.#asked.problem;
  }

  get #isEmpty(): boolean {
    return this.#record().attempts.length === 0;
  }
}

/** How far the reader is in one lesson: kinds that are judged, and what is said of those that readers mark themselves ('' for none). */
interface LessonProgress {
  readonly lesson: string;
  readonly kinds: number;
  readonly tried: number;
  readonly done: number;
  readonly known: number;
  readonly due: number;
  readonly marked: string;
}

/** How far the reader is: every lesson, those whose every kind of task was answered right, and how many kinds are due. */
export interface Progress {
  readonly lessons: readonly LessonProgress[];
  readonly done: readonly string[];
  readonly due: number;
}

/** How far the reader is on a day. */
export function progressOf(all: readonly Standing[], today: number): Progress {
  const isDueNow = (one: Standing): boolean => isDue(one, today);
  const ofLessons = [...Map.groupBy(all, ({ lesson }) => lesson)];
  return {
    lessons: ofLessons.map(([lesson, kinds]) => {
      const judged = kinds.filter(({ selfMarked }) => !selfMarked);
      return {
        lesson,
        kinds: judged.length,
        tried: judged.filter(({ tried }) => tried > 0).length,
        done: judged.filter(({ done }) => done).length,
        known: judged.filter(({ known }) => known).length,
        due: judged.filter(isDueNow).length,
        marked: sayMarked(kinds.filter(({ selfMarked }) => selfMarked)),
      };
    }),
    done: ofLessons.filter(([, kinds]) => kinds.every(({ done }) => done)).map(([lesson]) => lesson),
    due: all.filter(isDueNow).length,
  };
}

/** How far the reader of this page is by the record in the browser. Made while a component starts. */
export class Progressing {
  #record = $state.raw<LearnRecord>(NO_RECORD);
  readonly #standing = new Standings([], () => this.#record);

  constructor() {
    onMount(() => {
      this.#record = keptRecord().record;
    });
  }

  /** Undefined for a reader without a record, and before it is known. */
  get progress(): Progress | undefined {
    const { all } = this.#standing;
    return all.length > 0 ? progressOf(all, dayNow()) : undefined;
  }
}

/** What is said of kinds that readers mark themselves, after the count of all others; '' for none. */
function sayMarked(marked: readonly Standing[]): string {
  const done = marked.filter(({ done: isDone }) => isDone).length;
  return marked.length === 0 ? '' : `; of ${marked.length} that you mark yourself ${done} right`;
}
