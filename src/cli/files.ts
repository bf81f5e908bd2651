/** Files by what was typed: a file, a folder with everything in it, or a pattern. */
import { globSync, readFileSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { textOf } from '../core/plan/index.ts';
import { STANDARD_INPUT } from './options.ts';

/** The number of the standard input. */
const INPUT = 0;

/** Largest file that is read, bytes: a plan has a million characters at most, and a letter of UTF-16 two bytes. */
const MOST_BYTES = 4_000_000;

/** Files whose names begin with a dot are the system's, not the class's. */
const isShown = (path: string): boolean => !/(^|[\\/])\.[^.\\/]/.test(path);

/**
 * The files that one word stands for, in the order of their names, numbers as numbers. A file that is there is itself, whatever
 * signs its name has. @throws when a folder or a pattern holds no file.
 */
export function filesOf(word: string, home: string): readonly string[] {
  if (word === STANDARD_INPUT) return [word];
  const stats = statSync(resolve(home, word), { throwIfNoEntry: false });
  const isPattern = stats === undefined && /[*?[{]/.test(word);
  if (!isPattern && !stats?.isDirectory()) return [word];
  const found = globSync(isPattern ? word : '**', { cwd: isPattern ? home : resolve(home, word) })
    .map((one) => (isPattern ? one : join(word, one)))
    .filter((one) => isShown(one) && statSync(resolve(home, one)).isFile())
    .sort((one, other) => one.localeCompare(other, 'en', { numeric: true }));
  if (found.length === 0)
    throw new Error(
      `expected a ${isPattern ? 'pattern that some file fits' : 'folder with a file in it'}, got none`,
    );
  return found;
}

/** The text of a file, or of the standard input. @throws when it is not there or too large. */
export function readFile(file: string, home: string): string {
  if (file === STANDARD_INPUT) return textOf(readFileSync(INPUT));
  const path = resolve(home, file);
  const { size } = statSync(path);
  if (size > MOST_BYTES) throw new Error(`expected a file of at most ${MOST_BYTES} bytes, got ${size}`);
  return textOf(readFileSync(path));
}
