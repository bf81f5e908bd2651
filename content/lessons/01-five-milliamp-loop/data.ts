import type { AuthoredJack, LessonLinks } from '../../../src/core/learn/index.ts';

const din: AuthoredJack = { connector: 'din5', style: 'din' };
const dinLow: AuthoredJack = { connector: 'din5', style: 'din', circuit: 'driver-3v3' };

/** The links of this lesson. */
export const links = {
  noWayBack: {
    output: din,
    input: din,
    leads: [{ ends: ['din5', 'din5'], wires: ['4-4', '2-2'] }],
    outcome: 'no-path',
  },
  whole: {
    output: din,
    input: din,
    leads: [{ ends: ['din5', 'din5'], wires: ['4-4', '5-5', '2-2'] }],
    outcome: 'flows',
  },
  pairAlone: {
    output: din,
    input: din,
    leads: [{ ends: ['din5', 'din5'], wires: ['4-4', '5-5'] }],
    outcome: 'flows',
    notes: ['shield-open'],
  },
  swapped: {
    output: din,
    input: din,
    leads: [{ ends: ['din5', 'din5'], wires: ['4-5', '5-4', '2-2'] }],
    outcome: 'backwards',
  },
  long: {
    output: din,
    input: din,
    leads: [{ ends: ['din5', 'din5'], wires: ['4-4', '5-5', '2-2'], metres: 15 }],
    outcome: 'flows',
  },
  low: {
    output: dinLow,
    input: din,
    leads: [{ ends: ['din5', 'din5'], wires: ['4-4', '5-5', '2-2'] }],
    outcome: 'flows',
  },
  lowLong: {
    output: dinLow,
    input: din,
    leads: [{ ends: ['din5', 'din5'], wires: ['4-4', '5-5', '2-2'], metres: 15 }],
    outcome: 'flows',
  },
} satisfies LessonLinks;
