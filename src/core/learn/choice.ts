/** One answer to a question that is asked before the circuit is shown. */
export interface Choice {
  readonly text: string;
  readonly right: boolean;
  /** Why it is right or wrong, in one or two sentences. */
  readonly because: string;
}
