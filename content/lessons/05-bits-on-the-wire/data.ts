import type { Item } from '../../../src/core/signal/index.ts';
import type { AuthoredJack, LessonLinks } from '../../../src/core/learn/index.ts';

const din: AuthoredJack = { connector: 'din5', style: 'din' };

/** The links of this lesson. */
export const links = {
  whole: {
    output: din,
    input: din,
    leads: [{ ends: ['din5', 'din5'], wires: ['4-4', '5-5', '2-2'] }],
    outcome: 'flows',
  },
} satisfies LessonLinks;

const program = (channel: number, number: number): readonly Item[] => [
  { kind: 'program change', channel, program: number },
];

/** What the sender says, and what its neighbour on the next channel says. */
export const press = program(0, 4);
export const neighbour = program(1, 5);
/** The channel of the one and the program of the other. */
export const halfRight = program(1, 4);

/** Three notes at once: the example that the standard prints in running status. */
export const chord: readonly Item[] = [
  { kind: 'note on', channel: 0, note: 60, velocity: 39 },
  { kind: 'note on', channel: 0, note: 64, velocity: 43 },
  { kind: 'note on', channel: 0, note: 67, velocity: 37 },
];
