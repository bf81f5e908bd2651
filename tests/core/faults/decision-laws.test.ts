/** Laws of choosing what to look at next: counted in bits, and never better than counting allows. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alikeNames, bitsOfObservation, fewestExpected } from '../../../src/core/faults/decision.ts';
import type { Suspects } from '../../../src/core/faults/decision.ts';

/** Up to seven suspects of up to five names, with up to five observations of up to three answers. */
const anySuspects: fc.Arbitrary<Suspects> = fc
  .record({ count: fc.integer({ min: 1, max: 7 }), looks: fc.integer({ min: 0, max: 5 }) })
  .chain(({ count, looks }) =>
    fc.record({
      names: fc.array(fc.constantFrom('a', 'b', 'c', 'd', 'e'), { minLength: count, maxLength: count }),
      weights: fc.array(fc.integer({ min: 1, max: 9 }), { minLength: count, maxLength: count }),
      answers: fc.array(fc.array(fc.integer({ min: 0, max: 2 }), { minLength: count, maxLength: count }), {
        minLength: looks,
        maxLength: looks,
      }),
    }),
  );
const all = ({ names }: Suspects): readonly number[] => [...names.keys()];
const distinct = (suspects: Suspects): Suspects => ({
  ...suspects,
  names: suspects.names.map((_, at) => `fault ${at}`),
});

/** Entropy of weights, bits: the mean of log2(1 / share). */
function entropy(weights: readonly number[]): number {
  const total = weights.reduce((sum, one) => sum + one, 0);
  return weights.reduce((sum, one) => sum + (one / total) * Math.log2(total / one), 0);
}
const grouped = (suspects: Suspects, key: (at: number) => string | number): readonly number[] => [
  ...all(suspects)
    .reduce(
      (sums, at) => sums.set(key(at), (sums.get(key(at)) ?? 0) + (suspects.weights[at] ?? 0)),
      new Map(),
    )
    .values(),
];

describe('the bits of an observation', () => {
  it('are none below nothing, and no more than the names or the answers hold', () => {
    fc.assert(
      fc.property(anySuspects, (suspects) => {
        suspects.answers.forEach((row, at) => {
          const bits = bitsOfObservation(suspects, all(suspects), at);
          expect(bits).toBeGreaterThan(-1e-9);
          expect(bits).toBeLessThan(entropy(grouped(suspects, (one) => suspects.names[one] ?? '')) + 1e-9);
          expect(bits).toBeLessThan(entropy(grouped(suspects, (one) => row[one] ?? 0)) + 1e-9);
        });
      }),
      { seed: 21 },
    );
  });

  it('are those of the answers where every suspect has a name of its own', () => {
    fc.assert(
      fc.property(anySuspects.map(distinct), (suspects) => {
        suspects.answers.forEach((row, at) => {
          expect(bitsOfObservation(suspects, all(suspects), at)).toBeCloseTo(
            entropy(grouped(suspects, (one) => row[one] ?? 0)),
            9,
          );
        });
      }),
      { seed: 22 },
    );
  });

  it('do not hang on the order of the suspects, the numbers of the answers or the unit of the weights', () => {
    fc.assert(
      fc.property(anySuspects, (suspects) => {
        const other: Suspects = {
          ...suspects,
          weights: suspects.weights.map((one) => one * 7),
          answers: suspects.answers.map((row) => row.map((one) => 9 - 4 * one)),
        };
        suspects.answers.forEach((_, at) => {
          expect(bitsOfObservation(other, all(suspects).toReversed(), at)).toBeCloseTo(
            bitsOfObservation(suspects, all(suspects), at),
            9,
          );
        });
      }),
      { seed: 23 },
    );
  });

  it('are none where all answer alike, and none where only variants of one name are told apart', () => {
    const suspects = {
      names: ['x', 'x', 'x'],
      weights: [1, 2, 3],
      answers: [
        [0, 0, 0],
        [0, 1, 2],
      ],
    };
    expect(bitsOfObservation(suspects, [0, 1, 2], 0)).toBeCloseTo(0, 12);
    expect(bitsOfObservation(suspects, [0, 1, 2], 1)).toBeCloseTo(0, 12);
  });

  it('are 0.811 for one in four against three, by the table of entropies', () => {
    // H(1/4) = 1/4 log2 4 + 3/4 log2(4/3) = 0.5 + 0.3113.
    const suspects = { names: ['a', 'b', 'c', 'd'], weights: [1, 1, 1, 1], answers: [[0, 1, 1, 1]] };
    expect(bitsOfObservation(suspects, [0, 1, 2, 3], 0)).toBeCloseTo(0.8113, 4);
  });
});

