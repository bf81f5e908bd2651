import type { Item, Journey } from '../../../src/core/signal/index.ts';
import type { AuthoredJack, LessonLinks } from '../../../src/core/learn/index.ts';

const din: AuthoredJack = { connector: 'din5', style: 'din' };

/** The links of this lesson. */
export const links = {
  slow: {
    output: din,
    input: din,
    leads: [{ ends: ['din5', 'din5'], wires: ['4-4', '5-5', '2-2'] }],
    outcome: 'flows',
  },
  logic: {
    output: din,
    input: { connector: 'din5', style: 'din', part: 'H11L1' },
    leads: [{ ends: ['din5', 'din5'], wires: ['4-4', '5-5', '2-2'] }],
    outcome: 'flows',
  },
  hungry: {
    output: din,
    input: { connector: 'din5', style: 'din', part: 'PC900V' },
    leads: [{ ends: ['din5', 'din5'], wires: ['4-4', '5-5', '2-2'] }],
    outcome: 'flows',
  },
} satisfies LessonLinks;

/** What is sent down the chain. */
export const press: readonly Item[] = [{ kind: 'program change', channel: 0, program: 4 }];

/** Receivers that nothing helps to let go. */
export const slow: Partial<Journey> = { baseResistor: false };
