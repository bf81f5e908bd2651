import { expect, test } from 'vitest';
import { CONNECTORS, contactsOf } from '../../src/core/wiring/index.ts';
import type { LeadContact } from '../../src/core/readings/index.ts';
import { drawProbing, placeName, placeOf } from '../../src/draw/index.ts';

test('on every plug, in both views, wide and narrow, probes stay on the sheet and a finger apart', () => {
  for (const connector of CONNECTORS)
    for (const view of ['mating', 'solder'] as const)
      for (const width of [340, 800]) {
        const ends = (['from', 'to'] as const).map((side) => ({ side, connector, view, name: 'plug' }));
        const places = ends.flatMap(({ side }) =>
          contactsOf(connector).map((contact): LeadContact => ({ side, contact })),
        );
        for (const red of places)
          for (const black of places.filter((place) => place !== red)) {
            const { probes, height } = drawProbing({ width, ends, at: { red, black } });
            const [one, other] = probes;
            for (const { handle } of probes) {
              expect(handle.x).toBeGreaterThan(12);
              expect(handle.x).toBeLessThan(width - 12);
              expect(handle.y).toBeGreaterThan(12);
              expect(handle.y).toBeLessThan(height - 12);
            }
            const apart = Math.hypot(
              (one?.handle.x ?? 0) - (other?.handle.x ?? 0),
              (one?.handle.y ?? 0) - (other?.handle.y ?? 0),
            );
            // 24 px: WCAG 2.2, target size (minimum).
            expect(apart, `${connector} ${view} ${placeName(red)} ${placeName(black)}`).toBeGreaterThan(24);
          }
      }
});

test('a probe on no contact of a drawn plug is refused, and a place is found again by its name', () => {
  const ends = [{ side: 'from', connector: 'ts-6.35', view: 'mating', name: 'plug' }] as const;
  const at = { red: { side: 'from', contact: 'ring' }, black: { side: 'from', contact: 'tip' } } as const;
  expect(() => drawProbing({ width: 400, ends, at })).toThrow(
    "probe 'red': needs a contact of a drawn plug, got 'ring' at 'from'",
  );
  expect(placeOf(placeName(at.black))).toEqual(at.black);
});
