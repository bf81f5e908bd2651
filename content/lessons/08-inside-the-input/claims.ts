import {
  above,
  between,
  linkFrom,
  sayHeard,
  type AuthoredLink,
  type Claims,
} from '../../../src/core/learn/index.ts';
import { outputFacts, prepareTimeLink } from '../../../src/core/signal/index.ts';
import type { Part } from '../../../src/core/wiring/index.ts';
import { links, note } from './data.ts';

const RIGHT = '90 3C 40';
const facts = (link: AuthoredLink): ReturnType<typeof outputFacts> =>
  outputFacts(prepareTimeLink(linkFrom(link)));
const changed = (link: AuthoredLink, part: Part, values: object): AuthoredLink => ({
  ...link,
  input: { ...link.input, part, values: { ...link.input.values, ...values } },
});
const heard = (link: AuthoredLink, hops = 1): string => sayHeard(link, note, hops);

export const claims: Claims = {
  'a middling pull-up is heard right': () => [[heard(links.middle), RIGHT]],
  'with 360 ohm the output stays near the 1.6 V that a builder measured, and with 220 ohm nothing is heard':
    () => [
      // Volts read by a builder in public; the part, its LED and its sender were not named, so a third either way.
      [facts(links.small).lowVolts, between(1.6 * 0.67, 1.6 * 1.33)],
      [heard(changed(links.small, '4N35', { loadOhms: 220 })), 'nothing'],
    ],
  'with 2.2 kilohm and more the bytes are wrong, and with 4.7 kilohm the rise takes more than a bit': () => [
    [heard(changed(links.large, '4N35', { loadOhms: 2200 })) === RIGHT, false],
    [heard(links.large) === RIGHT, false],
    [facts(links.large).riseSeconds, above(32e-6)],
  ],
  'another part needs another pull-up: a CNY17-1 is right on 2.2 kilohm': () => [
    [heard(changed(links.middle, 'CNY17-1', { loadOhms: 2200 })), RIGHT],
  ],
  'an input hears the 5 V sender and not the weak one, whatever the pull-up; a 4N35 hears both': () => [
    [heard(links.heard), RIGHT],
    ...[680, 1000, 1500, 2200, 3300, 4700].map(
      (loadOhms) => [heard(changed(links.unheard, '4N25', { loadOhms })) === RIGHT, false] as const,
    ),
    [heard(changed(links.unheard, '4N35', {})), RIGHT],
  ],
  'on 1.5 kilohm a 4N35 hears the 5 V sender and garbles the strong one': () => [
    [heard({ ...links.bright, output: links.middle.output }), RIGHT],
    [heard(links.bright) === RIGHT, false],
  ],
  'one slow input is heard right, two in a row are not; a base resistor or logic mends it': () => [
    [heard(links.slow), RIGHT],
    [heard(links.slow, 2) === RIGHT, false],
    [heard(changed(links.slow, '6N138', { baseOhms: 10e3 }), 2), RIGHT],
    [heard({ ...links.slow, input: { connector: 'din5', style: 'din', part: 'H11L1' } }, 4), RIGHT],
  ],
  'the price of a base resistor: with a small pull-up the weak sender is not heard any more': () => [
    [
      heard({
        ...changed(links.slow, '6N138', { loadOhms: 220, baseOhms: 4700 }),
        output: links.unheard.output,
      }),
      'nothing',
    ],
    [heard({ ...changed(links.slow, '6N138', { loadOhms: 220 }), output: links.unheard.output }), RIGHT],
  ],
};
