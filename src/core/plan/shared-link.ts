/** The shared link: a whole plan in a piece of an address, written as lists in a fixed order with numbers for words. */
import { CHANGED_LINK, packLink, unpackLink } from './packing.ts';
import { PLAN } from './plan.ts';
import type { Plan } from './plan.ts';
import { readPlan } from './read-plan.ts';
import type { PlanReading } from './read-plan.ts';
import { fieldsOf, show } from './reading.ts';
import type { NamesOf } from './shape.ts';

/** Write a plan into a link's text. */
export async function writeSharedLink(plan: Plan): Promise<string> {
  const jacks = new Map(plan.devices.map((one) => [one.name, one.jacks.map(({ name }) => name)]));
  const leads = plan.leads.map(({ name }) => name);
  const [packed] = PLAN.pack(plan, namesOf(jacks, leads), undefined);
  return packLink(packed);
}

/** Read a plan from a link's text; never throws, a spoiled link is a reading with problems. */
export async function readSharedLink(text: string): Promise<PlanReading> {
  const unpacked = await unpackLink(text);
  if (!unpacked.ok) return unpacked;
  const { value } = unpacked;
  if (!Array.isArray(value))
    return { ok: false, problems: [{ place: 'the link', expected: 'a plan', got: show(value) }] };
  try {
    return readPlan(PLAN.unpack([value], packedNames(value), undefined));
  } catch {
    return CHANGED_LINK;
  }
}

/** The names that numbers stand for, from the jacks of each device and the leads. */
function namesOf(jacks: ReadonlyMap<unknown, readonly unknown[]>, leads: readonly unknown[]): NamesOf {
  const devices = [...jacks.keys()];
  return (kind, holder) => {
    if (kind === 'devices') return devices;
    return kind === 'leads' ? leads : (jacks.get(fieldsOf(holder)?.['device']) ?? []);
  };
}

/** The same from a packed plan: its devices stand at 1, its leads at 2, a device's jacks at 1, and each name comes first. */
function packedNames(plan: unknown): NamesOf {
  const inside = (value: unknown, at: number): readonly unknown[] => {
    const found: unknown = Array.isArray(value) ? value[at] : undefined;
    return Array.isArray(found) ? found : [];
  };
  const first = (value: unknown): unknown => (Array.isArray(value) ? value[0] : undefined);
  const jacks = inside(plan, 1).map((device) => [first(device), inside(device, 1).map(first)] as const);
  return namesOf(new Map(jacks), inside(plan, 2).map(first));
}
