/** What is in hand: two jacks and the leads between them, chosen on one page and there on every other. One shelf holds it. */
import { writePlanText } from '../../src/core/plan/index.ts';
import type { Plan } from '../../src/core/plan/index.ts';
import { Keeper } from './keeper.svelte.ts';
import { isoOf, millisecondsNow } from './moments.ts';
import { planFromText } from './plan-files.ts';
import type { FoundPlan } from './plan-files.ts';
import { PLAN_KIND } from './plan-kind.ts';
import { addVersion, store, stored } from './shelf.ts';

/** The shelf; its name is from when the bench alone had one, so that what was kept then is still there. */
const SHELF = 'bench';

/** The keeper of what is in hand, for a page that changes it step by step. */
export function handKeeper(): Keeper<Plan> {
  return new Keeper(SHELF, PLAN_KIND);
}

/** What is in hand, for a page that only reads it; both empty when nothing is. */
export function readHand(): FoundPlan {
  const { now } = stored(SHELF);
  return now ? planFromText(now.text, 'What this browser has in hand') : {};
}

/**
 * A writer for a page that puts whole plans in hand. It hands back why a plan could not be kept, or undefined. What another page
 * had in hand becomes a version first; what this page wrote itself does not.
 */
export function handWriter(): (plan: Plan) => string | undefined {
  const me = `hand-${Math.random().toString(36).slice(2, 10)}`;
  return (plan) => {
    const { now, why } = stored(SHELF);
    if (why !== undefined) return why;
    const text = writePlanText(plan);
    if (now?.text === text) return undefined;
    if (now && now.by !== me && !addVersion(SHELF, { at: now.at, text: now.text }))
      return 'there is no room to keep what is in hand as an earlier version';
    const writing = store(SHELF, now?.revision ?? 0, me, isoOf(millisecondsNow()), text);
    switch (writing.kind) {
      case 'kept':
        return undefined;
      case 'clash':
        return 'another tab has changed it just now';
      case 'failed':
        return writing.why;
    }
  };
}
