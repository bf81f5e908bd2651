/**
 * How hard a text is to read: the grade level of Kincaid, Fishburne, Rogers and Chissom (1975), better known as
 * Flesch-Kincaid, 0.39 words a sentence + 11.8 syllables a word - 15.59. The formula is from memory; syllables are counted by
 * a rule of thumb. A grade and five make an age: grade 9 is read at fourteen.
 */

/** The words of a text: runs of letters, with their apostrophes, and numbers. */
export function wordsOf(text: string): readonly string[] {
  return text.match(/[\p{L}\d]+(?:['’.-][\p{L}\d]+)*/gu) ?? [];
}

/** The sentences of a text, ended by a full stop, question mark, exclamation mark or paragraph; a colon ends none. */
export function sentencesOf(text: string): readonly string[] {
  return text
    .split(/[.?!](?=\s|["”’]|$)|\n\s*\n/)
    .map((sentence) => sentence.trim())
    .filter((sentence) => wordsOf(sentence).length > 0);
}

/** Endings whose vowel is not spoken: 'wire', 'wires', 'joined'; not 'table', 'changes', 'ended'. */
const SILENT = /[^aeiouy]e$|[^aeiouyscgxzh]es$|[^aeiouytd]ed$/;
const SPOKEN = /[^aeiouy]les?$/;

/** The syllables of a word: groups of vowels, without a silent ending; a number or a name in capitals counts as two. */
export function syllablesOf(word: string): number {
  if (/\d/.test(word) || /^[A-Z]{2,}$/.test(word)) return 2;
  const bare = word.toLowerCase().replace(/['’].*$/, '');
  const groups = (bare.match(/[aeiouy]+/g) ?? []).length;
  return Math.max(1, SILENT.test(bare) && !SPOKEN.test(bare) ? groups - 1 : groups);
}

/** The grade level of a text. */
export function gradeOf(text: string): number {
  const words = wordsOf(text);
  const syllables = words.reduce((sum, word) => sum + syllablesOf(word), 0);
  return 0.39 * (words.length / sentencesOf(text).length) + 11.8 * (syllables / words.length) - 15.59;
}
