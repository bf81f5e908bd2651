/** How the answer of the finder stands, in a heading, and how good that is. */
import type { AnswerState } from '../../src/core/readings/index.ts';
import type { Grade } from '../../src/core/verdict/index.ts';

/** Words and grade of each state. */
export const STANDING: Readonly<Record<AnswerState, { readonly words: string; readonly grade: Grade }>> = {
  sure: { words: 'Sure', grade: 'good' },
  'not-sure': { words: 'Not sure yet', grade: 'doubtful' },
  'cannot-tell': { words: 'A meter cannot tell', grade: 'doubtful' },
  'fits-nothing': { words: 'These readings fit nothing', grade: 'bad' },
};
