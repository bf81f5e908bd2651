/** Prices in words, and whose they are: the reader's own, or invented by this workbook for its library and its demo board. */
import { LIBRARY } from '../plan/index.ts';
import type { Device, MakingPrices, Plan, PlanLead } from '../plan/index.ts';
import { DEMO_MAKING, DEMO_STOCK } from './demo-prices.ts';

/** Whose a price is; 'none' where there is none yet. */
export type PriceSource = 'your own' | 'invented' | 'none';

/** What stands beside every sum that has only the reader's own figures in it. */
const OWN_NOTE = 'Prices are your own figures; nothing here was looked up.';

/** A price in words: the reader's sign before it, two decimals, a space between (thin spaces would vanish in a CSV). */
export function sayPrice(amount: number, currency: string): string {
  const text = amount.toFixed(2);
  return currency === '' ? text : `${currency} ${text}`;
}

/** Whose the price of a device is: a device of the library comes with an invented one, and keeps it until the reader puts in another. */
export function devicePriceSource({ kind, price = 0 }: Pick<Device, 'kind' | 'price'>): PriceSource {
  const invented = LIBRARY.some((one) => one.kind === kind && one.price === price);
  return price === 0 ? 'none' : invented ? 'invented' : 'your own';
}

/** Whose the figures for a lead made by hand are: until the reader puts in some, each part counts as one. */
export function makingSource({ making }: Plan): PriceSource {
  return making === undefined || isDemo(making) ? 'invented' : 'your own';
}

/** Whose the price of a lead from the shop is. */
export function leadPriceSource({ making }: Plan, { from, to, price = 0 }: PlanLead): PriceSource {
  const ends = (lead: Pick<PlanLead, 'from' | 'to'>): string =>
    [lead.from.connector, lead.to.connector].sort().join();
  const alike = DEMO_STOCK.some(
    ({ lead, price: asked }) => asked === price && ends(lead) === ends({ from, to }),
  );
  return price === 0 ? 'none' : making !== undefined && isDemo(making) && alike ? 'invented' : 'your own';
}

function isDemo({ plugs, ...others }: MakingPrices): boolean {
  const { plugs: demoPlugs, ...demo } = DEMO_MAKING;
  const alike = <T extends object>(one: T, other: T): boolean =>
    [one, other].every((each) => (Object.keys(each) as (keyof T)[]).every((key) => one[key] === other[key]));
  return alike(others, demo) && alike(plugs, demoPlugs);
}

/** What is to be said of the prices in a list, from whose each of them is. */
export function priceNote(sources: readonly PriceSource[]): string {
  if (!sources.includes('invented')) return OWN_NOTE;
  const others = sources.includes('your own') ? ' The others are your own figures.' : '';
  return `Nothing here was looked up. Prices called invented come with this workbook, and no shop asks them: put in your own before you count on a sum.${others}`;
}

/** What stands behind a sum: whether it has invented prices in it, and whether something in it has no price yet. */
export function sumNote(sources: readonly PriceSource[]): string {
  const without = sources.filter((one) => one === 'none').length;
  return [
    ...(sources.includes('invented') ? [', with invented prices in it'] : []),
    ...(without > 0
      ? [`, without ${without} ${without === 1 ? 'thing that has' : 'things that have'} no price yet`]
      : []),
  ].join('');
}
