/** Leads and prices of the demo board: all invented. */
import type { MakingPrices, StockLead } from '../plan/index.ts';
import { DIN_TO_TYPE_A, STRAIGHT_DIN, STRAIGHT_TRS, makeLead } from '../wiring/index.ts';
import type { Conductor, Connector, Lead } from '../wiring/index.ts';

/** What the demo board can be made of besides its devices. */
export const DEMO_STOCK: readonly StockLead[] = [
  { lead: makeLead('din5', 'din5', STRAIGHT_DIN, { name: 'DIN lead, 1 m' }), price: 9, owned: 0 },
  { lead: makeLead('din5', 'din5', STRAIGHT_DIN, { name: 'my DIN lead, 1 m' }), price: 0, owned: 1 },
  { lead: small('trs-3.5', STRAIGHT_TRS, 'small TRS lead, 0.6 m', 0.6), price: 5, owned: 0 },
  { lead: small('din5', DIN_TO_TYPE_A, 'DIN to Type A, 1.2 m', 1.2), price: 8, owned: 0 },
];

/** What a lead made by hand costs on the demo board. */
export const DEMO_MAKING: MakingPrices = { plugs: { din5: 3 }, plug: 2, wirePerMetre: 1.5, perLead: 1 };

function small(from: Connector, conductors: readonly Conductor[], name: string, lengthMetres: number): Lead {
  return makeLead(from, 'trs-3.5', conductors, { name, lengthMetres });
}
