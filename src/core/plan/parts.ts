/** Plans made, and their parts found by name. */
import type { Jack, Lead, Link } from '../wiring/index.ts';
import { PLAN_FORMAT, PLAN_VERSION } from './kinds.ts';
import type { JackPlace, Plan, PlanJack, PlanLink } from './plan.ts';

/** A plan of these parts. */
export function makePlan(parts: Partial<Plan>): Plan {
  return {
    format: PLAN_FORMAT,
    version: PLAN_VERSION,
    title: '',
    devices: [],
    leads: [],
    links: [],
    ...parts,
  };
}

/** The jack alone, without name and place: what a circuit is built from. */
export function plainJack({ direction, connector, style, circuit, part, values, extras }: Jack): Jack {
  return { direction, connector, style, circuit, part, values, ...(extras && { extras }) };
}

/** Where a named jack is in a plan, or undefined. */
export function findJack(plan: Plan, place: JackPlace): PlanJack | undefined {
  return plan.devices
    .find(({ name }) => name === place.device)
    ?.jacks.find(({ name }) => name === place.jack);
}

/** A link of a plan with its jacks and leads in place. @throws when a name is not in the plan (read plans are checked). */
export function linkOf(plan: Plan, link: PlanLink): Link {
  const jackAt = (place: JackPlace): Jack => {
    const found = findJack(plan, place);
    if (!found) throw new Error(`link '${link.name}': no jack '${place.jack}' on a device '${place.device}'`);
    return plainJack(found);
  };
  const leadNamed = (name: string): Lead => {
    const found = plan.leads.find((lead) => lead.name === name);
    if (!found) throw new Error(`link '${link.name}': no lead '${name}'`);
    return found;
  };
  return {
    output: jackAt(link.output),
    branches: link.inputs.map((input) => ({ input: jackAt(input), leads: input.leads.map(leadNamed) })),
  };
}

/** A plan of one link: the output's device, the input's device, and the leads between. */
export function planOfLink(output: Jack, input: Jack, leads: readonly Lead[], title = ''): Plan {
  const named = leads.map((lead, at) => ({ ...lead, name: `lead ${at + 1}` }));
  return makePlan({
    title,
    devices: [
      { name: 'sender', jacks: [{ ...plainJack(output), name: 'out' }] },
      { name: 'receiver', jacks: [{ ...plainJack(input), name: 'in' }] },
    ],
    leads: named,
    links: [
      {
        name: 'link 1',
        output: { device: 'sender', jack: 'out' },
        inputs: [{ device: 'receiver', jack: 'in', leads: named.map(({ name }) => name) }],
      },
    ],
  });
}
