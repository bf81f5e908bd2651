/** Tools of the workbook that a task can be done with: what a task gives and asks decides which. */
import type { Component } from 'svelte';
import type { Material, Task } from '../../src/core/learn/index.ts';
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

/** Tools by what lies on them. */
const BY_MATERIAL: Readonly<Record<Material['on'], TaskTool>> = {
  'lead test': {
    page: '/cable-sheet/',
    words: 'with a meter on the lead',
    load: () => import('./LeadTestTask.svelte'),
  },
  'fault page': {
    page: '/fault-bench/',
    words: 'on the board itself',
    load: () => import('./FaultTask.svelte'),
  },
  meter: {
    page: '/meter/',
    words: 'with the probes in hand',
    load: () => import('./MeterTask.svelte'),
  },
  finder: {
    page: '/jack-finder/',
    words: 'in the jack finder',
    load: () => import('./FinderTask.svelte'),
  },
  board: {
    page: '/board/',
    words: 'on the drawn board',
    load: () => import('./BoardTask.svelte'),
  },
};

/** The tool that a task can be done with, if there is one. */
export function toolOf({
  form,
  shows,
  material,
}: Pick<Task, 'form' | 'shows' | 'material'>): TaskTool | undefined {
  if (material) return BY_MATERIAL[material.on];
  if (form.form === 'lead') return BENCH;
  if (form.form === 'bytes' && shows?.shows === 'bits') return WIRE;
  return undefined;
}
