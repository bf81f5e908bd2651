/** The tasks of the lesson on asking a jack. */
import type { TaskKind } from '../task.ts';
import { NAME_TASKS } from './name-tasks.ts';
import { POWER_TASKS } from './power-tasks.ts';
import { SAFE_TASKS } from './safe-tasks.ts';
import { SOURCE_TASKS } from './source-tasks.ts';
import { STOP_TASKS } from './stop-tasks.ts';

/** The tasks of the lesson. */
export const ASK_TASKS: readonly TaskKind[] = [
  ...SAFE_TASKS,
  ...POWER_TASKS,
  ...SOURCE_TASKS,
  ...NAME_TASKS,
  ...STOP_TASKS,
];