describe('the fewest observations in expectation', () => {
  it('are at least the bits to be learnt over the most that one answer of three can tell', () => {
    fc.assert(
      fc.property(anySuspects.map(distinct), (suspects) => {
        const unlike = alikeNames(suspects, all(suspects));
        const wanted = entropy(
          unlike.map((names) =>
            names.reduce((sum, name) => sum + (suspects.weights[suspects.names.indexOf(name)] ?? 0), 0),
          ),
        );
        expect(fewestExpected(suspects, all(suspects))).toBeGreaterThan(wanted / Math.log2(3) - 1e-9);
      }),
      { seed: 24 },
    );
  });

  it('are never more with one more observation to choose from', () => {
    fc.assert(
      fc.property(anySuspects.map(distinct), (suspects) => {
        // Nothing more may be left to tell, so that both end at the same place.
        const full = { ...suspects, answers: [...suspects.answers, suspects.names.map((_, at) => at)] };
        const one = { ...full, answers: full.answers.slice(-1) };
        expect(fewestExpected(full, all(full))).toBeLessThanOrEqual(fewestExpected(one, all(one)) + 1e-9);
      }),
      { seed: 25 },
    );
  });

  it('are none for one suspect, for one name, for none at all, and where nothing tells', () => {
    const suspects = { names: ['a', 'a', 'b'], weights: [1, 1, 1], answers: [[0, 1, 0]] };
    expect(fewestExpected(suspects, [])).toBe(0);
    expect(fewestExpected(suspects, [2])).toBe(0);
    expect(fewestExpected(suspects, [0, 1])).toBe(0);
    // The first and the third answer alike: nothing can part them.
    expect(fewestExpected(suspects, [0, 2])).toBe(0);
  });

  it('ask for the likely first: one look at nine in ten, two at the rest', () => {
    // Weights 9, 1, 1; looks that each tell one from the others. 1 x 9/11 + 2 x 2/11 = 13/11.
    const suspects = {
      names: ['a', 'b', 'c'],
      weights: [9, 1, 1],
      answers: [
        [1, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
      ],
    };
    expect(fewestExpected(suspects, [0, 1, 2])).toBeCloseTo(13 / 11, 12);
  });

  it('refuse more suspects than they can hold, unless these answer alike', () => {
    const many = (answer: (at: number) => number) => ({
      names: Array.from({ length: 31 }, (_, at) => `fault ${at}`),
      weights: Array.from({ length: 31 }, () => 1),
      answers: [Array.from({ length: 31 }, (_, at) => answer(at))],
    });
    const left = Array.from({ length: 31 }, (_, at) => at);
    expect(() =>
      fewestExpected(
        many((at) => at),
        left,
      ),
    ).toThrow('suspects: at most 30 that differ, got 31');
    expect(
      fewestExpected(
        many((at) => at % 2),
        left,
      ),
    ).toBe(1);
  });
});

describe('names that nothing tells apart', () => {
  it('are in one group where every observation answers alike, and in one group each where none does', () => {
    const suspects = { names: ['a', 'b', 'c', 'a'], weights: [1, 1, 1, 1], answers: [[0, 0, 1, 0]] };
    expect(alikeNames(suspects, [0, 1, 2, 3])).toEqual([['a', 'b'], ['c']]);
    expect(alikeNames({ ...suspects, answers: [] }, [0, 1, 2])).toEqual([['a', 'b', 'c']]);
    expect(alikeNames(suspects, [])).toEqual([]);
  });
});
