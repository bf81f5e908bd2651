/** Waking in slices: what a component shows comes turn by turn, so that a press between two of them is answered. */

/** Resolves in the next turn of the event loop: what comes before it is painted, and a press is answered. */
export const nextTurn = (): Promise<void> => new Promise((resolve) => void setTimeout(resolve));

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
