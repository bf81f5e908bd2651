import { checkLink } from '../../../src/core/verdict/check.ts';
import { drawAllBuilds } from './build.ts';
import { influenceOf } from '../../../src/core/verdict/influence.ts';
import { BUILDS, drawBuilds } from '../../../src/core/verdict/tolerance.ts';
import type { Driver } from '../../../src/core/wiring/drivers.ts';
import type { Part } from '../../../src/core/wiring/parts.ts';
import type { Receiver } from '../../../src/core/wiring/receivers.ts';
import { makeJack, makeLead, wires } from '../../../src/core/wiring/link.ts';
import type { Link } from '../../../src/core/wiring/link.ts';
import { describe, expect, test } from 'vitest';
import { runThrough } from '../../../src/core/signal/index.ts';

function dinLink(circuit: Driver, part: Part, receiver: Receiver = 'receiver-isolated', metres = 1): Link {
  return {
    output: makeJack('out', 'din5', 'din', { circuit }),
    branches: [
      {
        input: makeJack('in', 'din5', 'din', { part, circuit: receiver }),
        leads: [makeLead('din5', 'din5', wires('4-4', '5-5', '2-2'), { lengthMetres: metres })],
      },
    ],
  };
}

describe('builds drawn by chance', () => {
  test.each<[Driver, Part]>([
    ['driver-5v', '6N138'],
    ['driver-5v', 'unknown'],
    ['driver-3v3', 'PC900V'],
  ])('never pass the worst corner, and come near it: %s into %s', (circuit, part) => {
    const link = dinLink(circuit, part);
    const [worst] = checkLink(link).inputs;
    const [input] = drawAllBuilds(link, { builds: 4000 }).inputs;
    expect(input?.least.active).toBeGreaterThanOrEqual(worst?.worstActive ?? NaN);
    // Six tolerances would all have to be bad at once: the worst of 4000 stays within a tenth of the corner.
    expect(input?.least.active).toBeLessThan((worst?.worstActive ?? NaN) * 1.1);
    expect(input?.most.idle).toBeLessThanOrEqual((worst?.worstIdle ?? NaN) + 1e-9);
  });

  test('a link that flows works in every build; an impossible threshold in none', () => {
    expect(drawAllBuilds(dinLink('driver-5v', '6N138'), { builds: 1000 }).works).toBe(1000);
    const link = dinLink('driver-5v', '6N138');
    const deaf = {
      ...link,
      branches: link.branches.map((branch) => ({
        ...branch,
        input: { ...branch.input, values: { turnOnAmperes: 20e-3 } },
      })),
    };
    expect(drawAllBuilds(deaf, { builds: 1000 }).works).toBe(0);
  });

  test('a threshold at the middle of the drawn currents lets about half of the builds work', () => {
    const link = dinLink('driver-5v', '6N138');
    const [plain] = drawAllBuilds(link).inputs;
    const bars = plain?.histogram.active;
    let below = 0;
    const at = bars?.counts.findIndex((count) => (below += count) >= BUILDS / 2) ?? NaN;
    const median = (bars?.from ?? NaN) + ((at + 0.5) / 40) * ((bars?.to ?? NaN) - (bars?.from ?? NaN));
    const half = {
      ...link,
      branches: link.branches.map((branch) => ({
        ...branch,
        input: { ...branch.input, values: { turnOnAmperes: median } },
      })),
    };
    const { works, builds } = drawAllBuilds(half);
    // The median is known to half a bar, 0.08 mA of a spread of about 0.4 mA: within a fifth.
    expect(Math.abs(works / builds - 0.5)).toBeLessThan(0.2);
  });

  test('histograms count every build once, from 0 to beyond the threshold', () => {
    const { inputs, builds } = drawAllBuilds(dinLink('driver-3v3', 'unknown'), { builds: 500 });
    for (const { histogram, on } of inputs) {
      for (const { counts, from, to } of [histogram.idle, histogram.active]) {
        expect(counts.reduce((sum, count) => sum + count, 0)).toBe(builds);
        expect(from).toBeLessThanOrEqual(0);
        expect(to).toBeGreaterThanOrEqual(on);
      }
    }
  });

  test('the same seed draws the same builds, another seed others', () => {
    const link = dinLink('driver-5v', 'H11L1');
    const one = drawAllBuilds(link, { seed: 5, builds: 300 });
    expect(drawAllBuilds(link, { seed: 5, builds: 300 })).toEqual(one);
    expect(drawAllBuilds(link, { seed: 6, builds: 300 }).inputs[0]?.least).not.toEqual(one.inputs[0]?.least);
  });

  test('the supply matters most at 5 V: its variance over that of all, from the loop equation', () => {
    // I = (V - VF) / 660: supply 1 V wide, LED 0.4 V wide, each resistor 22 ohm of 660 at 5.4 mA: 0.12 V wide. Squares: 1, 0.16,
    // 3 x 0.0139; so 83 % supply, 13 % LED, 1.2 % each resistor.
    const [input] = drawAllBuilds(dinLink('driver-5v', '6N138')).inputs;
    const [first, second, third] = input?.matters ?? [];
    expect(first?.name).toBe('supply');
    expect(first?.share).toBeCloseTo(0.83, 1);
    expect(second?.name).toBe('LED voltage');
    expect(second?.share).toBeCloseTo(0.13, 1);
    expect(third?.share).toBeLessThan(0.03);
    expect(input?.matters.length).toBe(3);
  });

  test('come in chunks that tell how far they are, so that a worker can report and stop', () => {
    const told: number[] = [];
    const { builds } = runThrough(drawBuilds(dinLink('driver-5v', '6N138'), { builds: 1000 }), ({ done }) =>
      told.push(done),
    );
    expect(told).toEqual([250, 500, 750]);
    expect(builds).toBe(1000);
    expect(() => drawAllBuilds(dinLink('driver-5v', '6N138'), { builds: 0 })).toThrow(
      'tolerance: builds must be a whole number above 0, got 0',
    );
  });
});

test('influence is the square of the correlation: all of it, or none', () => {
  const [one, other] = [Float64Array.of(0, 0, 1, 1), Float64Array.of(0, 1, 0, 1)];
  const values = one.map((place) => 3 * place + 2);
  expect(influenceOf(['first', 'second'], [one, other], values)).toEqual([{ name: 'first', share: 1 }]);
});
