/** Tools of the workbook that a task can be done with: what a task gives and asks decides which. */
import type { Component } from 'svelte';
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

/** A tool: its page, the words for doing a task there, and the part that takes the task, fetched when it is asked for. */
export interface TaskTool {
  readonly page: `/${string}`;
  readonly words: string;
  /** The answer is given on the tool, not typed or chosen below it. */
  readonly answers?: true;
  readonly load: () => Promise<{ readonly default: Component<OnToolProps> }>;
}

const BENCH: TaskTool = {
  page: '/bench/',
  words: 'on the bench',
  answers: true,
  load: () => import('../bench/BenchTask.svelte'),
};

const WIRE: TaskTool = {
  page: '/in-time/',
  words: 'from the current on the wire',
  load: () => import('../time/WireTask.svelte'),
};

/** The tool that a task can be done with, if there is one. */
export function toolOf({ form, shows }: Pick<Task, 'form' | 'shows'>): TaskTool | undefined {
  if (form.form === 'lead') return BENCH;
  if (form.form === 'bytes' && shows?.shows === 'bits') return WIRE;
  return undefined;
}
