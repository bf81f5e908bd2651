import { expect, test } from 'vitest';
import { lineEdges, longestLead, withLength } from '../../../src/core/signal/lead-limit.ts';
import { makeJack, makeLead, wires } from '../../../src/core/wiring/link.ts';
import type { Driver } from '../../../src/core/wiring/circuits.ts';
import type { Link } from '../../../src/core/wiring/link.ts';

function dinLink(circuit: Driver): Link {
  return {
    output: makeJack('out', 'din5', 'din', { circuit }),
    branches: [
      {
        input: makeJack('in', 'din5', 'din'),
        leads: [makeLead('din5', 'din5', wires('4-4', '5-5', '2-2'))],
      },
    ],
  };
}

test.each<Driver>(['driver-5v', 'driver-3v3'])(
  'the longest lead of a %s passes the bound just beyond, and lies beyond the 15 m of the standard',
  (circuit) => {
    const link = dinLink(circuit);
    const { metres, gaveWay, edges, standardMetres } = longestLead(link);
    expect(standardMetres).toBe(15);
    expect(metres).toBeGreaterThan(standardMetres);
    expect(Math.max(edges.riseSeconds, edges.fallSeconds)).toBeLessThanOrEqual(2e-6);
    const beyond = lineEdges(withLength(link, metres + 0.2));
    expect(gaveWay === 'rise' ? beyond.riseSeconds : beyond.fallSeconds).toBeGreaterThan(2e-6);
    expect(edges.amperes).toBeGreaterThan(1.6e-3);
  },
);

test('an open-drain output lets go slowly: its fall grows as R C of the released line', () => {
  // Let go, the sink line charges through 33 + 220 ohm and the LED. Cores of 160 pF/m against all else: 15 m is 2.4 nF, R C 0.6 us,
  // 10 to 90 % 2.2 R C = 1.34 us, somewhat more for the LED's own resistance as its current dies.
  const { fallSeconds } = lineEdges(withLength(dinLink('driver-3v3'), 15));
  expect(fallSeconds).toBeGreaterThan(1.2e-6);
  expect(fallSeconds).toBeLessThan(1.7e-6);
});

test('a longer lead never has faster edges', () => {
  for (const circuit of ['driver-5v', 'driver-3v3'] as const) {
    const rises = [1, 5, 15, 40].map((metres) => lineEdges(withLength(dinLink(circuit), metres)).riseSeconds);
    expect(rises).toEqual([...rises].sort((a, b) => a - b));
  }
});

test('a lead too thin for its length gives way by its current', () => {
  const link = dinLink('driver-5v');
  const deaf = makeJack('in', 'din5', 'din', { values: { turnOnAmperes: 5.37e-3 } });
  const thin = { ...link, branches: link.branches.map((branch) => ({ ...branch, input: deaf })) };
  const { gaveWay, metres } = longestLead(thin);
  expect(gaveWay).toBe('current');
  expect(metres).toBeLessThan(15);
});
