/** The plan: one file for the whole workbook. Devices with jacks, leads, and links; one lead is a plan of two devices and one link. */
import type { Jack, Lead, Link } from '../wiring/link.ts';

export const PLAN_FORMAT = 'five-milliamps-plan';
export const PLAN_VERSION = 1;

/** A jack on a device, by name. */
export interface PlanJack extends Jack {
  readonly name: string;
}

/** A device and its jacks. */
export interface Device {
  readonly name: string;
  readonly jacks: readonly PlanJack[];
}

/** A jack named by device and jack. */
export interface JackPlace {
  readonly device: string;
  readonly jack: string;
}

/** One input of a link, with the names of the leads in series that lead to it, the one at the output first. */
export interface PlanBranch extends JackPlace {
  readonly leads: readonly string[];
}

/** A link of the plan: an output and one or more inputs. */
export interface PlanLink {
  readonly name: string;
  readonly output: JackPlace;
  readonly inputs: readonly PlanBranch[];
}

/** A whole plan. */
export interface Plan {
  readonly format: typeof PLAN_FORMAT;
  readonly version: typeof PLAN_VERSION;
  readonly title: string;
  readonly devices: readonly Device[];
  readonly leads: readonly Lead[];
  readonly links: readonly PlanLink[];
}

/** Bounds of a plan file: far above any board, low enough that a spoiled file cannot stall a page. */
export const PLAN_LIMITS = {
  characters: 1_000_000,
  nameCharacters: 80,
  devices: 64,
  jacks: 32,
  leads: 256,
  links: 256,
  inputs: 16,
  leadsInSeries: 8,
  conductors: 64,
  faults: 32,
} as const;

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
    const { name: _, ...jack } = found;
    return jack;
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
  return {
    format: PLAN_FORMAT,
    version: PLAN_VERSION,
    title,
    devices: [
      { name: 'sender', jacks: [{ ...output, name: 'out' }] },
      { name: 'receiver', jacks: [{ ...input, name: 'in' }] },
    ],
    leads: named,
    links: [
      {
        name: 'link 1',
        output: { device: 'sender', jack: 'out' },
        inputs: [{ device: 'receiver', jack: 'in', leads: named.map(({ name }) => name) }],
      },
    ],
  };
}
