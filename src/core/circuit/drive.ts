/** How sources and switches are driven in time: straight pieces between breakpoints. */

/** The value at a moment: volts, amperes, or the position of a switch from 0, open, to 1, closed. */
interface DrivePoint {
  readonly seconds: number;
  readonly value: number;
}

/**
 * A part and its value over time: straight between points, level before the first and after the last. Two points at one
 * moment are a jump. Points in order of time.
 */
export interface Drive {
  readonly part: string;
  readonly points: readonly DrivePoint[];
}

/** The value of a drive at a moment; `side` tells which end of a jump counts. */
export function driveAt({ points }: Drive, seconds: number, side: 'before' | 'after'): number {
  const at = points.findIndex((point) =>
    side === 'after' ? point.seconds > seconds : point.seconds >= seconds,
  );
  const next = points[at] ?? points.at(-1)!;
  const last = points[at < 0 ? points.length - 1 : at - 1] ?? next;
  if (last === next) return last.value;
  return last.value + ((next.value - last.value) * (seconds - last.seconds)) / (next.seconds - last.seconds);
}
