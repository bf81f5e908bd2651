import { RECEIVERS, above, between, hopsOf, sendOver, type Claims } from '../../../src/core/learn/index.ts';
import type { Journey } from '../../../src/core/signal/index.ts';
import { links, press, slow } from './data.ts';

const outcomes = (journey: Partial<Journey>): readonly string[] =>
  sendOver(links.slow, press, journey).sending.outcomes.map(({ outcome }) => outcome);

const software: Partial<Journey> = { ...slow, hops: 4, thru: 'software thru' };

export const claims: Claims = {
  'three links deliver, four garble, and with a base resistor four deliver': () => [
    [outcomes({ ...slow, hops: 3 }), ['same', 'same']],
    [outcomes({ ...slow, hops: 4 }), ['garbled', 'garbled']],
    [outcomes({ hops: 4 }), ['same', 'same']],
  ],
  'a chain of H11L1 is four to five times as long as one of 6N138 with base resistor, for either receiver':
    () =>
      RECEIVERS.map((receiver) => {
        const times = hopsOf(links.logic, receiver) / hopsOf(links.slow, receiver, true);
        return [times >= 4 && times <= 5, true];
      }),
  'one sample gives out at the hop of the arithmetic, and three votes hold out longer': () => [
    // 16 samples a bit, one taken for the start edge, clocks 2 % apart over 9.5 bits: (0.4375 - 0.19) x 32 us = 7.9 us;
    // 5 us a hop leave 1, 1 us a hop 7. The search may differ from it by one hop.
    [hopsOf(links.slow, 'one sample'), between(-0.5, 2.5)],
    [hopsOf(links.slow, 'one sample', true), between(5.5, 8.5)],
    [hopsOf(links.slow, 'three votes', true), above(hopsOf(links.slow, 'one sample', true))],
  ],
  'software in between garbles nothing, and holds every byte up by three bytes or more': () => [
    [outcomes(software), ['late', 'late']],
    ...sendOver(links.slow, press, software).sending.outcomes.map(
      ({ lagSeconds }) => [lagSeconds, above(3 * 320e-6)] as const,
    ),
  ],
};
