/** Reading what a class hands round: one way for every kind of file and link, with a message for what is wrong. */
import { CHANGED_LINK, fieldsOf, packLink, show, unpackLink } from '../plan/index.ts';
import type { Problem, Shape } from '../plan/index.ts';
import { CLASS_LIMITS } from './limits.ts';

/** A value that was read, or everything that is wrong with it. */
export type Reading<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** A kind of file: its format, its version, and its shape. */
export interface FileKind<T> {
  readonly format: string;
  readonly version: number;
  readonly shape: Shape<T>;
}

const failed = (place: string, expected: string, got: string): Reading<never> => ({
  ok: false,
  problems: [{ place, expected, got }],
});

/** Read a value of a kind from parsed JSON. */
export function readValue<T>({ format, version, shape }: FileKind<T>, value: unknown): Reading<T> {
  const given = fieldsOf(value);
  if (!given) return failed('the file', `an object with the format ${format}`, show(value));
  if (given['format'] !== format) return failed('format', format, show(given['format']));
  const found = given['version'];
  if (typeof found === 'number' && found > version)
    return failed('version', `${version}: this file was made by a newer workbook`, String(found));
  const problems: Problem[] = [];
  const read = shape.read(value, '', problems);
  return read !== undefined && problems.length === 0 ? { ok: true, value: read } : { ok: false, problems };
}

/** Read a value of a kind from the text of a file. */
export function readText<T>(kind: FileKind<T>, json: string): Reading<T> {
  const parsed = readJson(json);
  return parsed.ok ? readValue(kind, parsed.value) : parsed;
}

/** What JSON holds of the text of a file. */
export function readJson(json: string): Reading<unknown> {
  if (json.length > CLASS_LIMITS.file)
    return failed('the file', `at most ${CLASS_LIMITS.file} characters`, `${json.length} characters`);
  try {
    return { ok: true, value: JSON.parse(json.replace(/^\uFEFF/, '')) as unknown };
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
    return failed('the file', 'JSON', `other text (${error.message})`);
  }
}

/** A value as text for a file, the same value always the same text. */
export function writeText(value: object): string {
  return `${JSON.stringify(value, undefined, 2)}\n`;
}

/** Nothing in a Set or a result is named by a number that another part of it gives. */
const NO_NAMES = (): readonly unknown[] => [];

/** Write a value of a kind into a link's text. */
export function packAs<T>({ shape }: FileKind<T>, value: T): Promise<string> {
  return packLink(shape.pack(value, NO_NAMES, undefined)[0]);
}

/** Read a value of a kind from a link's text; never throws. */
export async function unpackAs<T>(kind: FileKind<T>, text: string): Promise<Reading<T>> {
  const unpacked = await unpackLink(text);
  if (!unpacked.ok) return unpacked;
  if (!Array.isArray(unpacked.value)) return CHANGED_LINK;
  return readValue(kind, kind.shape.unpack([unpacked.value], NO_NAMES, undefined));
}
