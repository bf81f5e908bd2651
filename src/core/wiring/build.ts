/** The bench on which a link's circuit is put together: parts with the words to speak of them, and what may spread. */
import type { Element } from '../circuit/index.ts';
import type { Contact } from './connectors.ts';
import type { Side } from './link.ts';

/** Where a part sits: the output, input number `branch`, or lead number `lead` of that branch. */
export type Owner =
  | { readonly place: 'output' }
  | { readonly place: 'input'; readonly branch: number }
  | { readonly place: 'lead'; readonly branch: number; readonly lead: number }
  | { readonly place: 'world' };

/** What a part does in the link. */
export const ROLES = [
  'supply',
  'rail',
  'source-resistor',
  'sink-resistor',
  'stage-resistor',
  'stage-high',
  'stage-low',
  'stage-drive',
  'clamp',
  'series-resistor',
  'led',
  'protection',
  'bridge-diode',
  'pull-up',
  'input-resistor',
  'contact',
  'conductor',
  'joint',
  'short',
  'capacitance',
  'grounds',
] as const;
export type Role = (typeof ROLES)[number];

/** Limits of a part: watts for resistors, amperes for stages, rails and LEDs, reverse volts for LEDs. */
export interface Rating {
  readonly watts?: number;
  readonly amperes?: number;
  readonly reverseVolts?: number;
}

/** A part of the link's circuit, with its place and its role. */
export interface LinkPart {
  readonly element: Element;
  readonly owner: Owner;
  readonly role: Role;
  readonly rating: Rating;
}

/** One tolerance: these parts move together, between two values each. `low` and `high` hold one value a part. */
export interface Spread {
  readonly name: string;
  readonly parts: readonly string[];
  readonly nominal: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
}

/** Name of the node at a contact of the output jack, of an input jack, or of one end of a lead. */
export const outputNode = (contact: Contact): string => `out ${contact}`;
export const inputNode = (branch: number, contact: Contact): string => `in${branch} ${contact}`;
export const leadNode = (branch: number, lead: number, side: Side, contact: Contact): string =>
  `lead${branch}.${lead} ${side} ${contact}`;
/** The solder joint behind a contact: the same node as the contact where nothing is wrong with it. */
export const jointNode = (branch: number, lead: number, side: Side, contact: Contact): string =>
  `${leadNode(branch, lead, side, contact)} joint`;

/** Ground of the output: the 0 V of the whole link. */
export const OUTPUT_GROUND = 'out ground';
/** Ground of an input that has one. */
export const inputGround = (branch: number): string => `in${branch} ground`;

/** Collects parts and spreads while a link is put together. */
export interface Collector {
  readonly parts: LinkPart[];
  readonly spreads: Spread[];
  add(owner: Owner, role: Role, element: Element, rating?: Rating): void;
}

/** An empty collector. */
export function collector(): Collector {
  const parts: LinkPart[] = [];
  return {
    parts,
    spreads: [],
    add: (owner, role, element, rating = {}) => void parts.push({ element, owner, role, rating }),
  };
}

/** A relative spread of one part. */
export function factorSpread(name: string, part: string, nominal: number, low: number, high: number): Spread {
  return { name, parts: [part], nominal: [nominal], low: [nominal * low], high: [nominal * high] };
}

/** The name of a tolerance, with its input where several inputs have one of the name: 'LED voltage of input 2'. */
export function spreadName(spreads: readonly Spread[], spread: Spread): string {
  if (spreads.filter(({ name }) => name === spread.name).length < 2) return spread.name;
  const input = /^in(\d+) /.exec(spread.parts[0] ?? '');
  return input ? `${spread.name} of input ${Number(input[1]) + 1}` : spread.name;
}
