/** What a reader typed, as a question, and a cause as it is shown. */
import { describe, expect, test } from 'vitest';
import CauseCard from '../../../components/arrived/CauseCard.svelte';
import {
  askedBy,
  besideSeen,
  complaintsIn,
  logAddress,
  logIn,
  namesNotes,
} from '../../../components/arrived/question.ts';
import { NOTHING_TYPED, TYPED_KIND } from '../../../components/arrived/typed-state.ts';
import { ask, hex } from '../../core/arrived/ask.ts';
import { allOf, htmlOf, wordsOf } from '../../support/rendered.ts';

const FIELDS = { sent: '', seen: '', writing: 'either', middleOctave: 4, complaints: [] } as const;

describe('the fields', () => {
  test('become a question; nothing sent means that nobody knows', () => {
    expect(askedBy({ ...FIELDS, sent: '90 3C', seen: 'F3*' })).toEqual({
      question: { sent: [0x90, 0x3c], seen: [{ value: 0xf3, bad: true }], complaints: [] },
      sentProblem: '',
      seenProblem: '',
    });
    expect(askedBy({ ...FIELDS, complaints: ['notes stick'] })).toEqual({
      question: { seen: [], complaints: ['notes stick'] },
      sentProblem: '',
      seenProblem: '',
    });
  });

  test('say each by itself what is wrong', () => {
    expect(askedBy({ ...FIELDS, sent: '90 q', seen: '90' })).toEqual({
      sentProblem: "line 1: expected bytes in hex, each of two digits from 00 to FF, got 'q'",
      seenProblem: '',
    });
  });

  test('keep what can be read of a log, and tell the first three lines that were left out', () => {
    const { question, seenProblem } = askedBy({ ...FIELDS, seen: '90 3C 40\n?\nq1\nq2\nq3\nq4\n80 3C 40' });
    expect(question?.seen.map(({ value }) => value)).toEqual([0x90, 0x3c, 0x40, 0x80, 0x3c, 0x40]);
    expect(seenProblem).toMatch(
      /^Read without what is no byte\. line 3: .*; line 4: .*; line 5: .*; and 1 more\.$/,
    );
  });

  test('ask what middle C is called only where a note has a name', () => {
    expect([namesNotes('note on ch 1 C4 64'), namesNotes('90 3C 40')]).toEqual([true, false]);
  });

  test('say of words that they are no bytes, and what to do instead', () => {
    expect(askedBy({ ...FIELDS, sent: 'hello', seen: 'it buzzes' })).toEqual({
      sentProblem: "There are no bytes in 'hello'. Enter bytes such as 90 3C 40, or leave this empty.",
      seenProblem:
        "There are no bytes in 'it buzzes'. Enter bytes such as 90 3C 40, or tick below what goes wrong.",
    });
  });

  test('take the words of a tick, typed where bytes stand, as that tick', () => {
    expect(complaintsIn('Notes stick.')).toEqual({ complaints: ['notes stick'], rest: '' });
    expect(complaintsIn('F3 00\nslow works, fast does not')).toEqual({
      complaints: ['slow works, fast does not'],
      rest: 'F3 00',
    });
    // The same words in another order.
    expect(complaintsIn('only works with one sender').complaints).toEqual(['it works with one sender only']);
    expect(complaintsIn('F3 00')).toEqual({ complaints: [], rest: 'F3 00' });
  });

  test('travel in an address and back', () => {
    const address = logAddress([0x90, 0x3c], [0x00]);
    expect(address).toBe('#sent=90-3C&seen=00');
    expect(logIn(address)).toEqual({ sent: '90 3C', seen: '00' });
    expect(logIn('#nothing-arrives')).toBeUndefined();
  });
});

describe('a cause', () => {
  test('is shown with what it gives, what was seen, where to look and what to change', () => {
    const [cause] = ask('90 3C 40', '00 30 00').causes;
    if (!cause) throw new Error('slow to release: not found');
    const html = htmlOf(CauseCard, { cause, seen: hex('00 30 00'), place: 1 });
    expect(allOf(html, 'h3')).toEqual(['1. The input is slow to let go more than 99 %']);
    expect(allOf(html, 'dd')).toEqual(['00 30 00', '00 30 00']);
    expect(wordsOf(html)).toMatch(/Here: late by [\d.]+ µs to [\d.]+ µs\./);
    expect(wordsOf(html)).toContain('Simulated with 64 µs after each byte.');
    expect(wordsOf(html)).toContain(cause.words.look);
    expect(allOf(html, 'strong')).toEqual([cause.words.change]);
  });

  test('has each byte that differs from the one seen marked', () => {
    expect(besideSeen(hex('90 3C*'), hex('90 3D'))).toEqual([
      { text: '90', same: true },
      { text: '3C*', same: false },
    ]);
  });
});

describe('what stands in the fields', () => {
  const typed = {
    sent: '90 3C',
    seen: 'F3*',
    writing: 'decimal',
    middleOctave: 3,
    complaints: ['notes stick'],
  } as const;

  test('is kept, and comes back as it was', () => {
    expect(TYPED_KIND.read(TYPED_KIND.write(typed))).toEqual({ value: typed });
  });

  test('that is spoiled gives what can be read of it; a choice that is not known is as on a first visit', () => {
    const odd = { ...typed, writing: 'runes', middleOctave: 99, complaints: ['it rains', 'notes stick'] };
    expect(TYPED_KIND.read(JSON.stringify(odd))).toEqual({
      value: { ...NOTHING_TYPED, sent: '90 3C', seen: 'F3*', complaints: ['notes stick'] },
    });
    expect(TYPED_KIND.read('{"sent":5,"seen":"90"}')).toEqual({
      value: { ...NOTHING_TYPED, seen: '90' },
      problem: 'some of it is not known here',
    });
    expect(TYPED_KIND.read('{"half').value).toBeUndefined();
  });
});
