import {
  above,
  between,
  firstLead,
  proofOf,
  type AuthoredReading,
  type Claims,
} from '../../../src/core/learn/index.ts';
import { madeLead, proofRows, tableOf, type Proof } from '../../../src/core/making/index.ts';
import { links, readings } from './data.ts';

const proof = (taken: readonly AuthoredReading[]): Proof => proofOf(firstLead(links.fromDin), taken);

export const claims: Claims = {
  'one silent wire leaves a dozen single mistakes or so': () => {
    const { sets } = proof(readings.oneSilent);
    return [
      [sets.length, between(10.5, 14.5)],
      [sets.every((set) => set.length === 1), true],
    ];
  },
  'a second silent wire leaves three mistakes that read alike': () => {
    const { sets, alike, next } = proof(readings.twoSilent);
    return [
      // Swapped at one end, swapped at the other, or the DIN plug mirrored.
      [sets.map((set) => set.map(({ kind }) => kind).join()), ['swapped', 'mirrored', 'swapped']],
      [alike.length, 1],
      [next, undefined],
    ];
  },
  'one silent wire of two read leaves fewer than one alone, and more than two silent ones': () => [
    [
      proof(readings.oneOfTwo).sets.length,
      between(proof(readings.twoSilent).sets.length, proof(readings.oneSilent).sets.length),
    ],
  ],
  'two touching wires touch in one plug or in the other, and no reading tells which': () => {
    const { sets, alike } = proof(readings.touching);
    return [
      [
        sets.map((set) =>
          set.map((fault) => ('side' in fault ? `${fault.kind} ${fault.side}` : fault.kind)).join(),
        ),
        ['short from', 'short to'],
      ],
      [alike, [[0, 1]]],
    ];
  },
  'a lead with two contacts that touch beeps in all three conductors, and in its fourth row too': () => {
    const lead = firstLead(links.straight);
    const says = tableOf(madeLead(lead, [{ kind: 'short', side: 'to', between: ['tip', 'ring'] }]));
    const rows = proofRows(lead);
    return [
      ...rows.slice(0, 3).map(
        ({ expects, places }) =>
          [
            [expects, ...places.map(says)],
            ['beep', ...places.map(() => 'beep')],
          ] as const,
      ),
      [rows[3]?.expects, 'silent'],
      [rows[3]?.places.filter((at) => says(at) === 'beep').length, above(0)],
    ];
  },
};
