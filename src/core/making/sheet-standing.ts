/** What a lead does between the jacks it is made for, to be read on its sheet before it is made. */
import { capital, checkLink, linkWords, noteLabel } from '../verdict/index.ts';
import type { NoteKind } from '../verdict/index.ts';
import type { Link } from '../wiring/index.ts';

/** Notes that a maker of the lead should read: of the lead itself, and of jacks that are not the standard's. */
const TOLD: readonly NoteKind[] = [
  'foreign-supply',
  'pin-2-on-shell',
  'pin-2-tied',
  'other-resistor',
  'other-supply',
];

/** The word of the link, a part over its rating first, and what to read before anything is cut, as sentences. */
export interface SheetStanding {
  readonly words: string;
  readonly problems: readonly string[];
}

/** Solve the link that a lead is made for, its leads without faults: those are of one lead that was made, and this sheet makes another. */
export function sheetStanding(link: Link): SheetStanding {
  const branches = link.branches.map((branch) => ({
    ...branch,
    leads: branch.leads.map((lead) => ({ ...lead, faults: [] })),
  }));
  const verdict = checkLink({ ...link, branches }, 'notes');
  const { label, grade } = linkWords(verdict);
  const words = verdict.danger === undefined ? label : `${label}: ${verdict.danger}`;
  return {
    words,
    problems: [
      ...(grade === 'good' ? [] : [`Between its jacks this lead was solved. ${words}.`]),
      ...verdict.notes
        .filter(({ kind }) => TOLD.includes(kind))
        .map(({ kind, detail }) => `${capital(noteLabel(kind))}: ${detail}.`),
    ],
  };
}
