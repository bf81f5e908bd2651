/** Records as they may come: whole, from another program, from another time, or spoiled in one field. */
import { describe, expect, it } from 'vitest';
import { NO_RECORD, mergeRecords, readRecord, withAttempt } from '../../../../src/core/learn/index.ts';
import type { Attempt } from '../../../../src/core/learn/index.ts';

const GOOD: Attempt = { task: 'loop-current.2.A', answer: '5.4 mA', hints: 0, day: 20_000 };
const MOST = 20_000;

const read = (...attempts: readonly unknown[]) => readRecord({ ...NO_RECORD, attempts });

describe('A record file', () => {
  it('of another kind is refused by what it is not', () => {
    for (const value of [
      undefined,
      null,
      7,
      'five-milliamps-record',
      [],
      {},
      { format: 'five-milliamps-set' },
      { attempts: [GOOD] },
    ])
      expect(readRecord(value)).toBe("record: expected a file with the format 'five-milliamps-record'");
  });

  it('of another version, or without a list, is refused by what came', () => {
    for (const [version, came] of [
      [2, '2'],
      ['1', '1'],
      [undefined, 'undefined'],
    ] as const)
      expect(readRecord({ ...NO_RECORD, version }), came).toBe(`record: version must be 1, got ${came}`);
    for (const attempts of [undefined, null, {}, 'GOOD'])
      expect(readRecord({ ...NO_RECORD, attempts })).toBe('record: attempts must be a list');
  });

  it('with one bad attempt is refused, and told which one it is', () => {
    for (const bad of [
      { ...GOOD, task: 'loop-current' },
      { ...GOOD, task: 'loop-current.9.A' },
      { ...GOOD, task: 'loop-current.2.AAAAA' },
      { ...GOOD, task: 7 },
      { ...GOOD, answer: 5.4 },
      { ...GOOD, answer: undefined },
      { ...GOOD, hints: 4 },
      { ...GOOD, hints: -1 },
      { ...GOOD, hints: 0.5 },
      { ...GOOD, hints: '0' },
      { ...GOOD, day: -1 },
      { ...GOOD, day: 1.5 },
      { ...GOOD, day: Number.NaN },
      { ...GOOD, day: '20000' },
      null,
      'loop-current.2.A',
    ])
      expect(read(GOOD, bad, GOOD), JSON.stringify(bad)).toBe(
        'record: attempt 2 needs a task, an answer, hints from 0 to 3 and a day',
      );
  });

  it('is taken with every hint there is, with an empty answer, and with a kind that is gone', () => {
    for (const good of [
      ...[0, 1, 2, 3].map((hints) => ({ ...GOOD, hints })),
      { ...GOOD, answer: '' },
      { ...GOOD, task: 'no-such-kind.0.VVVV' },
      { ...GOOD, day: 0 },
    ])
      expect(read(good)).toEqual({ ...NO_RECORD, attempts: [good] });
  });

  it('holds so many attempts and no more', () => {
    const many = Array.from({ length: MOST }, () => GOOD);
    expect(read(...many)).toMatchObject({ attempts: { length: MOST } });
    expect(read(...many, GOOD)).toBe('record: at most 20000 attempts, got 20001');
  });

  it('that is full loses its oldest attempt for a new one', () => {
    const many = Array.from({ length: MOST }, (_, day) => ({ ...GOOD, day }));
    const next = withAttempt({ ...NO_RECORD, attempts: many }, { ...GOOD, day: MOST });
    expect(next.attempts).toHaveLength(MOST);
    expect([next.attempts[0]?.day, next.attempts.at(-1)?.day]).toEqual([1, MOST]);
  });
});

describe('Two records', () => {
  const of = (...attempts: readonly Attempt[]) => ({ ...NO_RECORD, attempts });
  const on = (day: number, answer = GOOD.answer): Attempt => ({ ...GOOD, day, answer });

  it('as one hold an attempt once that both hold, and both where anything in it differs', () => {
    expect(mergeRecords(of(on(1)), of(on(1))).attempts).toEqual([on(1)]);
    expect(mergeRecords(of(on(1)), of({ ...on(1), hints: 1 })).attempts).toHaveLength(2);
    expect(mergeRecords(of(on(1)), of(on(1, '5 mA'))).attempts).toHaveLength(2);
  });

  it('are the same attempts whichever is merged into the other, each day after the day before', () => {
    const [one, other] = [of(on(3), on(1)), of(on(2), on(1, '7'), on(9))];
    const days = (first: typeof one, second: typeof one) =>
      mergeRecords(first, second).attempts.map(({ day }) => day);
    expect(days(one, other)).toEqual([1, 1, 2, 3, 9]);
    expect(days(other, one)).toEqual([1, 1, 2, 3, 9]);
  });

  it('that hold too many together keep the newest', () => {
    const half = (from: number) => of(...Array.from({ length: MOST }, (_, at) => on(from + 2 * at)));
    const { attempts } = mergeRecords(half(0), half(1));
    expect(attempts).toHaveLength(MOST);
    expect([attempts[0]?.day, attempts.at(-1)?.day]).toEqual([MOST, 2 * MOST - 1]);
  });
});
