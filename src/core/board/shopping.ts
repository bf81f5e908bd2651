/** The shopping list of a plan. Every price is the reader's own figure. */
import { cableOf } from '../making/index.ts';
import { LEAD_DEFAULTS, MAKING_DEFAULTS, linkOf, wholeDevice } from '../plan/index.ts';
import type { Plan, PlanLead } from '../plan/index.ts';
import { goodsLike, words } from '../wiring/index.ts';
import type { Lead } from '../wiring/index.ts';
import { breakoutCost, breakoutWords, breakoutsOf } from './breakouts.ts';

/** What stands beside every sum. */
export const PRICE_NOTE = 'Prices are your own figures; nothing here was looked up.';

/** A price in words: the reader's sign before it, two decimals, a space between (thin spaces would vanish in a CSV). */
export function sayPrice(amount: number, currency: string): string {
  const text = amount.toFixed(2);
  return currency === '' ? text : `${currency} ${text}`;
}

/** One line of the shopping list; `each` and `sum` in the reader's currency. */
interface ShoppingRow {
  readonly what: string;
  readonly amount: number;
  readonly unit: 'pieces' | 'm';
  readonly each: number;
  readonly sum: number;
}

/** Devices and leads to buy, and for the leads to make their plugs, wire by gauge, and whatever else each costs; with the total. */
export function shoppingList(plan: Plan) {
  const rows = new Map<string, ShoppingRow>();
  const add = (what: string, each: number, amount = 1, unit: ShoppingRow['unit'] = 'pieces'): void => {
    const key = JSON.stringify([what, unit, each]);
    const all = amount + (rows.get(key)?.amount ?? 0);
    rows.set(key, { what, amount: all, unit, each, sum: all * each });
  };
  for (const { name, toBuy, price } of plan.devices.map(wholeDevice)) if (toBuy) add(name, price);
  const used = new Set(plan.links.flatMap(({ inputs }) => inputs.flatMap(({ leads }) => leads)));
  for (const lead of plan.leads.filter(({ name }) => used.has(name))) {
    const { origin, price } = { ...LEAD_DEFAULTS, ...lead };
    if (origin === 'shop') add(shopWords(lead), price);
    if (origin === 'made') addParts(plan, lead, add);
  }
  for (const { connector } of breakoutsOf(plan))
    add(breakoutWords(connector), breakoutCost(plan.making, connector));
  const list = [...rows.values()];
  const total = list.reduce((sum, one) => sum + one.sum, 0);
  return { rows: list, total, currency: plan.currency ?? '', note: PRICE_NOTE };
}

function addParts(
  plan: Plan,
  lead: PlanLead,
  add: (what: string, each: number, amount?: number, unit?: 'm') => void,
): void {
  const { making = MAKING_DEFAULTS } = plan;
  for (const { connector, form } of [lead.from, lead.to])
    add(`${words(connector)} ${form} to solder`, making.plugs[connector] ?? making.plug);
  const link = plan.links.find(({ inputs }) => inputs.some(({ leads }) => leads.includes(lead.name)));
  const { words: cable, cutMetres } = cableOf(lead, link && linkOf(plan, link));
  add(`${cable}, ${lead.gauge} AWG`, making.wirePerMetre, cutMetres, 'm');
  if (making.perLead > 0) add('sundries for a made lead', making.perLead);
}

/** What to ask a shop for: the name of the goods with its length, an adapter's left out; in full where there is no name. */
function shopWords(lead: Lead): string {
  const goods = goodsLike(lead);
  if (!goods) return leadWords(lead);
  return goods.lead.from.form === 'jack' ? goods.name : `${goods.name}, ${lead.lengthMetres} m`;
}

/** A lead in full: plugs, length, wiring. */
export function leadWords(lead: Lead): string {
  const end = (side: Lead['from']): string => `${words(side.connector)} ${side.form}`;
  const wiring = lead.conductors.map((one) => `${one.from}-${one.to}`).join(' ');
  return `${end(lead.from)} to ${end(lead.to)}, ${lead.lengthMetres} m, wired ${wiring}`;
}
