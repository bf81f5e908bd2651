/** Keeps one plan on its shelf: reads it at the start, writes it after each change, and never over what another tab has written. */
import { edited, readPlanText, sayEdit, sayProblems, writePlanText } from '../../src/core/plan/index.ts';
import type { Plan } from '../../src/core/plan/index.ts';
import { isoOf, millisecondsNow } from './moments.ts';
import {
  addVersion,
  aside,
  dropAside,
  dropVersions,
  putAside,
  readStored,
  shelfKey,
  store,
  stored,
  versions,
} from './shelf.ts';
import type { ShelfName, Stored, Version } from './shelf.ts';

/** Time after which the next change begins a new version, milliseconds (our choice). */
const VERSION_MILLISECONDS = 180_000;

/** Share of devices and links by which a change is large, and the state before it becomes a version at once (our choice). */
const LARGE = 3;

/** Wait before a change is written, milliseconds: longer than a paint, shorter than a thought. */
const WRITE_AFTER_MILLISECONDS = 150;

/** Why the work is not kept. */
interface KeepFailure {
  readonly full: boolean;
  readonly why: string;
}

/** A keeper of one shelf; it must be started before it writes. */
export class Keeper {
  readonly shelf: ShelfName;
  /** Another tab's plan that stands against this one; nothing is written until the reader has chosen. */
  clash = $state.raw<Stored>();
  failure = $state.raw<KeepFailure>();
  /** Text that was kept and cannot be read as a plan, and why. */
  spoiled = $state.raw<{ readonly text: string; readonly why: string }>();
  /** When the plan was written last, ISO 8601. */
  keptAt = $state('');
  versions = $state.raw<readonly Version[]>([]);

  readonly #tab = Math.random().toString(36).slice(2, 10);
  readonly #now: () => number;
  #seen = 0;
  #last: Stored | undefined;
  #lastPlan: Plan | undefined;
  #versionAt = 0;
  #started = false;

  constructor(shelf: ShelfName, now: () => number = millisecondsNow) {
    this.shelf = shelf;
    this.#now = now;
  }

  /**
   * Read the shelf: the plan kept last, or undefined. What cannot be read is put aside before anything is written, and `fresh`,
   * which the page starts with, is not written as long as it is unchanged.
   */
  start(fresh: Plan): Plan | undefined {
    this.#lastPlan = fresh;
    const { now, why } = stored(this.shelf);
    this.versions = versions(this.shelf);
    const old = aside(this.shelf);
    if (old !== undefined)
      this.spoiled = { text: old, why: 'it could not be read when it was opened before' };
    if (why !== undefined) this.failure = { full: false, why };
    this.#started = true;
    if (!now) return undefined;
    this.#seen = now.revision;
    const reading = readPlanText(now.text);
    if (!reading.ok) {
      this.spoiled = { text: now.text, why: sayProblems(reading.problems) };
      if (!putAside(this.shelf, now.text)) {
        this.failure = { full: true, why: 'there is no room to put the spoiled plan aside' };
        this.#started = false;
      }
      return undefined;
    }
    this.#last = now;
    this.#lastPlan = reading.plan;
    this.keptAt = now.at;
    return reading.plan;
  }

  /** Hear of other tabs; returns what stops it. */
  listen(): () => void {
    const hear = (event: StorageEvent): void => {
      if (event.key !== shelfKey(this.shelf) || event.newValue === null) return;
      const other = readStored(event.newValue);
      if (other.by === this.#tab) return;
      if (other.text === this.#last?.text) this.#seen = other.revision;
      else this.clash = other;
    };
    addEventListener('storage', hear);
    return () => removeEventListener('storage', hear);
  }

  /** Write the plan soon, and at once when the page goes; returns what takes it back. */
  later(plan: Plan): () => void {
    const write = (): void => this.keep(plan);
    const leave = (): void => {
      // A plan that lost its place to another tab is still to be found among the versions.
      if (this.clash && plan !== this.#lastPlan) this.#addVersion(writePlanText(plan));
      else write();
    };
    const timer = setTimeout(write, WRITE_AFTER_MILLISECONDS);
    addEventListener('pagehide', leave);
    return () => {
      clearTimeout(timer);
      removeEventListener('pagehide', leave);
    };
  }

  /** Why a plan cannot be kept, since a file of it could not be opened again; undefined where it can. */
  refusal(plan: Plan): string | undefined {
    const edit = edited(plan);
    return edit.ok ? undefined : sayEdit(edit.problem);
  }

  /** Write the plan now, if it has changed and no other tab stands against it. */
  keep(plan: Plan): void {
    if (!this.#started || this.clash || plan === this.#lastPlan) return;
    const text = writePlanText(plan);
    if (text === this.#last?.text) return;
    const refusal = this.refusal(plan);
    if (refusal !== undefined) {
      this.failure = { full: false, why: refusal };
      return;
    }
    const before = this.#last;
    const isVersion = before !== undefined && this.#beginsVersion(plan);
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
        if (isVersion) this.#addVersion(before.text, before.at);
        this.failure = undefined;
        this.#seen = writing.stored.revision;
        this.#last = writing.stored;
        this.#lastPlan = plan;
        this.keptAt = writing.stored.at;
    }
  }

  /** Before a plan from elsewhere takes the whole place of `now`: what is kept becomes a version, unless it is the same. */
  makeWay(now: Plan, next: Plan): void {
    this.keep(now);
    const last = this.#last;
    if (last && last.text !== writePlanText(next)) this.#addVersion(last.text, last.at);
  }

  /** Go on with this tab's plan: the other one becomes a version, and this one is written over it. */
  takeMine(plan: Plan): void {
    const other = this.clash;
    if (!other) return;
    this.#addVersion(other.text, other.at);
    this.#seen = stored(this.shelf).now?.revision ?? other.revision;
    this.#last = undefined;
    this.#lastPlan = undefined;
    this.clash = undefined;
    this.keep(plan);
  }

  /** Take the other tab's plan: this one becomes a version. Undefined where the other one cannot be read; then nothing changes. */
  takeTheirs(plan: Plan): Plan | undefined {
    const other = stored(this.shelf).now ?? this.clash;
    if (!other) return undefined;
    const reading = readPlanText(other.text);
    if (!reading.ok) return undefined;
    this.#addVersion(writePlanText(plan));
    this.#seen = other.revision;
    this.#last = other;
    this.#lastPlan = reading.plan;
    this.keptAt = other.at;
    this.clash = undefined;
    return reading.plan;
  }

  /** Let the old versions go to make room, and try again. */
  makeRoom(plan: Plan): void {
    dropVersions(this.shelf);
    this.versions = [];
    this.failure = undefined;
    this.keep(plan);
  }

  /** Let go of the spoiled text. */
  forgetSpoiled(): void {
    dropAside(this.shelf);
    this.spoiled = undefined;
  }

  #beginsVersion(plan: Plan): boolean {
    const before = this.#lastPlan;
    if (!before || before.devices.length + before.links.length === 0) return false;
    const large =
      Math.abs(before.devices.length - plan.devices.length) >= LARGE ||
      Math.abs(before.links.length - plan.links.length) >= LARGE ||
      before.title !== plan.title;
    return large || this.#now() - this.#versionAt > VERSION_MILLISECONDS;
  }

  #addVersion(text: string, at = isoOf(this.#now())): void {
    if (!addVersion(this.shelf, { at, text })) return;
    this.#versionAt = this.#now();
    this.versions = versions(this.shelf);
  }
}
