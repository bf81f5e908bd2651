/** Long work done to its end: each step is told in its order, and only what comes of it is handed back. */
import { describe, expect, it } from 'vitest';
import { runThrough } from '../../../src/core/signal/index.ts';

function* countTo(most: number): Generator<number, string> {
  for (let at = 1; at <= most; at++) yield at;
  return `${most} done`;
}

describe('work that is done step by step', () => {
  it('tells every step, in order, and hands back what comes of it', () => {
    const told: number[] = [];
    expect(runThrough(countTo(3), (step) => told.push(step))).toBe('3 done');
    expect(told).toEqual([1, 2, 3]);
  });

  it('ends at once where there is no step, and needs nobody to tell', () => {
    expect(runThrough(countTo(0), () => expect.unreachable())).toBe('0 done');
    expect(runThrough(countTo(2))).toBe('2 done');
  });

  it('lets what goes wrong in a step through, after the steps before it', () => {
    const told: number[] = [];
    const fails = (step: number): void => {
      told.push(step);
      if (step === 2) throw new Error('no solution');
    };
    expect(() => runThrough(countTo(3), fails)).toThrow('no solution');
    expect(told).toEqual([1, 2]);
  });
});
