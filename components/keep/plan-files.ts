/** Plans from files and addresses, and to them. Every answer is a value, so that the plan on screen stays as it was. */
import {
  planFileName,
  readPlanText,
  readSharedLink,
  sayProblems,
  writePlanText,
  writeSharedLink,
} from '../../src/core/plan/index.ts';
import type { Plan, PlanReading } from '../../src/core/plan/index.ts';
import { saveText } from '../parts/save-text.ts';
import { sayError } from '../parts/say-error.ts';

/** Where a shared plan stands in an address. */
const LINK_KEY = '#plan=';

/** A plan, or why there is none; both empty when there was nothing to open. */
export interface FoundPlan {
  readonly plan?: Plan;
  readonly problem?: string;
}

/** Read a plan from text that a reader opened. */
export function planFromText(text: string, what: string): FoundPlan {
  return found(readPlanText(text), what);
}

/** Read a plan from a file that a reader chose. */
export async function planFromFile(file: File): Promise<FoundPlan> {
  const what = `The file '${file.name}'`;
  try {
    return planFromText(await file.text(), what);
  } catch (error) {
    return {
      problem: `${what} was not opened. Why: ${sayError(error)}.`,
    };
  }
}

/** The plan in the end of an address, if there is one. What follows an '&' is for the page. */
export async function planFromHash(hash: string): Promise<FoundPlan> {
  if (!hash.startsWith(LINK_KEY)) return {};
  const [packed = ''] = hash.slice(LINK_KEY.length).split('&');
  const reading = await readSharedLink(packed);
  if (reading.ok && reading.plan.devices.length === 0 && reading.plan.leads.length === 0)
    return { problem: 'The plan in this link was not opened. Why: it has no device and no lead.' };
  return found(reading, 'The plan in this link');
}

function found(reading: PlanReading, what: string): FoundPlan {
  return reading.ok
    ? { plan: reading.plan }
    : { problem: `${what} was not opened. Why: ${sayProblems(reading.problems)}.` };
}

/** The end of an address that holds a plan, from '#' on: the same for every page that opens plans. */
export async function planHash(plan: Plan): Promise<string> {
  return LINK_KEY + (await writeSharedLink(plan));
}

/** Follow a link to a page with a plan in its address; a click that opens another tab follows the plain address. */
export async function goWithPlan(event: MouseEvent, page: string, plan: Plan): Promise<void> {
  if (event.ctrlKey || event.metaKey || event.shiftKey) return;
  event.preventDefault();
  location.assign(page + (await planHash(plan)));
}

/** Hand the plan over as a file that says whose it is. */
export function savePlan(plan: Plan): void {
  saveText(planFileName(plan, 'json'), writePlanText(plan), 'application/json');
}
