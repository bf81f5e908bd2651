/** Leads and adapters that a player may have in a drawer or ask a shop for, in the words of shops (common practice, no source). */
import { contactWords, makeLead, wires } from '../wiring/index.ts';
import type { Conductor, Connector, End, Lead } from '../wiring/index.ts';

/** One kind of lead or adapter. `name` is what to ask for; `yours` what a player calls the one in the drawer, where many have one. */
export interface Goods {
  readonly id: string;
  readonly name: string;
  readonly yours?: string;
  readonly lead: Lead;
}

/** Length of an adapter, metres (our choice: a short pigtail). */
const PIGTAIL_METRES = 0.15;

const DIN = wires('4-4', '5-5', '2-2');
const TRS = wires('tip-tip', 'ring-ring', 'sleeve-sleeve');
const CROSSED = wires('tip-ring', 'ring-tip', 'sleeve-sleeve');
/** From DIN to a phone plug: Type A after MMA RP-054, Type B the other way round. */
const TYPE_A = wires('4-ring', '5-tip', '2-sleeve');
const TYPE_B = wires('4-tip', '5-ring', '2-sleeve');

function lead(
  id: string,
  name: string,
  from: Connector,
  to: Connector,
  conductors: readonly Conductor[],
): Goods {
  return { id, name, lead: makeLead(from, to, conductors, { name }) };
}

function adapter(
  id: string,
  name: string,
  from: Connector,
  to: Connector,
  conductors: readonly Conductor[],
): Goods {
  const socket: End = { connector: from, form: 'jack' };
  return {
    id,
    name,
    lead: makeLead(from, to, conductors, { name, from: socket, lengthMetres: PIGTAIL_METRES }),
  };
}

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

/** Conductors the way a manual draws them: 'pin 4 to ring, pin 5 to tip, pin 2 to sleeve'. */
export function sayContacts(conductors: readonly Conductor[]): string {
  return conductors.map(({ from, to }) => `${contactWords(from)} to ${contactWords(to)}`).join(', ');
}
