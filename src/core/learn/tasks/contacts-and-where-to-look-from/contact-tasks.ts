/** The tasks of the lesson on contacts. */
import type { TaskKind } from '../task.ts';
import { BEEP_TASKS } from './beep-tasks.ts';
import { FACE_TASKS } from './face-tasks.ts';
import { LIST_TASKS } from './list-tasks.ts';
import { PLUG_TASKS } from './plug-tasks.ts';

/** The tasks of the lesson. */
export const CONTACT_TASKS: readonly TaskKind[] = [
  ...FACE_TASKS,
  ...LIST_TASKS,
  ...PLUG_TASKS,
  ...BEEP_TASKS,
];
