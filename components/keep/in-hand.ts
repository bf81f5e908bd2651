/** What is in hand: two jacks and the leads between them, chosen on one page and there on every other. It lies on the bench's shelf. */
import { readPlanText, writePlanText } from '../../src/core/plan/index.ts';
import type { Plan } from '../../src/core/plan/index.ts';
import { isoOf, millisecondsNow } from './moments.ts';
import { addVersion, store, stored } from './shelf.ts';

/** Who wrote the shelf, where a page without a keeper did. */
const WRITER = 'in-hand';

/**
 * Put a plan in hand. What another page had in hand becomes a version first. Returns why it could not be kept, or undefined.
 * @param plan a plan with at least one link.
 */
export function putInHand(plan: Plan): string | undefined {
  const { now, why } = stored('bench');
  if (why !== undefined) return why;
  const text = writePlanText(plan);
  if (now?.text === text) return undefined;
  if (now && now.by !== WRITER) addVersion('bench', { at: now.at, text: now.text });
  const writing = store('bench', now?.revision ?? 0, WRITER, isoOf(millisecondsNow()), text);
  switch (writing.kind) {
    case 'kept':
      return undefined;
    case 'clash':
      return 'another tab has changed it just now';
    case 'failed':
      return writing.why;
  }
}

/** The plan in hand, if there is one that can be read. */
export function planInHand(): Plan | undefined {
  const reading = readPlanText(stored('bench').now?.text ?? '');
  return reading.ok ? reading.plan : undefined;
}
