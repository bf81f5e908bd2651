/** How sources and switches are driven in time: straight pieces between corners. */
import { elementNumber } from './compile.ts';
import type { CompiledCircuit } from './compile.ts';

/** The value at a moment: volts, amperes, or the position of a switch from 0, open, to 1, closed. */
export interface DrivePoint {
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

/** A drive made ready: the part's number beside its points. */
export interface ReadyDrive extends Drive {
  readonly index: number;
}

/**
 * Check drives against their circuit.
 * @throws when a part is not there, is no source or switch, or when points are missing, out of order or not finite.
 */
export function readyDrives(compiled: CompiledCircuit, drives: readonly Drive[]): readonly ReadyDrive[] {
  return drives.map(({ part, points }) => {
    const index = elementNumber(compiled, part);
    const kind = compiled.circuit.elements[index]?.kind;
    if (kind !== 'voltage' && kind !== 'current' && kind !== 'switch')
      throw new Error(`drive '${part}': needs a source or a switch, got a ${kind}`);
    if (points.length === 0) throw new Error(`drive '${part}': needs at least one point, got none`);
    points.forEach(({ seconds, value }, at) => {
      const before = points[at - 1]?.seconds ?? -Infinity;
      if (!Number.isFinite(seconds) || !Number.isFinite(value) || seconds < before) {
        throw new Error(
          `drive '${part}': points must be finite and in order of time, got ${value} at ${seconds} s`,
        );
      }
    });
    return { part, points, index };
  });
}

/** The value of a drive at a moment; `side` tells which end of a jump counts. */
export function driveAt(points: readonly DrivePoint[], seconds: number, side: 'before' | 'after'): number {
  let at = 0;
  const passed = (point: DrivePoint | undefined): boolean =>
    point !== undefined && (side === 'after' ? point.seconds <= seconds : point.seconds < seconds);
  while (passed(points[at])) at++;
  const next = points[at];
  const last = points[at - 1];
  if (!last) return (next as DrivePoint).value;
  if (!next) return last.value;
  return last.value + ((next.value - last.value) * (seconds - last.seconds)) / (next.seconds - last.seconds);
}

/** Every moment between two, the ends included, at which a drive has a corner; in order, none twice. */
export function cornersOf(
  drives: readonly Drive[],
  fromSeconds: number,
  toSeconds: number,
): readonly number[] {
  const inside = drives.flatMap(({ points }) =>
    points.map(({ seconds }) => seconds).filter((seconds) => seconds > fromSeconds && seconds < toSeconds),
  );
  return [...new Set([fromSeconds, ...inside, toSeconds])].sort((a, b) => a - b);
}
