import { describe, expect, test } from 'vitest';
import { CONNECTORS, FORMS } from '../../src/core/wiring/index.ts';
import { PLUG_BODIES } from '../../src/core/making/index.ts';
import { drawPlugBodies } from '../../src/draw/plug-bodies.ts';
import { pointsAlong } from './paths.ts';

describe('plugs from the side', () => {
  test.each(CONNECTORS)(
    'every body of a %s stays inside its drawing, and each looks different',
    (connector) => {
      const seen = new Set<string>();
      for (const form of FORMS)
        for (const body of PLUG_BODIES) {
          const end = { connector, form, body };
          const { width, height, outlines } = drawPlugBodies(end, end);
          const points = outlines.flatMap(({ d }) => pointsAlong(d));
          expect(points.length).toBeGreaterThan(20);
          for (const { x, y } of points) {
            expect(x).toBeGreaterThanOrEqual(0);
            expect(x).toBeLessThanOrEqual(width);
            expect(y).toBeGreaterThanOrEqual(0);
            expect(y).toBeLessThanOrEqual(height);
          }
          seen.add(outlines.map(({ d }) => d).join());
        }
      expect(seen.size).toBe(FORMS.length * PLUG_BODIES.length);
    },
  );

  test('a DIN shell is 13.2 mm and a 3.5 mm plug 3.5 mm across, on one scale', () => {
    const { outlines } = drawPlugBodies(
      { connector: 'din5', form: 'plug', body: 'straight' },
      { connector: 'trs-3.5', form: 'plug', body: 'straight' },
    );
    const across = (d: string): number => {
      const ys = pointsAlong(d).map(({ y }) => y);
      return Math.max(...ys) - Math.min(...ys);
    };
    const heights = outlines.filter(({ kind }) => kind === 'outline').map(({ d }) => across(d));
    // Four pixels a millimetre.
    expect(heights).toContain(4 * 13.2);
    expect(heights).toContain(4 * 3.5);
  });

  test('the text alternative says body and cable of both ends', () => {
    expect(
      drawPlugBodies(
        { connector: 'din5', form: 'plug', body: 'straight' },
        { connector: 'trs-3.5', form: 'plug', body: 'flat' },
      ).textAlternative,
    ).toBe(
      'From the side. Output end: a 5-pin DIN plug with a straight body, the cable leaving in line with it. ' +
        'Input end: a 3.5 mm TRS plug with a flat body, the cable leaving to the side. Lengths and bodies not to scale.',
    );
  });
});
