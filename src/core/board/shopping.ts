/** The shopping list of a plan. */
import { cableOf } from '../making/index.ts';
import { LEAD_DEFAULTS, MAKING_DEFAULTS, linkOf, wholeDevice } from '../plan/index.ts';
import type { Plan, PlanLead } from '../plan/index.ts';
import { goodsLike, words } from '../wiring/index.ts';
import type { Lead } from '../wiring/index.ts';
import { devicePriceSource, leadPriceSource, makingSource, priceNote, sumNote } from './prices.ts';
import type { PriceSource } from './prices.ts';
import { breakoutCost, breakoutWords, breakoutsOf } from './breakouts.ts';

/** One line of the shopping list; `each` and `sum` in the reader's currency. */
interface ShoppingRow {
  readonly what: string;
  readonly amount: number;
  readonly unit: 'pieces' | 'm';
  readonly each: number;
  readonly sum: number;
  readonly whosePrice: PriceSource;
}

/** Devices and leads to buy, and for the leads to make their plugs, wire by gauge, and whatever else each costs; with the total, whose the prices are, and what is to be said behind the total. */
export function shoppingList(plan: Plan) {
  const rows = new Map<string, ShoppingRow>();
  const add: Add = (what, each, price, amount = 1, unit = 'pieces') => {
    const source = each === 0 ? 'none' : price;
    const key = JSON.stringify([what, unit, each, source]);
    const all = amount + (rows.get(key)?.amount ?? 0);
    rows.set(key, { what, amount: all, unit, each, sum: all * each, whosePrice: source });
  };
  const making = makingSource(plan);
  for (const device of plan.devices.map(wholeDevice))
    if (device.toBuy) add(device.name, device.price, devicePriceSource(device));
  const used = new Set(plan.links.flatMap(({ inputs }) => inputs.flatMap(({ leads }) => leads)));
  for (const lead of plan.leads.filter(({ name }) => used.has(name))) {
    const { origin, price } = { ...LEAD_DEFAULTS, ...lead };
    if (origin === 'shop') add(shopWords(lead), price, leadPriceSource(plan, lead));
    if (origin === 'made') addParts(plan, lead, add);
  }
  for (const { connector } of breakoutsOf(plan))
    add(breakoutWords(connector), breakoutCost(plan.making, connector), making);
  const list = [...rows.values()];
  const total = list.reduce((sum, one) => sum + one.sum, 0);
  const sources = list.map(({ whosePrice }) => whosePrice);
  const currency = plan.currency ?? '';
  return { rows: list, total, currency, note: priceNote(sources), inSum: sumNote(sources) };
}

/** Adds to the list a thing with its price, whose price that is, and how many or how much. */
type Add = (
  what: string,
  each: number,
  price: PriceSource,
  amount?: number,
  unit?: ShoppingRow['unit'],
) => void;

function addParts(plan: Plan, lead: PlanLead, add: Add): void {
  const { making = MAKING_DEFAULTS } = plan;
  const source = makingSource(plan);
  for (const { connector, form } of [lead.from, lead.to])
    add(`${words(connector)} ${form} to solder`, making.plugs[connector] ?? making.plug, source);
  const link = plan.links.find(({ inputs }) => inputs.some(({ leads }) => leads.includes(lead.name)));
  const { words: cable, cutMetres } = cableOf(lead, link && linkOf(plan, link));
  add(`${cable}, ${lead.gauge} AWG`, making.wirePerMetre, source, cutMetres, 'm');
  if (making.perLead > 0) add('sundries for a made lead', making.perLead, source);
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
