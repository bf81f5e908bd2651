/** The tasks of the lesson on the inside of an input. */
import type { TaskKind } from '../task.ts';
import { LATE_TASKS } from './late-tasks.ts';
import { LED_TASKS } from './led-tasks.ts';
import { PULL_UP_TASKS } from './pull-up-tasks.ts';
import { SENDER_TASKS } from './sender-tasks.ts';

/** The tasks of the lesson. */
export const INPUT_TASKS: readonly TaskKind[] = [
  ...PULL_UP_TASKS,
  ...SENDER_TASKS,
  ...LATE_TASKS,
  ...LED_TASKS,
];
