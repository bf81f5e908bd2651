import {
  LED_KEEPS,
  above,
  between,
  loopSum,
  say,
  solve,
  type AuthoredLink,
  type Claims,
} from '../../../src/core/learn/index.ts';
import { STANDARD_METRES, valuesOf, wireOhmsPerMetre } from '../../../src/core/wiring/index.ts';
import { links } from './data.ts';

const active = (link: AuthoredLink): number => solve(link).inputs[0]?.active ?? NaN;

export const claims: Claims = {
  'without the LED the sum is far too high, with it close to the solver, and the standard gets its five milliamps':
    () => {
      const [forgotten, usual, standard] = LED_KEEPS.map((volts) => loopSum('driver-5v', volts).amperes);
      return [
        // 5 V over 660 ohm; (5 - 1.4) over 660; (5 - 1.7) over 660, as MMA CA-033 has it in its first footnote.
        [forgotten, between(7.57e-3, 7.58e-3)],
        [usual, between(5.45e-3, 5.46e-3)],
        [standard, between(4.999e-3, 5.001e-3)],
        [(usual ?? NaN) / active(links.whole), between(1, 1.02)],
        [loopSum('driver-3v3', LED_KEEPS[1]).amperes, above(usual ?? NaN)],
      ];
    },
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
