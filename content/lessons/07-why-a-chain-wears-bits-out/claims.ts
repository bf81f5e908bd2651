import {
  above,
  between,
  hopsOf,
  sendOver,
  type AuthoredLink,
  type Claims,
} from '../../../src/core/learn/index.ts';
import type { Journey } from '../../../src/core/signal/index.ts';
import { links, press } from './data.ts';

/** The same pull-up with a base resistor, which a journey may leave out. */
const drained: AuthoredLink = { ...links.bare, input: { ...links.bare.input, values: { loadOhms: 1200 } } };

const outcomes = (journey: Partial<Journey>): readonly string[] =>
  sendOver(drained, press, journey).sending.outcomes.map(({ outcome }) => outcome);

const slow: Partial<Journey> = { baseResistor: false };
const software: Partial<Journey> = { ...slow, hops: 4, thru: 'software thru' };

export const claims: Claims = {
  'three links deliver, four garble, and with a base resistor four deliver': () => [
    [outcomes({ ...slow, hops: 3 }), ['same', 'same']],
    [outcomes({ ...slow, hops: 4 }), ['garbled', 'garbled']],
    [outcomes({ hops: 4 }), ['same', 'same']],
  ],
  'a chain of H11L1 is four to five times as long as one of 6N138 with base resistor': () => {
    const times = hopsOf(links.logic) / hopsOf(links.usual);
    return [[times >= 4 && times <= 5, true]];
  },
  'one look a bit gives out at the hop of the arithmetic': () => [
    // 16 samples a bit, one taken for the start edge, clocks 2 % apart over 9.5 bits: (0.4375 - 0.19) x 32 us = 7.9 us;
    // 4.2 us a hop leave 1, 0.9 us a hop 8. The search may differ from it by one hop.
    [hopsOf(links.bare), between(0.5, 2.5)],
    [hopsOf(links.usual), between(6.5, 9.5)],
  ],
  'software in between garbles nothing, and holds every byte up by three bytes or more': () => [
    [outcomes(software), ['late', 'late']],
    ...sendOver(drained, press, software).sending.outcomes.map(
      ({ lagSeconds }) => [lagSeconds, above(3 * 320e-6)] as const,
    ),
  ],
};
