import type { Item } from '../../../src/core/signal/index.ts';
import type { AuthoredJack, LessonLinks } from '../../../src/core/learn/index.ts';

const din: AuthoredJack = { connector: 'din5', style: 'din' };

/** The links of this lesson. */
export const links = {
  /** Nothing at the base, and the pull-up that is usual then (common practice, no source). */
  bare: {
    output: din,
    input: { connector: 'din5', style: 'din', values: { loadOhms: 1200, baseOhms: 0 } },
    leads: [{ ends: ['din5', 'din5'], wires: ['4-4', '5-5', '2-2'] }],
    outcome: 'flows',
  },
  /** Pull-up and base resistor as they stand by default. */
  usual: {
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
