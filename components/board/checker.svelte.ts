/** The check of the board on the desk: at once from what is solved already, else once it is solved in the background while the page is painted. */
import { untrack } from 'svelte';
import { checkRemembered, unsolvedBoard } from '../../src/core/board/index.ts';
import type { CheckProgress, Connected } from '../../src/core/board/index.ts';
import type { JackPlace, Plan } from '../../src/core/plan/index.ts';
import type { LinkMemory } from '../../src/core/verdict/index.ts';
import { Background } from '../parts/background.svelte.ts';
import { startWorker } from '../parts/start-worker.ts';
import type { BoardAnswer, BoardOrder } from './board-solver.ts';
import boardWorker from './board-worker.ts?worker&url';

/** A solving that is over sooner shows no bar, milliseconds (our choice): the page would jump twice in a blink. */
const BAR_AFTER_MILLISECONDS = 400;

/** Circuits that the page solves itself (our choice): the one that a changed value touches takes no longer than a worker's answer. */
const MOST_AT_ONCE = 1;

/** Checks a plan again whenever it changes; made while a component starts. Nothing of an older plan is ever shown for a newer one. */
export class Checker {
  readonly #plan: () => Plan;
  readonly #memory: LinkMemory;
  readonly #solver: Background<BoardOrder, BoardAnswer, CheckProgress>;
  /** The plan that is being solved for the page. */
  #asked: Plan | undefined;
  #joined: ((made: Connected) => void) | undefined;
  /** Counts what was learned: the memory itself is no state. */
  #learned = $state(0);
  #long = $state(false);
  #clock: ReturnType<typeof setTimeout> | undefined;

  readonly #known = $derived.by(() =>
    this.#learned < 0 ? undefined : checkRemembered(this.#plan(), this.#memory, MOST_AT_ONCE),
  );
  readonly check = $derived.by(() => this.#known ?? unsolvedBoard(this.#plan()));

  constructor(plan: () => Plan, memory: LinkMemory, start = (): Worker => startWorker(boardWorker)) {
    this.#plan = plan;
    this.#memory = memory;
    this.#solver = new Background(start, ({ solved, made }) => {
      this.#asked = undefined;
      this.learn(solved);
      const joined = this.#joined;
      this.#joined = undefined;
      if (made) joined?.(made);
    });
    $effect(() => {
      if (!this.#known) this.start();
      else if (this.#asked) this.stop();
    });
  }

  /** Circuits that were solved elsewhere, as by the build: they are not solved again. */
  learn(solved: BoardAnswer['solved']): void {
    for (const [key, one] of solved) this.#memory.set(key, one);
    this.#learned += 1;
  }

  /** Whether the links are being solved, and nothing is known of them yet. */
  get solving(): boolean {
    return !this.#known && this.#solver.busy;
  }

  /** How far the check in the background is; undefined while there is none that takes long. */
  get progress(): CheckProgress | undefined {
    return this.solving && this.#long ? (this.#solver.progress ?? { done: 0, of: 0 }) : undefined;
  }

  /** Why the work in the background ended without an answer, in words; empty where it did not. */
  get problem(): string {
    return this.#solver.problem;
  }

  /** Solve the links of the board as it is now; what was asked before no longer counts. */
  start = (): void => {
    const plan = this.#plan();
    // What a worker solved for an order that no longer counts is not sent: the next worker begins knowing nothing.
    if (this.#asked !== plan && untrack(() => this.#solver.busy)) this.#solver.cancel();
    this.#asked = plan;
    this.#long = false;
    clearTimeout(this.#clock);
    this.#clock = setTimeout(() => (this.#long = true), BAR_AFTER_MILLISECONDS);
    this.#solver.ask({ plan });
  };

  stop = (): void => {
    this.#asked = undefined;
    this.#solver.cancel();
  };

  /** Make ready for a `join` that is likely to come. */
  ready(): void {
    if (this.#known) this.#solver.wake();
  }

  /**
   * Join two jacks in the background; `made` hears what came of it, once and unless `forget` is called before. False, and nothing is
   * done, while the board itself is being solved there.
   */
  join(output: JackPlace, input: JackPlace, made: (made: Connected) => void): boolean {
    if (!this.#known) return false;
    this.#joined = made;
    this.#solver.ask({ plan: this.#plan(), join: { output, input } });
    return true;
  }

  /** What comes of a `join` is not wanted any more. */
  forget(): void {
    this.#joined = undefined;
  }
}
