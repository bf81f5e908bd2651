/** The short proof of a lead: each conductor, then each to all others silent; what a printed table asks for. */
import { SIDES, contactWords } from '../wiring/index.ts';
import type { Lead } from '../wiring/index.ts';
import { madeLead } from './lead-faults.ts';
import { HOLDS, leadContacts, leadPairs, tableOf } from './lead-table.ts';
import type { Beep, ProofPlace } from './lead-table.ts';
import type { LeadContact } from '../readings/index.ts';

/** One row to tick. `places` are the readings it stands for; `expects` is what each must say. */
export interface ProofRow {
  readonly words: string;
  readonly expects: Beep;
  readonly places: readonly ProofPlace[];
}

const end = ({ side, contact }: LeadContact): string =>
  `${contactWords(contact)} at the ${side === 'from' ? 'output' : 'input'} end`;

/** The contacts of a lead in the order of the rows: 'tip, ring, sleeve at the output end, then pin 1, … at the input end'. */
export function sayContacts(lead: Lead): string {
  return SIDES.map((side) => {
    const contacts = leadContacts(lead).filter((one) => one.side === side);
    const names = contacts.map(({ contact }) => contactWords(contact)).join(', ');
    return `${names} at the ${side === 'from' ? 'output' : 'input'} end`;
  }).join(', then ');
}

/** The rows of the short proof: a beep for each conductor, still and moved; then each contact against all it must not touch. */
export function proofRows(lead: Lead): readonly ProofRow[] {
  const says = tableOf(madeLead(lead, []));
  const through = lead.conductors.map(({ from, to }): ProofRow => {
    const a: LeadContact = { side: 'from', contact: from };
    const b: LeadContact = { side: 'to', contact: to };
    return {
      words: `${end(a)} to ${end(b)}, still and with each plug moved`,
      expects: 'beep',
      places: HOLDS.map((hold) => ({ a, b, hold })),
    };
  });
  const all = leadContacts(lead);
  const apart = all.flatMap((a, at): readonly ProofRow[] => {
    const places = all
      .slice(at + 1)
      .map((b): ProofPlace => ({ a, b, hold: 'still' }))
      .filter((place) => says(place) === 'silent');
    if (places.length === 0) return [];
    const joined = all.slice(at + 1).filter((b) => says({ a, b, hold: 'still' }) !== 'silent');
    const but = joined.length > 0 ? ` but ${joined.map(end).join(' and ')}` : '';
    return [{ words: `${end(a)} to all contacts after it${but}`, expects: 'silent', places }];
  });
  return [...through, ...apart];
}

/** The full proof, pair by pair: every two contacts, still; those that are joined also with each plug moved. */
export function fullRows(lead: Lead): readonly ProofRow[] {
  const says = tableOf(madeLead(lead, []));
  return leadPairs(lead).map(([a, b]): ProofRow => {
    const expects = says({ a, b, hold: 'still' });
    const holds = expects === 'silent' ? (['still'] as const) : HOLDS;
    return {
      words: `${end(a)} to ${end(b)}${expects === 'silent' ? '' : ', still and with each plug moved'}`,
      expects,
      places: holds.map((hold) => ({ a, b, hold })),
    };
  });
}
