/** Tools of the workbook that a task can be done with: what a task gives and asks decides which. */
import type { Component } from 'svelte';
import type { Task } from '../../src/core/learn/index.ts';
import type { OnToolProps } from './on-tool.ts';

/** A tool: its page, the words for doing a task there, and the part that takes the task, fetched when it is asked for. */
interface TaskTool {
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
  load: () => import('./BenchTask.svelte'),
};

const WIRE: TaskTool = {
  page: '/in-time/',
  words: 'from the current on the wire',
  load: () => import('./WireTask.svelte'),
};

/** The tool that a task can be done with, if there is one. */
export function toolOf({ form, shows }: Pick<Task, 'form' | 'shows'>): TaskTool | undefined {
  if (form.form === 'lead') return BENCH;
  if (form.form === 'bytes' && shows?.shows === 'bits') return WIRE;
  return undefined;
}
