/** A few faults of a board and a few things to look at, as plain data: asked of the core once, when the site is built. */

/** A fault, and what it is called. */
export interface Suspect {
  readonly name: string;
  readonly words: string;
  /** What to do about it. */
  readonly remedy: string;
}

/** Something to look at, swap or measure; `seen` is what each suspect would show, in their order. */
export interface Look {
  readonly id: string;
  readonly words: string;
  readonly seen: readonly string[];
}

/** A pile of suspects and how it can be split. */
export interface Pile {
  readonly suspects: readonly Suspect[];
  readonly looks: readonly Look[];
}
