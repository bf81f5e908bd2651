/** The tasks of the lesson on asking a jack. */
import type { TaskKind } from '../task.ts';
import { crossOut, mayBe } from './name-tasks.ts';
import { allowedNow } from './power-tasks.ts';
import { nextSafe } from './safe-tasks.ts';
import { sourceContact } from './source-tasks.ts';
import { stopOrGo } from './stop-tasks.ts';

/** The tasks of the lesson. */
export const ASK_TASKS: readonly TaskKind[] = [
  { kind: 'next-safe', title: 'Which reading comes next?', draw: nextSafe },
  { kind: 'allowed-now', title: 'What may go on it now?', draw: allowedNow },
  { kind: 'source-contact', title: 'Which contact is the source?', draw: sourceContact },
  { kind: 'cross-out', title: 'What is ruled out?', draw: crossOut },
  { kind: 'may-be', title: 'What may it be?', draw: mayBe },
  { kind: 'stop-or-go', title: 'Stop or go on?', draw: stopOrGo },
];
