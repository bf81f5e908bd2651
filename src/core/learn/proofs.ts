/** What a lesson on proving a lead says of its readings, asked of the core when the site is built. */
import { contactsOf } from '../wiring/index.ts';
import { proveLead } from '../making/index.ts';
import type { Beep, Proof, ProofPlace } from '../making/index.ts';
import type { Contact, Lead, Side } from '../wiring/index.ts';
import type { LeadContact } from '../readings/index.ts';

/** A contact with its end: 'out.4' at the output end, 'in.ring' at the input end. */
type AuthoredContact = `${'out' | 'in'}.${Contact}`;

/** A reading as an author writes it, the lead lying still: two contacts, and what the meter did, if it was read. */
export interface AuthoredReading {
  readonly from: AuthoredContact;
  readonly to: AuthoredContact;
  readonly says?: Extract<Beep, 'beep' | 'silent'>;
}

/** The readings of a lesson by name. */
export type LessonReadings = Readonly<Record<string, readonly AuthoredReading[]>>;

/** The place of the table that a reading is taken at. @throws when a plug has no such contact. */
export function placeFrom(lead: Lead, { from, to }: AuthoredReading): ProofPlace {
  return { a: contactFrom(lead, from), b: contactFrom(lead, to), hold: 'still' };
}

function contactFrom(lead: Lead, written: AuthoredContact): LeadContact {
  const [end, contact] = written.split('.') as ['out' | 'in', Contact];
  const side: Side = end === 'out' ? 'from' : 'to';
  const { connector } = lead[side];
  if (!contactsOf(connector).includes(contact))
    throw new Error(`lesson proof: a ${connector} has no contact '${contact}', got '${written}'`);
  return { side, contact };
}

/** What the core makes of readings. */
export function proofOf(lead: Lead, readings: readonly AuthoredReading[]): Proof {
  return proveLead(
    lead,
    readings.flatMap((one) => (one.says ? [{ ...placeFrom(lead, one), says: one.says }] : [])),
  );
}
