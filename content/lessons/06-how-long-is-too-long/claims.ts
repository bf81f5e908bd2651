import {
  above,
  atMetres,
  between,
  edgesOf,
  sayLongest,
  sendOver,
  solve,
} from '../../../src/core/learn/index.ts';
import type { AuthoredLink, Claims } from '../../../src/core/learn/index.ts';
import { STANDARD_EDGE_SECONDS } from '../../../src/core/signal/index.ts';
import { STANDARD_METRES } from '../../../src/core/wiring/index.ts';
import { links } from './data.ts';

const active = (link: AuthoredLink): number => solve(link).inputs[0]?.active ?? NaN;

const slowerEdge = (link: AuthoredLink, metres: number): number => {
  const { toActiveSeconds, toIdleSeconds } = edgesOf(atMetres(link, metres));
  return Math.max(toActiveSeconds, toIdleSeconds);
};

/** What becomes of a program change. */
const outcomes = (link: AuthoredLink, hops: number): readonly string[] =>
  sendOver(link, [{ kind: 'program change', channel: 0, program: 4 }], {
    hops,
  }).sending.outcomes.map(({ outcome }) => outcome);

export const claims: Claims = {
  'a lead far beyond the standard still carries nearly all of the current': () => [
    [active(links.fiveFar) / active(links.five), above(0.95)],
    [solve(links.fiveFar).notes.some(({ kind }) => kind === 'too-long'), true],
  ],
  'at 15 m both senders keep the bound on edges, and at 30 m only the 5 V one does': () => {
    const kept = between(0, STANDARD_EDGE_SECONDS);
    return [
      [slowerEdge(links.five, STANDARD_METRES), kept],
      [slowerEdge(links.low, STANDARD_METRES), kept],
      [slowerEdge(links.five, 2 * STANDARD_METRES), kept],
      [slowerEdge(links.low, 2 * STANDARD_METRES), above(STANDARD_EDGE_SECONDS)],
      [Number.parseInt(sayLongest(links.low)), above(STANDARD_METRES)],
    ];
  },
  'letting go is the slow edge of a 3.3 V sender': () => {
    const { toActiveSeconds, toIdleSeconds } = edgesOf(links.lowFar);
    return [[toIdleSeconds / toActiveSeconds, above(5)]];
  },
  'one very long lead delivers, two garble, and two of 15 m deliver': () => [
    [outcomes(links.lowFar, 1), ['same', 'same']],
    [outcomes(links.lowFar, 2), ['garbled', 'garbled']],
    [outcomes(atMetres(links.lowFar, STANDARD_METRES), 2), ['same', 'same']],
  ],
};
