/** The check of the board on the desk: at once where that is quick, else in the background while the page is painted. */
import { unsolvedBoard } from '../../src/core/board/index.ts';
import type { BoardCheck, CheckProgress } from '../../src/core/board/index.ts';
import type { Plan } from '../../src/core/plan/index.ts';
import type { LinkMemory } from '../../src/core/verdict/index.ts';
import { Background } from '../parts/background.svelte.ts';
import { startWorker } from '../parts/start-worker.ts';
import checkWorker from './check-worker.ts?worker&url';
import type { CheckOrder } from './check-worker.ts';
import { quickCheck } from './quick-check.ts';

/** A check done and the plan that it holds for. */
interface Checked {
  readonly plan: Plan;
  readonly check: BoardCheck;
}

/** Checks a plan again whenever it changes; made while a component starts. Nothing of an older plan is ever shown for a newer one. */
export class Checker {
  readonly #plan: () => Plan;
  readonly #memory: LinkMemory;
  readonly #solver: Background<CheckOrder, BoardCheck, CheckProgress>;
  #asked: Plan | undefined;
  #found = $state.raw<Checked>();
  #known: Checked | undefined;

  readonly #quick = $derived.by(() =>
    this.#known?.plan === this.#plan() ? this.#known.check : quickCheck(this.#plan(), this.#memory),
  );
  readonly check = $derived.by(() => {
    const plan = this.#plan();
    return this.#quick ?? (this.#found?.plan === plan ? this.#found.check : unsolvedBoard(plan));
  });

  constructor(plan: () => Plan, memory: LinkMemory) {
    this.#plan = plan;
    this.#memory = memory;
    this.#solver = new Background(
      () => startWorker(checkWorker),
      (check) => {
        if (this.#asked) this.#found = { plan: this.#asked, check };
      },
    );
    $effect(() => {
      if (this.#quick) this.#solver.cancel();
      else this.start();
    });
  }

  /** A check that was made before, as by the build: it is not made again as long as the plan is this one. */
  know(plan: Plan, check: BoardCheck): void {
    this.#known = { plan, check };
  }

  /** How far the check in the background is; undefined while there is none. */
  get progress(): CheckProgress | undefined {
    return this.#solver.busy ? (this.#solver.progress ?? { done: 0, of: 0 }) : undefined;
  }

  /** Why the check in the background ended without an answer, in words; empty where it did not. */
  get problem(): string {
    return this.#solver.problem;
  }

  /** Solve the links of the board as it is now; what was asked before no longer counts. */
  start = (): void => {
    if (this.#asked !== this.#plan()) this.#solver.cancel();
    this.#asked = this.#plan();
    this.#solver.ask({ plan: this.#asked });
  };

  stop = (): void => {
    this.#solver.cancel();
  };
}
