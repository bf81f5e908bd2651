/** What changed between two plans, in words for a list of versions. */
import type { Plan } from './plan.ts';

/** Most names listed of one sort of change. */
const MOST_NAMED = 2;

type Named = { readonly name: string };

/** Every sort of change in a phrase, the ones that matter most first; 'nothing' where the plans are alike. */
export function sayChanges(before: Plan, after: Plan): string {
  const said = [
    ...parts('device', before.devices, after.devices),
    ...parts('link', before.links, after.links),
    ...parts('lead', before.leads, after.leads),
    ...(before.title === after.title ? [] : [`title '${after.title}'`]),
    ...(same(before.stock ?? [], after.stock ?? []) ? [] : ['available leads']),
    ...(same(before.hubs ?? [], after.hubs ?? []) ? [] : ['available hubs']),
    ...(same([before.making, before.currency], [after.making, after.currency]) ? [] : ['prices']),
    ...(same(before.wishes, after.wishes) ? [] : ['wishes']),
    ...(same([before.press, before.pressLimitSeconds], [after.press, after.pressLimitSeconds])
      ? []
      : ['the press']),
  ];
  return said.length === 0 ? 'nothing' : said.join('; ');
}

function same(one: unknown, other: unknown): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}

function parts(word: string, before: readonly Named[], after: readonly Named[]): readonly string[] {
  const was = new Map(before.map((one) => [one.name, one]));
  const is = new Map(after.map((one) => [one.name, one]));
  const added = after.filter(({ name }) => !was.has(name));
  const gone = before.filter(({ name }) => !is.has(name));
  const changed = after.filter((one) => was.has(one.name) && !same(was.get(one.name), one));
  return [
    ...phrase(word, added, 'added'),
    ...phrase(word, gone, 'removed'),
    ...phrase(word, changed, 'changed'),
  ];
}

function phrase(word: string, list: readonly Named[], what: string): readonly string[] {
  if (list.length === 0) return [];
  if (list.length > MOST_NAMED) return [`${list.length} ${word}s ${what}`];
  return [`${list.map(({ name }) => (word === 'device' ? `'${name}'` : name)).join(' and ')} ${what}`];
}
