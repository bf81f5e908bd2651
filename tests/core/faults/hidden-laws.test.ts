/** Laws of the hunt: the truth is never ruled out, nothing that is seen adds a suspect, and likelihoods add up. */
import { describe, expect, it } from 'vitest';
import { USUAL_FREQUENCIES, benchTable, suspectsLeft } from '../../../src/core/faults/bench-table.ts';
import type { Seen } from '../../../src/core/faults/bench-table.ts';
import { BENCH_BOARDS, BOARD_FAULTS, boardFaults, faultName } from '../../../src/core/faults/board-faults.ts';
import type { BoardFault } from '../../../src/core/faults/board-faults.ts';
import { guide } from '../../../src/core/faults/guide.ts';
import { gradeFault, hideFault, hideNumberedFault, observe } from '../../../src/core/faults/hidden-fault.ts';
import { seededRandom } from '../../support/random.ts';

/** Every fault of both boards, hidden. */
const HIDDEN = BENCH_BOARDS.flatMap((board) =>
  benchTable(board).faults.map((fault, at) => ({
    at,
    hidden: { board, fault, symptoms: benchTable(board).symptoms[at] ?? [] },
  })),
);
/** Some observations of a board in an order drawn by seed. */
function someOf(board: (typeof BENCH_BOARDS)[number], seed: number): readonly string[] {
  const random = seededRandom(seed);
  const ids = benchTable(board).observations.map(({ id }) => id);
  return ids
    .map((id) => ({ id, place: random.next() }))
    .sort((one, other) => one.place - other.place)
    .slice(0, 5)
    .map(({ id }) => id);
}

describe('what observations leave', () => {
  it('always has the hidden fault in it, whatever is looked at', () => {
    HIDDEN.forEach(({ at, hidden }, seed) => {
      const made = someOf(hidden.board, seed).map((id) => observe(hidden, id));
      const left = suspectsLeft(benchTable(hidden.board), hidden.symptoms, made);
      expect(left, faultName(hidden.fault)).toContain(at);
    });
  });

  it('never grows with one more observation, and does not hang on their order', () => {
    HIDDEN.forEach(({ hidden }, seed) => {
      const table = benchTable(hidden.board);
      const made = someOf(hidden.board, 900 + seed).map((id) => observe(hidden, id));
      const sets = made.map((_, count) => suspectsLeft(table, hidden.symptoms, made.slice(0, count)));
      sets.forEach((set, at) => {
        for (const one of set) expect(sets[at - 1] ?? set).toContain(one);
      });
      expect(suspectsLeft(table, hidden.symptoms, made.toReversed())).toEqual(
        suspectsLeft(table, hidden.symptoms, made),
      );
    });
  });

  it('is every fault where symptoms are not known and nothing was looked at, and none where nothing shows that', () => {
    for (const board of BENCH_BOARDS) {
      const table = benchTable(board);
      expect(suspectsLeft(table, undefined, [])).toEqual([...table.faults.keys()]);
      expect(suspectsLeft(table, undefined, [{ id: 'lamp sender', seen: 'blue' }])).toEqual([]);
      expect(suspectsLeft(table, undefined, [{ id: 'no such look', seen: 'lit' }])).toEqual([]);
    }
  });

  it('parts into the symptoms of the board: each fault shows one set of them', () => {
    for (const board of BENCH_BOARDS) {
      const table = benchTable(board);
      const shown = [...new Map(table.symptoms.map((one) => [one.join(), one])).values()];
      const all = shown.flatMap((symptoms) => suspectsLeft(table, symptoms, []));
      expect([...all].sort((one, other) => one - other)).toEqual([...table.faults.keys()]);
    }
  });
});

