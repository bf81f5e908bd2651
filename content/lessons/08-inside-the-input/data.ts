import type { AuthoredJack, AuthoredLink, LessonLinks } from '../../../src/core/learn/index.ts';
import type { Part } from '../../../src/core/wiring/index.ts';

const din: AuthoredJack = { connector: 'din5', style: 'din' };
/** Both resistors of the standard for 3.3 V. */
const strong: AuthoredJack = { ...din, circuit: 'driver-3v3' };
/** A sender of 3.3 V that was left with the resistors of a 5 V one. */
const weak: AuthoredJack = { ...strong, values: { sourceOhms: 220, sinkOhms: 220 } };

const into = (
  output: AuthoredJack,
  part: Part,
  loadOhms: number,
  outcome: AuthoredLink['outcome'],
): AuthoredLink => ({
  output,
  input: { ...din, part, values: { loadOhms, baseOhms: 0 } },
  leads: [{ ends: ['din5', 'din5'], wires: ['4-4', '5-5', '2-2'] }],
  outcome,
});

/** The links of this lesson: a sender, a part, and a pull-up. */
export const links = {
  middle: into(din, '4N35', 1000, 'weak'),
  small: into(din, '4N35', 360, 'weak'),
  large: into(din, '4N35', 4700, 'flows'),
  heard: into(din, '4N25', 1000, 'weak'),
  unheard: into(weak, '4N25', 1000, 'starved'),
  bright: into(strong, '4N35', 1500, 'flows'),
  slow: into(din, '6N138', 2700, 'flows'),
} satisfies LessonLinks;

/** Middle C struck: what is sent in every figure. */
export const note = [0x90, 0x3c, 0x40];
