/** Plans as the keeper of a shelf has to know them. */
import { edited, readPlanText, sayEdit, sayProblems, writePlanText } from '../../src/core/plan/index.ts';
import type { Plan } from '../../src/core/plan/index.ts';
import type { Kind } from './kind.ts';

/** Devices or links more or fewer by which a change is large, and the state before it becomes a version at once (our choice). */
const LARGE = 3;

/** A plan: what a file could not hold is refused; a state without devices and links is nothing to go back to. */
export const PLAN_KIND: Kind<Plan> = {
  name: 'plan',
  write: writePlanText,
  read: (text) => {
    const reading = readPlanText(text);
    return reading.ok ? { value: reading.plan } : { problem: sayProblems(reading.problems) };
  },
  refusal: (plan) => {
    const edit = edited(plan);
    return edit.ok ? undefined : sayEdit(edit.problem);
  },
  change: (before, after) => {
    if (before.devices.length + before.links.length === 0) return 'from nothing';
    const large =
      Math.abs(before.devices.length - after.devices.length) >= LARGE ||
      Math.abs(before.links.length - after.links.length) >= LARGE ||
      before.title !== after.title;
    return large ? 'large' : 'small';
  },
};
