/** Changes to the links of a board. A new link gets the cheapest leads on offer that make it work, and its jacks the styles for it. */
import { edited, nameProblem, speaks, wholeDevice, withoutIdleLeads, withoutInputs } from '../plan/index.ts';
import type {
  Edit,
  JackPlace,
  Plan,
  PlanJack,
  PlanLead,
  PlanLink,
  Problem,
  WholeDevice,
} from '../plan/index.ts';
import type { LinkMemory } from '../verdict/index.ts';
import { styleEntry } from '../wiring/index.ts';
import { jackAt, jackSetTo, samePlace, sayJack } from './jacks.ts';
import { firstFree, leadsForLink, planLeads } from './leads-for-link.ts';
import type { LeadsForLink } from './leads-for-link.ts';

/** A link made: the plan, the link's name, the leads it took, and whether they are known to work; or why none was made. */
export type Connected =
  | {
      readonly ok: true;
      readonly plan: Plan;
      readonly link: string;
      readonly leads: readonly PlanLead[];
      readonly works: boolean;
      /** What else was done for this link, in words: jacks that were set, a wish that could not be kept. */
      readonly notes: readonly string[];
    }
  | { readonly ok: false; readonly problem: Problem };

/** Join an output to an input, with the cheapest leads that work; where none does, with a lead that fits, for the check to explain. */
export function connect(
  plan: Plan,
  output: JackPlace,
  input: JackPlace,
  memory: LinkMemory = new Map(),
): Connected {
  const problem = cannotJoin(plan, output, input);
  if (problem) return { ok: false, problem };
  const taken = plan.links.map(({ name }) => name);
  const link: PlanLink = {
    name: firstFree('link', taken),
    output: { device: output.device, jack: output.jack },
    inputs: [{ device: input.device, jack: input.jack, leads: [] }],
  };
  const made = fitted({ ...plan, links: [...plan.links, link] }, link, 0, memory);
  const edit = edited(made.plan);
  return edit.ok ? { ...made, ...edit, link: link.name } : edit;
}

/** Why these two jacks cannot be joined, or undefined. */
function cannotJoin(plan: Plan, output: JackPlace, input: JackPlace): Problem | undefined {
  const no = (place: string, expected: string, got: string): Problem => ({ place, expected, got });
  if (jackAt(plan, output).jack.direction !== 'out')
    return no('from', 'an output', `${sayJack(output)}, which is an input`);
  if (jackAt(plan, input).jack.direction !== 'in')
    return no('to', 'an input', `${sayJack(input)}, which is an output`);
  if (output.device === input.device)
    return no('to', 'a jack of another device', `${sayJack(input)}, the same device`);
  const joined = plan.links.find(
    (link) => samePlace(link.output, output) && link.inputs.some((one) => samePlace(one, input)),
  );
  return joined && no('link', 'two jacks that are not joined yet', `${joined.name}, which joins them`);
}

/** Take one input off a link, or the whole link where it has no other, with the leads that only it used. */
export function disconnect(plan: Plan, linkName: string, input = 0): Plan {
  const links = withoutInputs(
    plan.links,
    (one, link) => link.name === linkName && link.inputs[input] === one,
  );
  return withoutIdleLeads(plan, { ...plan, links });
}

/** Choose the leads of one input of a link again, as if it were made now. @throws when there is no such input. */
export function refitLink(plan: Plan, linkName: string, input: number, memory: LinkMemory = new Map()): Plan {
  const link = plan.links.find(({ name }) => name === linkName);
  if (!link?.inputs[input]) throw new Error(`board: no input ${input} of a link '${linkName}'`);
  return fitted(withLeads(plan, link, input, []), link, input, memory).plan;
}

/** Choose leads for an input of a link that has none, and set its jacks. */
function fitted(
  plan: Plan,
  link: PlanLink,
  input: number,
  memory: LinkMemory,
): Omit<Extract<Connected, { ok: true }>, 'ok' | 'link'> {
  const place = link.inputs[input]!;
  const found = leadsForLink(plan, link.output, place, memory);
  const leads = planLeads(plan, found.pieces, plan.leads);
  const set = setJacks(plan, link.output, place, found);
  const against = found.againstWish ? ['no available lead fits, so this one has to be made'] : [];
  const names = leads.map(({ name }) => name);
  return {
    plan: withLeads({ ...set.plan, leads: [...plan.leads, ...leads] }, link, input, names),
    leads,
    works: found.choice !== undefined,
    notes: [...set.notes, ...against],
  };
}

/** Change a lead; links follow a new name. */
export function changeLead(plan: Plan, name: string, changes: Partial<PlanLead>): Edit {
  const before = plan.leads.find((one) => one.name === name);
  if (!before) throw new Error(`board: no lead '${name}'`);
  const after = { ...before, ...changes };
  const others = plan.leads.filter((one) => one !== before).map((one) => one.name);
  const bad = nameProblem('name of the lead', after.name, others);
  if (bad) return bad;
  const follow = (one: string): string => (one === name ? after.name : one);
  return edited({
    ...plan,
    leads: plan.leads.map((one) => (one === before ? after : one)),
    links: plan.links.map((link) => ({
      ...link,
      inputs: link.inputs.map((input) => ({ ...input, leads: input.leads.map(follow) })),
    })),
  });
}

/** Set both jacks as the choice needs them; an OUT-or-THRU jack of a device that only listens is set to THRU. */
function setJacks(
  plan: Plan,
  output: JackPlace,
  input: JackPlace,
  { choice }: LeadsForLink,
): { readonly plan: Plan; readonly notes: readonly string[] } {
  const notes: string[] = [];
  const set = (place: JackPlace, jack: PlanJack, device: WholeDevice): PlanJack => {
    const style = samePlace(place, output) ? choice?.output.style : choice?.input.style;
    let made = style === undefined ? jack : jackSetTo(jack, style);
    if (made !== jack) notes.push(`${sayJack(place)} is set to ${styleEntry(made.style).label}`);
    if (made.role === 'out-or-thru' && made.setTo !== 'thru' && !speaks(device)) {
      made = { ...made, setTo: 'thru' };
      notes.push(`${sayJack(place)} is set to THRU`);
    }
    return made;
  };
  const devices = plan.devices.map((device) => {
    const place = [output, input].find((one) => one.device === device.name);
    if (!place) return device;
    const jacks = device.jacks.map((one) =>
      one.name === place.jack ? set(place, one, wholeDevice(device)) : one,
    );
    return { ...device, jacks };
  });
  return { plan: { ...plan, devices }, notes };
}

/** The plan with these leads on one input of a link, and without those that it used alone. */
function withLeads(plan: Plan, { name }: PlanLink, input: number, leads: readonly string[]): Plan {
  const links = plan.links.map((link) =>
    link.name === name
      ? { ...link, inputs: link.inputs.map((one, at) => (at === input ? { ...one, leads } : one)) }
      : link,
  );
  return withoutIdleLeads(plan, { ...plan, links });
}
