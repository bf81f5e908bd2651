/** What a tool with a task on it is given. */
import type { Material, Task } from '../../src/core/learn/index.ts';

/**
 * A tool with a task on it. While the answer is asked it renders nothing that would give it away; once the task is over it shows
 * all that it can. It keeps nothing, and touches nothing that is kept.
 */
export interface OnToolProps {
  readonly task: Task;
  /** The answer so far, and the answer that is given on the tool itself: text, in the notation of the task's form. */
  readonly answer: string;
  readonly onanswer: (answer: string) => void;
  /** The task takes no more answers. */
  readonly over: boolean;
}

/** What lies on a tool. @throws when the task is none for this tool. */
export function onTool<Tool extends Material['on']>(
  { material }: Task,
  tool: Tool,
): Extract<Material, { on: Tool }> {
  if (material?.on !== tool)
    throw new Error(`${tool}: needs a task for it, got one for '${material?.on ?? 'none'}'`);
  return material as Extract<Material, { on: Tool }>;
}
