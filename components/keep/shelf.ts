/**
 * Shelves in the browser's store: a thing as it is, and earlier versions of it. Every answer is a value. A thing is stored as
 * one line about it (revision, tab, time) and its text below; text without that line is from an earlier workbook. What cannot
 * be read is never written over: it is put aside, beside what was put aside before.
 */
import { sayError } from '../parts/say-error.ts';

/** A thing on a shelf. `revision` counts up with each writing, `by` names the tab that wrote it. */
export interface Stored {
  readonly revision: number;
  readonly by: string;
  /** ISO 8601; empty where it is not known. */
  readonly at: string;
  readonly text: string;
}

/** An earlier version of it. */
export interface Version {
  readonly at: string;
  readonly text: string;
}

/** What became of a writing. `clash` hands back what another tab has written meanwhile; nothing was overwritten. */
type Writing =
  | { readonly kind: 'kept'; readonly stored: Stored }
  | { readonly kind: 'clash'; readonly stored: Stored }
  | { readonly kind: 'failed'; readonly full: boolean; readonly why: string };

/** Bounds of the list of versions, so that a shelf leaves room for the others (our choice; browsers give about 5 MB). */
const MOST_VERSIONS = 20;
const MOST_VERSION_CHARACTERS = 1_000_000;

/** What stands beside a shelf, under its own key. */
type Part = ' versions' | ' put aside';

const HEAD = /^kept (\d{1,15}) (\S{1,40}) (\S{0,40})$/;

/** The key of a shelf in the store. */
export function shelfKey(shelf: string, part: Part | '' = ''): string {
  return `five-milliamps ${shelf}${part}`;
}

/** Read stored text. */
export function readStored(text: string): Stored {
  const end = text.indexOf('\n');
  const found = HEAD.exec(end < 0 ? text : text.slice(0, end));
  if (!found) return { revision: 0, by: '', at: '', text };
  const [, revision = '0', by = '', at = ''] = found;
  return { revision: Number(revision), by, at, text: end < 0 ? '' : text.slice(end + 1) };
}

/** What is on a shelf, or why the browser does not say. */
export function stored(shelf: string): { readonly now?: Stored; readonly why?: string } {
  try {
    const text = localStorage.getItem(shelfKey(shelf));
    return text === null ? {} : { now: readStored(text) };
  } catch (error) {
    return { why: sayError(error) };
  }
}

/** Write it if the shelf still holds the revision that the writer has seen, 0 for an empty one. */
export function store(shelf: string, seen: number, by: string, at: string, text: string): Writing {
  const { now, why } = stored(shelf);
  if (why !== undefined) return { kind: 'failed', full: false, why };
  if (now && now.revision !== seen) return { kind: 'clash', stored: now };
  const next: Stored = { revision: seen + 1, by, at, text };
  try {
    localStorage.setItem(shelfKey(shelf), `kept ${next.revision} ${by} ${at}\n${text}`);
    return { kind: 'kept', stored: next };
  } catch (error) {
    return { kind: 'failed', full: isFull(error), why: sayError(error) };
  }
}

/** Take what is on a shelf off it. */
export function dropStored(shelf: string): void {
  remove(shelf, '');
}

/** The versions on a shelf, newest first; `broken` is the text of a list that cannot be read whole. */
export function versions(shelf: string): { readonly list: readonly Version[]; readonly broken?: string } {
  const text = read(shelf, ' versions');
  if (text === undefined) return { list: [] };
  const list = parsed(text);
  if (!Array.isArray(list)) return { list: [], broken: text };
  const good = list.filter(isVersion);
  return good.length === list.length ? { list: good } : { list: good, broken: text };
}

/**
 * Put a version on the shelf, unless it is there already; the oldest make room. A list that cannot be read is put aside first.
 * False where the browser refuses: then nothing was changed.
 */
export function addVersion(shelf: string, version: Version): boolean {
  const { list, broken } = versions(shelf);
  if (list.some(({ text }) => text === version.text) && broken === undefined)
    return moveUp(shelf, version, list);
  if (broken !== undefined && !putAside(shelf, broken)) return false;
  return putVersions(shelf, [version, ...list]);
}

/** Write a list of versions, newest first, as far as there is room for it on a shelf. False where the browser refuses. */
export function putVersions(shelf: string, list: readonly Version[]): boolean {
  const kept: Version[] = [];
  let characters = 0;
  for (const one of list) {
    characters += one.text.length;
    if (kept.length > 0 && (kept.length >= MOST_VERSIONS || characters > MOST_VERSION_CHARACTERS)) break;
    kept.push(one);
  }
  return put(shelf, ' versions', JSON.stringify(kept));
}

/** Let all versions go. */
export function dropVersions(shelf: string): void {
  remove(shelf, ' versions');
}

/** Put text aside that cannot be read, so that it is not written over. False where the browser refuses. */
export function putAside(shelf: string, text: string): boolean {
  const before = aside(shelf);
  if (before === text || before?.endsWith(`\n${text}`)) return true;
  return put(shelf, ' put aside', before === undefined ? text : `${before}\n${text}`);
}

/** What was put aside, or undefined. */
export function aside(shelf: string): string | undefined {
  return read(shelf, ' put aside');
}

/** Let go of what was put aside. */
export function dropAside(shelf: string): void {
  remove(shelf, ' put aside');
}

/** A version that is there already is still there where the browser refuses to write the list anew. */
function moveUp(shelf: string, { text, at }: Version, list: readonly Version[]): boolean {
  putVersions(shelf, [{ text, at }, ...list.filter((one) => one.text !== text)]);
  return true;
}

function read(shelf: string, part: Part): string | undefined {
  try {
    return localStorage.getItem(shelfKey(shelf, part)) ?? undefined;
  } catch {
    return undefined;
  }
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}

function put(shelf: string, part: Part, text: string): boolean {
  try {
    localStorage.setItem(shelfKey(shelf, part), text);
    return true;
  } catch {
    return false;
  }
}

function remove(shelf: string, part: Part | ''): void {
  try {
    localStorage.removeItem(shelfKey(shelf, part));
  } catch {
    // A browser that refuses its store holds nothing to let go of.
  }
}

function isVersion(value: unknown): value is Version {
  if (value === null || typeof value !== 'object') return false;
  const { at, text } = value as Readonly<Record<string, unknown>>;
  return typeof at === 'string' && typeof text === 'string';
}

function isFull(error: unknown): boolean {
  return error instanceof DOMException && error.name === 'QuotaExceededError';
}
