/** What can be put under the meter: a jack alone through a tested lead, a lead alone, or a link with its leads in place. */
import { nodeOf } from '../verdict/index.ts';
import type { Spot } from '../verdict/index.ts';
import {
  CONTACT_OHMS,
  addDriver,
  addLeads,
  addOtherJack,
  addReceiver,
  collector,
  contactsOf,
  inputNode,
  leadNode,
  linkCircuit,
  makeJack,
  outputNode,
  stylesFor,
  wireOhmsPerMetre,
} from '../wiring/index.ts';
import type {
  Connector,
  Contact,
  Grounding,
  Jack,
  Lead,
  Link,
  OtherJackKind,
  OtherJackValues,
  Side,
} from '../wiring/index.ts';
import type { MeterFunction, MeterProfile } from './instruments.ts';
import { setUp, takeReading } from './measure.ts';
import type { Placement, Subject } from './measure.ts';
import type { Power } from './power.ts';
import type { Reading } from './reading.ts';

/** A jack as a meter meets it: a control jack, or one of the others that take the same plug. */
export type JackUnderTest =
  | { readonly kind: 'control'; readonly jack: Jack }
  | {
      readonly kind: 'other';
      readonly other: OtherJackKind;
      readonly connector: Connector;
      readonly values?: Partial<OtherJackValues>;
    };

/** Two contacts, red probe first, and how the meter and the power stand. */
export interface JackReading {
  readonly meter: MeterFunction;
  readonly power: Power;
  readonly red: Contact;
  readonly black: Contact;
}

/** Ohms from a contact of the jack to its probe: one touch, and a conductor of the tested lead, 1 m of 26 AWG. */
export const PROBE_LEAD_OHMS = CONTACT_OHMS + wireOhmsPerMetre(26);

/** A jack alone as a subject, with the names of its contacts' nodes. */
export interface JackSubject extends Subject {
  readonly node: (contact: Contact) => string;
}

/** The connector of a jack under test. */
export function connectorOf(jack: JackUnderTest): Connector {
  return jack.kind === 'control' ? jack.jack.connector : jack.connector;
}

/** The contacts of a jack that a tested lead brings out: all but the shell. */
export function probedContacts(connector: Connector): readonly Contact[] {
  return contactsOf(connector).filter((contact) => contact !== 'shell');
}

/** The circuit of a jack alone. */
export function jackSubject(under: JackUnderTest): JackSubject {
  const into = collector();
  let switching: Subject['switching'] = { idle: [], active: [] };
  if (under.kind === 'other') addOtherJack(into, under.other, under.values);
  else if (under.jack.direction === 'out') switching = addDriver(into, under.jack);
  else addReceiver(into, under.jack, 0);
  const input = under.kind === 'control' && under.jack.direction === 'in';
  return { parts: into.parts, switching, node: input ? (contact) => inputNode(0, contact) : outputNode };
}

/** What an instrument shows between two contacts of a jack alone, through a tested lead's free plug. */
export function readJack(under: JackUnderTest, at: JackReading, profile: MeterProfile): Reading {
  const subject = jackSubject(under);
  const placement = { ...at, red: subject.node(at.red), black: subject.node(at.black) };
  return takeReading(setUp(subject, placement, profile, PROBE_LEAD_OHMS));
}

/** A contact at one end of a lead. */
export interface LeadContact {
  readonly side: Side;
  readonly contact: Contact;
}

/** The parts of a lead on the bench, plugged into nothing. */
function leadSubject(lead: Lead): Subject {
  const into = collector();
  // Jacks of the lead's own connectors: their touches hang in the air and carry nothing.
  const hanging = (connector: Connector): Jack =>
    makeJack('in', connector, stylesFor('in', connector)[0] ?? 'din');
  const { from, to } = lead;
  addLeads(into, hanging(from.connector), { input: hanging(to.connector), leads: [lead] }, 0);
  return { parts: into.parts, switching: { idle: [], active: [] } };
}

/** What an instrument shows between two contacts of a lead alone. */
export function readLead(
  lead: Lead,
  meter: MeterFunction,
  red: LeadContact,
  black: LeadContact,
  profile: MeterProfile,
): Reading {
  const node = ({ side, contact }: LeadContact): string => leadNode(0, 0, side, contact);
  const placement: Placement = { meter, power: 'off', red: node(red), black: node(black) };
  return takeReading(setUp(leadSubject(lead), placement, profile));
}

/** What an instrument shows between two places of a cabled link; all its devices are off, at rest or streaming clock. */
export function readLink(
  link: Link,
  grounding: Grounding,
  meter: MeterFunction,
  power: Power,
  red: Spot,
  black: Spot,
  profile: MeterProfile,
): Reading {
  const { parts, switching } = linkCircuit(link, grounding);
  // Capacitors carry nothing at rest.
  const still = parts.filter(({ element }) => element.kind !== 'capacitor');
  const placement = { meter, power, red: nodeOf(red), black: nodeOf(black) };
  return takeReading(setUp({ parts: still, switching }, placement, profile));
}
