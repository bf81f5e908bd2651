/** What to send so that two causes give different bytes. */
import { hexOf } from '../signal/index.ts';
import type { Fit } from './fit.ts';
import { saySeen } from './say-seen.ts';
import { givenBy } from './simulate.ts';
import { CAUSE_WORDS } from './words.ts';

/** Short lists to send, the simplest first: bytes of every kind, running status, a clock inside, a preset, and a longer run. */
const TRIALS: readonly (readonly number[])[] = [
  [0x90, 0x3c, 0x40],
  [0x90, 0x55, 0x2a],
  [0x90, 0x00, 0x7f],
  [0xc0, 0x05],
  [0x95, 0x41, 0x10],
  [0x90, 0x3c, 0x40, 0x3e, 0x40],
  [0x90, 0x3c, 0xf8, 0x40],
  [0xf8, 0xfe, 0xf8],
  Array.from({ length: 24 }, (_, at) => [0x90, 0x30 + at, 0x40][at % 3]!),
];

/** Causes that strike now and then show in no single message. */
const NOW_AND_THEN =
  'One of the two strikes now and then: send the same message fifty times. Where it always goes wrong alike, it is the other.';
const ALIKE = 'The two give the very same bytes, so no log tells them apart: look where each of them says.';

const nameOf = ({ candidate }: Fit): string => `‘${CAUSE_WORDS[candidate.cause].name}’`;
const doesOf = ({ candidate }: Fit): string => CAUSE_WORDS[candidate.cause].does;

/** What would tell two causes apart, in a sentence or two. */
export function tellApart(one: Fit, other: Fit): string {
  const byChance = [one, other].filter(({ candidate }) => candidate.kind === 'chance').length;
  if (byChance === 1) return NOW_AND_THEN;
  if (byChance === 2)
    return `Send the same message fifty times, and look for a rule. ${nameOf(one)}: ${doesOf(one)} ${nameOf(other)}: ${doesOf(other)}`;
  for (const sent of TRIALS) {
    const [here = '', there = ''] = [one, other].map((fit) => saySeen(givenBy(fit, sent, [])));
    if (here === there) continue;
    return `Send ${sent.map(hexOf).join(' ')}: ${nameOf(one)} gives ${here}, ${nameOf(other)} gives ${there}.`;
  }
  return ALIKE;
}
