/**
 * Keeps one thing on its shelf: reads it at the start, writes it after each change, never over what another tab has written, and
 * lets nothing take its place before it is a version, or the reader has said so.
 */
import type { Kind } from './kind.ts';
import { isoOf, millisecondsNow } from './moments.ts';
import {
  addVersion,
  aside,
  dropAside,
  dropStored,
  dropVersions,
  putAside,
  putVersions,
  readStored,
  shelfKey,
  store,
  stored,
  versions,
} from './shelf.ts';
import type { Stored, Version } from './shelf.ts';

/** Time after which the next change begins a new version, milliseconds (our choice). */
const VERSION_MILLISECONDS = 180_000;

/** Wait before a change is written, milliseconds: longer than a paint, shorter than a thought. */
const WRITE_AFTER_MILLISECONDS = 150;

/** A keeper of one shelf; it must be started before it writes. */
export class Keeper<T> {
  readonly shelf: string;
  readonly kind: Kind<T>;
  /** Another tab's state that stands against this one; nothing is written until the reader has chosen. */
  clash = $state.raw<Stored>();
  /** Why the work is not kept. */
  failure = $state.raw<{ readonly full: boolean; readonly why: string }>();
  /** What waits for the reader's word: `text` would be gone, since it cannot be kept as a version. */
  question = $state.raw<{ readonly text: string; readonly go: () => void }>();
  /** Text that was kept and cannot be read, what it should have been, and why it is not. */
  spoiled = $state.raw<{ readonly text: string; readonly what: string; readonly why: string }>();
  /** What was kept is gone from the store; nothing is written until the reader has said so. */
  emptied = $state(false);
  /** The store has no room for versions any more, though what is in work is kept. */
  noVersions = $state(false);
  /** When it was written last, ISO 8601. */
  keptAt = $state('');
  versions = $state.raw<readonly Version[]>([]);

  readonly #tab = Math.random().toString(36).slice(2, 10);
  readonly #now: () => number;
  #seen = 0;
  #last: Stored | undefined;
  #lastValue: T | undefined;
  #fresh = '';
  #versionAt = 0;
  #started = false;

  constructor(shelf: string, kind: Kind<T>, now: () => number = millisecondsNow) {
    this.shelf = shelf;
    this.kind = kind;
    this.#now = now;
  }

