/** Leads and adapters that a player may have in a drawer or ask a shop for, in the words of shops (common practice, no source). */
import type { Connector } from './connectors.ts';
import { makeLead, turnLead, wires } from './link.ts';
import type { Conductor, Lead } from './link.ts';
import {
  DIN_TO_TYPE_A as TYPE_A,
  DIN_TO_TYPE_B as TYPE_B,
  STRAIGHT_DIN as DIN,
  STRAIGHT_TRS as TRS,
} from './usual-wires.ts';
import { PIGTAIL_METRES } from './wire.ts';

/** One kind of lead or adapter. `name` is what to ask for; `yours` what a player calls the one in the drawer, where many have one. */
export interface Goods {
  readonly id: string;
  readonly name: string;
  readonly yours?: string;
  readonly lead: Lead;
}

const CROSSED = wires('tip-ring', 'ring-tip', 'sleeve-sleeve');

/** How a kind of goods is made: its id, its name, the connectors at its ends, and what is joined. */
type Made = readonly [id: string, name: string, from: Connector, to: Connector, wired: readonly Conductor[]];

const lead = (...[id, name, from, to, wired]: Made): Goods => ({
  id,
  name,
  lead: makeLead(from, to, wired, { name }),
});

const adapter = (...[id, name, from, to, wired]: Made): Goods => ({
  id,
  name,
  lead: makeLead(from, to, wired, {
    name,
    from: { connector: from, form: 'jack' },
    lengthMetres: PIGTAIL_METRES,
  }),
});

/** Everything that is commonly sold ready made, the plainest first. */
export const GOODS: readonly Goods[] = [
  { ...lead('din', '5-pin DIN lead', 'din5', 'din5', DIN), yours: 'DIN lead' },
  {
    ...lead('trs-large', 'straight TRS lead, 6.35 mm', 'trs-6.35', 'trs-6.35', TRS),
    yours: 'large TRS lead',
  },
  { ...lead('trs-small', 'straight TRS lead, 3.5 mm', 'trs-3.5', 'trs-3.5', TRS), yours: 'small TRS lead' },
  {
    ...lead('ts-large', 'guitar lead: TS, 6.35 mm', 'ts-6.35', 'ts-6.35', wires('tip-tip', 'sleeve-sleeve')),
    yours: 'guitar lead',
  },
  lead('din-small-a', '5-pin DIN to 3.5 mm TRS lead, Type A', 'din5', 'trs-3.5', TYPE_A),
  lead('din-small-b', '5-pin DIN to 3.5 mm TRS lead, Type B', 'din5', 'trs-3.5', TYPE_B),
  lead('din-large-a', '5-pin DIN to 6.35 mm TRS lead, Type A', 'din5', 'trs-6.35', TYPE_A),
  lead('din-large-b', '5-pin DIN to 6.35 mm TRS lead, Type B', 'din5', 'trs-6.35', TYPE_B),
  lead('trs-small-large', '3.5 mm to 6.35 mm TRS lead, straight', 'trs-3.5', 'trs-6.35', TRS),
  lead('trs-small-crossed', '3.5 mm TRS lead, Type A to Type B', 'trs-3.5', 'trs-3.5', CROSSED),
  {
    ...adapter('adapter-a', 'Type A adapter: 5-pin DIN socket to 3.5 mm TRS plug', 'din5', 'trs-3.5', TYPE_A),
    yours: 'Type A adapter',
  },
  {
    ...adapter('adapter-b', 'Type B adapter: 5-pin DIN socket to 3.5 mm TRS plug', 'din5', 'trs-3.5', TYPE_B),
    yours: 'Type B adapter',
  },
  adapter('adapter-a-tiny', 'Type A adapter: 5-pin DIN socket to 2.5 mm TRS plug', 'din5', 'trs-2.5', TYPE_A),
  adapter('adapter-up', 'size adapter: 3.5 mm TRS socket to 6.35 mm TRS plug', 'trs-3.5', 'trs-6.35', TRS),
  adapter('adapter-down', 'size adapter: 6.35 mm TRS socket to 3.5 mm TRS plug', 'trs-6.35', 'trs-3.5', TRS),
];

/** What may lie in a drawer. */
export const DRAWER: readonly (Goods & { readonly yours: string })[] = GOODS.flatMap((one) =>
  one.yours === undefined ? [] : [{ ...one, yours: one.yours }],
);

/** The goods that are this lead but for its length, either end first; undefined where a shop has no name for it. */
export function goodsLike(lead: Lead): Goods | undefined {
  const keys = [lead, turnLead(lead)].map(keyOf);
  return GOODS.find((one) => keys.includes(keyOf(one.lead)));
}

function keyOf({ from, to, conductors }: Lead): string {
  const wired = conductors.map((one) => `${one.from}-${one.to}`).sort();
  return [from.connector, from.form, to.connector, to.form, ...wired].join(' ');
}
