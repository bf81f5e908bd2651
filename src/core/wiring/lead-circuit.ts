/** What a run of leads adds to the circuit, from the output jack to one input jack. */
import type { Collector } from './build.ts';
import { inputNode, jointNode, leadNode, outputNode } from './build.ts';
import type { Connector, Contact, Form } from './connectors.ts';
import { mate } from './connectors.ts';
import { addLeadCapacitance } from './lead-capacitance.ts';
import type { Branch, Jack, Lead, Side } from './link.ts';
import { BRIDGE_OHMS, CONTACT_CORNERS, WIRE_SPREAD, wireOhmsPerMetre } from './wire.ts';

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
  output: Jack,
  branch: Branch,
  number: number,
  inTime = false,
): readonly Misfit[] {
  const misfits: Misfit[] = [];
  let before = jackMeeting(output, outputNode);
  branch.leads.forEach((lead, at) => {
    meet(before, meetingOf(lead, number, at, 'from'), at, at);
    addLead(into, lead, number, at, inTime);
    before = meetingOf(lead, number, at, 'to');
  });
  const last = Math.max(0, branch.leads.length - 1);
  const jack = jackMeeting(branch.input, (contact) => inputNode(number, contact));
  meet(before, jack, branch.leads.length, last);
  return misfits;

  function meet(first: Meeting, second: Meeting, at: number, lead: number): void {
    const bench = into.at({ place: 'lead', branch: number, lead });
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
      bench.resistor('contact', name, plug.node(touch.plug), jackEnd.node(touch.jack), ohms);
      into.touches.push({ part: name, ohms });
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

function jackMeeting({ connector }: Jack, node: Meeting['node']): Meeting {
  return { connector, form: 'jack', node, contactOhms: 0, used: () => true };
}

function addLead(into: Collector, lead: Lead, branch: number, at: number, inTime: boolean): void {
  const bench = into.at({ place: 'lead', branch, lead: at });
  const ohms = wireOhmsPerMetre(lead.gauge) * lead.lengthMetres;
  const node = (side: Side, contact: Contact): string => leadNode(branch, at, side, contact);
  const joint = (side: Side, contact: Contact): string => jointNode(branch, at, side, contact);
  const joints = jointsOf(lead);
  const solder = (side: Side, contact: Contact): string =>
    joints.some((one) => one.side === side && one.contact === contact)
      ? joint(side, contact)
      : node(side, contact);
  for (const { from, to } of lead.conductors) {
    const part = `wire${branch}.${at} ${from} ${to}`;
    bench.resistor('conductor', part, solder('from', from), solder('to', to), ohms);
    into.wires.push({ part, ohms });
  }
  if (inTime) addLeadCapacitance(bench, lead, `between${branch}.${at}`, solder);
  lead.faults.forEach((fault, index) => {
    if (fault.kind !== 'short') return;
    const [a, b] = fault.between;
    const name = `short${branch}.${at} ${index}`;
    bench.resistor('short', name, node(fault.side, a), node(fault.side, b), BRIDGE_OHMS);
  });
  for (const { side, contact, ohms: jointOhms } of joints) {
    if (jointOhms === Infinity) continue;
    const name = `joint${branch}.${at} ${side} ${contact}`;
    bench.resistor('joint', name, node(side, contact), joint(side, contact), jointOhms);
  }
}

/** Every joint with a fault, once, all its faults in series; an open one has no end of ohms. */
function jointsOf({ faults }: Lead): readonly { side: Side; contact: Contact; ohms: number }[] {
  const joints: { side: Side; contact: Contact; ohms: number }[] = [];
  for (const fault of faults) {
    if (fault.kind === 'short') continue;
    const { side, contact } = fault;
    const ohms = fault.kind === 'open' ? Infinity : fault.ohms;
    const known = joints.find((one) => one.side === side && one.contact === contact);
    if (known) known.ohms += ohms;
    else joints.push({ side, contact, ohms });
  }
  return joints;
}

/** Turn what was collected along the leads into two spreads: touches from clean to worn, wire by a few percent. */
export function addLeadSpreads({ spreads, touches, wires }: Collector): void {
  const spread = (
    name: string,
    all: Collector['touches'],
    low: (ohms: number) => number,
    high: (ohms: number) => number,
  ): void => {
    const nominal = all.map(({ ohms }) => ohms);
    const parts = all.map(({ part }) => part);
    if (all.length > 0)
      spreads.push({ name, parts, nominal, low: nominal.map(low), high: nominal.map(high) });
  };
  const [clean, worn] = CONTACT_CORNERS;
  spread(
    'contacts',
    touches,
    () => clean,
    (ohms) => Math.max(ohms, worn),
  );
  spread(
    'wire',
    wires,
    (ohms) => ohms * (1 - WIRE_SPREAD),
    (ohms) => ohms * (1 + WIRE_SPREAD),
  );
}
