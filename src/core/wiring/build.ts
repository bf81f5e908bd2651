/** The bench on which a link's circuit is put together: parts with the words to speak of them, and what may spread. */
import { LEAST_OHMS } from '../circuit/index.ts';
import type { DiodeModel, Element } from '../circuit/index.ts';
import { valuesOf } from './circuits.ts';
import type { Contact } from './connectors.ts';
import { valueAt } from './link.ts';
import type { Jack, Side } from './link.ts';
import { PROTECTION_DIODE } from './diodes.ts';
import type { ValueName } from './values.ts';

/** Where a part sits: the output (or rival number `rival`, from 2), input number `branch`, or lead number `lead` of that branch. */
export type Owner =
  | { readonly place: 'output'; readonly rival?: number }
  | { readonly place: 'input'; readonly branch: number }
  | { readonly place: 'lead'; readonly branch: number; readonly lead: number }
  | { readonly place: 'world' };

/** What a part does in the link. */
export type Role =
  | 'supply'
  | 'rail'
  | 'source-resistor'
  | 'sink-resistor'
  | 'stage-resistor'
  | 'stage-high'
  | 'stage-low'
  | 'stage-drive'
  | 'clamp'
  | 'series-resistor'
  | 'led'
  | 'protection'
  | 'turned-diode'
  | 'second-resistor'
  | 'second-led'
  | 'second-protection'
  | 'bridge-diode'
  | 'tap'
  | 'activity-resistor'
  | 'activity-led'
  | 'foreign-supply'
  | 'foreign-resistor'
  | 'pull-up'
  | 'input-resistor'
  | 'contact'
  | 'conductor'
  | 'joint'
  | 'short'
  | 'capacitance'
  | 'grounds';

/** Limits of a part: watts for resistors, amperes for stages, rails and LEDs, reverse volts for LEDs. */
interface Rating {
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

/** Name of the node at a contact of the output jack. */
export const outputNode = (contact: Contact): string => `out ${contact}`;
/** Name of the node at a contact of input jack number `branch`, from 0. */
export const inputNode = (branch: number, contact: Contact): string => `in${branch} ${contact}`;
/** Name of the node at a contact of one end of lead number `lead` of a branch, both from 0. */
export const leadNode = (branch: number, lead: number, side: Side, contact: Contact): string =>
  `lead${branch}.${lead} ${side} ${contact}`;
/** The solder joint behind a contact: the same node as the contact where nothing is wrong with it. */
export const jointNode = (branch: number, lead: number, side: Side, contact: Contact): string =>
  `${leadNode(branch, lead, side, contact)} joint`;

/** Ground of the output: the 0 V of the whole link. */
export const OUTPUT_GROUND = 'out ground';
/** Ground of an input that has one. */
export const inputGround = (branch: number): string => `in${branch} ground`;

/** Puts parts in one place of the link. Two nodes run from plus to minus, or from anode to cathode. */
export interface Bench {
  add(role: Role, element: Element, rating?: Rating): void;
  /** A resistor, of `LEAST_OHMS` where it is given less. */
  resistor(role: Role, name: string, a: string, b: string, ohms: number, rating?: Rating): void;
  supply(name: string, plus: string, minus: string, volts: number, rating?: Rating): void;
  /** A protection diode, where no other model is given. */
  diode(role: Role, name: string, anode: string, cathode: string, model?: DiodeModel): void;
  /** A closed switch between two grounds. */
  tie(name: string, a: string, b: string): void;
}

/** Collects parts and spreads while a link is put together; touches and wires spread together, whatever lead they are on. */
export interface Collector {
  readonly parts: LinkPart[];
  readonly spreads: Spread[];
  readonly touches: PartOhms[];
  readonly wires: PartOhms[];
  at(owner: Owner): Bench;
}

/** A resistance of a lead. */
interface PartOhms {
  readonly part: string;
  readonly ohms: number;
}

/** An empty collector. */
export function collector(): Collector {
  const parts: LinkPart[] = [];
  const at = (owner: Owner): Bench => {
    const add: Bench['add'] = (role, element, rating = {}) =>
      void parts.push({ element, owner, role, rating });
    return {
      add,
      resistor: (role, name, a, b, ohms, rating) =>
        add(role, { kind: 'resistor', name, a, b, ohms: Math.max(LEAST_OHMS, ohms) }, rating),
      supply: (name, plus, minus, volts, rating) =>
        add('supply', { kind: 'voltage', name, plus, minus, volts }, rating),
      diode: (role, name, anode, cathode, model = PROTECTION_DIODE) =>
        add(role, { kind: 'diode', name, anode, cathode, ...model }),
      tie: (name, a, b) => add('grounds', { kind: 'switch', name, a, b, closed: true }),
    };
  };
  return { parts, spreads: [], touches: [], wires: [], at };
}

/** Let parts spread with a value of the jack that has a relative tolerance; nothing where its circuit has no such value. */
export function spreadWith(
  into: Collector,
  jack: Jack,
  name: ValueName,
  parts: readonly string[],
  label?: string,
): void {
  const entry = valuesOf(jack.circuit, jack.part).find((one) => one.name === name);
  if (!entry?.spread) return;
  const amount = valueAt(jack, name);
  const { low, high } = entry.spread;
  const each = (value: number): readonly number[] => parts.map(() => value);
  into.spreads.push({
    name: label ?? entry.label,
    parts,
    nominal: each(amount),
    low: each(amount * low),
    high: each(amount * high),
  });
}

/** The name of a tolerance, with its input where several inputs have one of the name: 'LED voltage of input 2'. */
export function spreadName(spreads: readonly Spread[], spread: Spread): string {
  if (spreads.filter(({ name }) => name === spread.name).length < 2) return spread.name;
  const input = /^in(\d+) /.exec(spread.parts[0] ?? '');
  return input ? `${spread.name} of input ${Number(input[1]) + 1}` : spread.name;
}
