/**
 * Solder joints as the eye meets them. They are judged by wetting: a smooth, unbroken film that holds to the metal (the JEDEC
 * dictionary after IPC-T-50: status c), and not by shine, since lead-free solder is often dull when it is good (two trade pages:
 * status c). What each looks like, where it comes from, and what to do: common practice, no source.
 */

/** What can be done about a joint. */
export const JOINT_REMEDIES = ['leave', 'flux', 'still', 'strip'] as const;
/** What is done: nothing; heat both metals again with fresh flux; heat again and hold still; strip the wire to the depth of its cup. */
export type JointRemedy = (typeof JOINT_REMEDIES)[number];

/** How the solder of a joint lies, in words, and what to do about it. */
export interface JointEdge {
  readonly words: string;
  readonly remedy: JointRemedy;
}

/** Ways in which solder lies on a wire and its cup. */
export const JOINT_EDGES: readonly JointEdge[] = [
  { words: 'it runs out thin and flat on wire and cup', remedy: 'leave' },
  { words: 'it stands on the cup as a ball with a sharp edge', remedy: 'flux' },
  { words: 'its edge is thin all round, and the shape of the wire shows', remedy: 'leave' },
  { words: 'it wets the wire, and has rolled off the cup', remedy: 'flux' },
  { words: 'fine cracks and wrinkles run across it', remedy: 'still' },
  { words: 'it fills the cup, and meets the rim in a thin edge', remedy: 'leave' },
  { words: 'it holds the wire by the rim of the cup alone', remedy: 'strip' },
  { words: 'a ring of grey shows where the wire was moved as it set', remedy: 'still' },
];
