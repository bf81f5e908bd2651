/** Keeping the work in the browser, and sharing it: every answer is a value, nothing on the bench is touched. */
import {
  readPlanText,
  readSharedLink,
  sayProblems,
  writePlanText,
  writeSharedLink,
} from '../../src/core/index.ts';
import type { Plan } from '../../src/core/index.ts';
import { saveText } from './save-text.ts';
import { workOfPlan } from './work.ts';
import type { Work } from './work.ts';

const STORE = 'five-milliamps bench';

/** Where a shared plan stands in an address. */
const LINK_KEY = '#plan=';

/** A work, or why there is none; both empty when nothing was kept. */
export interface Found {
  readonly work?: Work;
  readonly problem?: string;
}

/** Keep the work; says what went wrong when the browser refuses. */
export function keep(work: Work): string | undefined {
  try {
    localStorage.setItem(STORE, writePlanText(work.plan));
    return undefined;
  } catch (error) {
    return `This browser does not keep your work (${error instanceof Error ? error.message : String(error)}). Save it to a file.`;
  }
}

/** The work kept last. */
export function kept(): Found {
  let text: string | null = null;
  try {
    text = localStorage.getItem(STORE);
  } catch {
    return {};
  }
  return text === null ? {} : fromText(text, 'The work kept in this browser');
}

/** Read a plan from text that a reader opened. */
export function fromText(text: string, what: string): Found {
  const reading = readPlanText(text);
  if (!reading.ok) return { problem: `${what} was not opened. Why: ${sayProblems(reading.problems)}.` };
  return fromPlan(reading.plan, what);
}

function fromPlan(plan: Plan, what: string): Found {
  const work = workOfPlan(plan);
  return typeof work === 'string' ? { problem: `${what} was not opened. Why: ${work}.` } : { work };
}

/** The work in an address, if there is one. */
export async function fromAddress(hash: string): Promise<Found> {
  if (!hash.startsWith(LINK_KEY)) return {};
  const reading = await readSharedLink(hash.slice(LINK_KEY.length));
  if (!reading.ok)
    return { problem: `The plan in this link was not opened. Why: ${sayProblems(reading.problems)}.` };
  return fromPlan(reading.plan, 'The plan in this link');
}

/** The end of an address that holds this work, from '#' on: the same for every page that opens plans. */
export async function hashOf(work: Work): Promise<string> {
  return LINK_KEY + (await writeSharedLink(work.plan));
}

/** The whole address that opens this work on the bench. */
export async function addressOf(work: Work, page: URL): Promise<string> {
  const address = new URL('/bench/', page);
  address.hash = await hashOf(work);
  return address.href;
}

/** Hand the plan over as a file. */
export function saveFile(work: Work): void {
  saveText('five-milliamps-plan.json', writePlanText(work.plan), 'application/json');
}
