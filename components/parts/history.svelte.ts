/** Undo and redo over any plain value. */

/** Steps kept; a lead is laid in far fewer. */
const MOST_STEPS = 200;

/** A value with its past and future. `now` is what lies on the bench. */
export class History<T> {
  #past = $state.raw<readonly T[]>([]);
  #future = $state.raw<readonly T[]>([]);
  #now = $state.raw() as T;

  constructor(start: T) {
    this.#now = start;
  }

  get now(): T {
    return this.#now;
  }

  get canUndo(): boolean {
    return this.#past.length > 0;
  }

  get canRedo(): boolean {
    return this.#future.length > 0;
  }

  /** Put a new value on the bench; the same value changes nothing. */
  do(next: T): void {
    if (next === this.#now) return;
    this.#past = [...this.#past, this.#now].slice(-MOST_STEPS);
    this.#future = [];
    this.#now = next;
  }

  undo(): void {
    const last = this.#past[this.#past.length - 1];
    if (last === undefined) return;
    this.#past = this.#past.slice(0, -1);
    this.#future = [this.#now, ...this.#future];
    this.#now = last;
  }

  redo(): void {
    const [next, ...rest] = this.#future;
    if (next === undefined) return;
    this.#past = [...this.#past, this.#now];
    this.#future = rest;
    this.#now = next;
  }
}
