import {
  between,
  firstLead,
  say,
  solve,
  type AuthoredLink,
  type Claims,
} from '../../../src/core/learn/index.ts';
import { dinReadingOrder } from '../../../src/core/wiring/index.ts';
import type { Contact } from '../../../src/core/wiring/index.ts';
import { links } from './data.ts';

const face = (form: 'plug' | 'jack', view: 'mating' | 'solder'): readonly Contact[] =>
  dinReadingOrder({ connector: 'din5', form, view });

/** What stands at the place of a pin when a solder side is taken for the mating face. */
const mirror = (pin: Contact): string =>
  face('plug', 'solder')[face('plug', 'mating').findIndex((one) => one === pin)] ?? '';

const wiresOf = (link: AuthoredLink): readonly string[] =>
  firstLead(link)
    .conductors.map(({ from, to }) => `${from}-${to}`)
    .sort();

export const claims: Claims = {
  'the mating face of a plug reads 3 5 2 4 1, and its solder side the reverse': () => [
    [face('plug', 'mating'), ['3', '5', '2', '4', '1']],
    [face('plug', 'solder'), face('plug', 'mating').toReversed()],
  ],
  'each side of a jack is the mirror of the same side of a plug': () =>
    (['mating', 'solder'] as const).map((view) => [face('jack', view), face('plug', view).toReversed()]),
  'the mirror of one plug gives the swapped lead, and two mirrors give the right one': () => {
    const right = firstLead(links.right).conductors;
    return [
      [wiresOf(links.oneMirrored), right.map(({ from, to }) => `${from}-${mirror(to)}`).sort()],
      [wiresOf(links.bothMirrored), right.map(({ from, to }) => `${mirror(from)}-${mirror(to)}`).sort()],
    ];
  },
  'with TS plugs the source resistor carries the same current at rest and while a 0 is sent': () => {
    const [active = NaN, idle = NaN] = (['active', 'idle'] as const).map(
      (state) =>
        solve(links.twoContacts).readings[state].parts.find(({ part }) => part.role === 'source-resistor')
          ?.amperes,
    );
    // Contacts and wire differ a little in the two states: within 0.01 mA, the last digit that is printed.
    return [
      [active - idle, between(-1e-5, 1e-5)],
      [say(links.twoContacts, 'source resistor'), '23 mA'],
    ];
  },
};
