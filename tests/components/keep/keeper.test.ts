/** A keeper against a store and a clock of the test: nothing that somebody made is lost, whatever other tabs and full stores do. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { Keeper } from '../../../components/keep/keeper.svelte.ts';
import { aside, putAside, shelfKey, store, stored, versions } from '../../../components/keep/shelf.ts';
import { isoOf } from '../../../components/keep/moments.ts';
import { PLAN_KIND } from '../../../components/keep/plan-kind.ts';
import { LIBRARY, makePlan, readPlanText, writePlanText } from '../../../src/core/plan/index.ts';
import type { Plan } from '../../../src/core/plan/index.ts';
import { SmallStore } from '../../support/small-store.ts';

const MINUTE = 60_000;
const FRESH = makePlan({});

/** A plan with so many devices of the library. */
const plan = (count: number, title = ''): Plan => makePlan({ title, devices: LIBRARY.slice(0, count) });

let clock = 0;
const listeners = new Map<string, (event: Event) => void>();

const newKeeper = (): Keeper<Plan> => new Keeper('board', PLAN_KIND, () => clock);

function keeperOn(): Keeper<Plan> {
  const keeper = newKeeper();
  keeper.start(FRESH);
  return keeper;
}

/** What stands on the shelf as a plan. */
function shelf(): Plan | undefined {
  const reading = readPlanText(stored('board').now?.text ?? '');
  return reading.ok ? reading.plan : undefined;
}

/** Another tab writes over what is on the shelf; the keeper hears of it as the browser would tell. */
function otherTab(text: string): void {
  store('board', stored('board').now?.revision ?? 0, 'other', isoOf(clock), text);
  const newValue = localStorage.getItem(shelfKey('board'));
  listeners.get('storage')?.(Object.assign(new Event('storage'), { key: shelfKey('board'), newValue }));
}

const texts = (): readonly string[] => versions('board').list.map(({ text }) => text);

