/**
 * The language in which the shape of a plan is written down. One description of a value is its type, its reader with its
 * messages, its JSON Schema and its packing in a shared link: numbers for words, lists for objects.
 */
import { fieldsOf, miss } from './reading.ts';
import type { Reader } from './reading.ts';

/** A JSON Schema (2020-12). */
export type Schema = Readonly<Record<string, unknown>>;

/** The names that may stand where a link holds a number: devices, leads, or the jacks of the device that a value names. */
export type NamesOf = (kind: NameKind, holder: unknown) => readonly unknown[];
type NameKind = 'devices' | 'jacks' | 'leads';

/** The shape of a value of type `T`. What it unpacks to may be anything: the reader looks at it afterwards. */
export interface Shape<T> {
  readonly read: Reader<T>;
  readonly schema: Schema;
  /** How many places it takes in the packed list it stands in. */
  readonly width: number;
  /** `holder` is the object that it stands in, for a name that only means something on another one. */
  pack(value: T, names: NamesOf, holder: unknown): readonly unknown[];
  unpack(places: readonly unknown[], names: NamesOf, holder: unknown): unknown;
  /** Present where the field may be left out: it then has this value, `filled` in by the reader or `left` out. */
  readonly missing?: { readonly value: T; readonly is: 'filled' | 'left' };
}

/** A field that stays left out where it was. */
export interface Left<T> extends Shape<T> {
  readonly missing: { readonly value: T; readonly is: 'left' };
}

/** The type of what a shape describes. */
export type Of<S> = S extends Shape<infer T> ? T : never;

/** A value that a link holds as it is: what it must be, and the same in words. */
function plain<T>(is: (value: unknown) => boolean, expected: string, schema: Schema): Shape<T> {
  return {
    read: (value, place, problems) => (is(value) ? (value as T) : miss(problems, place, expected, value)),
    schema,
    width: 1,
    pack: (value) => [value],
    unpack: ([value]) => value,
  };
}

/** A number that stands for a member of a list; one that stands for none gives null, which no reader takes. */
function memberAt(all: readonly unknown[], at: unknown): unknown {
  return typeof at === 'number' ? (all[at] ?? null) : null;
}

const within = (value: unknown, [least, most]: readonly [number, number]): value is number =>
  typeof value === 'number' && value >= least && value <= most;

/** Text of at most `most` characters; `least` 1 forbids the empty text. */
export function text(most: number, least = 1): Shape<string> {
  return plain(
    (value) => typeof value === 'string' && within(value.length, [least, most]),
    `text of ${least} to ${most} characters`,
    { type: 'string', minLength: least, maxLength: most },
  );
}

/** A name of another thing in the same plan: text in a file, its number in a link. */
export function nameOf(kind: NameKind, most: number): Shape<string> {
  return {
    ...text(most),
    pack: (value, names, holder) => [names(kind, holder).indexOf(value)],
    unpack: ([at], names, holder) => memberAt(names(kind, holder), at),
  };
}

/** A number in a range, both ends included, in `unit`; with a `floor`, none between 0 and that. */
export function number(range: readonly [number, number], unit = '', floor = 0): Shape<number> {
  const [minimum, maximum] = range;
  const gap = floor > 0 ? `, 0 or at least ${floor}` : '';
  const words = `a number from ${minimum} to ${maximum}${unit === '' ? '' : ` ${unit}`}${gap}`;
  return plain((value) => within(value, range) && (value <= 0 || value >= floor), words, {
    type: 'number',
    minimum,
    maximum,
    ...(floor > 0 ? { not: { type: 'number', exclusiveMinimum: 0, exclusiveMaximum: floor } } : {}),
  });
}

/** Any number. */
export const anyNumber: Shape<number> = plain(Number.isFinite, 'a number', { type: 'number' });

/** A whole number in a range, both ends included. */
export function whole(range: readonly [number, number]): Shape<number> {
  const [minimum, maximum] = range;
  return plain(
    (value) => within(value, range) && Number.isInteger(value),
    `a whole number from ${minimum} to ${maximum}`,
    { type: 'integer', minimum, maximum },
  );
}

/** True or false; 1 or 0 in a link. */
export const truth: Shape<boolean> = {
  ...plain((value) => typeof value === 'boolean', 'true or false', { type: 'boolean' }),
  pack: (value) => [Number(value)],
  unpack: ([value]) => (value === 1 ? true : value === 0 ? false : value),
};

