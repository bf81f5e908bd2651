/** One lead of a plan as a plan of its own: what a link or a code on its sheet holds. */
import { linkOf, makePlan } from '../plan/index.ts';
import type { Plan, PlanBranch, PlanJack, PlanLead, PlanLink } from '../plan/index.ts';
import { linesOfLead } from './sheet-rows.ts';
import type { Jack, Lead, Link } from '../wiring/index.ts';
import { makeJack, stylesFor } from '../wiring/index.ts';

/**
 * The plan of one lead, as short as a link can be: the lead first and sound, the leads in series with it, and both jacks as usual circuits of their
 * styles, for nothing else on the sheet depends on more. Names are short: they stand in an address.
 * @throws when the plan has no such lead, or no link.
 */
export function shortPlanOfLead(plan: Plan, name: string): Plan {
  const lead = plan.leads.find((one) => one.name === name);
  if (!lead)
    throw new Error(`plan: needs a lead '${name}', got ${plan.leads.map((one) => one.name).join(', ')}`);
  const home = homeOf(plan, name);
  if (!home) throw new Error(`plan: needs a link, got none for the lead '${name}'`);
  const { link, branch } = home;
  const { output, branches } = linkOf(plan, { ...link, inputs: [branch] });
  const others = branch.leads.filter((one) => one !== name);
  const leads = [name, ...others].map((wanted) => plan.leads.find((one) => one.name === wanted) as PlanLead);
  return makePlan({
    devices: [
      { name: 'out', jacks: [usual(output, 'out')] },
      { name: 'in', jacks: [usual((branches[0] as Link['branches'][number]).input, 'in')] },
    ],
    leads: leads.map((one) => sound(one)),
    links: [
      {
        name: 'out',
        output: { device: 'out', jack: 'out' },
        inputs: [{ device: 'in', jack: 'in', leads: branch.leads }],
      },
    ],
  });
}

/** The link and the input that a lead belongs to; for a lead in no link, the first of the plan. */
function homeOf(plan: Plan, name: string): { link: PlanLink; branch: PlanBranch } | undefined {
  const all = plan.links.flatMap((link) => link.inputs.map((branch) => ({ link, branch })));
  return all.find(({ branch }) => branch.leads.includes(name)) ?? all[0];
}

function usual({ direction, connector, style }: Jack, name: string): PlanJack {
  return { ...makeJack(direction, connector, style), name };
}

function sound({ name, from, to, conductors, lengthMetres, gauge, contactOhms }: PlanLead): PlanLead {
  return { name, from, to, conductors, lengthMetres, gauge, contactOhms, faults: [] };
}

/**
 * Two jacks between which a lead carries the same lines as in its own link, so that the lead alone is enough; undefined when
 * there are none, as for an adapter that only makes sense in series.
 */
export function jacksFor(
  lead: Lead,
  link: Link | undefined,
): readonly [output: Jack, input: Jack] | undefined {
  const wanted = linesOfLead(lead, link).join();
  const own = link?.branches.find(({ leads }) => leads.some(({ name }) => name === lead.name));
  const first = <T extends string>(styles: readonly T[], style: T | undefined): readonly T[] =>
    style !== undefined && styles.includes(style) ? [style, ...styles] : styles;
  for (const outStyle of first(stylesFor('out', lead.from.connector), link?.output.style))
    for (const inStyle of first(stylesFor('in', lead.to.connector), own?.input.style)) {
      const output = makeJack('out', lead.from.connector, outStyle);
      const input = makeJack('in', lead.to.connector, inStyle);
      const alone: Link = { output, branches: [{ input, leads: [lead] }] };
      if (linesOfLead(lead, alone).join() === wanted) return [output, input];
    }
  return undefined;
}
