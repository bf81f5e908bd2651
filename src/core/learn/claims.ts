/** What a lesson's text says, in a form that a test can hold to the core. */

/** A number that a text gives only bounds for: it must lie strictly between them. */
interface Bounds {
  readonly above: number;
  readonly below: number;
}

/**
 * The claims of a lesson: what the text says, in a sentence, and pairs of what the core gives and what the text needs.
 * A pair holds when both are equal, or when the number lies within the bounds.
 */
export type Claims = Readonly<Record<string, () => readonly (readonly [given: unknown, needed: unknown])[]>>;

/** Numbers strictly between two others, in the unit of what they bound. */
export function between(above: number, below: number): Bounds {
  return { above, below };
}

/** Numbers strictly above another, in its unit. */
export function above(bound: number): Bounds {
  return { above: bound, below: Infinity };
}