beforeEach(() => {
  clock = Date.UTC(2026, 4, 1);
  listeners.clear();
  vi.stubGlobal('localStorage', new SmallStore());
  vi.stubGlobal('addEventListener', (name: string, hear: (event: Event) => void) =>
    listeners.set(name, hear),
  );
  vi.stubGlobal('document', new EventTarget());
  vi.stubGlobal('removeEventListener', (name: string) => listeners.delete(name));
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe('A keeper', () => {
  test('finds nothing on an empty shelf, and does not write what the page began with', () => {
    const keeper = newKeeper();
    expect(keeper.start(FRESH)).toBeUndefined();
    keeper.keep(FRESH);
    expect(stored('board')).toEqual({});
  });

  test('writes nothing before it was started', () => {
    newKeeper().keep(plan(2));
    expect(stored('board')).toEqual({});
  });

  test('gives the next visit what was kept, with its time', () => {
    keeperOn().keep(plan(2, 'Mine'));
    const next = newKeeper();
    expect(next.start(FRESH)).toEqual(plan(2, 'Mine'));
    expect(next.keptAt).toBe('2026-05-01T00:00:00.000Z');
  });

  test('writes a plan once, however often it is told to', () => {
    const keeper = keeperOn();
    keeper.keep(plan(2));
    keeper.keep(plan(2));
    expect(stored('board').now?.revision).toBe(1);
  });

  test('waits a moment before it writes, and writes at once when the page goes', () => {
    vi.useFakeTimers();
    const keeper = keeperOn();
    const stop = keeper.later(plan(1));
    stop();
    vi.runAllTimers();
    expect(shelf()).toBeUndefined();
    keeper.later(plan(2));
    listeners.get('pagehide')?.(new Event('pagehide'));
    expect(shelf()).toEqual(plan(2));
  });

  test('does not keep a plan whose file could not be opened again, and says why', () => {
    const keeper = keeperOn();
    const twice = makePlan({ devices: [LIBRARY[0], LIBRARY[0]] as Plan['devices'] });
    keeper.keep(twice);
    expect(keeper.failure?.why).toContain(LIBRARY[0]?.name);
    expect(stored('board')).toEqual({});
    keeper.keep(plan(1));
    expect(keeper.failure).toBeUndefined();
  });
});

describe('Versions', () => {
  test('begin when some minutes went by, and not at every change', () => {
    const keeper = keeperOn();
    keeper.keep(plan(2));
    clock += 10 * MINUTE;
    keeper.keep(plan(2, 'a'));
    expect(texts()).toEqual([writePlanText(plan(2))]);
    clock += MINUTE;
    keeper.keep({ ...plan(3), title: 'a' });
    expect(texts()).toHaveLength(1);
    clock += 3 * MINUTE;
    keeper.keep({ ...plan(4), title: 'a' });
    expect(texts()).toHaveLength(2);
  });

  test('begin at once before a change that takes much away', () => {
    const keeper = keeperOn();
    keeper.keep(plan(2));
    clock += 10 * MINUTE;
    keeper.keep(plan(6));
    clock += 1000;
    keeper.keep(plan(1));
    expect(texts()).toEqual([writePlanText(plan(6)), writePlanText(plan(2))]);
    expect(keeper.versions.map(({ text }) => text)).toEqual(texts());
  });

  test('hold what was kept before a plan from elsewhere takes its place, unless it is the same', () => {
    const keeper = keeperOn();
    const went: number[] = [];
    keeper.replace(plan(2), plan(2), () => went.push(1));
    expect(texts()).toEqual([]);
    keeper.replace(plan(2), plan(5), () => went.push(2));
    expect(texts()).toEqual([writePlanText(plan(2))]);
    keeper.replace(FRESH, plan(5), () => went.push(3));
    expect([went, texts().length]).toEqual([[1, 2, 3], 1]);
  });
});

describe('Another tab', () => {
  test('that wrote another plan stops this one from writing until the reader chose', () => {
    const keeper = keeperOn();
    keeper.listen();
    keeper.keep(plan(1));
    otherTab(writePlanText(plan(3)));
    expect(keeper.clash?.text).toBe(writePlanText(plan(3)));
    keeper.keep(plan(2));
    expect(shelf()).toEqual(plan(3));
  });

  test('that wrote the same plan is no clash, and writing goes on', () => {
    const keeper = keeperOn();
    keeper.listen();
    keeper.keep(plan(1));
    otherTab(writePlanText(plan(1)));
    expect(keeper.clash).toBeUndefined();
    keeper.keep(plan(2));
    expect(shelf()).toEqual(plan(2));
  });

  test('is not suspected where this one is told late of what it has put aside', () => {
    store('board', 0, 'left', isoOf(clock), 'half a plan');
    const newValue = localStorage.getItem(shelfKey('board'));
    const keeper = keeperOn();
    keeper.listen();
    expect(keeper.spoiled?.text).toBe('half a plan');
    listeners.get('storage')?.(Object.assign(new Event('storage'), { key: shelfKey('board'), newValue }));
    expect(keeper.clash).toBeUndefined();
    keeper.keep(plan(2));
    expect(shelf()).toEqual(plan(2));
  });

  test('that nobody told of is noticed when it comes to writing', () => {
    const keeper = keeperOn();
    keeper.keep(plan(1));
    otherTab(writePlanText(plan(3)));
    keeper.keep(plan(2));
    expect(keeper.clash?.text).toBe(writePlanText(plan(3)));
    expect(shelf()).toEqual(plan(3));
  });

  test('loses its plan to a version when the reader keeps this one', () => {
    const keeper = keeperOn();
    keeper.listen();
    keeper.keep(plan(1));
    otherTab(writePlanText(plan(3)));
    keeper.takeMine(plan(2));
    expect(shelf()).toEqual(plan(2));
    expect(texts()).toEqual([writePlanText(plan(3))]);
    expect(keeper.clash).toBeUndefined();
  });

  test('wins when the reader takes its plan, and this one becomes a version', () => {
    const keeper = keeperOn();
    keeper.listen();
    keeper.keep(plan(1));
    otherTab(writePlanText(plan(3)));
    let opened: Plan | undefined;
    expect(keeper.takeTheirs(plan(2), (theirs) => (opened = theirs))).toBe(true);
    expect(opened).toEqual(plan(3));
    expect(texts()).toEqual([writePlanText(plan(2))]);
    keeper.keep(plan(4));
    expect(shelf()).toEqual(plan(4));
  });

  test('that wrote what is no plan is not taken, and nothing changes', () => {
    const keeper = keeperOn();
    keeper.listen();
    keeper.keep(plan(1));
    otherTab('no plan');
    expect(keeper.takeTheirs(plan(2), () => expect.unreachable())).toBe(false);
    expect(keeper.clash?.text).toBe('no plan');
    expect(texts()).toEqual([]);
  });

  test('is no longer heard once listening stopped', () => {
    const keeper = keeperOn();
    keeper.listen()();
    keeper.keep(plan(1));
    otherTab(writePlanText(plan(3)));
    expect(keeper.clash).toBeUndefined();
  });

  test('costs nothing when the page goes: this plan is still among the versions', () => {
    const keeper = keeperOn();
    keeper.listen();
    keeper.keep(plan(1));
    otherTab(writePlanText(plan(3)));
    keeper.later(plan(2));
    listeners.get('pagehide')?.(new Event('pagehide'));
    expect(texts()).toEqual([writePlanText(plan(2))]);
    expect(shelf()).toEqual(plan(3));
  });
});

describe('A spoiled shelf', () => {
  test('is put aside before anything is written over it', () => {
    store('board', 0, 'old', '', 'not a plan');
    const keeper = newKeeper();
    expect(keeper.start(FRESH)).toBeUndefined();
    expect(keeper.spoiled?.text).toBe('not a plan');
    keeper.keep(plan(1));
    expect(shelf()).toEqual(plan(1));
    expect(aside('board')).toBe('not a plan');
  });

  test('is offered again at the next visit, until the reader lets it go', () => {
    putAside('board', 'not a plan');
    const keeper = keeperOn();
    expect(keeper.spoiled?.text).toBe('not a plan');
    keeper.forgetSpoiled();
    expect(keeper.spoiled).toBeUndefined();
    expect(keeperOn().spoiled).toBeUndefined();
  });

  test('that cannot be put aside is not written over', () => {
    vi.stubGlobal('localStorage', new SmallStore(120));
    store('board', 0, 'old', '', 'x'.repeat(60));
    const keeper = newKeeper();
    keeper.start(FRESH);
    expect(keeper.failure?.why).toBe('what cannot be read could not be put aside');
    keeper.keep(plan(1));
    expect(stored('board').now?.text).toBe('x'.repeat(60));
  });
});

describe('A full store', () => {
  test('is said, and making room for the plan lets the old versions go', () => {
    const size = writePlanText(plan(5)).length;
    vi.stubGlobal('localStorage', new SmallStore(2 * size));
    const keeper = keeperOn();
    keeper.keep(plan(2, 'a'));
    clock += 10 * MINUTE;
    keeper.keep(plan(2, 'b'));
    keeper.keep(plan(2, 'c'));
    expect(texts().length).toBeGreaterThan(0);
    keeper.keep(plan(6, 'c'));
    expect(keeper.failure).toMatchObject({ full: true });
    expect(shelf()).toEqual(plan(2, 'c'));
    keeper.makeRoom(plan(6, 'c'));
    expect(keeper.failure).toBeUndefined();
    // What was kept before is a version again; all older ones are gone.
    expect(texts()).toEqual([writePlanText(plan(2, 'c'))]);
    expect(shelf()).toEqual(plan(6, 'c'));
  });
});

describe('A store that was emptied', () => {
  test('is noticed before anything is written, and takes plan and versions again when the reader says so', () => {
    const keeper = keeperOn();
    keeper.keep(plan(2));
    clock += 10 * MINUTE;
    keeper.keep(plan(2, 'a'));
    vi.stubGlobal('localStorage', new SmallStore());
    keeper.keep(plan(2, 'b'));
    expect([keeper.emptied, stored('board')]).toEqual([true, {}]);
    keeper.keepAgain(plan(2, 'b'));
    expect([keeper.emptied, shelf()]).toEqual([false, plan(2, 'b')]);
    expect(texts()).toEqual([writePlanText(plan(2))]);
  });
});

describe('What cannot become a version', () => {
  /** A keeper whose store has room for what is kept and for nothing beside it. */
  function tight(): Keeper<Plan> {
    vi.stubGlobal('localStorage', new SmallStore(writePlanText(plan(2)).length + 150));
    const keeper = keeperOn();
    keeper.keep(plan(2));
    return keeper;
  }

  test('is not replaced before the reader has said so', () => {
    const keeper = tight();
    let went = false;
    keeper.replace(plan(2), plan(1), () => (went = true));
    expect([went, keeper.question?.text]).toEqual([false, writePlanText(plan(2))]);
    keeper.answer(false);
    expect([went, keeper.question]).toEqual([false, undefined]);
    keeper.replace(plan(2), plan(1), () => (went = true));
    keeper.answer(true);
    expect([went, keeper.question]).toEqual([true, undefined]);
  });

  test('makes the browser ask before the page goes, and only then', () => {
    const keeper = tight();
    const leave = (one: Plan): boolean => {
      const stop = keeper.later(one);
      const event = new Event('beforeunload', { cancelable: true });
      listeners.get('beforeunload')?.(event);
      stop();
      return event.defaultPrevented;
    };
    expect(leave(plan(2))).toBe(false);
    expect(leave(plan(6))).toBe(true);
    expect(shelf()).toEqual(plan(2));
  });
});
