/** Jacks, leads and links as plain data: what a reader plans and what the circuit is built from. */
import type { CircuitKind } from './circuits.ts';
import { circuitEntry, hasLed, valuesOf } from './circuits.ts';
import type { Connector, Contact, Form } from './connectors.ts';
import { contactsOf } from './connectors.ts';
import { DRIVERS } from './drivers.ts';
import type { Extra } from './extras.ts';
import { extraProblem, extraSuits } from './extras.ts';
import type { Part } from './parts.ts';
import { RECEIVERS } from './receivers.ts';
import { CONTACT_OHMS } from './wire.ts';
import type { Style } from './styles.ts';
import { STYLES, styleEntry, styleSuits } from './styles.ts';
import { valueProblem } from './values.ts';
import type { ValueName } from './values.ts';

/** Whether a jack sends or receives. */
export const DIRECTIONS = ['out', 'in'] as const;
/** Out or in. */
export type Direction = (typeof DIRECTIONS)[number];

/** A jack on a device. `values` holds only what differs from the defaults of its circuit, `extras` what no standard draws. */
export interface Jack {
  readonly direction: Direction;
  readonly connector: Connector;
  readonly style: Style;
  readonly circuit: CircuitKind;
  readonly part: Part;
  readonly values: Readonly<Partial<Record<ValueName, number>>>;
  readonly extras?: readonly Extra[];
}

/** One end of a lead. */
export interface End {
  readonly connector: Connector;
  readonly form: Form;
}

/** The two ends of a lead: `from` is the one nearer the output. */
export const SIDES = ['from', 'to'] as const;
/** An end of a lead. */
export type Side = (typeof SIDES)[number];

/** One wire of a lead, from a contact of its first end to a contact of its second. */
export interface Conductor {
  readonly from: Contact;
  readonly to: Contact;
}

/** Range of a bad joint, ohms: from a touch more than a good one to as good as open. */
export const JOINT_OHMS = [0.1, 1e6] as const;

/** What can be wrong inside a lead: an open joint, a joint of high resistance, a bridge between two contacts. */
export type Fault =
  | { readonly kind: 'open'; readonly side: Side; readonly contact: Contact }
  | { readonly kind: 'joint'; readonly side: Side; readonly contact: Contact; readonly ohms: number }
  | { readonly kind: 'short'; readonly side: Side; readonly between: readonly [Contact, Contact] };

/** A lead; an adapter is a lead, usually with a jack at one end. */
export interface Lead {
  readonly name: string;
  readonly from: End;
  readonly to: End;
  readonly conductors: readonly Conductor[];
  readonly lengthMetres: number;
  readonly gauge: number;
  readonly contactOhms: number;
  readonly faults: readonly Fault[];
}

/** One input of a link and the leads in series that lead to it from the output. */
export interface Branch {
  readonly input: Jack;
  readonly leads: readonly Lead[];
}

/**
 * Another output that ends on inputs of the same link, outside the standard. Inputs count on from those of the link, each new
 * one in turn; a branch that ends on one that is there already says so by its number.
 */
export interface Rival {
  readonly output: Jack;
  readonly branches: readonly (Branch & { readonly shares?: number })[];
}

/** One output, and one or more inputs. More than one input is a passive split, outside the standard. */
export interface Link {
  readonly output: Jack;
  readonly branches: readonly Branch[];
  /** Outputs that share inputs with it; they rest unless a state says otherwise. */
  readonly rivals?: readonly Rival[];
}

/** A jack with the usual circuit of its style, no value changed. */
export function makeJack(
  direction: Direction,
  connector: Connector,
  style: Style,
  more: Partial<Jack> = {},
): Jack {
  const circuit = more.circuit ?? circuitsFor(direction, style)[0];
  if (circuit === undefined) throw new Error(`jack: style '${style}' has no circuit for '${direction}'`);
  const { part = '6N138', values = {}, extras } = more;
  return { direction, connector, style, circuit, part, values, ...(extras && { extras }) };
}

/** The jack of a device that nobody has opened: the usual circuit of its style, and a part that is not known. */
export function newJack(direction: Direction, connector: Connector, style: Style): Jack {
  const jack = makeJack(direction, connector, style);
  return hasLed(jack.circuit) ? { ...jack, part: 'unknown' } : jack;
}

/** A lead of 1 m of 26 AWG with plugs at both ends. */
export function makeLead(
  from: Connector,
  to: Connector,
  conductors: readonly Conductor[],
  more: Partial<Lead> = {},
): Lead {
  return {
    name: 'lead',
    from: { connector: from, form: 'plug' },
    to: { connector: to, form: 'plug' },
    conductors,
    lengthMetres: 1,
    gauge: 26,
    contactOhms: CONTACT_OHMS,
    faults: [],
    ...more,
  };
}

/** Conductors from pairs of contacts: `wires('4-ring', '5-tip')`. */
export function wires(...pairs: readonly string[]): readonly Conductor[] {
  return pairs.map((pair) => {
    const [from, to] = pair.split('-') as [Contact, Contact];
    return { from, to };
  });
}

