/** A figure to choose in, on paper: room to write beside each choice, and what comes of each for the page that explains. */
import { expect, test } from 'vitest';
import OnPaper from '../../../components/lesson/OnPaper.svelte';
import { allOf, htmlOf } from '../../support/rendered.ts';

test('each choice has a line to write on, and its answer', () => {
  const html = htmlOf(OnPaper, {
    answers: [
      ['straight', 'Reversed.'],
      ['crossed', 'Works.'],
    ],
  });
  expect(html).toMatch(/<dl class="print-only/);
  expect(allOf(html, 'dt')).toEqual(['straight', 'crossed']);
  expect(allOf(html, 'dd')).toEqual(['', 'Reversed.', '', 'Works.']);
});
