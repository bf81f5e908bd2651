/** Where the leads of a plan go: the cable schedule, and labels for their ends. */
import { LEAD_DEFAULTS } from '../plan/index.ts';
import type { Plan } from '../plan/index.ts';
import { PIGTAIL_METRES, words } from '../wiring/index.ts';
import { breakoutCost, breakoutsOf } from './breakouts.ts';
import { sayConductors } from './conductors.ts';

/** Gauge of a breakout lead, AWG: that of any lead made here. */
const BREAKOUT_GAUGE = 26;

/** Every lead in the order of the links, a lead between two others from one lead to the next; breakout leads at the end. */
export function cableSchedule(plan: Plan) {
  const leads = new Map(plan.leads.map((lead) => [lead.name, { ...LEAD_DEFAULTS, ...lead }]));
  const breakouts = breakoutsOf(plan);
  const through = (device: string, jack: string): string => {
    const breakout = breakouts.find((one) => one.device === device && [one.into, one.out].includes(jack));
    return `${device}: ${jack}${breakout ? `, by ${breakout.name}` : ''}`;
  };
  const rows = plan.links.flatMap(({ name: link, output, inputs }) =>
    inputs.flatMap((input) =>
      input.leads.flatMap((name, at) => {
        const lead = leads.get(name);
        if (!lead) return [];
        const { lengthMetres, gauge, origin, price } = lead;
        return [
          {
            lead: name,
            link,
            from: input.leads[at - 1] ?? through(output.device, output.jack),
            to: input.leads[at + 1] ?? through(input.device, input.jack),
            fromPlug: `${words(lead.from.connector)} ${lead.from.form}`,
            toPlug: `${words(lead.to.connector)} ${lead.to.form}`,
            conductors: sayConductors(lead.conductors),
            lengthMetres,
            gauge,
            origin,
            price,
          },
        ];
      }),
    ),
  );
  const extra = breakouts.map((one) => ({
    lead: one.name,
    link: one.links.join(' and '),
    from: `${one.device}: ${one.into} and ${one.out}`,
    to: `${one.intoLead} and ${one.outLead}`,
    fromPlug: `${words(one.connector)} plug`,
    toPlug: `two ${words(one.connector)} jacks`,
    conductors: `${one.intoWires} for ${one.intoLead}; ${one.outWires} for ${one.outLead}`,
    lengthMetres: PIGTAIL_METRES,
    gauge: BREAKOUT_GAUGE,
    origin: 'made' as const,
    price: breakoutCost(plan.making, one.connector),
  }));
  return [...rows, ...extra];
}

/** Labels for both ends of every lead: each names the lead, where this end goes, and where the other one is. */
export function leadLabels(plan: Plan) {
  return cableSchedule(plan).flatMap(({ lead, from, to }) => [
    { lead, end: 'first', here: from, there: to },
    { lead, end: 'second', here: to, there: from },
  ]);
}
