/** Changes to the links of a board. A new link gets the cheapest leads on offer that make it work, and its jacks the styles for it. */
import {
  MAKING_DEFAULTS,
  PLAN_LIMITS,
  edited,
  freshName,
  nameProblem,
  refused,
  speaks,
  wholeDevice,
  wholeJack,
  withoutIdleLeads,
  withoutInputs,
} from '../plan/index.ts';
import type {
  Edit,
  EditProblem,
  JackPlace,
  Plan,
  PlanJack,
  PlanLead,
  PlanLink,
  WholeDevice,
} from '../plan/index.ts';
import type { LinkMemory } from '../verdict/index.ts';
import { LENGTH_METRES, styleEntry } from '../wiring/index.ts';
import type { Lead } from '../wiring/index.ts';
import { sayJack } from './findings.ts';
import { jackSetTo, makingCost } from './lead-offers.ts';
import type { Piece } from './lead-offers.ts';
import { jackAt, leadsForLink, samePlace } from './leads-for-link.ts';
import type { LeadsForLink } from './leads-for-link.ts';

/** A link made: the plan, the link's name, the leads it took, and whether they are known to work. */
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
  | { readonly ok: false; readonly problem: EditProblem };

/** Join an output to an input, with the cheapest leads that work; where none does, with a lead that fits, for the check to explain. */
export function connect(
  plan: Plan,
  output: JackPlace,
  input: JackPlace,
  memory: LinkMemory = new Map(),
): Connected {
  const from = jackAt(plan, output);
  const to = jackAt(plan, input);
  if (from.jack.direction !== 'out') return no('from', 'an output', `${sayJack(output)}, which is an input`);
  if (to.jack.direction !== 'in') return no('to', 'an input', `${sayJack(input)}, which is an output`);
  if (output.device === input.device)
    return no('to', 'a jack of another device', `${sayJack(input)}, the same device`);
  const joined = plan.links.find(
    (link) => samePlace(link.output, output) && link.inputs.some((one) => samePlace(one, input)),
  );
  if (joined) return no('link', 'two jacks that are not joined yet', `${joined.name}, which joins them`);
  if (plan.links.length >= PLAN_LIMITS.links)
    return no('links', `at most ${PLAN_LIMITS.links}`, `${plan.links.length + 1}`);
  const found = leadsForLink(plan, output, input, memory);
  if (plan.leads.length + found.pieces.length > PLAN_LIMITS.leads)
    return no('leads', `at most ${PLAN_LIMITS.leads}`, `${plan.leads.length + found.pieces.length}`);
  const leads = namedLeads(plan, found.pieces);
  const link: PlanLink = {
    name: firstFree(
      'link',
      plan.links.map(({ name }) => name),
    ),
    output: { device: output.device, jack: output.jack },
    inputs: [{ device: input.device, jack: input.jack, leads: leads.map(({ name }) => name) }],
  };
  const set = setJacks(plan, output, input, found);
  return {
    ok: true,
    plan: { ...set.plan, leads: [...plan.leads, ...leads], links: [...plan.links, link] },
    link: link.name,
    leads,
    works: found.choice !== undefined,
    notes: [
      ...set.notes,
      ...(found.againstWish ? ['no lead on offer fits, so this one has to be made'] : []),
    ],
  };
}

/** Take one input off a link, or the whole link where it has no other, with the leads that only it used. */
export function disconnect(plan: Plan, linkName: string, input = 0): Plan {
  const links = withoutInputs(
    plan.links,
    (one, link) => link.name === linkName && link.inputs[input] === one,
  );
  return withoutIdleLeads(plan, { ...plan, links });
}

