import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { planSchema, readPlan, readPlanText, writePlanText } from '../../../src/core/plan/read-plan.ts';
import { readSharedLink, writeSharedLink } from '../../../src/core/plan/shared-link.ts';

/**
 * Files and links as they were written before the shape of a plan was stated once; they must open for ever. Beside a file that
 * leaves something out stands what it gave, under the same name with 'gives'. Nothing here is ever written anew: a new
 * version of the file format adds files.
 */
const FOLDER = new URL('./files/', import.meta.url);
const kept = (name: string): string => readFileSync(new URL(name, FOLDER), 'utf8');
const ALL = readdirSync(FOLDER);
const NAMES = ALL.filter((one) => one.endsWith('.link')).map((one) => one.slice(0, -'.link'.length));

/** What a kept file gave on the day it was written. */
function gave(name: string): unknown {
  return JSON.parse(kept(ALL.includes(`${name}.gives.json`) ? `${name}.gives.json` : `${name}.json`));
}

describe.each(NAMES)('The kept plan %s', (name) => {
  test('opens from its file as it did on the day it was written', () => {
    expect(readPlanText(kept(`${name}.json`))).toEqual({ ok: true, plan: gave(name) });
  });

  test('opens from its link as it did, and from a link of today', async () => {
    const reading = await readSharedLink(kept(`${name}.link`).trim());
    expect(reading).toEqual({ ok: true, plan: gave(name) });
    if (reading.ok) expect(await readSharedLink(await writeSharedLink(reading.plan))).toEqual(reading);
  });

  test('is the same text after it has been written and read', () => {
    const reading = readPlan(gave(name));
    const text = reading.ok ? writePlanText(reading.plan) : '';
    const again = readPlanText(text);
    expect(again.ok && writePlanText(again.plan)).toBe(text);
  });
});

type Schema = Readonly<Record<string, unknown>>;

/** Every field of a schema and every kind, by its place; `hubs` and `stock` hold devices and leads like the plan itself. */
function fieldsIn(
  schema: Schema,
  values: readonly unknown[],
  place: string,
  seen: Map<string, boolean>,
): void {
  const at = (value: unknown, field: string): unknown => (value as Schema)[field];
  for (const kind of (schema['oneOf'] ?? []) as readonly { properties: Record<string, Schema> }[]) {
    const found = Object.entries(kind.properties).find(([, { const: word }]) => word !== undefined);
    const [tag, { const: word }] = found as [string, Schema];
    const alike = values.filter((value) => at(value, tag) === word);
    fieldsIn(kind as unknown as Schema, alike, `${place} ${String(word)}`, seen);
  }
  if (schema['items']) fieldsIn(schema['items'] as Schema, values.flat(1), `${place}[]`, seen);
  for (const [field, one] of Object.entries((schema['properties'] ?? {}) as Record<string, Schema>)) {
    const there = values.map((value) => at(value, field)).filter((value) => value !== undefined);
    const here = `${place}.${field}`.replace('plan.hubs', 'plan.devices').replace('stock[].lead', 'leads[]');
    seen.set(here, there.length > 0 || seen.get(here) === true);
    fieldsIn(one, there, here, seen);
  }
}

test('The kept plans hold every field that the schema knows', () => {
  const seen = new Map<string, boolean>();
  fieldsIn(planSchema(), NAMES.map(gave), 'plan', seen);
  const missing = [...seen].filter(([, there]) => !there).map(([place]) => place);
  // A jack has only the values of its own circuit, and the making of a lead only the plugs that have a price.
  expect(missing.filter((place) => !/\.(values|plugs)\./.test(place))).toEqual([]);
});
