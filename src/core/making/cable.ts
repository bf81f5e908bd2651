/** The cable that a lead to be made takes: which one, and how much. */
import type { Lead, Link } from '../wiring/index.ts';
import { cutLength } from './lengths.ts';
import { NO_CHOICES } from './sheet-choices.ts';
import { rowsOf } from './sheet-rows.ts';
import type { SheetRow } from './sheet-rows.ts';

/** The cable of a lead in words, as its build sheet and a shopping list name it, and the length to cut, metres. */
interface LeadCable {
  readonly words: string;
  readonly cutMetres: number;
}

/** What a lead takes of cable; `link` tells which of its conductors is the shield. */
export function cableOf(lead: Lead, link: Link | undefined): LeadCable {
  return { words: cableWords(rowsOf(lead, link, NO_CHOICES)), cutMetres: cutLength(lead.lengthMetres) };
}

/** The cable for the rows of a sheet: how many cores it needs, and whether a shield beside them. */
export function cableWords(rows: readonly SheetRow[]): string {
  const cores = rows.filter(({ isShield }) => !isShield).length;
  const shield = cores < rows.length ? ' and a shield' : '';
  return `cable of ${cores} ${cores === 1 ? 'core' : 'cores'}${shield}`;
}
