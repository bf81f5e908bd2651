/** The leads that can be bought, made or taken from the drawer, and what a way to use them consists of. */
import { cutLength } from '../making/index.ts';
import { PLAN_LIMITS } from '../plan/index.ts';
import type { MakingPrices, StockLead } from '../plan/index.ts';
import type { LinkMemory } from '../verdict/index.ts';
import { STANDARD_METRES } from '../wiring/index.ts';
import type { Conductor, Lead } from '../wiring/index.ts';

/** One way to make a link: its cost, and the kinds of owned leads it takes, one piece for each mention. */
export interface Choice {
  readonly cost: number;
  readonly uses: readonly number[];
}

/** One piece of a run of leads: number in the stock, or -1 for a lead to be made. */
export interface Piece {
  readonly stock: number;
  readonly lead: Lead;
}

/** Leads in series between two connectors, with their cost and length. */
export interface Run extends Choice {
  readonly pieces: readonly Piece[];
  readonly metres: number;
}

/** What can be bought, made or taken from the drawer. */
export interface Offers {
  readonly stock: readonly StockLead[];
  readonly making: MakingPrices | undefined;
  readonly memory: LinkMemory;
  /** What a price counts in a choice: what has none is not free, but dearer than all that has one. */
  readonly priced: (price: number) => number;
  readonly runs: Map<string, readonly Run[]>;
  readonly maps: Map<string, readonly Conductor[] | null>;
}

/** Make the offers ready. `making` undefined means no soldering. */
export function offersOf(
  stock: readonly StockLead[],
  making: MakingPrices | undefined,
  memory: LinkMemory,
): Offers {
  const plugs = making ? [making.plug, making.perLead, making.wirePerMetre * cutLength(STANDARD_METRES)] : [];
  const dearest = Math.max(
    1,
    ...plugs,
    ...Object.values(making?.plugs ?? {}),
    ...stock.map(({ price }) => price),
  );
  const priced = (price: number): number => (price > 0 ? price : dearest * PLAN_LIMITS.leads);
  return { stock, making, memory, priced, runs: new Map(), maps: new Map() };
}
