/** What the page of bytes shows before any script has come. */
import { createRawSnippet } from 'svelte';
import { expect, test } from 'vitest';
import SendPanel from '../../../components/time/SendPanel.svelte';
import { stationLink } from '../../../components/time/station.ts';
import { htmlOf, tablesOf, wordsOf } from '../../support/rendered.ts';

const link = stationLink({ circuit: 'driver-5v', part: '6N138', lengthMetres: 1, wiring: 'line to line' });

test('the build shows the whole answer: the bytes that arrive, the figure, and the fields around them', () => {
  const inputs = createRawSnippet(() => ({ render: () => '<p>The two jacks.</p>' }));
  const html = htmlOf(SendPanel, { link, inputs, calm: true });
  const arrived = tablesOf(html).find(({ caption }) => caption === 'What arrives');
  // Program 5 on channel 1: C0 04 (MIDI 1.0, table I).
  expect(arrived?.rows.map(([sent, received, outcome]) => [sent, received, outcome])).toEqual([
    ['C0', 'C0', 'same'],
    ['04', '04', 'same'],
  ]);
  expect(html).toContain('role="slider"');
  expect(wordsOf(html)).toContain('2 bytes sent: all arrived as sent.');
  expect(wordsOf(html)).toContain('The two jacks.');
});

test('a panel of a lesson shows it too, with every part of the link at its worst where it begins so', () => {
  const html = htmlOf(SendPanel, { link, journey: { atWorst: true } });
  expect(wordsOf(html)).toContain('2 bytes sent: all arrived as sent.');
  expect(html).toContain('role="slider"');
});
