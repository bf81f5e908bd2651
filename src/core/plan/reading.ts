/** What is wrong in a file, noted while it is read: a reader that fails returns undefined, and reading goes on. */

/** Where something is wrong in a file, what was expected, and what came. */
export interface Problem {
  readonly place: string;
  readonly expected: string;
  readonly got: string;
}

/** Takes a value and its place, and notes what does not fit. */
export type Reader<T> = (value: unknown, place: string, problems: Problem[]) => T | undefined;

/** A problem in one line: 'devices[0].name: expected text, got 5'. */
export function sayProblem({ place, expected, got }: Problem): string {
  return `${place}: expected ${expected}, got ${got}`;
}

/** A value as shown in a message: short, quoted when it is text. */
export function show(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (value !== null && typeof value === 'object') return 'an object';
  const text = typeof value === 'string' ? `'${value}'` : String(value);
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}

/** Note a problem; always undefined, so that a reader can return it. */
export function miss(problems: Problem[], place: string, expected: string, got: unknown): undefined {
  problems.push({ place, expected, got: show(got) });
  return undefined;
}

/** The fields of a value that is an object and no list, else undefined. */
export function fieldsOf(value: unknown): Readonly<Record<string, unknown>> | undefined {
  return value !== null && typeof value === 'object' && !Array.isArray(value)
    ? (value as Readonly<Record<string, unknown>>)
    : undefined;
}
