/** What a tool with a task on it is given. */
import type { Task } from '../../src/core/learn/index.ts';

/**
 * A tool with a task on it. While the answer is asked it renders nothing that would give it away; once the task is over it shows
 * all that it can. The answer is text, in the notation of the task's form. It keeps nothing, and touches nothing that is kept.
 */
export interface OnToolProps {
  readonly task: Task;
  /** The answer so far, and the answer that is given on the tool itself. */
  readonly answer: string;
  readonly onanswer: (answer: string) => void;
  /** The task takes no more answers. */
  readonly over: boolean;
}
