/** What the fault bench's page is told: held to the table of the board, which has tests of its own. */
import { describe, expect, it } from 'vitest';
import {
  BENCH_BOARDS,
  USUAL_FREQUENCIES,
  answerFaults,
  benchTable,
  faultName,
  hideNumberedFault,
  remedyFor,
} from '../../../src/core/faults/index.ts';
import type { GuideAnswer, RoundAnswer, RoundOrder, Seen } from '../../../src/core/faults/index.ts';

const round = (order: Omit<RoundOrder, 'kind'>): RoundAnswer =>
  answerFaults({ kind: 'round', ...order }) as RoundAnswer;
const guide = (made: readonly Seen[], skipped: readonly string[] = [], hasMeter = true): GuideAnswer =>
  answerFaults({
    kind: 'guide',
    board: 'link',
    symptoms: undefined,
    made,
    skipped,
    hasMeter,
    frequencies: USUAL_FREQUENCIES,
  }) as GuideAnswer;

const FRESH = { board: 'link', hidden: 7, made: [], end: undefined } as const;

describe('what may be checked', () => {
  it('belongs to a part of the board, and every part has something', () => {
    const parts = {
      link: ['sender', 'lead 1', 'pedal 1'],
      chain: ['sender', 'lead 1', 'pedal 1', 'lead 2', 'pedal 2'],
    };
    for (const board of BENCH_BOARDS)
      expect(new Set(round({ ...FRESH, board }).choices.map(({ place }) => place))).toEqual(
        new Set(parts[board]),
      );
  });

  it('is asked for by eye or swap alone where there is no meter, to the end', () => {
    const table = benchTable('link');
    const made: Seen[] = [];
    for (;;) {
      const { asks } = guide(made, [], false);
      if (asks === undefined) break;
      const one = table.observations.findIndex(({ id }) => id === asks);
      expect(table.observations[one]?.effort).toBeLessThan(3);
      made.push({ id: asks, seen: table.good[one] ?? '' });
    }
    expect(made.length).toBeGreaterThan(2);
  });
});

describe('a round', () => {
  it('is the same for a fault by its name as by its number, and says when there is none of a name', () => {
    const { fault } = hideNumberedFault('link', 7);
    const named = round({ ...FRESH, hidden: faultName(fault) });
    expect(named.symptoms).toEqual(round(FRESH).symptoms);
    expect(() => round({ ...FRESH, hidden: 'lead 9: open' })).toThrow(
      "hidden fault: a 'link' has no fault 'lead 9: open'",
    );
  });

  it('shows the symptoms of the fault with its number, and hides what was not observed', () => {
    for (const board of BENCH_BOARDS) {
      const answer = round({ ...FRESH, board });
      expect(answer.symptoms).toEqual(hideNumberedFault(board, 7).symptoms);
      expect(answer.choices.map(({ id }) => id)).toEqual(benchTable(board).observations.map(({ id }) => id));
      expect(answer.choices.every(({ seen }) => seen === undefined)).toBe(true);
      expect(answer.end).toBeUndefined();
    }
  });

  it('shows only the observation that was made, as the table has it for this fault', () => {
    const table = benchTable('link');
    const { fault } = hideNumberedFault('link', 7);
    const at = table.faults.findIndex((one) => one.kind === fault.kind && one.place === fault.place);
    const [first] = table.observations;
    const { choices } = round({ ...FRESH, made: [first?.id ?? ''] });
    expect(choices.filter(({ seen }) => seen !== undefined).map(({ id, seen }) => [id, seen])).toEqual([
      [first?.id, table.seen[0]?.[at]],
    ]);
    expect(choices.map(({ good }) => good)).toEqual(table.good);
  });

  it('offers each name once, whatever the variants', () => {
    for (const board of BENCH_BOARDS) {
      const names = round({ ...FRESH, board }).names.map(({ name }) => name);
      expect(new Set(names)).toEqual(new Set(benchTable(board).faults.map(faultName)));
      expect(names).toHaveLength(new Set(names).size);
    }
  });

  it('ends right with the hidden name, wrong with another, and without a grade when it was shown', () => {
    const { fault } = hideNumberedFault('link', 7);
    const { names } = round(FRESH);
    const right = round({ ...FRESH, end: { named: faultName(fault) } }).end;
    expect(right?.grade?.right).toBe(true);
    expect(right?.remedy).toBe(remedyFor(fault.kind));
    // A name whose fault shows other symptoms cannot be the hidden one, nor read alike everywhere.
    const { symptoms, faults } = benchTable('link');
    const other = names.find(({ name }) =>
      faults.every(
        (one, at) =>
          faultName(one) !== name || symptoms[at]?.join() !== hideNumberedFault('link', 7).symptoms.join(),
      ),
    );
    expect(round({ ...FRESH, end: { named: other?.name ?? '' } }).end?.grade?.right).toBe(false);
    const shown = round({ ...FRESH, end: 'shown' }).end;
    expect(shown).toMatchObject({ grade: undefined, taken: 0, truth: right?.truth });
  });

  it('refuses a name that this board has not', () => {
    expect(() => round({ ...FRESH, end: { named: 'lead 9: open' } })).toThrow(
      "hidden fault: this board has no fault 'lead 9: open'",
    );
  });
});

describe('a step of the guide', () => {
  it('lists the ways of failing with the most silent first', () => {
    const silent = guide([]).shown.map((one) => one.filter((symptom) => symptom === 'nothing').length);
    expect(silent).toEqual([...silent].sort((a, b) => b - a));
  });

  it('offers for the observation it asks what the table shows there, the good one marked', () => {
    const { asks, answers } = guide([]);
    const table = benchTable('link');
    const at = table.observations.findIndex(({ id }) => id === asks);
    expect(new Set(answers.map(({ seen }) => seen))).toEqual(
      new Set([table.good[at], ...(table.seen[at] ?? [])]),
    );
    expect(answers.filter(({ good }) => good).map(({ seen }) => seen)).toEqual([table.good[at]]);
  });

  it('never asks for what was skipped or made, and comes to an end whatever is answered', () => {
    const first = guide([]);
    expect(guide([], [first.asks ?? '']).asks).not.toBe(first.asks);
    for (const choice of [0, -1]) {
      const made: Seen[] = [];
      let step = first;
      while (step.asks !== undefined) {
        expect(made.map(({ id }) => id)).not.toContain(step.asks);
        made.push({ id: step.asks, seen: step.answers.at(choice)?.seen ?? '' });
        step = guide(made);
        const left = step.suspects.map(({ name }) => name).sort();
        expect(Object.keys(step.remedies).sort()).toEqual(left);
      }
      expect(made.length).toBeLessThanOrEqual(benchTable('link').observations.length);
    }
  });
});
