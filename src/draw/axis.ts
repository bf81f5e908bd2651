/** A straight axis. Written out here because the library's scale carries number formats and colours that no figure needs. */

/** From values to pixels. `at` and `back` are each other's inverse inside the stretch. */
interface Axis {
  /** Pixels of a value. */
  readonly at: (value: number) => number;
  /** The value under a place. */
  readonly back: (pixels: number) => number;
  /** Round values inside the stretch, at most about `count` and never more than `count` and one. */
  readonly ticks: (count: number) => readonly number[];
}

/** Steps that people count in, within a power of ten. */
const STEPS = [1, 2, 5, 10] as const;

/** The digits that a tick keeps, so that 3 times 0.1 is 0.3. */
const DIGITS = 12;

/** An axis over the values `from` to `to`, drawn from pixel `start` to pixel `end`. @throws RangeError when it has no length. */
export function straightAxis(
  [from, to]: readonly [number, number],
  [start, end]: readonly [number, number],
): Axis {
  if (!(to > from)) throw new RangeError(`axis: must end after ${from}, got ${to}`);
  const scale = (end - start) / (to - from);
  return {
    at: (value) => start + (value - from) * scale,
    back: (pixels) => from + (pixels - start) / scale,
    ticks: (count) => {
      const least = (to - from) / Math.max(1, count);
      const power = 10 ** Math.floor(Math.log10(least));
      const step = power * (STEPS.find((one) => one * power >= least * (1 - 1e-9)) ?? 10);
      const first = Math.ceil(from / step - 1e-9);
      const last = Math.floor(to / step + 1e-9);
      return Array.from({ length: last - first + 1 }, (_, at) =>
        Number(((first + at) * step).toPrecision(DIGITS)),
      );
    },
  };
}
