/** Shapes of objects: fields by name, and objects of several kinds that one field tells apart. */
import { fieldsOf, miss } from './reading.ts';
import type { Problem } from './reading.ts';
import type { Left, NamesOf, Of, Shape } from './shape.ts';

/** Fields by name, in the order of a file. */
type Fields = Readonly<Record<string, Shape<unknown>>>;

/** The names of the fields that stay left out. */
type LeftIn<F> = { [K in keyof F]: F[K] extends Left<unknown> ? K : never }[keyof F];

/** The type of an object of these fields. */
type RecordOf<F> = {
  readonly [K in keyof F as K extends LeftIn<F> ? never : K]: Of<F[K]>;
} & { readonly [K in keyof F as K extends LeftIn<F> ? K : never]?: Of<F[K]> };

/** The shape of an object, its fields, and what those that stay left out mean. */
interface RecordShape<F> extends Shape<RecordOf<F>> {
  readonly fields: F;
  readonly defaults: { readonly [K in keyof F as K extends LeftIn<F> ? K : never]: Of<F[K]> };
}

/** How an object is packed and what else must hold of it. */
interface RecordOptions<F> {
  /** Whether its fields stand in the list around it, in place of a list of their own. */
  readonly inline?: boolean;
  /** The order of the fields in a link, where it is not that of a file. */
  readonly packed?: readonly (keyof F & string)[];
  /** Notes what is wrong with an object whose fields are right one by one. */
  readonly check?: (value: RecordOf<F>, place: string, problems: Problem[]) => void;
}

/**
 * An object of these fields and no others. In a link its fields follow one another, and those that may be left out stand
 * behind them as number and value in turn, only where they are there: so these may only grow at their end.
 */
export function record<const F extends Fields>(fields: F, options: RecordOptions<F> = {}): RecordShape<F> {
  const all = Object.entries<Shape<unknown>>(fields);
  const left = all.filter(([, { missing }]) => missing?.is === 'left');
  const order = options.packed ?? all.filter((one) => !left.includes(one)).map(([name]) => name);
  const fixed = order.map((name) => [name, fields[name] as Shape<unknown>] as const);
  const shape: Shape<unknown> = {
    read: reader(all, options.check as RecordOptions<Fields>['check']),
    schema: {
      type: 'object',
      properties: Object.fromEntries(all.map(([name, { schema }]) => [name, schema])),
      required: all.filter(([, { missing }]) => !missing).map(([name]) => name),
      additionalProperties: false,
    },
    width: options.inline ? fixed.reduce((sum, [, { width }]) => sum + width, 0) : 1,
    pack: (value, names) => {
      const given = value as Readonly<Record<string, unknown>>;
      const places = fixed.flatMap(([name, one]) => one.pack(given[name], names, value));
      const more = left.flatMap(([name, one], at) =>
        given[name] === undefined ? [] : [at, ...one.pack(given[name], names, value)],
      );
      const packed = more.length > 0 ? [...places, more] : places;
      return options.inline ? packed : [packed];
    },
    unpack: (places, names) => {
      const packed: unknown = options.inline ? places : places[0];
      return Array.isArray(packed) ? unpackFields(packed, fixed, left, names) : packed;
    },
  };
  const defaults = Object.fromEntries(left.map(([name, { missing }]) => [name, missing?.value]));
  return { ...shape, fields, defaults } as RecordShape<F>;
}

type Named = readonly (readonly [name: string, shape: Shape<unknown>])[];

function reader(fields: Named, check: RecordOptions<Fields>['check']): Shape<unknown>['read'] {
  const names = fields.map(([name]) => name);
  const expected = `no field of this name (there are ${names.join(', ')})`;
  return (value, place, problems) => {
    const given = fieldsOf(value);
    if (!given) return miss(problems, place, 'an object', value);
    const at = (name: string): string => (place === '' ? name : `${place}.${name}`);
    for (const name of Object.keys(given))
      if (!names.includes(name)) miss(problems, at(name), expected, given[name]);
    const made: Record<string, unknown> = {};
    let whole = true;
    for (const [name, { read, missing }] of fields) {
      if (given[name] === undefined && missing?.is === 'left') continue;
      const one =
        given[name] === undefined && missing ? missing.value : read(given[name], at(name), problems);
      if (one === undefined) whole = false;
      made[name] = one;
    }
    if (!whole) return undefined;
    check?.(made, place, problems);
    return made;
  };
}

/** Back to fields with names. A number that stands for no field gets a name that the reader refuses. */
function unpackFields(packed: readonly unknown[], fixed: Named, left: Named, names: NamesOf): unknown {
  const made: Record<string, unknown> = {};
  let at = 0;
  for (const [name, shape] of fixed) {
    made[name] = shape.unpack(packed.slice(at, at + shape.width), names, made);
    at += shape.width;
  }
  const more: unknown = packed[at];
  if (!Array.isArray(more)) return more === undefined ? made : { ...made, 'further fields': more };
  for (let place = 0; place < more.length; place += 2) {
    const number: unknown = more[place];
    const [name, shape] = (typeof number === 'number' ? left[number] : undefined) ?? [];
    made[name ?? `field ${String(number)}`] = shape?.unpack([more[place + 1]], names, made) ?? null;
  }
  return made;
}

/** Objects of several kinds, told apart by one field that always is the same in each; a link holds the number of the kind. */
export function kindsOf<const K extends readonly (Shape<unknown> & { readonly fields: Fields })[]>(
  tag: string,
  kinds: K,
): Shape<Of<K[number]>> {
  const words = kinds.map(({ fields }) => fields[tag]?.schema['const']);
  const tagAt = Object.keys(kinds[0]?.fields ?? {}).indexOf(tag);
  const shape: Shape<unknown> = {
    read: (value, place, problems) => {
      const word = fieldsOf(value)?.[tag];
      const kind = kinds[words.indexOf(word)];
      return kind
        ? kind.read(value, place, problems)
        : miss(problems, `${place}.${tag}`, `one of ${words.join(', ')}`, word);
    },
    schema: { oneOf: kinds.map(({ schema }) => schema) },
    width: 1,
    pack: (value, names, holder) => {
      const at = words.indexOf(fieldsOf(value)?.[tag]);
      return [(kinds[at]?.pack(value, names, holder) ?? []).toSpliced(tagAt, 0, at)];
    },
    unpack: ([packed], names, holder) => {
      if (!Array.isArray(packed)) return packed;
      const at: unknown = packed[tagAt];
      const kind = typeof at === 'number' ? kinds[at] : undefined;
      return kind ? kind.unpack(packed.toSpliced(tagAt, 1), names, holder) : { [tag]: null };
    },
  };
  return shape as Shape<Of<K[number]>>;
}
