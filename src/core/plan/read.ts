/** Reading values that came from outside: each reader takes a value and its place, and notes what does not fit. */

/** What is wrong in a file: where, what was expected, what came. */
export interface Problem {
  readonly place: string;
  readonly expected: string;
  readonly got: string;
}

/** Notes problems while a file is read. A reader that fails returns undefined, and reading goes on. */
export interface Reading {
  readonly problems: Problem[];
}

export type Reader<T> = (value: unknown, place: string, reading: Reading) => T | undefined;

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
export function miss(reading: Reading, place: string, expected: string, got: unknown): undefined {
  reading.problems.push({ place, expected, got: show(got) });
  return undefined;
}

/** Text of at most `most` characters; `least` 1 forbids the empty text. */
export function text(most: number, least = 1): Reader<string> {
  return (value, place, reading) =>
    typeof value === 'string' && value.length >= least && value.length <= most
      ? value
      : miss(reading, place, `text of ${least} to ${most} characters`, value);
}

/** A number from `least` to `most` in `unit`. */
export function number(least: number, most: number, unit: string): Reader<number> {
  return (value, place, reading) =>
    typeof value === 'number' && value >= least && value <= most
      ? value
      : miss(reading, place, `a number from ${least} to ${most}${unit === '' ? '' : ` ${unit}`}`, value);
}

/** A whole number from `least` to `most`. */
export function whole(least: number, most: number): Reader<number> {
  return (value, place, reading) =>
    typeof value === 'number' && Number.isInteger(value) && value >= least && value <= most
      ? value
      : miss(reading, place, `a whole number from ${least} to ${most}`, value);
}

/** One of a closed set. */
export function oneOf<const T extends string | number>(all: readonly T[]): Reader<T> {
  return (value, place, reading) =>
    all.find((one) => one === value) ?? miss(reading, place, `one of ${all.join(', ')}`, value);
}

/** A list of at most `most` things. */
export function listOf<T>(reader: Reader<T>, most: number, least = 0): Reader<readonly T[]> {
  return (value, place, reading) => {
    if (!Array.isArray(value) || value.length < least || value.length > most) {
      return miss(reading, place, `a list of ${least} to ${most}`, value);
    }
    const read = value.map((one, at) => reader(one, `${place}[${at}]`, reading));
    return read.every((one) => one !== undefined) ? (read as T[]) : undefined;
  };
}

/** True or false. */
export const truth: Reader<boolean> = (value, place, reading) =>
  typeof value === 'boolean' ? value : miss(reading, place, 'true or false', value);

/**
 * An object with these fields and no others. `optional` fields may be left out and then take their default; `absent` fields
 * may be left out and stay out.
 */
export function objectOf<T extends object>(
  fields: { readonly [K in keyof T]-?: Reader<Exclude<T[K], undefined>> },
  optional: Partial<T> = {},
  absent: readonly (keyof T)[] = [],
): Reader<T> {
  const names = Object.keys(fields) as (keyof T & string)[];
  return (value, place, reading) => {
    if (value === null || typeof value !== 'object' || Array.isArray(value))
      return miss(reading, place, 'an object', value);
    const given = value as Readonly<Record<string, unknown>>;
    for (const key of Object.keys(given)) {
      if (!(names as string[]).includes(key))
        miss(reading, dot(place, key), `no field of this name (there are ${names.join(', ')})`, given[key]);
    }
    const made: Partial<T> = {};
    let whole = true;
    for (const name of names) {
      const one = given[name];
      if (one === undefined && absent.includes(name)) continue;
      const read: T[keyof T & string] | undefined =
        one === undefined && name in optional ? optional[name] : fields[name](one, dot(place, name), reading);
      if (read === undefined) whole = false;
      else made[name] = read;
    }
    return whole ? (made as T) : undefined;
  };
}

function dot(place: string, key: string): string {
  return place === '' ? key : `${place}.${key}`;
}
