import { describe, expect, it } from 'vitest';
import { edgeTimes, longestLead, STANDARD_EDGE_SECONDS } from '../../../src/core/signal/edge-times.ts';
import { lineByLine } from '../../../src/core/verdict/index.ts';
import { makeJack, makeLead } from '../../../src/core/wiring/index.ts';
import type { CircuitKind, Link } from '../../../src/core/wiring/index.ts';

const US = 1e-6;

function linkOf(circuit: CircuitKind, lengthMetres: number): Link {
  const output = makeJack('out', 'din5', 'din', { circuit });
  const input = makeJack('in', 'din5', 'din');
  const lead = makeLead('din5', 'din5', lineByLine(output, input), { lengthMetres });
  return { output, branches: [{ input, leads: [lead] }] };
}

describe('the edges of a link', () => {
  it('fall within a third of the RC of an open-drain sender that lets go', () => {
    // 15 m: 100 pF/m between the pair, and 120 pF/m from each core to the shield. Once let go, the sink line is charged
    // through 33 and 220 ohm: 2.2 x 253 ohm x 15 m x (40 + 120) pF/m = 1.34 us. The LED's own voltage falls meanwhile, and
    // the last microamperes fade slowly, so a hand estimate can be no closer than that.
    const byHand = 2.2 * 253 * 15 * 160e-12;
    const { toIdleSeconds } = edgeTimes(linkOf('driver-3v3', 15));
    expect(Math.abs(toIdleSeconds - byHand) / byHand).toBeLessThan(1 / 3);
  });

  it('grow in step with the length of a long lead', () => {
    // What the lead stores grows with its length and the resistors stay, so twice the lead takes about twice the time.
    const at = (metres: number): number => edgeTimes(linkOf('driver-3v3', metres)).toIdleSeconds;
    expect(at(80) / at(40)).toBeGreaterThan(1.9);
    expect(at(80) / at(40)).toBeLessThan(2.1);
  });

  it('are no steeper than the output stage that makes them', () => {
    // The stage takes 50 ns from end to end, so 40 ns from 10 to 90 %.
    const { toActiveSeconds, toIdleSeconds } = edgeTimes(linkOf('driver-5v', 0.1));
    expect(toActiveSeconds).toBeGreaterThan(0.02 * US);
    expect(toIdleSeconds).toBeGreaterThan(0.02 * US);
    expect(toActiveSeconds).toBeLessThan(0.3 * US);
  });

  it('are no numbers where nothing swings', () => {
    const { output, branches } = linkOf('driver-5v', 1);
    const input = branches[0]?.input ?? makeJack('in', 'din5', 'din');
    const dead: Link = { output, branches: [{ input, leads: [makeLead('din5', 'din5', [])] }] };
    expect(edgeTimes(dead).toActiveSeconds).toBeNaN();
  });
});

describe('the longest lead by its edges', () => {
  it.each(['driver-5v', 'driver-3v3'] as const)(
    'for a %s keeps both edges within 2 us, and a metre more does not',
    (circuit) => {
      const found = longestLead((metres) => linkOf(circuit, metres));
      const within = (metres: number): boolean => {
        const { toActiveSeconds, toIdleSeconds } = edgeTimes(linkOf(circuit, metres));
        return Math.max(toActiveSeconds, toIdleSeconds) <= STANDARD_EDGE_SECONDS;
      };
      expect(within(found.metres)).toBe(true);
      expect(within(found.metres + 1)).toBe(false);
      expect(found.metres).toBeGreaterThan(15);
      expect(found.slow).toBe(circuit === 'driver-5v' ? 'toActiveSeconds' : 'toIdleSeconds');
    },
  );

  it('reports nothing that gave way where the bound is out of reach', () => {
    expect(longestLead((metres) => linkOf('driver-5v', metres), 1e-3)).toEqual({ metres: 100, slow: null });
  });
});
