/** The conductor table of a build sheet: which line each conductor carries, from where to where, and in which colour. */
import { conductorLines } from '../verdict/index.ts';
import { contactWords, linkCircuit } from '../wiring/index.ts';
import type { Conductor, Lead, Line, Link } from '../wiring/index.ts';
import { COLOUR_CODES, USUAL_COLOURS, colourWords } from './colours.ts';
import type { SheetChoices } from './sheet-choices.ts';

/** A row of the conductor table. */
export interface SheetRow {
  readonly line: Line | 'spare';
  readonly from: string;
  readonly to: string;
  readonly isShield: boolean;
  readonly code: string;
  readonly colour: string;
}

/** The line that each conductor of a lead carries in a link; 'spare' for all where the lead is in no link. */
export function linesOfLead(lead: Lead, link: Link | undefined): readonly (Line | 'spare')[] {
  const none = lead.conductors.map(() => 'spare' as const);
  if (!link) return none;
  const lines = conductorLines(link, linkCircuit(link, 'separate').parts);
  for (const [branch, { leads }] of link.branches.entries()) {
    const at = leads.findIndex(({ name }) => name === lead.name);
    if (at >= 0) return lines[branch]?.[at] ?? none;
  }
  return none;
}

/** The rows of a lead's sheet, one for each conductor, with its line in the link and its colour. */
export function rowsOf(
  lead: Lead,
  link: Link | undefined,
  { colours, stock }: SheetChoices,
): readonly SheetRow[] {
  const lines = linesOfLead(lead, link);
  let next = 0;
  return lead.conductors.map((conductor: Conductor, at) => {
    const line = lines[at] ?? 'spare';
    const isShield = line === 'shield' && (stock === undefined || stock.shielded);
    const given = colours[at];
    const usual = isShield ? undefined : USUAL_COLOURS[next++ % USUAL_COLOURS.length];
    const code = given ?? usual ?? '';
    const known = COLOUR_CODES.find((one) => one === code);
    const colour = isShield && given === undefined ? 'the shield itself' : known ? colourWords(known) : code;
    return {
      line,
      from: contactWords(conductor.from),
      to: contactWords(conductor.to),
      isShield,
      code,
      colour,
    };
  });
}
