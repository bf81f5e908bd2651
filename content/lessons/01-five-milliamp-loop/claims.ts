import { above, between, say, solve, type AuthoredLink, type Claims } from '../../../src/core/learn/index.ts';
import { STANDARD_METRES, valuesOf, wireOhmsPerMetre } from '../../../src/core/wiring/index.ts';
import { links } from './data.ts';

const active = (link: AuthoredLink): number => solve(link).inputs[0]?.active ?? NaN;

export const claims: Claims = {
  'the way back is what was missing, and the shield changes nothing': () => [
    [say(links.noWayBack, 'active'), '0 mA'],
    [say(links.pairAlone, 'active'), say(links.whole, 'active')],
  ],
  'at rest nothing flows, because both lines stand at the voltage of the supply': () => [
    [say(links.whole, 'idle'), '0 mA'],
    ...['4', '5'].map((pin) => {
      const found = solve(links.whole).readings.idle.contacts.find(
        ({ spot }) => spot.place === 'output' && spot.contact === pin,
      );
      return [found?.volts, between(5 - 1e-6, 5 + 1e-6)] as const;
    }),
  ],
  'a swapped pair carries more than a good lead, and less than a volt stands across the LED': () => [
    [solve(links.swapped).inputs[0]?.reverseAmperes.active, above(active(links.whole))],
    [/^−0\.\d\d V$/.test(say(links.swapped, 'LED volts')), true],
  ],
  'the longest lead costs next to nothing, at 5 V and at 3.3 V': () => [
    [links.long.leads[0]?.metres, STANDARD_METRES],
    [links.lowLong.leads[0]?.metres, STANDARD_METRES],
    [active(links.long) / active(links.whole), between(0.98, 1)],
    [active(links.lowLong) / active(links.low), between(0.98, 1)],
  ],
  'the copper of the longest lead is the smallest resistance in the loop': () => {
    const copper = 2 * STANDARD_METRES * wireOhmsPerMetre(26);
    const resistors = (['driver-5v', 'driver-3v3'] as const).flatMap((circuit) =>
      valuesOf(circuit, '6N138').filter(({ name }) => name === 'sourceOhms' || name === 'sinkOhms'),
    );
    return [[resistors.length, 4], ...resistors.map(({ value }) => [value, above(copper)] as const)];
  },
  'a 3.3 V sender gives more current than a 5 V one, and both leave a margin': () => [
    [active(links.low), above(active(links.whole))],
    ...[links.whole, links.long, links.low, links.lowLong].map((link) => {
      const input = solve(link).inputs[0];
      return [input?.worstActive, above(input?.on ?? NaN)] as const;
    }),
  ],
};
