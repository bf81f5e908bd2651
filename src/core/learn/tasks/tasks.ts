/** Every kind of task, lesson by lesson, and the making of a task from its identity. */
import { ASK_TASKS } from './ask-the-jack/ask-tasks.ts';
import { BIT_TASKS } from './bits-on-the-wire/bit-tasks.ts';
import { CHAIN_TASKS } from './why-a-chain-wears-bits-out/chain-tasks.ts';
import { chanceOf } from './chance.ts';
import { CONTACT_TASKS } from './contacts-and-where-to-look-from/contact-tasks.ts';
import { DIFFER_TASKS } from './why-makers-differ/differ-tasks.ts';
import { LATE_TASKS } from './inside-the-input/late-tasks.ts';
import { LED_TASKS } from './inside-the-input/led-tasks.ts';
import { PULL_UP_TASKS } from './inside-the-input/pull-up-tasks.ts';
import { SENDER_TASKS } from './inside-the-input/sender-tasks.ts';
import { HUB_TASKS } from './chain-or-hub/board-tasks.ts';
import { LENGTH_TASKS } from './how-long-is-too-long/length-tasks.ts';
import { LOOP_TASKS } from './five-milliamp-loop/loop-tasks.ts';
import { MANUAL_TASKS } from './reading-a-manual/manual-tasks.ts';
import { NOTHING_TASKS } from './when-nothing-answers/nothing-tasks.ts';
import { OUTPUT_TASKS } from './one-output-one-input/split-tasks.ts';
import { SOLDER_TASKS } from './solder-it/solder-tasks.ts';
import { TEST_TASKS } from './prove-it/test-tasks.ts';
import { PRESS_TASKS } from './everything-at-one-press/press-tasks.ts';
import { SETUP_TASKS } from './setting-up-once/setup-tasks.ts';
import type { Drawn, Task, TaskId, TaskKind } from './task.ts';

/** Kinds by lesson, the lesson's name as in its address, in the order of the lessons. */
export const TASKS_BY_LESSON: Readonly<Record<string, readonly TaskKind[]>> = {
  'five-milliamp-loop': LOOP_TASKS,
  'contacts-and-where-to-look-from': CONTACT_TASKS,
  'why-makers-differ': DIFFER_TASKS,
  'reading-a-manual': MANUAL_TASKS,
  'bits-on-the-wire': BIT_TASKS,
  'how-long-is-too-long': LENGTH_TASKS,
  'why-a-chain-wears-bits-out': CHAIN_TASKS,
  'inside-the-input': [...PULL_UP_TASKS, ...SENDER_TASKS, ...LATE_TASKS, ...LED_TASKS],
  'ask-the-jack': ASK_TASKS,
  'solder-it': SOLDER_TASKS,
  'prove-it': TEST_TASKS,
  'when-nothing-answers': NOTHING_TASKS,
  'one-output-one-input': OUTPUT_TASKS,
  'chain-or-hub': HUB_TASKS,
  'setting-up-once': SETUP_TASKS,
  'everything-at-one-press': PRESS_TASKS,
};

/** Salt of the worked example: another task of the same kind. */
const EXAMPLE_SALT = 1;

/** Make a task. Pure: the same identity gives the same task. A string says what is wrong with the identity. */
export function makeTask(id: TaskId): Task | string {
  for (const [lesson, kinds] of Object.entries(TASKS_BY_LESSON)) {
    const found = kinds.find(({ kind }) => kind === id.kind);
    if (!found) continue;
    const draw = (salt: number): Drawn =>
      found.draw(id.level, chanceOf(id.seed, salt, `${id.kind}.${id.level}`));
    const example = id.level === 0 ? { example: draw(EXAMPLE_SALT) } : {};
    return { ...draw(0), id, lesson, title: found.title, ...example };
  }
  return `task: expected a kind of task that there is, got '${id.kind}'`;
}
