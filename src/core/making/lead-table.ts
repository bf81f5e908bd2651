/** The continuity table of a lead: every two contacts, lying still and with one plug moved. */
import { CONTACTS, SIDES, contactWords, contactsOf } from '../wiring/index.ts';
import type { Contact, Lead, Side } from '../wiring/index.ts';
import type { LeadContact } from '../readings/index.ts';
import type { MadeLead } from './lead-faults.ts';

/** How the lead is held: still, or with the plug of one end moved to and fro. */
export const HOLDS = ['still', 'from', 'to'] as const;

/** How the lead is held for one reading. */
export type Hold = (typeof HOLDS)[number];

/** What continuity says; 'flickers' only while a plug is moved. */
export const BEEPS = ['beep', 'silent', 'flickers'] as const;

/** What continuity says of one place. */
export type Beep = (typeof BEEPS)[number];

/** One place of the table. */
export interface ProofPlace {
  readonly a: LeadContact;
  readonly b: LeadContact;
  readonly hold: Hold;
}

/** One reading of the table. */
export interface ProofReading extends ProofPlace {
  readonly says: Beep;
}

/** Every contact of a lead, its first end first. */
export function leadContacts(lead: Lead): readonly LeadContact[] {
  return SIDES.flatMap((side) => contactsOf(lead[side].connector).map((contact) => ({ side, contact })));
}

/** Every two contacts of a lead. */
export function leadPairs(lead: Lead): readonly (readonly [LeadContact, LeadContact])[] {
  const all = leadContacts(lead);
  return all.flatMap((a, at) => all.slice(at + 1).map((b) => [a, b] as const));
}

/** Every place of the full table. */
export function fullTable(lead: Lead): readonly ProofPlace[] {
  return HOLDS.flatMap((hold) => leadPairs(lead).map(([a, b]) => ({ a, b, hold })));
}

/** Each contact of each end as a number: the search for faults asks for millions of them. */
const PLACE: Readonly<Record<Contact, number>> = Object.fromEntries(
  CONTACTS.map((contact, at) => [contact, at]),
) as Record<Contact, number>;
const numberOf = (side: Side, contact: Contact): number =>
  side === 'from' ? PLACE[contact] : PLACE[contact] + CONTACTS.length;

/** The groups of contacts that a made lead joins while one plug parts its cold joints (or none does). */
function groupsOf(made: MadeLead, moved: Side | undefined): (at: LeadContact) => number {
  const parent = new Int8Array(2 * CONTACTS.length).fill(-1);
  const root = (node: number): number => {
    let here = node;
    for (let up = parent[here] as number; up >= 0; up = parent[here] as number) here = up;
    return here;
  };
  const join = (a: number, b: number): void => {
    const [one, other] = [root(a), root(b)];
    if (one !== other) parent[one] = other;
  };
  for (const { from, to, whole, parts } of made.conductors)
    if (whole && (moved === undefined || !parts.includes(moved)))
      join(numberOf('from', from), numberOf('to', to));
  for (const { side, between } of made.shorts) join(numberOf(side, between[0]), numberOf(side, between[1]));
  return ({ side, contact }) => root(numberOf(side, contact));
}

/** What continuity says of a made lead; the answer takes a place of the table. */
export function tableOf(made: MadeLead): (place: ProofPlace) => Beep {
  const still = groupsOf(made, undefined);
  // Only asked for by readings with a plug moved: a search over many sets of faults mostly ends before.
  const moved: { [side in Side]?: (at: LeadContact) => number } = {};
  return ({ a, b, hold }) => {
    if (still(a) !== still(b)) return 'silent';
    if (hold === 'still') return 'beep';
    const parted = (moved[hold] ??= groupsOf(made, hold));
    return parted(a) === parted(b) ? 'beep' : 'flickers';
  };
}

/** A place of the table in words: 'pin 4 at the output end to ring at the input end, the plug at the input end moved'. */
export function sayPlace({ a, b, hold }: ProofPlace): string {
  const end = (side: Side): string => (side === 'from' ? 'output end' : 'input end');
  const moved = hold === 'still' ? '' : `, the plug at the ${end(hold)} moved`;
  return `${contactWords(a.contact)} at the ${end(a.side)} to ${contactWords(b.contact)} at the ${end(b.side)}${moved}`;
}
