/** What a run of leads adds to the circuit, from the output jack to one input jack. */
import type { Collector, Owner } from './build.ts';
import { inputNode, jointNode, leadNode, outputNode } from './build.ts';
import type { Connector, Contact, Form } from './connectors.ts';
import { mate } from './connectors.ts';
import { addLeadCapacitance } from './lead-capacitance.ts';
import type { Branch, Jack, Lead, Side } from './link.ts';
import { BRIDGE_OHMS, CONTACT_CORNERS, WIRE_SPREAD, wireOhmsPerMetre } from './wire.ts';

/** Parts whose spread goes together: every touch of metal on metal, and every length of wire. */
export interface LeadSpreads {
  readonly touches: { part: string; ohms: number }[];
  readonly conductors: { part: string; ohms: number }[];
}

/** Two ends that were to meet and do not. `at` counts the places along the branch: 0 is the output jack. */
export interface Misfit {
  readonly branch: number;
  readonly at: number;
  readonly reason: string;
}

interface Meeting {
  readonly connector: Connector;
  readonly form: Form;
  readonly node: (contact: Contact) => string;
  readonly contactOhms: number;
  /** Whether anything stands behind a contact: nothing does where a plug has no wire on it. */
  readonly used: (contact: Contact) => boolean;
}

/**
 * Add every lead of a branch and every place where two ends meet. Returns the places that do not fit.
 * @param inTime whether the leads have capacitance.
 */
export function addLeads(
  into: Collector,
  spreads: LeadSpreads,
  output: Jack,
  branch: Branch,
  number: number,
  inTime = false,
): readonly Misfit[] {
  const misfits: Misfit[] = [];
  let before: Meeting = {
    connector: output.connector,
    form: 'jack',
    node: outputNode,
    contactOhms: 0,
    used: always,
  };
  branch.leads.forEach((lead, at) => {
    const owner: Owner = { place: 'lead', branch: number, lead: at };
    meet(before, meetingOf(lead, number, at, 'from'), at, owner);
    addLead(into, spreads, lead, number, at, owner, inTime);
    before = meetingOf(lead, number, at, 'to');
  });
  const last = Math.max(0, branch.leads.length - 1);
  const jack: Meeting = {
    connector: branch.input.connector,
    form: 'jack',
    node: (contact) => inputNode(number, contact),
    contactOhms: 0,
    used: always,
  };
  meet(before, jack, branch.leads.length, { place: 'lead', branch: number, lead: last });
  return misfits;

  function meet(first: Meeting, second: Meeting, at: number, owner: Owner): void {
    if (first.form === second.form) {
      misfits.push({
        branch: number,
        at,
        reason: `two ${first.form}s meet here; a ${first.form} needs a ${first.form === 'plug' ? 'jack' : 'plug'}`,
      });
      return;
    }
    const [plug, jackEnd] = first.form === 'plug' ? [first, second] : [second, first];
    const mating = mate(plug.connector, jackEnd.connector);
    if (!mating.fits) {
      misfits.push({ branch: number, at, reason: mating.reason });
      return;
    }
    const touchesOf = (contact: Contact): number =>
      mating.touches.filter((one) => one.plug === contact).length;
    for (const touch of mating.touches) {
      // A touch that leads nowhere carries nothing; one metal part on two contacts bridges them whatever is soldered to it.
      if ((!plug.used(touch.plug) || !jackEnd.used(touch.jack)) && touchesOf(touch.plug) === 1) continue;
      const name = `touch${number}.${at} ${touch.plug} ${touch.jack}`;
      const ohms = Math.max(CONTACT_CORNERS[0], first.contactOhms, second.contactOhms);
      into.add(owner, 'contact', {
        kind: 'resistor',
        name,
        a: plug.node(touch.plug),
        b: jackEnd.node(touch.jack),
        ohms,
      });
      spreads.touches.push({ part: name, ohms });
    }
  }
}

function meetingOf(lead: Lead, branch: number, at: number, side: Side): Meeting {
  const { connector, form } = lead[side];
  const used = new Set<Contact>([
    ...lead.conductors.map((one) => one[side]),
    ...lead.faults.flatMap((fault) => (fault.kind === 'short' && fault.side === side ? fault.between : [])),
  ]);
  return {
    connector,
    form,
    node: (contact) => leadNode(branch, at, side, contact),
    contactOhms: lead.contactOhms,
    used: (contact) => used.has(contact),
  };
}

const always = (): boolean => true;

function addLead(
  into: Collector,
  spreads: LeadSpreads,
  lead: Lead,
  branch: number,
  at: number,
  owner: Owner,
  inTime: boolean,
): void {
  const ohms = wireOhmsPerMetre(lead.gauge) * lead.lengthMetres;
  const solder = (side: Side, contact: Contact): string =>
    lead.faults.some((fault) => fault.kind !== 'short' && fault.side === side && fault.contact === contact)
      ? jointNode(branch, at, side, contact)
      : leadNode(branch, at, side, contact);
  for (const { from, to } of lead.conductors) {
    const name = `wire${branch}.${at} ${from} ${to}`;
    into.add(owner, 'conductor', {
      kind: 'resistor',
      name,
      a: solder('from', from),
      b: solder('to', to),
      ohms,
    });
    spreads.conductors.push({ part: name, ohms });
  }
  if (inTime) addLeadCapacitance(into, lead, `between${branch}.${at}`, owner, solder);
  const joints = new Map<string, number>();
  lead.faults.forEach((fault, index) => {
    if (fault.kind === 'short') {
      const [a, b] = fault.between;
      into.add(owner, 'short', {
        kind: 'resistor',
        name: `short${branch}.${at} ${index}`,
        a: leadNode(branch, at, fault.side, a),
        b: leadNode(branch, at, fault.side, b),
        ohms: BRIDGE_OHMS,
      });
      return;
    }
    const key = `${fault.side} ${fault.contact}`;
    joints.set(key, (joints.get(key) ?? 0) + (fault.kind === 'open' ? Infinity : fault.ohms));
  });
  for (const [key, jointOhms] of joints) {
    if (jointOhms === Infinity) continue;
    const [side, contact] = key.split(' ') as [Side, Contact];
    into.add(owner, 'joint', {
      kind: 'resistor',
      name: `joint${branch}.${at} ${key}`,
      a: leadNode(branch, at, side, contact),
      b: jointNode(branch, at, side, contact),
      ohms: jointOhms,
    });
  }
}

/** Turn what was collected along the leads into two spreads: touches from clean to worn, wire by a few percent. */
export function addLeadSpreads(into: Collector, spreads: LeadSpreads): void {
  const { touches, conductors } = spreads;
  if (touches.length > 0) {
    into.spreads.push({
      name: 'contacts',
      parts: touches.map(({ part }) => part),
      nominal: touches.map(({ ohms }) => ohms),
      low: touches.map(() => CONTACT_CORNERS[0]),
      high: touches.map(({ ohms }) => Math.max(ohms, CONTACT_CORNERS[1])),
    });
  }
  if (conductors.length > 0) {
    into.spreads.push({
      name: 'wire',
      parts: conductors.map(({ part }) => part),
      nominal: conductors.map(({ ohms }) => ohms),
      low: conductors.map(({ ohms }) => ohms * (1 - WIRE_SPREAD)),
      high: conductors.map(({ ohms }) => ohms * (1 + WIRE_SPREAD)),
    });
  }
}
