import {
  between,
  firstLead,
  linkFrom,
  solve,
  type AuthoredLink,
  type Claims,
} from '../../../src/core/learn/index.ts';
import { cableSheet } from '../../../src/core/making/index.ts';
import { dinReadingOrder } from '../../../src/core/wiring/index.ts';
import type { State } from '../../../src/core/wiring/index.ts';
import { links } from './data.ts';

const pins = (view: 'mating' | 'solder'): readonly string[] =>
  dinReadingOrder({ connector: 'din5', form: 'plug', view });

const wiresOf = (link: AuthoredLink): readonly string[] =>
  firstLead(link)
    .conductors.map(({ from, to }) => `${from}-${to}`)
    .sort();

const sourceResistor = (link: AuthoredLink, state: State): number =>
  solve(link).readings[state].parts.find(({ part }) => part.role === 'source-resistor')?.amperes ?? NaN;

export const claims: Claims = {
  'the mirror of the right lead is the one that runs backwards': () => [
    [
      wiresOf(links.mirrored),
      firstLead(links.right)
        .conductors.map(
          ({ from, to }) => `${pins('solder')[pins('mating').findIndex((one) => one === from)] ?? ''}-${to}`,
        )
        .sort(),
    ],
    [pins('solder').filter((pin) => pin === '4' || pin === '2'), ['4', '2']],
  ],
  'a strand on the ring loads the source at rest and while a 0 is sent': () => [
    [
      sourceResistor(links.strandOnRing, 'active') - sourceResistor(links.strandOnRing, 'idle'),
      between(-1e-5, 1e-5),
    ],
    // 5 V over 220 ohm: 22.7 mA.
    [sourceResistor(links.strandOnRing, 'idle') - 5 / 220, between(-5e-5, 5e-5)],
  ],
  'a cold joint weakens the current, and leaves enough': () => {
    const [cold, right] = [links.coldJoint, links.right].map((link) => solve(link).inputs[0]);
    return [[cold?.active, between(cold?.on ?? NaN, 0.7 * (right?.active ?? NaN))]];
  },
  'the sheet has the shells first, and the test last': () => {
    const { steps } = cableSheet(firstLead(links.right), linkFrom(links.right));
    return [
      [steps[0]?.match(/shells/)?.[0], 'shells'],
      [steps.at(-1)?.match(/test the lead/)?.[0], 'test the lead'],
      [steps.findIndex((step) => step.includes('strain relief')), between(0, steps.length - 1)],
    ];
  },
};
