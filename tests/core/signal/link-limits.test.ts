/** How far a link goes: held to bytes sent through the whole simulation, one link more and one less. */
import { describe, expect, it } from 'vitest';
import {
  ONE_LOOK,
  limitRows,
  linkLimits,
  mostLinks,
  ownHop,
  prepareTimeLink,
  sendThrough,
} from '../../../src/core/signal/index.ts';
import { lineByLine } from '../../../src/core/verdict/index.ts';
import { makeJack, makeLead } from '../../../src/core/wiring/index.ts';
import type { Link, Part } from '../../../src/core/wiring/index.ts';

function linkOf(part: Part, lengthMetres: number): Link {
  const output = makeJack('out', 'din5', 'din');
  const input = makeJack('in', 'din5', 'din', { part });
  const conductors = lineByLine(output, input);
  return { output, branches: [{ input, leads: [makeLead('din5', 'din5', conductors, { lengthMetres })] }] };
}

/** Bytes that change at every bit, or hardly ever. */
const BYTES = [0x00, 0x7f, 0x00, 0x55, 0x2a, 0xff, 0x00];

const arrive = (link: Link, links: number): boolean => {
  const time = prepareTimeLink(link);
  const legs = Array.from({ length: links }, () => ({ time, hop: ownHop(time, 0, true) }));
  const { outcomes } = sendThrough(legs, BYTES, { receiver: ONE_LOOK, lateAfterSeconds: Infinity });
  return outcomes.every(({ outcome }) => outcome === 'same');
};

describe('the longest chain', () => {
  it.each([
    ['unknown', 1],
    ['PC900V', 1],
  ] as const)('of %s inputs delivers every byte when all of it is simulated', (part, metres) => {
    const link = linkOf(part, metres);
    const { value } = mostLinks(prepareTimeLink(link), { receiver: ONE_LOOK });
    expect(value).toBeGreaterThan(1);
    expect(arrive(link, value)).toBe(true);
    // Two more: the search also tries the worst moments at which the receiver may start to listen.
    expect(arrive(link, value + 2)).toBe(false);
  });

  it('of fast parts is bounded by the lead: 15 m are left behind sooner than 1 m', () => {
    const chain = (metres: number): number =>
      mostLinks(prepareTimeLink(linkOf('6N137', metres)), { receiver: ONE_LOOK }).value;
    expect(chain(15)).toBeLessThan(chain(1));
    expect(chain(1)).toBeLessThan(1024);
  });
});

describe('the table of limits', () => {
  const limits = linkLimits(linkOf('unknown', 2), true);
  const rows = limitRows(limits);

  it('says what was found, and what gave way there', () => {
    expect(rows.map(({ found }) => found)).toEqual([
      `${(limits.slow.value * 100).toFixed(2)} %`,
      `${(limits.fast.value * 100).toFixed(2)} %`,
      String(limits.hops.value),
      String(limits.hopsAtClockLimits.value),
      `${limits.lead.metres.toFixed(1)} m`,
    ]);
    expect(rows[0]?.gaveWay).toBe(limits.slow.gaveWay?.why);
    expect(rows.every(({ gaveWay, bound }) => gaveWay !== '' && bound !== '')).toBe(true);
  });

  it('gives fewer links when both clocks are off than when they are equal', () => {
    expect(limits.hopsAtClockLimits.value).toBeLessThan(limits.hops.value);
  });

  it('says that nothing gave way as far as was looked', () => {
    const far = limitRows({
      ...limits,
      lead: { metres: 100, slow: null },
      hops: { value: 1024, gaveWay: null },
    });
    expect(far[4]).toMatchObject({
      found: 'more than 100.0 m',
      gaveWay: 'nothing gave way as far as was looked',
    });
    expect(far[2]?.gaveWay).toBe('nothing gave way as far as was looked');
  });
});
