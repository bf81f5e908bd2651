/** Reading between rows and carrying on past them: exact for parabolas, and off by the remainder of Lagrange for a cubic. */
import { describe, expect, it } from 'vitest';
import { driveAt } from '../../../src/core/circuit/drive.ts';
import type { Drive } from '../../../src/core/circuit/drive.ts';
import {
  blendAt,
  makeBlend,
  readBlend,
  readRow,
  setBlend,
  setSlopeBlend,
} from '../../../src/core/circuit/interpolation.ts';
import { predict } from '../../../src/core/circuit/predictor.ts';
import type { StepWork } from '../../../src/core/circuit/step-work.ts';
import type { Trajectory } from '../../../src/core/circuit/trajectory.ts';
import { seededRandom } from '../../support/random.ts';

type Curve = (time: number) => number;

/** Rows of two columns, a curve and three times it, at these times; only what reading needs. */
function rowsOf(curve: Curve, times: readonly number[], more: Partial<Trajectory> = {}): Trajectory {
  return {
    times: Float64Array.from(times),
    rows: Float64Array.from(times.flatMap((time) => [curve(time), 3 * curve(time)])),
    width: 2,
    count: times.length,
    unitSeconds: 1e-6,
    slopes: undefined,
    ...more,
  } as Trajectory;
}

/** Both columns at a time by the rows from `first` on. */
function readAt(run: Trajectory, first: number, time: number): readonly number[] {
  const [blend, into] = [makeBlend(), new Float64Array(2)];
  setBlend(run, first, time, blend);
  readRow(run, blend, into, 2);
  return [...into];
}

const random = seededRandom(7);
const between = (least: number, most: number): number => least + (most - least) * random.next();
/** Parabolas and three uneven times for each. */
const DRAWN = Array.from({ length: 200 }, () => {
  const [a, b, c] = [between(-5, 5), between(-5, 5), between(-5, 5)] as const;
  const start = between(0, 2);
  const gap = between(0.01, 1);
  const second = start + gap;
  return {
    curve: (time: number): number => a + b * time + c * time * time,
    slope: (time: number): number => b + 2 * c * time,
    times: [start, second, second + between(0.01, 2)],
    gap,
    asked: between(-1, 5),
  };
});

