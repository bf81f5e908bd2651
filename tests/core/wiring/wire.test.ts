import { describe, expect, it } from 'vitest';
import { GAUGES, wireOhmsPerMetre } from '../../../src/core/wiring/index.ts';
import { wireDiameterMetres } from '../../../src/core/wiring/wire.ts';

describe('the gauges of wire', () => {
  it('stand on the two sizes that define them: 36 is 0.005 inch and 0000 is 0.46 inch', () => {
    // ASTM B258: 39 steps between the two, each the 39th root of 92 thicker; 0000 counts as -3.
    expect(wireDiameterMetres(36)).toBeCloseTo(0.127e-3, 12);
    expect(wireDiameterMetres(-3)).toBeCloseTo(0.46 * 25.4e-3, 9);
  });

  it('halve the copper every 3 and tenth it every 10, within the rule of thumb', () => {
    // 92^(6/39) = 2.0050 and 92^(20/39) = 10.164.
    for (const gauge of GAUGES) {
      expect(wireOhmsPerMetre(gauge + 3) / wireOhmsPerMetre(gauge)).toBeCloseTo(2.005, 3);
      expect(wireOhmsPerMetre(gauge + 10) / wireOhmsPerMetre(gauge)).toBeCloseTo(10.164, 3);
    }
  });

  it('have more resistance the thinner they are, whatever the order they are listed in', () => {
    const ohms = [...GAUGES].sort((one, other) => one - other).map(wireOhmsPerMetre);
    expect(ohms).toEqual([...ohms].sort((one, other) => one - other));
  });

  it('give the resistance of handbook tables for the two thickest', () => {
    // Handbook tables of solid copper at 20 C (from memory): AWG 20 33.3 ohm/km, AWG 22 53.0 ohm/km.
    expect(wireOhmsPerMetre(20) * 1e3).toBeCloseTo(33.3, 1);
    expect(wireOhmsPerMetre(22) * 1e3).toBeCloseTo(52.9, 0);
  });

  it('stay below what the cable standard allows of plain solid copper of the same section', () => {
    // IEC 60228, class 1 at 20 C (from memory): 36.0 ohm/km for 0.5 mm2, 24.5 for 0.75, 18.1 for 1. Resistance times section is
    // at most 18.0 to 18.4 ohm mm2/km; the pure metal has 17.24.
    for (const gauge of GAUGES) {
      const squareMillimetres = (Math.PI / 4) * (wireDiameterMetres(gauge) * 1e3) ** 2;
      const product = wireOhmsPerMetre(gauge) * 1e3 * squareMillimetres;
      expect(product).toBeLessThan(18);
      expect(product).toBeCloseTo(17.241, 3);
    }
  });

  it('give the out-and-back resistance of 15 m that the facts sheet prints', () => {
    for (const [gauge, ohms] of [
      [24, 2.53],
      [26, 4.02],
      [28, 6.39],
      [30, 10.2],
    ] as const)
      expect(2 * 15 * wireOhmsPerMetre(gauge)).toBeCloseTo(ohms, 1);
  });
});