/** Choose the leads of one input of a link anew, as if it were made now. */
export function refitLink(plan: Plan, linkName: string, input: number, memory: LinkMemory = new Map()): Plan {
  const link = plan.links.find(({ name }) => name === linkName);
  const branch = link?.inputs[input];
  if (!link || !branch) throw new Error(`board: no input ${input} of a link '${linkName}'`);
  const bare = withBranch(plan, linkName, input, []);
  const found = leadsForLink(bare, link.output, branch, memory);
  const leads = namedLeads(bare, found.pieces);
  const set = setJacks({ ...bare, leads: [...bare.leads, ...leads] }, link.output, branch, found);
  const links = set.plan.links.map((one) =>
    withLeads(
      one,
      linkName,
      input,
      leads.map(({ name }) => name),
    ),
  );
  return { ...set.plan, links };
}

/** Put these leads in series on one input of a link, in place of those it had. */
export function replaceLeads(plan: Plan, linkName: string, input: number, leads: readonly Lead[]): Edit {
  if (leads.length < 1 || leads.length > PLAN_LIMITS.leadsInSeries)
    return refused('leads in series', `1 to ${PLAN_LIMITS.leadsInSeries}`, `${leads.length}`);
  const bare = withBranch(plan, linkName, input, []);
  const named = leads.reduce<readonly PlanLead[]>((made, lead) => {
    const taken = [...bare.leads, ...made].map(({ name }) => name);
    return [...made, { ...lead, name: freshName(lead.name, taken) }];
  }, []);
  const names = named.map(({ name }) => name);
  return edited({
    ...bare,
    leads: [...bare.leads, ...named],
    links: bare.links.map((one) => withLeads(one, linkName, input, names)),
  });
}

/** Change a lead; links follow a new name. */
export function changeLead(plan: Plan, name: string, changes: Partial<PlanLead>): Edit {
  const before = plan.leads.find((one) => one.name === name);
  if (!before) throw new Error(`board: no lead '${name}'`);
  const after = { ...before, ...changes };
  const [least, most] = LENGTH_METRES;
  if (!(after.lengthMetres >= least && after.lengthMetres <= most))
    return refused(`length of ${name}`, `${least} to ${most} m`, `${after.lengthMetres} m`);
  if (!((after.price ?? 0) >= 0 && (after.price ?? 0) <= PLAN_LIMITS.price))
    return refused(`price of ${name}`, `0 to ${PLAN_LIMITS.price}`, `${after.price ?? 0}`);
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

function no(place: string, expected: string, got: string): Connected {
  return { ok: false, problem: { place, expected, got } };
}

function firstFree(word: string, taken: readonly string[]): string {
  for (let number = 1; ; number++) if (!taken.includes(`${word} ${number}`)) return `${word} ${number}`;
}

function namedLeads(plan: Plan, pieces: readonly Piece[]): readonly PlanLead[] {
  const taken = plan.leads.map(({ name }) => name);
  return pieces.map(({ stock, lead }) => {
    const name = firstFree('lead', taken);
    taken.push(name);
    const kept = plan.stock?.[stock];
    if (!kept) {
      return { ...lead, name, origin: 'made', price: makingCost(plan.making ?? MAKING_DEFAULTS, lead) };
    }
    return kept.owned > 0
      ? { ...lead, name, origin: 'owned', price: 0 }
      : { ...lead, name, origin: 'shop', price: kept.price };
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
    let made = jack;
    const style = samePlace(place, output) ? choice?.output.style : choice?.input.style;
    if (style !== undefined && style !== jack.style) {
      const { circuit, values } = jackSetTo(wholeJack(jack), style);
      made = { ...made, style, circuit, values };
      notes.push(`${sayJack(place)} is set to ${styleEntry(style).label}`);
    }
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

function withLeads(link: PlanLink, name: string, input: number, leads: readonly string[]): PlanLink {
  if (link.name !== name) return link;
  return { ...link, inputs: link.inputs.map((one, at) => (at === input ? { ...one, leads } : one)) };
}

/** The plan with these leads on one input, and without those it used alone. */
function withBranch(plan: Plan, linkName: string, input: number, leads: readonly string[]): Plan {
  const links = plan.links.map((link) => withLeads(link, linkName, input, leads));
  return withoutIdleLeads(plan, { ...plan, links });
}
