/**
 * Our operating point against the SPICE engine on random networks of resistors, diodes of real parts, sources, switches and
 * capacitors: every node and every part. The seeds are fixed, so a failure names a network that can be drawn again.
 */
import { describe, expect, test, vi } from 'vitest';
import { compileCircuit } from '../../src/core/circuit/compile.ts';
import { solveOperatingPoint } from '../../src/core/circuit/operating-point.ts';
import { compareAll, said, worstOf } from '../support/agreement.ts';
import type { Comparison } from '../support/agreement.ts';
import { deckOf } from '../support/deck-of.ts';
import { randomNetwork } from '../support/networks.ts';
import { seededRandom } from '../support/random.ts';
import { runOperatingPoint } from '../support/spice.ts';

// A run is about 20 s of work alone on two cores; the limit leaves room for a busy machine.
vi.setConfig({ testTimeout: 240_000 });

/** 500 networks: how many of each size, and the most nodes of that size. */
const SIZES = [
  { networks: 470, least: 1, most: 20 },
  { networks: 20, least: 21, most: 60 },
  { networks: 10, least: 100, most: 200 },
] as const;

let solved = 0;
let worst: Comparison | undefined;

describe('random networks agree with the engine at every node and in every part', () => {
  let from = 1;
  for (const { networks, least, most } of SIZES) {
    const first = from;
    from += networks;
    test(`${networks} networks of ${least} to ${most} nodes, seeds ${first} to ${from - 1}`, async () => {
      for (let seed = first; seed < first + networks; seed += 1) {
        const random = seededRandom(seed);
        const network = randomNetwork(random, random.integer(least, most));
        const deck = deckOf(`random network, seed ${seed}`, network.circuit, network.floating);
        const theirs = await runOperatingPoint(deck.text);
        const ours = solveOperatingPoint(compileCircuit(network.circuit));
        if (!ours.ok) throw new Error(`seed ${seed}: ${ours.reason}`);
        const here = worstOf(compareAll(network, deck, ours, theirs));
        expect(here.excess, `seed ${seed}: ${said(here)}`).toBeLessThanOrEqual(1);
        worst = worst === undefined ? here : worstOf([worst, here]);
        solved += 1;
      }
    });
  }

  test('there were 500 of them', () => {
    expect(solved).toBe(500);
    if (worst) console.log(`500 random networks; the worst: ${said(worst)}`);
  });
});

describe('the networks are worth comparing', () => {
  const drawn = Array.from({ length: 470 }, (_, index) => {
    const random = seededRandom(index + 1);
    return randomNetwork(random, random.integer(1, 20));
  });

  test('every kind of part turns up often, and some parts float', () => {
    const kinds = drawn.flatMap(({ circuit }) => circuit.elements.map(({ kind }) => kind));
    for (const kind of ['resistor', 'diode', 'voltage', 'current', 'switch', 'capacitor']) {
      expect(kinds.filter((one) => one === kind).length, kind).toBeGreaterThan(100);
    }
    expect(drawn.filter(({ floating }) => floating !== undefined).length).toBeGreaterThan(30);
  });

  test('many diodes carry more than a tenth of a milliampere, and many block', () => {
    const amperes = drawn.flatMap(({ circuit }) => {
      const solution = solveOperatingPoint(compileCircuit(circuit));
      if (!solution.ok) return [];
      return circuit.elements
        .filter(({ kind }) => kind === 'diode')
        .map(({ name }) => solution.amperes(name));
    });
    expect(amperes.filter((one) => one > 1e-4).length).toBeGreaterThan(300);
    expect(amperes.filter((one) => one < 0).length).toBeGreaterThan(300);
  });

  test('the same seed draws the same network, another seed another', () => {
    expect(randomNetwork(seededRandom(7), 12)).toEqual(randomNetwork(seededRandom(7), 12));
    expect(randomNetwork(seededRandom(8), 12)).not.toEqual(randomNetwork(seededRandom(7), 12));
  });
});
