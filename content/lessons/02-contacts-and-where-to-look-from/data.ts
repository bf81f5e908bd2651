import type { AuthoredJack, LessonLinks } from '../../../src/core/learn/index.ts';

const din: AuthoredJack = { connector: 'din5', style: 'din' };
const typeA: AuthoredJack = { connector: 'trs-3.5', style: 'type-a' };

/** The links of this lesson. */
export const links = {
  right: {
    output: din,
    input: din,
    leads: [{ ends: ['din5', 'din5'], wires: ['4-4', '5-5', '2-2'] }],
    outcome: 'flows',
  },
  oneMirrored: {
    output: din,
    input: din,
    leads: [{ ends: ['din5', 'din5'], wires: ['4-5', '5-4', '2-2'] }],
    outcome: 'backwards',
  },
  bothMirrored: {
    output: din,
    input: din,
    leads: [{ ends: ['din5', 'din5'], wires: ['5-5', '4-4', '2-2'] }],
    outcome: 'flows',
  },
  threeContacts: {
    output: typeA,
    input: typeA,
    leads: [{ ends: ['trs-3.5', 'trs-3.5'], wires: ['tip-tip', 'ring-ring', 'sleeve-sleeve'] }],
    outcome: 'flows',
  },
  twoContacts: {
    output: typeA,
    input: typeA,
    leads: [{ ends: ['ts-3.5', 'ts-3.5'], wires: ['tip-tip', 'sleeve-sleeve'] }],
    outcome: 'no-path',
    notes: ['source-shorted'],
  },
  twoContactsLow: {
    output: { connector: 'trs-3.5', style: 'type-a', circuit: 'driver-3v3' },
    input: typeA,
    leads: [{ ends: ['ts-3.5', 'ts-3.5'], wires: ['tip-tip', 'sleeve-sleeve'] }],
    outcome: 'no-path',
    notes: ['source-shorted', 'over-rating'],
  },
  noSink: {
    output: din,
    input: typeA,
    leads: [{ ends: ['din5', 'trs-3.5'], wires: ['4-ring', '2-sleeve'] }],
    outcome: 'no-path',
  },
  mapped: {
    output: din,
    input: typeA,
    leads: [{ ends: ['din5', 'trs-3.5'], wires: ['4-ring', '5-tip', '2-sleeve'] }],
    outcome: 'flows',
  },
} satisfies LessonLinks;
