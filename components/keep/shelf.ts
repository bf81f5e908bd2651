/**
 * Shelves in the browser's store: the plan as it is, and earlier versions of it. Every answer is a value. A plan is stored as
 * one line about it (revision, tab, time) and the plan's text below; text without that line is a plan of an earlier workbook.
 */

/** One shelf for each part of the workbook that keeps a plan. */
export type ShelfName = 'bench' | 'board';

/** A plan on a shelf. `revision` counts up with each writing, `by` names the tab that wrote it. */
export interface Stored {
  readonly revision: number;
  readonly by: string;
  /** ISO 8601; empty where it is not known. */
  readonly at: string;
  readonly text: string;
}

/** An earlier version of the plan. */
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

const HEAD = /^kept (\d{1,15}) (\S{1,40}) (\S{0,40})$/;

/** The key of a shelf in the store. */
export function shelfKey(shelf: ShelfName, part: '' | ' versions' | ' put aside' = ''): string {
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
export function stored(shelf: ShelfName): { readonly now?: Stored; readonly why?: string } {
  try {
    const text = localStorage.getItem(shelfKey(shelf));
    return text === null ? {} : { now: readStored(text) };
  } catch (error) {
    return { why: said(error) };
  }
}

/** Write a plan if the shelf still holds the revision that the writer has seen, 0 for an empty one. */
export function store(shelf: ShelfName, seen: number, by: string, at: string, text: string): Writing {
  const { now, why } = stored(shelf);
  if (why !== undefined) return { kind: 'failed', full: false, why };
  if (now && now.revision !== seen) return { kind: 'clash', stored: now };
  const next: Stored = { revision: seen + 1, by, at, text };
  try {
    localStorage.setItem(shelfKey(shelf), `kept ${next.revision} ${by} ${at}\n${text}`);
    return { kind: 'kept', stored: next };
  } catch (error) {
    return { kind: 'failed', full: isFull(error), why: said(error) };
  }
}

/** The versions on a shelf, newest first; a list that cannot be read is empty. */
export function versions(shelf: ShelfName): readonly Version[] {
  try {
    const list: unknown = JSON.parse(localStorage.getItem(shelfKey(shelf, ' versions')) ?? '[]');
    return Array.isArray(list) ? list.filter(isVersion) : [];
  } catch {
    return [];
  }
}

/** Put a version on the shelf, unless it is there already; the oldest make room. False where the browser refuses. */
export function addVersion(shelf: ShelfName, version: Version): boolean {
  const others = versions(shelf).filter(({ text }) => text !== version.text);
  const kept: Version[] = [];
  let characters = 0;
  for (const one of [version, ...others]) {
    characters += one.text.length;
    if (kept.length > 0 && (kept.length >= MOST_VERSIONS || characters > MOST_VERSION_CHARACTERS)) break;
    kept.push(one);
  }
  return put(shelf, ' versions', JSON.stringify(kept));
}

/** Let all versions go. */
export function dropVersions(shelf: ShelfName): void {
  remove(shelf, ' versions');
}

/** Put text aside that cannot be read as a plan, so that it is not written over. False where the browser refuses. */
export function putAside(shelf: ShelfName, text: string): boolean {
  return put(shelf, ' put aside', text);
}

/** What was put aside, or undefined. */
export function aside(shelf: ShelfName): string | undefined {
  try {
    return localStorage.getItem(shelfKey(shelf, ' put aside')) ?? undefined;
  } catch {
    return undefined;
  }
}

/** Let go of what was put aside. */
export function dropAside(shelf: ShelfName): void {
  remove(shelf, ' put aside');
}

function put(shelf: ShelfName, part: ' versions' | ' put aside', text: string): boolean {
  try {
    localStorage.setItem(shelfKey(shelf, part), text);
    return true;
  } catch {
    return false;
  }
}

function remove(shelf: ShelfName, part: ' versions' | ' put aside'): void {
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

function said(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
