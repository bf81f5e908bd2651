/** Undo and redo over any plain value. */

/** Steps kept; a lead is laid in far fewer. */
const MOST_STEPS = 200;

const left = (steps: number): string =>
  steps === 0 ? 'Nothing is left' : `${steps} more ${steps === 1 ? 'step is' : 'steps are'} left`;

/** Which way a key goes through the steps: back with Ctrl or Cmd and Z, forth with Y, or with Shift too; undefined for any other key. */
export function wayOfKey({
  key,
  ctrlKey,
  metaKey,
  altKey,
  shiftKey,
}: KeyboardEvent): 'undo' | 'redo' | undefined {
  const letter = key.toLowerCase();
  if (!(ctrlKey || metaKey) || altKey || (letter !== 'z' && letter !== 'y')) return undefined;
  return letter === 'y' || shiftKey ? 'redo' : 'undo';
}

/** A value with its past and future. `now` is what lies on the bench. */
export class History<T> {
  #past = $state.raw<readonly T[]>([]);
  #future = $state.raw<readonly T[]>([]);
  #now = $state.raw() as T;
  #told = $state.raw('');

  constructor(start: T) {
    this.#now = start;
  }

  get now(): T {
    return this.#now;
  }

  /** What the last step did, in words for who does not see it; no undoing sounds like the one before. */
  get told(): string {
    return this.#told;
  }

  get canUndo(): boolean {
    return this.#past.length > 0;
  }

  get canRedo(): boolean {
    return this.#future.length > 0;
  }

  /** Put a new value on the bench, with words for what was done; the same value changes nothing. */
  do(next: T, told = ''): void {
    if (next === this.#now) return;
    this.#past = [...this.#past, this.#now].slice(-MOST_STEPS);
    this.#future = [];
    this.#now = next;
    this.#told = told;
  }

  /** What a step will be told as, before it is taken; empty where there is none that way. */
  tells(way: 'undo' | 'redo'): string {
    if (way === 'undo') return this.canUndo ? `Undone. ${left(this.#past.length - 1)} to undo.` : '';
    return this.canRedo ? `Done again. ${left(this.#future.length - 1)} to do again.` : '';
  }

  undo(): void {
    const told = this.tells('undo');
    const last = this.#past[this.#past.length - 1];
    if (last === undefined) return;
    this.#past = this.#past.slice(0, -1);
    this.#future = [this.#now, ...this.#future];
    this.#now = last;
    this.#told = told;
  }

  redo(): void {
    const told = this.tells('redo');
    const [next, ...rest] = this.#future;
    if (next === undefined) return;
    this.#past = [...this.#past, this.#now];
    this.#future = rest;
    this.#now = next;
    this.#told = told;
  }
}
