/** One way to do a thing and what the core makes of it, as plain data: asked of the core when the site is built. */

/** A row of what is shown; `amount` draws a bar, in any one unit. */
export interface ShownRow {
  readonly name: string;
  readonly words: string;
  readonly amount?: number;
  readonly good: boolean;
}

/** One way, in full. */
export interface Shown {
  readonly label: string;
  readonly grade: 'good' | 'doubtful' | 'bad';
  readonly headline: string;
  readonly rows: readonly ShownRow[];
  /** What every bar is held against. */
  readonly bound?: { readonly amount: number; readonly words: string };
  readonly sentence: string;
}
