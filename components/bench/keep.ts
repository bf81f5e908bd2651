/** Works from files, addresses and from what is in hand: every answer is a value, nothing on the bench is touched. */
import type { Plan } from '../../src/core/plan/index.ts';
import { planFromHash } from '../keep/plan-files.ts';
import { workOfPlan } from './work.ts';
import type { Work } from './work.ts';

/** A work, or why there is none; both empty when there was nothing to open. */
export interface Found {
  readonly work?: Work;
  readonly problem?: string;
}

/** The work of a plan that was opened. */
export function fromPlan(plan: Plan, what: string): Found {
  const work = workOfPlan(plan);
  return typeof work === 'string' ? { problem: `${what} was not opened. Why: ${work}.` } : { work };
}

/** The work in an address, if there is one. */
export async function fromAddress(hash: string): Promise<Found> {
  const { plan, problem } = await planFromHash(hash);
  if (plan) return fromPlan(plan, 'The plan in this link');
  return problem === undefined ? {} : { problem };
}
