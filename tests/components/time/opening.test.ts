/** What the page of bytes shows before any script has come, and what is sent in its place afterwards. */
import { createRawSnippet } from 'svelte';
import { expect, test } from 'vitest';
import { send, worstOf } from '../../../components/time/send-order.ts';
import SendPanel from '../../../components/time/SendPanel.svelte';
import { stationLink } from '../../../components/time/station.ts';
import { PLAIN_JOURNEY, sendOnJourney } from '../../../src/core/signal/index.ts';
import { checkLink } from '../../../src/core/verdict/index.ts';
import { htmlOf, tablesOf, wordsOf } from '../../support/rendered.ts';

const link = stationLink({ circuit: 'driver-5v', part: '6N138', lengthMetres: 1, wiring: 'line to line' });
const order = { link, bytes: [0xc0, 0x04], journey: PLAIN_JOURNEY };
const worst = { ...order, journey: { ...PLAIN_JOURNEY, atWorst: true } };

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

test('parts at their worst are looked for only where the journey asks for them', () => {
  expect(worstOf(order)).toBeUndefined();
  expect(worstOf(worst)).toEqual(checkLink(link).inputs[0]?.worstCorner);
});

test.each([order, worst])('what is sent off the page is what the page would send', (one) => {
  const told: number[] = [];
  const { sent, worst: corner } = send({ ...one, journey: { ...one.journey, hops: 3 } }, (links) =>
    told.push(links),
  );
  const same = sendOnJourney(link, corner, one.bytes, { ...one.journey, hops: 3 });
  expect(told).toEqual([1, 2, 3]);
  expect(sent.sending.outcomes).toEqual(same.sending.outcomes);
  expect(sent.sending.arrived).toEqual(same.sending.arrived);
});