describe('the guide', () => {
  it('gives likelihoods that add up to one, the likeliest first, as the frequencies stand to one another', () => {
    for (const { hidden } of HIDDEN) {
      const { suspects } = guide(hidden.board, hidden.symptoms, []);
      const shares = suspects.map(({ probability }) => probability);
      expect(shares.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 9);
      expect(shares).toEqual([...shares].sort((one, other) => other - one));
      const [first] = suspects;
      const kind = BOARD_FAULTS.find((one) => first?.name.endsWith(`: ${one}`));
      for (const { name, probability } of suspects) {
        const other = BOARD_FAULTS.find((one) => name.endsWith(`: ${one}`));
        if (!kind || !other) throw new Error(`expected a kind in '${name}'`);
        expect(probability / (first?.probability ?? NaN)).toBeCloseTo(
          USUAL_FREQUENCIES[other] / USUAL_FREQUENCIES[kind],
          9,
        );
      }
    }
  });

  it('asks only for what can still tell something, and says how many faults are left', () => {
    for (const { hidden } of HIDDEN) {
      const made: Seen[] = [];
      for (
        let step = guide(hidden.board, hidden.symptoms, made);
        ;
        step = guide(hidden.board, hidden.symptoms, made)
      ) {
        expect(step.observation === undefined).toBe(step.bits === 0);
        if (!step.observation) {
          expect(step.words).toMatch(/^(Only one fault is left\. |Nothing more can tell these apart: )/);
          break;
        }
        expect(step.words).toBe(
          step.suspects.length === 1
            ? step.words
            : `${step.suspects.length} faults are left. ${step.observation.words}`,
        );
        const before = suspectsLeft(benchTable(hidden.board), hidden.symptoms, made).length;
        made.push(observe(hidden, step.observation.id));
        expect(suspectsLeft(benchTable(hidden.board), hidden.symptoms, made).length).toBeLessThanOrEqual(
          before,
        );
      }
    }
  });

  it('takes a fault that is never met for all but impossible, not for none', () => {
    const never = { ...USUAL_FREQUENCIES, 'wrong-channel': 0 };
    const { suspects } = guide('link', ['nothing'], [], never);
    const channel = suspects.find(({ name }) => name === 'pedal 1: wrong-channel');
    expect(channel?.probability).toBeGreaterThan(0);
    expect(channel?.probability).toBeLessThan(1e-6);
  });
});

describe('a fault that is hidden', () => {
  it('is the first at the least draw and the last at the most, each fault in between', () => {
    for (const board of BENCH_BOARDS) {
      const { faults } = benchTable(board);
      expect(hideFault(board, 0).fault).toEqual(faults[0]);
      expect(hideFault(board, 1 - 1e-12).fault).toEqual(faults.at(-1));
      expect(hideFault(board, 1).fault).toEqual(faults.at(-1));
      const drawn = new Set(
        Array.from({ length: 2000 }, (_, at) => JSON.stringify(hideFault(board, at / 2000).fault)),
      );
      expect(drawn).toEqual(new Set(faults.map((fault) => JSON.stringify(fault))));
    }
  });

  it('is the only one that can be where all others are never met', () => {
    const only = Object.fromEntries(
      BOARD_FAULTS.map((kind) => [kind, kind === 'bank-missing' ? 1000 : 0]),
    ) as typeof USUAL_FREQUENCIES;
    for (const draw of [0.01, 0.5, 0.99])
      expect(hideFault('chain', draw, only).fault.kind).toBe('bank-missing');
  });

  it('has a number that is whole and from 1 to 9999', () => {
    for (const [number, got] of [
      [0, '0'],
      [10_000, '10000'],
      [1.5, '1.5'],
      [NaN, 'NaN'],
    ] as const)
      expect(() => hideNumberedFault('link', number)).toThrow(
        `hidden fault: number must be whole, from 1 to 9999, got ${got}`,
      );
    for (const number of [1, 9999])
      expect(hideNumberedFault('chain', number)).toEqual(hideNumberedFault('chain', number));
  });
});

describe('the grade of a name', () => {
  /** A grade asks for the best of all ways to go on, so a few faults of each board have to do. */
  const SOME = HIDDEN.filter((_, at) => at % 11 === 0);
  const NAMES = (board: (typeof BENCH_BOARDS)[number]): readonly Pick<BoardFault, 'kind' | 'place'>[] =>
    boardFaults(board);

  it('is right for the truth and for what reads alike everywhere, and for nothing else', () => {
    for (const { hidden } of SOME) {
      const table = benchTable(hidden.board);
      const rowOf = (name: string): readonly string[] =>
        table.faults.flatMap((fault, at) =>
          faultName(fault) === name ? [table.answers.map((row) => row[at]).join()] : [],
        );
      const own = table.faults.findIndex((fault) => JSON.stringify(fault) === JSON.stringify(hidden.fault));
      const truth = table.answers.map((row) => row[own]).join();
      for (const named of NAMES(hidden.board)) {
        const { right } = gradeFault(hidden, named, []);
        const alike = rowOf(faultName(named)).includes(truth);
        expect(right, `${faultName(hidden.fault)} named ${faultName(named)}`).toBe(
          faultName(named) === faultName(hidden.fault) || alike,
        );
      }
    }
  });

  it('counts what was looked at, and is proved only where nothing else is left', () => {
    for (const { hidden } of SOME) {
      const all = benchTable(hidden.board).observations.map(({ id }) => observe(hidden, id));
      const whole = gradeFault(hidden, hidden.fault, all);
      expect([whole.right, whole.proved, whole.taken]).toEqual([true, true, all.length]);
      expect(whole.sentence).toMatch(
        /^Right, and settled\. You took \d+; the best way takes \d+\.\d on average/,
      );
      expect(gradeFault(hidden, hidden.fault, []).fewest).toBe(whole.fewest);
    }
  });
});