/** The circuits that a jack of this direction and style may have, the usual one first. */
export function circuitsFor(direction: Direction, style: Style): readonly CircuitKind[] {
  const { family, forOutput } = styleEntry(style);
  if (direction === 'out') {
    if (!forOutput) return [];
    return DRIVERS.filter((kind) => circuitEntry(kind).family === family);
  }
  if (style === 'both-ways') return ['receiver-both-ways'];
  return RECEIVERS.filter((kind) => circuitEntry(kind).family === family && kind !== 'receiver-both-ways');
}

/** The styles that a jack of this direction and connector may have. */
export function stylesFor(direction: Direction, connector: Connector): readonly Style[] {
  return STYLES.filter(
    (style) => styleSuits(style, connector) && (direction === 'in' || styleEntry(style).forOutput),
  );
}

/** The value of a jack's circuit: the reader's own, else the default. @throws when its circuit has no such value. */
export function valueAt(jack: Pick<Jack, 'circuit' | 'part' | 'values'>, name: ValueName): number {
  const entry = valuesOf(jack.circuit, jack.part).find((one) => one.name === name);
  if (!entry) throw new Error(`jack: circuit '${jack.circuit}' has no value '${name}'`);
  return jack.values[name] ?? entry.value;
}

/** The part that a circuit without an optocoupler carries. */
const NO_LED_PART: Part = '6N138';

/** A message for the first thing about a jack that cannot be, or undefined. */
export function jackProblem(jack: Jack): string | undefined {
  const { direction, connector, style, circuit } = jack;
  if (!styleSuits(style, connector)) return `style '${style}' does not suit a ${connector} jack`;
  const allowed = circuitsFor(direction, style);
  if (!allowed.includes(circuit)) {
    const need = allowed.length === 0 ? 'none: this style has no output' : allowed.join(', ');
    return `circuit must be one of ${need}; got '${circuit}'`;
  }
  if (jack.part !== NO_LED_PART && !hasLed(circuit))
    return `part: circuit '${circuit}' has no optocoupler, got '${jack.part}'`;
  const odd = extraProblem(jack);
  if (odd !== undefined) return odd;
  const entries = valuesOf(circuit, jack.part);
  for (const [name, value] of Object.entries(jack.values)) {
    const entry = entries.find((one) => one.name === name);
    if (!entry)
      return `values: circuit '${circuit}' has no '${name}'; it has ${entries.map((one) => one.name).join(', ')}`;
    const problem = valueProblem(entry, value);
    if (problem !== undefined) return `values.${name}: ${problem}`;
  }
  if (circuit === 'receiver-logic' && !(valueAt(jack, 'lowVolts') < valueAt(jack, 'highVolts')))
    return `values.lowVolts: must be less than highVolts, ${valueAt(jack, 'highVolts')} V, got ${valueAt(jack, 'lowVolts')} V`;
  return undefined;
}

/**
 * A jack whose style, circuit, part and values go together: what no longer suits falls back to the usual, a part to one not known,
 * and values stay only as long as the circuit does. What `jackProblem` finds wrong with names is right afterwards.
 */
export function settleJack<Kind extends Jack>(jack: Kind): Kind {
  const styles = stylesFor(jack.direction, jack.connector);
  const style = styles.includes(jack.style) ? jack.style : (styles[0] as Style);
  const circuits = circuitsFor(jack.direction, style);
  const circuit = circuits.includes(jack.circuit) ? jack.circuit : (circuits[0] as CircuitKind);
  const part = !hasLed(circuit) ? NO_LED_PART : hasLed(jack.circuit) ? jack.part : 'unknown';
  const names = valuesOf(circuit, part).map(({ name }) => name);
  const values = Object.fromEntries(
    Object.entries(jack.values).filter(
      ([name]) => circuit === jack.circuit && names.includes(name as ValueName),
    ),
  );
  const { extras = [], ...others } = { ...jack, style, circuit, part, values };
  const kept = extras.filter((one) => extraSuits(one, others));
  return (kept.length > 0 ? { ...others, extras: kept } : others) as Kind;
}

/** The same lead, seen from its other end. */
export function turnLead(lead: Lead): Lead {
  const other = (side: Side): Side => (side === 'from' ? 'to' : 'from');
  return {
    ...lead,
    from: lead.to,
    to: lead.from,
    conductors: lead.conductors.map(({ from, to }) => ({ from: to, to: from })),
    faults: lead.faults.map((fault) => ({ ...fault, side: other(fault.side) })),
  };
}

/** Lay one more conductor; laying one that is there already changes nothing. @throws when a contact does not exist. */
export function layConductor(lead: Lead, from: Contact, to: Contact): Lead {
  for (const [{ connector }, contact] of [
    [lead.from, from],
    [lead.to, to],
  ] as const)
    if (!contactsOf(connector).includes(contact))
      throw new Error(`lead '${lead.name}': a ${connector} has no contact '${contact}'`);
  if (lead.conductors.some((one) => one.from === from && one.to === to)) return lead;
  return { ...lead, conductors: [...lead.conductors, { from, to }] };
}
