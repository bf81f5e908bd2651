/** Names of files that say whose work is in them: '<title>-07-ann.json'. */
import type { Plan } from './plan.ts';

/** Digits of a student's number in a name, so that files sort by number. */
const NUMBER_DIGITS = 2;

/** Longest part of a name, characters: file systems allow 255 bytes for the whole, and a letter may take four. */
const PART_CHARACTERS = 40;

/** Whose work it is: the number in the class list, 0 for none, and a name, which may be empty. */
export interface Student {
  readonly number: number;
  readonly name: string;
}

/** Text as part of a file's name: letters and digits of any script, a hyphen for each run of anything else. */
function part(text: string): string {
  return text
    .normalize('NFC')
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-')
    .slice(0, PART_CHARACTERS)
    .replace(/^-+|-+$/g, '')
    .toLowerCase();
}

/** A file's name from a title (`otherwise` where it is empty), a student and an ending such as 'json'. */
export function fileName(title: string, otherwise: string, student: Student, ending: string): string {
  const { number, name } = student;
  const digits = number > 0 ? String(number).padStart(NUMBER_DIGITS, '0') : '';
  const parts = [part(title) || otherwise, digits, part(name)];
  return `${parts.filter((one) => one !== '').join('-')}.${ending}`;
}

/** The name of a file of a plan, or of `what` is made of it: its title, and the student's number. */
export function planFileName({ title, student = 0 }: Plan, ending: string, what = ''): string {
  const named = title.trim() === '' ? `five-milliamps ${what || 'plan'}` : `${title} ${what}`;
  return fileName(named, 'five-milliamps', { number: student, name: '' }, ending);
}

/**
 * The student whom a file's name speaks of, the last number of at most three digits and what stands behind it: '<title>-07-ann.json',
 * '7 Ann.json'. A name without such a number is all name: 'ann.json'. A copy's '(2)' at the end counts for nothing.
 */
export function studentOfFile(path: string): Student {
  const base = (path.split(/[\\/]/).at(-1) ?? '').replace(/\.[^.]*$/, '').replace(/ ?\(\d+\)$/, '');
  const words = base.split(/[^\p{L}\p{M}\p{N}]+/u).filter((one) => one !== '');
  const at = words.findLastIndex((one) => /^\d{1,3}$/.test(one));
  return { number: at < 0 ? 0 : Number(words[at]), name: words.slice(at + 1).join(' ') };
}
