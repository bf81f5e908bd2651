/** What the owner takes away: cable schedule, shopping list, labels, and their CSV. Every price is the reader's own figure. */
import { PIGTAIL_METRES, words } from '../wiring/index.ts';
import type { Connector } from '../wiring/index.ts';
import type { Lead } from '../wiring/index.ts';
import { breakoutCost, breakoutWords, breakoutsOf } from './breakouts.ts';
import { LEAD_DEFAULTS, MAKING_DEFAULTS, wholeDevice } from '../plan/index.ts';
import type { LeadOrigin, Plan } from '../plan/index.ts';

/** What stands beside every sum. */
export const PRICE_NOTE = 'Prices are your own figures; nothing here was looked up.';

/** A price in words: the reader's sign before it, two decimals, a space between (thin spaces would vanish in a CSV). */
export function sayPrice(amount: number, currency: string): string {
  const text = amount.toFixed(2);
  return currency === '' ? text : `${currency} ${text}`;
}

/** One lead of the plan and where its two ends go. */
export interface ScheduleRow {
  readonly lead: string;
  readonly link: string;
  readonly from: string;
  readonly to: string;
  readonly fromPlug: string;
  readonly toPlug: string;
  readonly conductors: string;
  readonly lengthMetres: number;
  readonly gauge: number;
  readonly origin: LeadOrigin;
  readonly price: number;
}

/** Every lead in the order of the links, a lead between two others from one lead to the next; breakout leads at the end. */
export function cableSchedule(plan: Plan): readonly ScheduleRow[] {
  const leads = new Map(plan.leads.map((lead) => [lead.name, lead]));
  const breakouts = breakoutsOf(plan);
  const through = (device: string, jack: string): string => {
    const breakout = breakouts.find((one) => one.device === device && [one.into, one.out].includes(jack));
    return `${device}: ${jack}${breakout ? `, by ${breakout.name}` : ''}`;
  };
  const rows = plan.links.flatMap((link) =>
    link.inputs.flatMap((input) =>
      input.leads.flatMap((name, at): ScheduleRow[] => {
        const lead = leads.get(name);
        if (!lead) return [];
        const before = input.leads[at - 1];
        const after = input.leads[at + 1];
        const { origin, price } = { ...LEAD_DEFAULTS, ...lead };
        return [
          {
            lead: name,
            link: link.name,
            from: before ?? through(link.output.device, link.output.jack),
            to: after ?? through(input.device, input.jack),
            fromPlug: `${words(lead.from.connector)} ${lead.from.form}`,
            toPlug: `${words(lead.to.connector)} ${lead.to.form}`,
            conductors: lead.conductors.map((one) => `${one.from} to ${one.to}`).join(', '),
            lengthMetres: lead.lengthMetres,
            gauge: lead.gauge,
            origin,
            price,
          },
        ];
      }),
    ),
  );
  return [
    ...rows,
    ...breakouts.map((one): ScheduleRow => ({
      lead: one.name,
      link: one.links.join(' and '),
      from: `${one.device}: ${one.into} and ${one.out}`,
      to: `${one.intoLead} and ${one.outLead}`,
      fromPlug: `${words(one.connector)} plug`,
      toPlug: `two ${words(one.connector)} jacks`,
      conductors: `${one.intoWires} for ${one.intoLead}; ${one.outWires} for ${one.outLead}`,
      lengthMetres: PIGTAIL_METRES,
      gauge: BREAKOUT_GAUGE,
      origin: 'made',
      price: breakoutCost(plan.making, one.connector),
    })),
  ];
}

/** Gauge of a breakout lead, AWG: that of any lead made here. */
const BREAKOUT_GAUGE = 26;

/** One line of the shopping list; `each` and `sum` in the reader's currency. */
export interface ShoppingRow {
  readonly what: string;
  readonly amount: number;
  readonly unit: 'pieces' | 'm';
  readonly each: number;
  readonly sum: number;
}

/** The list and its total. */
export interface ShoppingList {
  readonly rows: readonly ShoppingRow[];
  readonly total: number;
  readonly currency: string;
  readonly note: string;
}

