import { describe, expect, test } from 'vitest';
import { gradeOf, sentencesOf, syllablesOf, wordsOf } from '../support/readability.ts';

describe('The measure of readability', () => {
  test('counts syllables as they are spoken', () => {
    const words = { wire: 1, table: 2, joined: 1, ended: 2, changes: 2, resistance: 3, message: 2 };
    expect(Object.keys(words).map((word) => [word, syllablesOf(word)])).toEqual(Object.entries(words));
  });

  test('gives the grade of two sentences worked out by hand', () => {
    // 12 words, 2 sentences, 12 syllables: 0.39 x 6 + 11.8 x 1 - 15.59.
    const text = 'The cat sat on the mat. The dog ran to the door.';
    expect(sentencesOf(text).length).toBe(2);
    expect(wordsOf(text).length).toBe(12);
    expect(gradeOf(text)).toBeCloseTo(-1.45, 6);
  });

  test('finds a text too hard that is', () => {
    const text =
      'Notwithstanding considerable environmental variability, unidirectional optoelectronic isolation characteristically guarantees uninterrupted galvanic separation of interconnected instruments.';
    expect(gradeOf(text)).toBeGreaterThan(9);
  });
});
