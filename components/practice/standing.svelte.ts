/** Where the reader stands, worked out in the background. */
import type { LearnRecord, Standing } from '../../src/core/learn/index.ts';
import { isDue } from '../../src/core/learn/index.ts';
import { Background } from '../parts/background.svelte.ts';
import { startWorker } from '../parts/start-worker.ts';
import standingsWorker from './standings-worker.ts?worker&url';

/** Where a record stands; asked again whenever it changes. Made while a component starts. */
export class Standings {
  readonly #asked = new Background<LearnRecord, readonly Standing[]>(() => startWorker(standingsWorker));
  readonly #untried: readonly Standing[];
  readonly #record: () => LearnRecord;

  /** `untried` is where every kind stands without a record: that needs no work. */
  constructor(untried: readonly Standing[], record: () => LearnRecord) {
    this.#untried = untried;
    this.#record = record;
    $effect(() => {
      if (record().attempts.length > 0) this.#asked.ask(record());
    });
  }

  /** Every kind; as if untried as long as that is not known. */
  get all(): readonly Standing[] {
    return this.#isEmpty ? this.#untried : (this.#asked.answer ?? this.#untried);
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

/** How far the reader is: lessons whose every kind of task was answered right, and kinds due. */
export function progressOf(
  all: readonly Standing[],
  today: number,
): { readonly done: readonly string[]; readonly due: number } {
  const lessons = [...new Set(all.map(({ lesson }) => lesson))];
  return {
    done: lessons.filter((name) => all.every(({ lesson, done }) => lesson !== name || done)),
    due: all.filter((one) => isDue(one, today)).length,
  };
}

/** What is said of kinds that readers mark themselves, after the count of all others; '' for none. */
export function sayMarked(marked: readonly Standing[]): string {
  const done = marked.filter(({ done: isDone }) => isDone).length;
  return marked.length === 0 ? '' : `; of ${marked.length} that you mark yourself ${done} done`;
}
