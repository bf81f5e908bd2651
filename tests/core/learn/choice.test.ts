import { expect, it } from 'vitest';
import { inSomeOrder } from '../../../src/core/learn/index.ts';
import { lessonFolders, questionIn, readLesson } from '../../support/lesson-text.ts';

const CHOICES = ['a', 'b', 'c'].map((text, at) => ({ text, right: at === 2, because: text }));

it('choices come in an order that the question decides, and the same each time', () => {
  const once = inSomeOrder(CHOICES, 'How much current reaches the LED?');
  expect(inSomeOrder(CHOICES, 'How much current reaches the LED?')).toEqual(once);
  expect(once.toSorted((a, b) => a.text.localeCompare(b.text))).toEqual(CHOICES);
});

it('the right choice stands at each place about as often over all questions of the lessons', () => {
  const questions = lessonFolders().flatMap((folder) =>
    readLesson(folder).parts.map(({ source }) => questionIn(source)),
  );
  expect(questions.length).toBeGreaterThan(50);
  const counts = [0, 0, 0];
  for (const question of questions) {
    const place = inSomeOrder(CHOICES, question).findIndex(({ right }) => right);
    counts[place] = (counts[place] ?? 0) + 1;
  }
  // Three standard deviations of a binomial count with a share of one third.
  const bound = 3 * Math.sqrt((questions.length * 2) / 9);
  for (const count of counts) expect(Math.abs(count - questions.length / 3)).toBeLessThan(bound);
});
