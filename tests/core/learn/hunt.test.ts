/** Splitting a pile by hand: four suspects, one look that halves them and one that picks a single one out. */
import { describe, expect, test } from 'vitest';
import { huntFor, saySplit, seenAt, splitBy, workedHunt } from '../../../src/core/learn/index.ts';
import type { Pile } from '../../../src/core/learn/index.ts';

const PILE: Pile = {
  suspects: ['a', 'b', 'c', 'd'].map((name) => ({ name, words: `fault ${name}`, remedy: `Mend ${name}.` })),
  looks: [
    { id: 'light', words: 'Look at the light', seen: ['dark', 'dark', 'lit', 'lit'] },
    { id: 'plug', words: 'Open the plug', seen: ['whole', 'whole', 'whole', 'broken'] },
    { id: 'lid', words: 'Look at the lid', seen: ['shut', 'shut', 'shut', 'shut'] },
  ],
};
const [LIGHT, PLUG, LID] = [0, 1, 2];

describe('Splitting', () => {
  test('groups the suspects by what each shows', () => {
    expect(splitBy(PILE, LIGHT)).toEqual([
      { answer: 'dark', suspects: [0, 1] },
      { answer: 'lit', suspects: [2, 3] },
    ]);
    expect(splitBy(PILE, LID)).toEqual([{ answer: 'shut', suspects: [0, 1, 2, 3] }]);
  });

  test('says the worst that may be left, and whether another look tells more', () => {
    // Halves tell one bit, one against three 0.81 bits, and a look that always shows the same none.
    expect(saySplit(PILE, LIGHT)).toBe('At worst 2 of 4 are left. No check in this list tells more.');
    expect(saySplit(PILE, PLUG)).toBe('At worst 3 of 4 are left. Another check in this list tells more.');
    expect(saySplit(PILE, LID)).toBe('At worst 4 of 4 are left. Another check in this list tells more.');
  });

  test('of a look or suspect that is not there shows nothing', () => {
    expect(seenAt(PILE, 9, 0)).toBe('');
    expect(seenAt(PILE, LIGHT, 9)).toBe('');
  });
});

describe('A hunt', () => {
  test('keeps those that show what the hidden one showed', () => {
    expect(huntFor(PILE, 3, [])).toEqual({
      left: [0, 1, 2, 3],
      over: false,
      sentence: '4 of 4 suspects are left.',
    });
    expect(huntFor(PILE, 2, [LIGHT])).toEqual({
      left: [2, 3],
      over: false,
      sentence: 'Seen: lit. 2 of 4 suspects are left.',
    });
  });

  test('ends when one is left, and says what to do about it', () => {
    // By hand: the light, then for c and d the plug: 1, 1, 2 and 2 looks, 1.5 on average, and no way is shorter.
    expect(huntFor(PILE, 3, [LIGHT, PLUG])).toEqual({
      left: [3],
      over: true,
      sentence:
        'Seen: broken. Found: fault d. Mend d. You needed 2 checks; the best way needs 1.5 on average over all 4.',
    });
    expect(huntFor(PILE, 3, [PLUG]).sentence).toContain('You needed 1 check;');
  });

  test('ends too when nothing in the list parts those that are left', () => {
    expect(huntFor(PILE, 0, [LIGHT])).toMatchObject({ left: [0, 1], over: true });
    expect(huntFor(PILE, 0, [LIGHT]).sentence).toContain(
      'No check in this list separates those that are left.',
    );
  });

  test('is not ended by a look that tells nothing', () => {
    expect(huntFor(PILE, 0, [LID])).toMatchObject({ left: [0, 1, 2, 3], over: false });
  });
});

describe('A hunt that is shown', () => {
  test('takes the check that halves the pile first, then the one that tells the last two apart', () => {
    expect(workedHunt(PILE, 2)).toEqual([
      {
        check: 'Look at the light',
        why: 'It splits the 4 that are left into 2 and 2.',
        seen: 'lit',
        left: [2, 3],
      },
      {
        check: 'Open the plug',
        why: 'It splits the 2 that are left into 1 and 1.',
        seen: 'whole',
        left: [2],
      },
    ]);
  });

  test('ends where no check tells more, and never takes one twice', () => {
    expect(workedHunt(PILE, 0).map(({ left }) => left)).toEqual([[0, 1]]);
    expect(workedHunt({ ...PILE, looks: PILE.looks.slice(LID) }, 0)).toEqual([]);
  });
});
