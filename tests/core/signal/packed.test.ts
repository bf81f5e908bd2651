import { expect, test } from 'vitest';
import { PLAIN_JOURNEY, journeyLink, journeySteps, sendOnJourney } from '../../../src/core/signal/journey.ts';
import { packSending, unpackSending } from '../../../src/core/signal/packed.ts';
import type { LegRun } from '../../../src/core/signal/send.ts';
import { inputTrace } from '../../../src/core/signal/show.ts';
import { checkLink } from '../../../src/core/verdict/index.ts';
import { makeJack, makeLead, wires } from '../../../src/core/wiring/index.ts';
import { runThrough } from '../../../src/core/signal/index.ts';

const LINK = {
  output: makeJack('out', 'din5', 'din'),
  branches: [
    {
      input: makeJack('in', 'din5', 'din', { part: 'H11L1' as const }),
      leads: [makeLead('din5', 'din5', wires('4-4', '5-5', '2-2'))],
    },
  ],
};
const BYTES = [0x90, 0x3c, 0x40];
const JOURNEY = { ...PLAIN_JOURNEY, hops: 3 };

test('a sending comes out of a worker as it went in: the same bytes, and the same current at every moment', () => {
  const worst = checkLink(LINK).inputs[0]?.worstCorner;
  const sent = sendOnJourney(LINK, worst, BYTES, { ...JOURNEY, atWorst: true });
  const time = journeyLink(LINK, worst, { atWorst: true });
  const came = unpackSending(time, structuredClone(packSending(sent.sending)));
  expect(came.outcomes).toEqual(sent.sending.outcomes);
  expect(came.reception).toEqual(sent.sending.reception);
  for (const [at, leg] of sent.sending.legs.entries()) {
    const other = came.legs[at] as LegRun;
    expect(inputTrace(time, other, 0, 0, 300e-6)).toEqual(inputTrace(sent.time, leg, 0, 0, 300e-6));
  }
});

test('a journey taken link by link says after each how many are done, and ends with the same', () => {
  const told: number[] = [];
  const { sending } = runThrough(journeySteps(LINK, {}, BYTES, JOURNEY), (one) => told.push(one));
  expect(told).toEqual([1, 2, 3]);
  expect(sending.outcomes).toEqual(sendOnJourney(LINK, {}, BYTES, JOURNEY).sending.outcomes);
});
