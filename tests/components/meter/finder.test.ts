/** The jack finder as the build brings it: with the answer to what it starts with, and nothing that is still to come. */
import { expect, test } from 'vitest';
import { FRESH } from '../../../components/meter/finder-state.ts';
import JackFinder from '../../../components/meter/JackFinder.svelte';
import { answerFinder } from '../../../src/core/readings/index.ts';
import { htmlOf, tablesOf, wordsOf } from '../../support/rendered.ts';

test('The finder begins with its first reading and ranking in place, so that nothing moves when it wakes', () => {
  const first = answerFinder(FRESH.evidence, FRESH.taken);
  const html = htmlOf(JackFinder, { solved: first });
  expect(html).toContain('aria-busy="false"');
  expect(wordsOf(html)).toContain(first.sentence);
  expect(wordsOf(html)).toContain(`Next reading ${first.advice?.what}`);
  const [ranking] = tablesOf(html);
  expect(ranking?.caption).toContain('Before any reading');
  expect(ranking?.rows[0]?.[0]).toBe(first.rows[0]?.words);
  expect(wordsOf(html)).not.toContain('Which lead?');
});
