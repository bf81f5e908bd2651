/** What can be wrong with a lead that was to be made to a plan, and what the plan then turns into. */
import { SIDES, conductorWords, contactWords, contactsOf, familyOf } from '../wiring/index.ts';
import type { Contact, Lead, Side } from '../wiring/index.ts';

/**
 * One fault. `conductor` numbers count along the plan's conductors. An open conductor has no side: no continuity reading
 * can tell at which end it is broken. A cold joint joins while it lies still and parts while its plug is moved.
 */
export type LeadFault =
  | { readonly kind: 'open'; readonly conductor: number }
  | { readonly kind: 'cold-joint'; readonly side: Side; readonly conductor: number }
  | { readonly kind: 'short'; readonly side: Side; readonly between: readonly [Contact, Contact] }
  | { readonly kind: 'swapped'; readonly side: Side; readonly conductors: readonly [number, number] }
  | {
      readonly kind: 'wrong-contact';
      readonly side: Side;
      readonly conductor: number;
      readonly contact: Contact;
    }
  | { readonly kind: 'mirrored'; readonly side: Side };

/** The contact on which a wire lands when a DIN plug is wired as seen from the wrong side: left and right change places. */
const MIRROR: Readonly<Partial<Record<Contact, Contact>>> = {
  '1': '3',
  '3': '1',
  '4': '5',
  '5': '4',
  '6': '7',
  '7': '6',
};

/** A pin of a DIN plug seen from the wrong side; any other contact stays. */
export function mirrorOf(contact: Contact): Contact {
  return MIRROR[contact] ?? contact;
}

/** Every single fault that a lead of this plan may have. */
export function faultsOf(lead: Lead): readonly LeadFault[] {
  const numbers = [...lead.conductors.keys()];
  return [
    ...numbers.map((conductor): LeadFault => ({ kind: 'open', conductor })),
    ...SIDES.flatMap((side): readonly LeadFault[] => {
      const contacts = contactsOf(lead[side].connector);
      const at = (number: number): Contact => (lead.conductors[number] as Lead['conductors'][number])[side];
      return [
        ...numbers.map((conductor): LeadFault => ({ kind: 'cold-joint', side, conductor })),
        ...contacts.flatMap((first, place) =>
          contacts
            .slice(place + 1)
            .map((second): LeadFault => ({ kind: 'short', side, between: [first, second] })),
        ),
        ...numbers.flatMap((first) =>
          numbers
            .filter((second) => second > first && at(second) !== at(first))
            .map((second): LeadFault => ({ kind: 'swapped', side, conductors: [first, second] })),
        ),
        ...numbers.flatMap((conductor) =>
          contacts
            .filter((contact) => contact !== at(conductor))
            .map((contact): LeadFault => ({ kind: 'wrong-contact', side, conductor, contact })),
        ),
        ...(familyOf(lead[side].connector) === 'din' ? [{ kind: 'mirrored', side } as const] : []),
      ];
    }),
  ];
}

/** The ends of conductors whose place a fault says: 'from 0' is the first end of the first conductor. */
export function placedEnds(fault: LeadFault): readonly string[] {
  if (fault.kind === 'swapped') return fault.conductors.map((number) => `${fault.side} ${number}`);
  return fault.kind === 'wrong-contact' ? [`${fault.side} ${fault.conductor}`] : [];
}

/** A conductor as it was made: where its ends are, whether it is whole, and at which plugs it parts when moved. */
interface MadeConductor {
  readonly from: Contact;
  readonly to: Contact;
  readonly whole: boolean;
  readonly parts: readonly Side[];
}

/** A lead as it was made. */
export interface MadeLead {
  readonly conductors: readonly MadeConductor[];
  readonly shorts: readonly { readonly side: Side; readonly between: readonly [Contact, Contact] }[];
}

/** The lead that a set of faults makes of a plan; their order does not matter. */
export function madeLead(lead: Lead, faults: readonly LeadFault[]): MadeLead {
  const ends = lead.conductors.map(({ from, to }) => ({ from, to }));
  const whole = lead.conductors.map(() => true);
  const parts: Side[][] = lead.conductors.map(() => []);
  const shorts: { side: Side; between: readonly [Contact, Contact] }[] = [];
  for (const fault of faults) {
    if (fault.kind === 'swapped') {
      const [a, b] = fault.conductors;
      const first = ends[a] as { from: Contact; to: Contact };
      const second = ends[b] as { from: Contact; to: Contact };
      [first[fault.side], second[fault.side]] = [second[fault.side], first[fault.side]];
    }
    if (fault.kind === 'wrong-contact')
      (ends[fault.conductor] as { from: Contact; to: Contact })[fault.side] = fault.contact;
    if (fault.kind === 'open') whole[fault.conductor] = false;
    if (fault.kind === 'cold-joint') (parts[fault.conductor] as Side[]).push(fault.side);
    if (fault.kind === 'short') shorts.push({ side: fault.side, between: fault.between });
  }
  for (const fault of faults) {
    if (fault.kind !== 'mirrored') continue;
    for (const end of ends) end[fault.side] = mirrorOf(end[fault.side]);
  }
  return {
    conductors: ends.map((end, at) => ({ ...end, whole: whole[at] as boolean, parts: parts[at] as Side[] })),
    shorts,
  };
}

/** A fault in words: 'tip and ring are swapped at the input end'. */
export function sayLeadFault(lead: Lead, fault: LeadFault): string {
  const conductor = (number: number): string =>
    conductorWords(lead.conductors[number] as Lead['conductors'][number]);
  const end = (side: Side): string => (side === 'from' ? 'output end' : 'input end');
  switch (fault.kind) {
    case 'open':
      return `the conductor ${conductor(fault.conductor)} is open somewhere`;
    case 'cold-joint':
      return `the joint of the conductor ${conductor(fault.conductor)} is cold at the ${end(fault.side)}`;
    case 'short':
      return `${contactWords(fault.between[0])} and ${contactWords(fault.between[1])} touch at the ${end(fault.side)}`;
    case 'swapped': {
      const [a, b] = fault.conductors.map((number) =>
        contactWords((lead.conductors[number] as Lead['conductors'][number])[fault.side]),
      );
      return `${a} and ${b} are swapped at the ${end(fault.side)}`;
    }
    case 'wrong-contact':
      return `the conductor ${conductor(fault.conductor)} is on ${contactWords(fault.contact)} at the ${end(fault.side)}`;
    case 'mirrored':
      return `the plug at the ${end(fault.side)} is wired mirrored, as seen from the wrong side`;
  }
}
