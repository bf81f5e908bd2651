/** Waking in slices: what a component shows comes turn by turn, so that a press between two of them is answered. */
import { untrack } from 'svelte';

/** Counts turns of the event loop from when a component has started; made while it starts. */
export class Turns {
  /** Turns that have passed, `last` at most. */
  at = $state(0);

  /** `last`: after how many turns all is shown. */
  constructor(last: number) {
    $effect(() => {
      let timer: ReturnType<typeof setTimeout> | undefined;
      const next = (): void => {
        timer = setTimeout(() => {
          this.at += 1;
          if (this.at < last) next();
        });
      };
      if (last > 0) next();
      return () => clearTimeout(timer);
    });
  }
}

/** Work that waits for its turn: called, it is done at once; it is done once in all. */
interface Waiting {
  (): void;
  /** It is not done any more. */
  readonly never: () => void;
}

function doneOnce(work: () => void): Waiting {
  let left = true;
  const once = (): void => {
    if (!left) return;
    left = false;
    work();
  };
  return Object.assign(once, { never: () => (left = false) });
}

/** The longest that work waits for a paint, milliseconds (our choice): a page that is not on show paints nothing. */
const MOST_UNTIL_PAINT = 100;

/** Does `work` once what has changed so far is painted; what comes back does it at once or never. */
export function afterPaint(work: () => void): Waiting {
  const once = doneOnce(work);
  requestAnimationFrame(() => setTimeout(once));
  setTimeout(once, MOST_UNTIL_PAINT);
  return once;
}

/** What a press sets going and is not done yet: one piece at a time, so that whatever is done next finds it done. */
export class Due {
  #work: (() => void) | undefined;
  /** Whether the press that set it going still runs: a press is heard several times, as it ends and as a click. */
  #pressing = false;

  /** Does `work` once the press is answered on the screen. */
  afterPaint(work: () => void): void {
    this.wait(
      afterPaint(() => {
        this.drop();
        work();
      }),
    );
  }

  /** `work` is done as soon as something else is due, unless it is dropped before. */
  wait(work: () => void): void {
    this.finish();
    this.#work = work;
    this.#pressing = true;
    setTimeout(() => (this.#pressing = false));
  }

  drop(): void {
    this.#work = undefined;
  }

  /** Do at once what is still due. */
  finish = (): void => this.#work?.();

  /** The reader reaches for something: what an earlier press set going is done before. */
  reached = (): void => {
    if (!this.#pressing) this.finish();
  };
}

const waiting: (() => void)[] = [];

function takeTurn(): void {
  const work = waiting.shift();
  // Asked for before the work, so that none that fails holds up the next.
  if (waiting.length > 0) setTimeout(takeTurn);
  work?.();
}

/** Does `work` in a turn of its own, after all that asked before; what comes back does it at once or never. */
export function inTurn(work: () => void): Waiting {
  const once = doneOnce(work);
  if (waiting.push(once) === 1) setTimeout(takeTurn);
  return once;
}

/** A value one painted frame behind: what changes it is answered on the screen before what hangs on it is drawn. Made while a component starts. */
export class Behind<T> {
  #now = $state.raw() as T;

  constructor(value: () => T) {
    this.#now = untrack(value);
    $effect(() => {
      const next = value();
      return afterPaint(() => (this.#now = next)).never;
    });
  }

  get now(): T {
    return this.#now;
  }
}
