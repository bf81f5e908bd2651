import type { AuthoredJack, LessonLinks } from '../../../src/core/learn/index.ts';

const din: AuthoredJack = { connector: 'din5', style: 'din' };
const dinLow: AuthoredJack = { connector: 'din5', style: 'din', circuit: 'driver-3v3' };

/** The links of this lesson. */
export const links = {
  five: {
    output: din,
    input: din,
    leads: [{ ends: ['din5', 'din5'], wires: ['4-4', '5-5', '2-2'] }],
    outcome: 'flows',
  },
  fiveLong: {
    output: din,
    input: din,
    leads: [{ ends: ['din5', 'din5'], wires: ['4-4', '5-5', '2-2'], metres: 15 }],
    outcome: 'flows',
  },
  fiveFar: {
    output: din,
    input: din,
    leads: [{ ends: ['din5', 'din5'], wires: ['4-4', '5-5', '2-2'], metres: 100 }],
    outcome: 'flows',
  },
  low: {
    output: dinLow,
    input: din,
    leads: [{ ends: ['din5', 'din5'], wires: ['4-4', '5-5', '2-2'] }],
    outcome: 'flows',
  },
  lowFar: {
    output: dinLow,
    input: din,
    leads: [{ ends: ['din5', 'din5'], wires: ['4-4', '5-5', '2-2'], metres: 100 }],
    outcome: 'flows',
  },
} satisfies LessonLinks;
