/** Flags of a build sheet: what does not go together, before anything is cut. */
import { ADAPTER_METRES, SIDES, STANDARD_METRES } from '../wiring/index.ts';
import type { Lead } from '../wiring/index.ts';
import { sayMillimetres } from './lengths.ts';
import type { SheetChoices } from './sheet-choices.ts';
import type { SheetRow } from './sheet-rows.ts';

/** What is wrong with a lead and the cable chosen for it, as sentences to read before cutting. */
export function problemsOf(
  lead: Lead,
  rows: readonly SheetRow[],
  { stock, plugTakesMetres, colours }: SheetChoices,
): readonly string[] {
  const found: string[] = [];
  const cores = rows.filter(({ isShield }) => !isShield).length;
  if (stock && stock.cores < cores)
    found.push(
      `This cable has too few cores: ${cores} needed beside the shield, ${stock.cores} in the cable.`,
    );
  if (stock && !stock.shielded)
    found.push(
      'This cable has no shield: the standard asks for shielded twisted pair. Short leads usually work without (common practice).',
    );
  for (const side of SIDES) {
    const takes = plugTakesMetres[side];
    if (stock && takes !== undefined && stock.outsideMetres > takes) {
      found.push(
        `This cable is too thick for the plug at the ${side === 'from' ? 'output' : 'input'} end: ${sayMillimetres(stock.outsideMetres)} cable, ${sayMillimetres(takes)} at most.`,
      );
    }
  }
  const used = rows.map(({ code }) => code).filter((code) => code !== '');
  const twice = used.find((code, at) => used.indexOf(code) !== at);
  if (twice !== undefined)
    found.push(`Two conductors have the same colour, ${twice}: they cannot be told apart.`);
  if (colours.includes('GNYE'))
    found.push('Green and yellow together is kept for protective earth: use another core.');
  const adapter = lead.from.form === 'jack' || lead.to.form === 'jack';
  const most = adapter ? ADAPTER_METRES : STANDARD_METRES;
  if (lead.lengthMetres > most) found.push(`Longer than the standard's ${most} m: ${lead.lengthMetres} m.`);
  if (rows.length === 0) found.push('This lead has no conductors: draw them first.');
  return found;
}