/** Leads to buy, devices to buy, and for the leads to make their plugs, wire by gauge, and whatever else each costs. */
export function shoppingList(plan: Plan): ShoppingList {
  const making = plan.making ?? MAKING_DEFAULTS;
  const rows = new Map<string, ShoppingRow>();
  const add = (what: string, amount: number, unit: ShoppingRow['unit'], each: number): void => {
    const key = JSON.stringify([what, unit, each]);
    const before = rows.get(key)?.amount ?? 0;
    rows.set(key, { what, amount: before + amount, unit, each, sum: (before + amount) * each });
  };
  for (const device of plan.devices.map(wholeDevice))
    if (device.toBuy) add(device.name, 1, 'pieces', device.price);
  const used = new Set(plan.links.flatMap(({ inputs }) => inputs.flatMap(({ leads }) => leads)));
  for (const lead of plan.leads) {
    const { origin, price } = { ...LEAD_DEFAULTS, ...lead };
    if (!used.has(lead.name) || origin === 'owned') continue;
    if (origin === 'shop') {
      add(leadWords(lead), 1, 'pieces', price);
      continue;
    }
    for (const { connector, form } of [lead.from, lead.to])
      add(`${words(connector)} ${form} to solder`, 1, 'pieces', plugPrice(plan, connector));
    add(`cable of ${wireCount(lead)}, ${lead.gauge} AWG`, lead.lengthMetres, 'm', making.wirePerMetre);
    if (making.perLead > 0) add('sundries for a made lead', 1, 'pieces', making.perLead);
  }
  for (const breakout of breakoutsOf(plan))
    add(breakoutWords(breakout), 1, 'pieces', breakoutCost(plan.making, breakout.connector));
  const list = [...rows.values()];
  return {
    rows: list,
    total: list.reduce((sum, one) => sum + one.sum, 0),
    currency: plan.currency ?? '',
    note: PRICE_NOTE,
  };
}

function plugPrice(plan: Plan, connector: Connector): number {
  const making = plan.making ?? MAKING_DEFAULTS;
  return making.plugs[connector] ?? making.plug;
}

function wireCount(lead: Lead): string {
  return `${lead.conductors.length} ${lead.conductors.length === 1 ? 'wire' : 'wires'}`;
}

/** A lead in the words of a shop: plugs, wiring, length. */
export function leadWords(lead: Lead): string {
  const end = (side: Lead['from']): string => `${words(side.connector)} ${side.form}`;
  const wiring = lead.conductors.map((one) => `${one.from}-${one.to}`).join(' ');
  return `${end(lead.from)} to ${end(lead.to)}, ${lead.lengthMetres} m, wired ${wiring}`;
}

/** What to print on the two ends of a lead: each names the lead, where this end goes, and where the other one is. */
export interface LeadLabel {
  readonly lead: string;
  readonly end: 'first' | 'second';
  readonly here: string;
  readonly there: string;
}

/** Labels for both ends of every lead. */
export function leadLabels(plan: Plan): readonly LeadLabel[] {
  return cableSchedule(plan).flatMap(({ lead, from, to }): LeadLabel[] => [
    { lead, end: 'first', here: from, there: to },
    { lead, end: 'second', here: to, there: from },
  ]);
}

/** Rows of like objects as CSV (RFC 4180): a header, CRLF, quotes where needed; text that a sheet would run as a formula gets a quote in front. */
export function csvText(rows: readonly object[]): string {
  const [first] = rows;
  if (!first) return '';
  const keys = Object.keys(first);
  const lines = rows.map((row) =>
    keys.map((key) => csvField((row as Readonly<Record<string, unknown>>)[key])).join(','),
  );
  return `${[keys.map(csvField).join(','), ...lines].join('\r\n')}\r\n`;
}

function csvField(value: unknown): string {
  const text = typeof value === 'number' ? String(Number(value.toFixed(6))) : String(value ?? '');
  const safe = typeof value === 'string' && /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