/** One of these numbers. */
export function oneNumberOf(all: readonly number[]): Shape<number> {
  return plain((value) => all.some((one) => one === value), `one of ${all.join(', ')}`, { enum: [...all] });
}

/** One word of a closed set, which may only grow at its end: a link holds its number. */
export function oneOf<const T extends string>(all: readonly T[]): Shape<T> {
  return {
    ...plain((value) => all.some((one) => one === value), `one of ${all.join(', ')}`, { enum: [...all] }),
    pack: (value) => [all.indexOf(value)],
    unpack: ([at]) => memberAt(all, at),
  };
}

/** Always this value; a link leaves it out. */
export function only<const T extends string | number>(value: T): Shape<T> {
  return {
    ...plain((given) => given === value, `one of ${value}`, { const: value }),
    width: 0,
    pack: () => [],
    unpack: () => value,
  };
}

/** A list of `least` to `most` things. */
export function listOf<T>(item: Shape<T>, most: number, least = 0): Shape<readonly T[]> {
  return {
    read: (value, place, problems) => {
      if (!Array.isArray(value) || value.length < least || value.length > most)
        return miss(problems, place, `a list of ${least} to ${most}`, value);
      const read = value.map((one, at) => item.read(one, `${place}[${at}]`, problems));
      return read.every((one) => one !== undefined) ? (read as T[]) : undefined;
    },
    schema: { type: 'array', items: item.schema, minItems: least, maxItems: most },
    width: 1,
    pack: (value, names, holder) => [value.flatMap((one) => item.pack(one, names, holder))],
    // A list that is too long stays as it is: the reader refuses it by its length, without a look at its members.
    unpack: ([packed], names, holder) =>
      Array.isArray(packed) && packed.length <= most * item.width
        ? Array.from({ length: Math.ceil(packed.length / item.width) }, (_, at) =>
            item.unpack(packed.slice(at * item.width, (at + 1) * item.width), names, holder),
          )
        : packed,
  };
}

/** Two different words of a closed set. */
export function pairOf<T extends string>(item: Shape<T>): Shape<readonly [T, T]> {
  const both = listOf(item, 2, 2);
  return {
    read: (value, place, problems) => {
      const read = both.read(value, place, problems);
      if (!read || read[0] !== read[1]) return read as readonly [T, T] | undefined;
      return miss(problems, place, 'two different contacts', read[0]);
    },
    schema: both.schema,
    width: 2,
    pack: (value, names, holder) => value.flatMap((one) => item.pack(one, names, holder)),
    unpack: (places, names, holder) => places.map((one) => item.unpack([one], names, holder)),
  };
}

/** Values under some of these names; in a link a list of name and value in turn. */
export function tableOf<K extends string, T>(
  keys: readonly K[],
  item: Shape<T>,
): Shape<Readonly<Partial<Record<K, T>>>> {
  const key = oneOf(keys);
  return {
    read: (value, place, problems) => {
      const given = fieldsOf(value);
      if (!given) return miss(problems, place, 'an object', value);
      const read = Object.entries(given).map(([name, one]) => [
        key.read(name, `${place}.${name}`, problems),
        item.read(one, `${place}.${name}`, problems),
      ]);
      return read.every((pair) => !pair.includes(undefined))
        ? (Object.fromEntries(read) as Partial<Record<K, T>>)
        : undefined;
    },
    schema: {
      type: 'object',
      properties: Object.fromEntries(keys.map((name) => [name, item.schema])),
      additionalProperties: false,
    },
    width: 1,
    pack: (value, names) => [
      Object.entries(value).flatMap(([name, one]) => [
        ...key.pack(name as K, names, value),
        ...item.pack(one as T, names, value),
      ]),
    ],
    unpack: ([packed], names) =>
      Array.isArray(packed) && packed.length <= 2 * keys.length
        ? Object.fromEntries(
            Array.from({ length: Math.ceil(packed.length / 2) }, (_, at) => [
              memberAt(keys, packed[2 * at]),
              item.unpack([packed[2 * at + 1]], names, undefined),
            ]),
          )
        : packed,
  };
}

/** A field that the reader fills in where it was left out. */
export function filled<T>(shape: Shape<T>, value: NoInfer<T>): Shape<T> {
  return { ...shape, schema: { ...shape.schema, default: value }, missing: { value, is: 'filled' } };
}

/** A field that may be left out, and then means this value. */
export function left<T>(shape: Shape<T>, value: NoInfer<T>): Left<T> {
  return { ...shape, missing: { value, is: 'left' } };
}