describe('the parabola through three rows', () => {
  it('is exact for a parabola, between the rows and beyond them, at every column', () => {
    for (const { curve, times, asked, gap } of DRAWN) {
      const [one = NaN, three = NaN] = readAt(rowsOf(curve, times), 0, asked);
      const size = 1e-9 * (1 + Math.abs(curve(asked))) * (1 + 1 / gap ** 2);
      expect(Math.abs(one - curve(asked))).toBeLessThan(size);
      expect(three).toBeCloseTo(3 * one, 6);
    }
  });

  it('has the slope of a parabola, too', () => {
    for (const { curve, slope, times, asked, gap } of DRAWN) {
      const [run, blend] = [rowsOf(curve, times), makeBlend()];
      setBlend(run, 0, asked, blend);
      setSlopeBlend(run, asked, blend);
      const found = readBlend(blend, (row) => run.rows[2 * row] ?? NaN);
      const size = 1e-8 * (1 + Math.abs(slope(asked))) * (1 + 1 / gap ** 2);
      expect(Math.abs(found - slope(asked))).toBeLessThan(size);
    }
  });

  it('gives each row itself at its own time', () => {
    const run = rowsOf((time) => Math.exp(time), [0, 0.3, 1]);
    run.times.forEach((time) => expect(readAt(run, 0, time)[0]).toBeCloseTo(Math.exp(time), 12));
  });

  it('misses a cubic by the product of the distances to its rows (the remainder of Lagrange)', () => {
    const run = rowsOf((time) => time ** 3, [1, 2, 4]);
    for (const time of [0.5, 1.5, 3, 5]) {
      const remainder = (time - 1) * (time - 2) * (time - 4);
      expect(time ** 3 - (readAt(run, 0, time)[0] ?? NaN)).toBeCloseTo(remainder, 10);
    }
  });

  it('weighs rows so that a level stays a level and has no slope, whatever there is of them', () => {
    for (const count of [1, 2, 3]) {
      const [run, blend] = [rowsOf(() => 2.5, [0, 1, 3].slice(0, count)), makeBlend()];
      setBlend(run, 0, 0.7, blend);
      expect(blend.weights.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 14);
      expect(readAt(run, 0, 0.7)[0]).toBeCloseTo(2.5, 12);
      setSlopeBlend(run, 0.7, blend);
      expect(blend.weights.reduce((sum, one) => sum + one, 0)).toBeCloseTo(0, 14);
    }
  });

  it('is a straight line through two rows, and the row itself where there is one', () => {
    const line = (time: number): number => 1 - 2 * time;
    expect(readAt(rowsOf(line, [1, 3]), 0, 2)[0]).toBeCloseTo(-3, 12);
    expect(readAt(rowsOf(line, [1]), 0, 9)[0]).toBeCloseTo(-1, 12);
  });

  it('takes the rows about the time that is asked for, in seconds, and the last ones beyond the end', () => {
    const blend = makeBlend();
    const run = rowsOf((time) => time, [0, 1, 2, 4, 8, 16]);
    const firstAt = (units: number): number => {
      blendAt(run, units * 1e-6, blend);
      return blend.first;
    };
    expect([0, 0.5, 1.5, 3, 5, 12, 20].map(firstAt)).toEqual([0, 0, 0, 1, 2, 3, 3]);
    for (const units of [0, 0.5, 1.5, 3, 5, 12, 20]) {
      blendAt(run, units * 1e-6, blend);
      expect(readBlend(blend, (row) => run.rows[2 * row] ?? NaN)).toBeCloseTo(units, 9);
    }
  });
});

describe('the prediction of a step', () => {
  const predicted = (run: Trajectory, time: number): number => {
    const work = { predicted: new Float64Array(2), blend: makeBlend() } as StepWork;
    predict(run, work, 2, time);
    return work.predicted[0] ?? NaN;
  };

  it('carries a parabola on exactly from three rows', () => {
    const curve = (time: number): number => 3 - time + 2 * time * time;
    expect(predicted(rowsOf(curve, [0, 1, 2, 2.5]), 3)).toBeCloseTo(curve(3), 10);
  });

  it('goes along the slope that is known where there is one row, and by a parabola with it where there are two', () => {
    const curve = (time: number): number => 3 - time + 2 * time * time;
    // The slope is that at time 0, a second: a unit is a microsecond.
    const slopes = Float64Array.from([-1 / 1e-6, -3 / 1e-6]);
    expect(predicted(rowsOf(curve, [0], { slopes }), 0.5)).toBeCloseTo(3 - 0.5, 10);
    expect(predicted(rowsOf(curve, [0, 1], { slopes }), 2)).toBeCloseTo(curve(2), 10);
  });

  it('stays where it is with one row of which nothing more is known', () => {
    expect(
      predicted(
        rowsOf(() => 1.7, [0]),
        4,
      ),
    ).toBeCloseTo(1.7, 12);
  });
});

describe('the value of a drive', () => {
  const drive: Drive = {
    part: 'V',
    points: [
      { seconds: 1, value: 0 },
      { seconds: 2, value: 4 },
      { seconds: 2, value: 1 },
      { seconds: 4, value: 3 },
    ],
  };

  it('is level before the first point and after the last, and straight between', () => {
    expect([0, 1, 1.5, 3, 4, 9].map((at) => driveAt(drive, at, 'after'))).toEqual([0, 0, 2, 2, 3, 3]);
    expect([0, 1, 1.5, 3, 4, 9].map((at) => driveAt(drive, at, 'before'))).toEqual([0, 0, 2, 2, 3, 3]);
  });

  it('is both values at a jump, by the side that is asked about', () => {
    expect(driveAt(drive, 2, 'before')).toBe(4);
    expect(driveAt(drive, 2, 'after')).toBe(1);
  });
});
