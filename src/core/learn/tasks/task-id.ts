/** How a task is written so that it can be sent: 'lay-lead.2.7F3K'. */
import { MOST_SEED } from './chance.ts';
import { LEVELS, type TaskId } from './task.ts';

/** Signs of a seed: digits and letters to V, base 32. */
const BASE = 32;

/** A task as text. */
export function writeTaskId({ kind, level, seed }: TaskId): string {
  return `${kind}.${level}.${seed.toString(BASE).toUpperCase()}`;
}

/** Read a task; a string says what is wrong with the text. Whether the kind exists is for who makes the task to say. */
export function readTaskId(text: string): TaskId | string {
  const found = /^([a-z]+(?:-[a-z]+)*)\.(\d)\.([0-9A-Va-v]{1,4})$/.exec(text.trim());
  if (!found) return `task: expected a kind, a level and a seed such as 'lay-lead.2.7F3K', got '${text}'`;
  const [, kind = '', digit = '', signs = ''] = found;
  const level = LEVELS.find((one) => one === Number(digit));
  if (level === undefined) return `task: level must be 0 to ${LEVELS.length - 1}, got ${digit}`;
  return { kind, level, seed: Math.min(parseInt(signs, BASE), MOST_SEED) };
}
