/** Reading a plan, with a message for everything that is wrong in it; writing one; and the JSON Schema of its file. */
import { checkPlan } from './check-plan.ts';
import { PLAN_FORMAT, PLAN_LIMITS, PLAN_VERSION } from './kinds.ts';
import { PLAN } from './plan.ts';
import type { Plan } from './plan.ts';
import { fieldsOf, sayProblem, show } from './reading.ts';
import type { Problem } from './reading.ts';
import type { Schema } from './shape.ts';

/** A plan, or everything that is wrong with it. */
export type PlanReading =
  | { readonly ok: true; readonly plan: Plan }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Problems named in one message; the rest are counted. */
const PROBLEMS_NAMED = 5;

/** Read a plan from text. */
export function readPlanText(json: string): PlanReading {
  const most = PLAN_LIMITS.characters;
  if (json.length > most)
    return failed('the file', `at most ${most} characters`, `${json.length} characters`);
  try {
    return readPlan(JSON.parse(json.replace(/^\uFEFF/, '')));
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
    return failed('the file', 'JSON', `other text (${error.message})`);
  }
}

/** Read a plan from parsed JSON. */
export function readPlan(value: unknown): PlanReading {
  const given = fieldsOf(value);
  const version = given?.['version'];
  if (typeof version === 'number' && version > PLAN_VERSION)
    return failed('version', `${PLAN_VERSION}: this file was made by a newer workbook`, String(version));
  // A file of another kind is told so at once, not by everything in it that a plan has not.
  if (given && given['format'] !== PLAN_FORMAT)
    return failed('format', `one of ${PLAN_FORMAT}`, show(given['format']));
  const problems: Problem[] = [];
  const plan = PLAN.read(value, '', problems);
  if (plan) checkPlan(plan, problems);
  if (plan && problems.length === 0) return { ok: true, plan };
  return {
    ok: false,
    problems: problems.map((one) => (one.place === '' ? { ...one, place: 'the file' } : one)),
  };
}

/** Every problem in one message, the first few by name. */
export function sayProblems(problems: readonly Problem[]): string {
  const named = problems.slice(0, PROBLEMS_NAMED).map(sayProblem);
  const more = problems.length - named.length;
  return named.join('; ') + (more > 0 ? `; and ${more} more` : '');
}

/** Write a plan as text, the same plan always the same text. */
export function writePlanText(plan: Plan): string {
  return `${JSON.stringify(plan, undefined, 2)}\n`;
}

/** The schema of the file (JSON Schema 2020-12). Names that must agree with one another are checked by the reader only. */
export function planSchema(): Schema {
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'Five Milliamps plan',
    description:
      'Devices with jacks, leads, and links between them. Lengths in metres, resistances in ohms, gauges in AWG.',
    ...PLAN.schema,
  };
}

function failed(place: string, expected: string, got: string): PlanReading {
  return { ok: false, problems: [{ place, expected, got }] };
}
