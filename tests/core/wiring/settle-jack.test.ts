import { expect, test } from 'vitest';
import { CIRCUITS } from '../../../src/core/wiring/circuits.ts';
import { PARTS } from '../../../src/core/wiring/parts.ts';
import { CONNECTORS } from '../../../src/core/wiring/connectors.ts';
import { DIRECTIONS, jackProblem, makeJack, settleJack } from '../../../src/core/wiring/link.ts';
import { STYLES } from '../../../src/core/wiring/styles.ts';

test('whatever a jack is changed to, it goes together once it is settled, and settling it again changes nothing', () => {
  let seen = 0;
  for (const direction of DIRECTIONS)
    for (const connector of CONNECTORS)
      for (const style of STYLES)
        for (const circuit of CIRCUITS)
          for (const part of PARTS) {
            const settled = settleJack({
              direction,
              connector,
              style,
              circuit,
              part,
              values: { sourceOhms: 100 },
            });
            expect(jackProblem(settled)).toBeUndefined();
            expect([settled.direction, settled.connector]).toEqual([direction, connector]);
            expect(settleJack(settled)).toEqual(settled);
            seen++;
          }
  expect(seen).toBe(DIRECTIONS.length * CONNECTORS.length * STYLES.length * CIRCUITS.length * PARTS.length);
});

test('what suits is kept, values too, and whatever else the jack carries', () => {
  const jack = { ...makeJack('out', 'trs-3.5', 'type-b', { values: { sourceOhms: 100 } }), name: 'OUT' };
  expect(settleJack(jack)).toEqual(jack);
  expect(settleJack({ ...jack, connector: 'din5' })).toMatchObject({
    name: 'OUT',
    style: 'din',
    values: { sourceOhms: 100 },
  });
  expect(settleJack({ ...jack, style: 'tip-signal' })).toMatchObject({
    circuit: 'driver-ground',
    values: {},
  });
});