  /**
   * Read the shelf: what was kept last, or undefined. What cannot be read is put aside before anything is written, and `fresh`,
   * which the page starts with, is not written as long as it is unchanged.
   */
  start(fresh: T): T | undefined {
    this.#lastValue = fresh;
    this.#fresh = this.kind.write(fresh);
    const old = aside(this.shelf);
    if (old !== undefined) this.#spoil(old, 'earlier work', 'it was put aside when it was found');
    this.#started = true;
    const { list, broken } = versions(this.shelf);
    this.versions = list;
    if (broken !== undefined)
      this.#spoil(broken, 'list of earlier versions', 'it is no list of versions', () =>
        putVersions(this.shelf, list),
      );
    const { now, why } = stored(this.shelf);
    if (why !== undefined) this.failure = { full: false, why };
    if (!now) return undefined;
    this.#seen = now.revision;
    const { value, problem } = this.kind.read(now.text);
    if (value !== undefined) this.#take(now, value);
    if (problem !== undefined)
      this.#spoil(now.text, this.kind.name, problem, () => {
        if (value !== undefined) return this.#anew(value);
        dropStored(this.shelf);
        this.#seen = 0;
      });
    return value;
  }

  /** Hear of other tabs, and look whether the store is as it was when the page comes back; returns what stops it. */
  listen(): () => void {
    const hear = (event: StorageEvent): void => {
      if (event.key === null || (event.key === shelfKey(this.shelf) && event.newValue === null))
        this.#missIt();
      if (event.key !== shelfKey(this.shelf) || event.newValue === null) return;
      const other = readStored(event.newValue);
      // What this page found and put aside may be told of late.
      if (other.by === this.#tab || other.text === this.spoiled?.text) return;
      if (other.text === this.#last?.text) this.#seen = other.revision;
      else this.clash = other;
    };
    const look = (): void => {
      if (document.visibilityState === 'visible') this.#missIt();
    };
    addEventListener('storage', hear);
    document.addEventListener('visibilitychange', look);
    return () => {
      removeEventListener('storage', hear);
      document.removeEventListener('visibilitychange', look);
    };
  }

  /**
   * Write it soon, and at once when the page goes; the browser asks the reader first where it could not be kept. Returns what
   * takes all this back.
   */
  later(value: T): () => void {
    const write = (): void => this.keep(value);
    const leave = (): void => {
      // What lost its place to another tab is still to be found among the versions.
      if (this.clash && value !== this.#lastValue) this.#addVersion(this.kind.write(value));
      else write();
    };
    const ask = (event: BeforeUnloadEvent): void => {
      write();
      if (this.#isUnkept(value)) event.preventDefault();
    };
    const timer = setTimeout(write, WRITE_AFTER_MILLISECONDS);
    addEventListener('pagehide', leave);
    addEventListener('beforeunload', ask);
    return () => {
      clearTimeout(timer);
      removeEventListener('pagehide', leave);
      removeEventListener('beforeunload', ask);
    };
  }

  /** Write it now, if it has changed and nothing stands against it. */
  keep(value: T): void {
    if (!this.#started || this.clash || this.emptied || value === this.#lastValue) return;
    const text = this.kind.write(value);
    if (text === this.#last?.text) return;
    const refusal = this.kind.refusal?.(value);
    if (refusal !== undefined) {
      this.failure = { full: false, why: refusal };
      return;
    }
    if (this.#missIt()) return;
    const before = this.#last;
    const isVersion = before !== undefined && this.#beginsVersion(value);
    const writing = store(this.shelf, this.#seen, this.#tab, isoOf(this.#now()), text);
    switch (writing.kind) {
      case 'clash':
        if (writing.stored.text === text) this.#seen = writing.stored.revision;
        else this.clash = writing.stored;
        return;
      case 'failed':
        this.failure = { full: writing.full, why: writing.why };
        return;
      case 'kept':
        if (isVersion) this.noVersions = !this.#addVersion(before.text, before.at);
        this.failure = undefined;
        this.#take(writing.stored, value);
    }
  }

  /**
   * Let what comes from elsewhere take the whole place of `now`, in `go`: what is there becomes a version first, unless it is the
   * same or what a first visit starts with. Where it cannot, the reader is asked.
   */
  replace(now: T, next: T, go: () => void): void {
    this.keep(now);
    const text = this.kind.write(now);
    if (text === this.kind.write(next) || text === this.#fresh) go();
    else this.#secure(text, text === this.#last?.text ? this.#last.at : undefined, go);
  }

  /** Go on with this tab's: the other one becomes a version, and this one is written over it. */
  takeMine(value: T): void {
    const other = this.clash;
    if (!other) return;
    this.#secure(other.text, other.at, () => {
      this.clash = undefined;
      this.#anew(value);
    });
  }

  /** Take the other tab's, in `open`: this one becomes a version. False where the other one cannot be read; then nothing changes. */
  takeTheirs(value: T, open: (theirs: T) => void): boolean {
    const other = stored(this.shelf).now ?? this.clash;
    const theirs = other && this.kind.read(other.text).value;
    if (!other || theirs === undefined) return false;
    const go = (): void => {
      this.clash = undefined;
      this.#take(other, theirs);
      open(theirs);
    };
    // Without versions, what was not changed here goes on in the other tab.
    if (!this.kind.change && value === this.#lastValue) go();
    else this.#secure(this.kind.write(value), undefined, go);
    return true;
  }

  /** Keep it again in a store that was emptied, with the versions that this page still knows. */
  keepAgain(value: T): void {
    this.emptied = false;
    if (this.versions.length > 0) this.noVersions = !putVersions(this.shelf, this.versions);
    this.#anew(value);
  }

  /** Let the old versions go to make room, and try again. */
  makeRoom(value: T): void {
    dropVersions(this.shelf);
    this.versions = [];
    this.failure = undefined;
    this.noVersions = false;
    this.keep(value);
  }

  /** What the reader said to the question: go on without what would be gone, or leave all as it is. */
  answer(goOn: boolean): void {
    const asked = this.question;
    this.question = undefined;
    if (goOn) asked?.go();
  }

  /** Let go of the spoiled text. */
  forgetSpoiled(): void {
    dropAside(this.shelf);
    this.spoiled = undefined;
  }

  #take(now: Stored, value: T): void {
    this.#seen = now.revision;
    this.#last = now;
    this.#lastValue = value;
    this.keptAt = now.at;
  }

  /** Write over whatever is on the shelf now. */
  #anew(value: T): void {
    this.#seen = stored(this.shelf).now?.revision ?? 0;
    this.#last = undefined;
    this.#lastValue = undefined;
    this.keep(value);
  }

  /** Whether what was kept is gone from the store; then it is said. */
  #missIt(): boolean {
    const { now, why } = stored(this.shelf);
    if (this.#last && !now && why === undefined) this.emptied = true;
    return this.emptied;
  }

  #isUnkept(value: T): boolean {
    if (this.emptied || this.question !== undefined) return true;
    return (this.failure !== undefined || this.clash !== undefined) && value !== this.#lastValue;
  }

  /** Say that something cannot be read, put it aside, and then let what can be read stand in its place. */
  #spoil(text: string, what: string, why: string, mend?: () => void): void {
    this.spoiled = { text, what, why };
    if (putAside(this.shelf, text)) return mend?.();
    this.failure = { full: false, why: 'what cannot be read could not be put aside' };
    this.#started = false;
  }

  /** Go on once a text is among the versions; ask the reader where it cannot be. */
  #secure(text: string, at: string | undefined, go: () => void): void {
    if (this.#addVersion(text, at)) go();
    else this.question = { text, go };
  }

  #beginsVersion(value: T): boolean {
    const before = this.#lastValue;
    const step = before === undefined ? undefined : this.kind.change?.(before, value);
    if (step === undefined || step === 'from nothing') return false;
    return step === 'large' || this.#now() - this.#versionAt > VERSION_MILLISECONDS;
  }

  #addVersion(text: string, at = isoOf(this.#now())): boolean {
    if (!this.kind.change || !addVersion(this.shelf, { at, text })) return false;
    this.#versionAt = this.#now();
    this.versions = versions(this.shelf).list;
    return true;
  }
}
