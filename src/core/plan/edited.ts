/** What every changed plan goes through before it takes the place of the old one: the rules of the reader of files. */
import { PLAN_LIMITS } from './kinds.ts';
import type { Plan } from './plan.ts';
import { readPlan } from './read-plan.ts';
import { fieldsOf, sayProblem } from './reading.ts';
import type { Problem } from './reading.ts';

/** The changed plan, or why it stays as it was. */
export type Edit =
  | { readonly ok: true; readonly plan: Plan }
  | { readonly ok: false; readonly problem: Problem };

/** A problem in words. */
export function sayEdit(problem: Problem): string {
  return `${sayProblem(problem)}. The plan is as it was.`;
}

/** A changed plan, if a file of it could be read again; else the first thing that the reader would say of it. */
export function edited(plan: Plan): Edit {
  const reading = readPlan(plan);
  if (reading.ok) return { ok: true, plan };
  const [{ place, expected, got }] = reading.problems as [Problem];
  return refused(placeWords(plan, place), expected, got);
}

/** A change that was not made. */
export function refused(place: string, expected: string, got: string): { ok: false; problem: Problem } {
  return { ok: false, problem: { place, expected, got } };
}

/** A name that none of these has: the wanted one, or with the first number that is free. */
export function freshName(wanted: string, taken: readonly string[]): string {
  const base = wanted.trim().slice(0, PLAN_LIMITS.nameCharacters);
  if (!taken.includes(base)) return base;
  for (let number = 2; ; number++) {
    const end = ` ${number}`;
    const name = base.slice(0, PLAN_LIMITS.nameCharacters - end.length) + end;
    if (!taken.includes(name)) return name;
  }
}

/** Why a name cannot be used, or undefined. */
export function nameProblem(
  place: string,
  name: string,
  taken: readonly string[],
): ReturnType<typeof refused> | undefined {
  const expected = `a name of 1 to ${PLAN_LIMITS.nameCharacters} characters that is not used yet`;
  const bad = name.trim() === '' || name.length > PLAN_LIMITS.nameCharacters || taken.includes(name);
  return bad ? refused(place, expected, `'${name}'`) : undefined;
}

/** Fields whose names in a file say too little on a page. */
const FIELD_WORDS: Readonly<Record<string, string>> = {
  xCentimetres: 'from the left',
  yCentimetres: 'from the back',
  widthCentimetres: 'width',
  depthCentimetres: 'depth',
  alongCentimetres: 'place along the side',
  latencySeconds: 'time to pass on',
  lengthMetres: 'length',
  contactOhms: 'contact resistance',
  pressLimitSeconds: 'limit of the press',
  plug: 'any other plug',
  wirePerMetre: 'wire per metre',
  perLead: 'everything else, per lead',
  mostHops: 'most links to any device',
  spareOutlets: 'outputs kept free',
  owned: 'pieces of your own',
};

/** A place in a file as a reader knows it: 'devices[1].jacks[0].latencySeconds' is `'echo', 'THRU', time to pass on`. */
function placeWords(plan: Plan, place: string): string {
  let here: unknown = plan;
  let list: string | undefined;
  const said: string[] = [];
  for (const [, field = '', number] of place.matchAll(/([^.[\]]+)|\[(\d+)\]/g)) {
    here = (here as Readonly<Record<string, unknown>> | undefined)?.[number ?? field];
    const name = fieldsOf(here)?.['name'];
    if (number !== undefined)
      said.push(typeof name === 'string' ? `'${name}'` : `${list ?? ''} ${Number(number) + 1}`);
    list = Array.isArray(here) ? field : undefined;
    if (number === undefined && list === undefined) said.push(FIELD_WORDS[field] ?? field);
  }
  return [...said, ...(list === undefined ? [] : [list])].join(', ');
}
