/** A store of the browser for tests without one: it holds so many characters, and refuses the next. */
export class SmallStore {
  readonly #held = new Map<string, string>();
  readonly #room: number;

  /** `room` is the most characters of all keys and texts together. */
  constructor(room = 5_000_000) {
    this.#room = room;
  }

  /** The text under a key, or null. */
  getItem(key: string): string | null {
    return this.#held.get(key) ?? null;
  }

  /** Put a text under a key. @throws QuotaExceededError when there is no room. */
  setItem(key: string, text: string): void {
    const others = [...this.#held].filter(([one]) => one !== key);
    const used = others.reduce((sum, [one, value]) => sum + one.length + value.length, 0);
    if (used + key.length + text.length > this.#room) throw new DOMException('no room', 'QuotaExceededError');
    this.#held.set(key, text);
  }

  /** Let go of a key. */
  removeItem(key: string): void {
    this.#held.delete(key);
  }
}
