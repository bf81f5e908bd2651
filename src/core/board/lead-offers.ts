/** The ways to join two jacks with the leads on offer, each solved as a circuit, at the length that the way round asks for. */
import { cutLength } from '../making/index.ts';
import { PLAN_LIMITS, plainJack } from '../plan/index.ts';
import type { MakingPrices, WholeJack } from '../plan/index.ts';
import { checkLink, lineByLine, solveMaps } from '../verdict/index.ts';
import { STANDARD_METRES, makeLead } from '../wiring/index.ts';
import type { Conductor, Jack, Lead, Style } from '../wiring/index.ts';
import type { JackOnBoard } from './jacks.ts';
import { jackSetTo, stylesOf } from './jacks.ts';
import { runsBetween } from './lead-runs.ts';
import type { Choice, Offers, Piece } from './offers.ts';

/** A choice with what it stands for: the leads in series, and the jacks with the style each is set to. */
export interface OfferedChoice extends Choice {
  readonly pieces: readonly Piece[];
  readonly output: { readonly jack: string; readonly style: Style };
  readonly input: { readonly jack: string; readonly style: Style };
}

/** Length of a made lead where devices have no place, and the step to which lengths are rounded up, metres (our choice). */
const UNPLACED_METRES = 1;
const STEP_METRES = 0.05;

/** Where the length of a lead comes from, to stand beside every list of lengths. */
export const LENGTH_NOTE = `The length of a lead to make comes from the drawing until you set it: the way round the devices and a little more, or ${UNPLACED_METRES.toFixed(2)} m where a device had no place yet, as a hub that a plan adds. Measure your board, and set the length of each lead in its link before you cut anything.`;

/** Lengths at which a made lead is solved: at the next of these, since a longer lead never carries more current. */
const SOLVED_METRES = [1, 2, 3, 5, 7.5, 10, STANDARD_METRES] as const;

/**
 * Every way worth having to feed an input from an output: none is dearer than another that takes no more of the owned leads.
 * @param wayMetres least length of lead; 0 where a device has no place.
 */
export function waysToJoin(
  offers: Offers,
  from: JackOnBoard,
  to: JackOnBoard,
  wayMetres: number,
): readonly OfferedChoice[] {
  const found: OfferedChoice[] = [];
  for (const outStyle of stylesOf(from.jack)) {
    for (const inStyle of stylesOf(to.jack)) {
      const output = jackSetTo(from.jack, outStyle);
      const input = jackSetTo(to.jack, inStyle);
      const ends = {
        output: { jack: from.jack.name, style: outStyle },
        input: { jack: to.jack.name, style: inStyle },
      };
      const works = (leads: readonly Lead[]): boolean =>
        passes(offers, { ...from, jack: output }, { ...to, jack: input }, leads);
      const made = madeLead(offers, output, input, wayMetres, works);
      if (made) found.push({ ...made, ...ends });
      for (const run of runsBetween(offers, output.connector, input.connector)) {
        if (run.metres < wayMetres - 1e-9 || found.some((one) => beats(one, run))) continue;
        if (works(run.pieces.map(({ lead }) => lead)))
          found.push({ cost: run.cost, uses: run.uses, pieces: run.pieces, ...ends });
      }
    }
  }
  return bestOf(found);
}

/** Those choices that no other one beats; of equal ones the first. */
export function bestOf(choices: readonly OfferedChoice[]): readonly OfferedChoice[] {
  return choices.filter((one, at) =>
    choices.every((other, place) => place === at || !beats(other, one) || (place > at && beats(one, other))),
  );
}

/** Whether a choice is no dearer than another and takes no owned lead that the other leaves. */
function beats(one: Choice, other: Choice): boolean {
  const times = (uses: readonly number[], kind: number): number => uses.filter((use) => use === kind).length;
  return one.cost <= other.cost && one.uses.every((kind) => times(one.uses, kind) <= times(other.uses, kind));
}

/** Whether a link flows at every corner, harms nothing, and passes a supply on only to what lives on it. */
function passes(offers: Offers, from: JackOnBoard, to: JackOnBoard, leads: readonly Lead[]): boolean {
  const link = { output: plainJack(from.jack), branches: [{ input: plainJack(to.jack), leads }] };
  const { outcome, notes } = checkLink(link, 'notes', offers.memory);
  if (outcome !== 'flows') return false;
  const kinds = new Set(notes.map(({ kind }) => kind));
  if (['over-rating', 'source-shorted', 'stage-shorted', 'too-long'].some((kind) => kinds.has(kind as never)))
    return false;
  const live = from.jack.supplyOnSpares || to.jack.supplyOnSpares;
  const hungry = from.device.power === 'spare-pins' || to.device.power === 'spare-pins';
  return !live || kinds.has('spare-pins') === hungry;
}

function madeLead(
  { making, maps, priced }: Offers,
  output: WholeJack,
  input: WholeJack,
  wayMetres: number,
  works: (leads: readonly Lead[]) => boolean,
): (Choice & Pick<OfferedChoice, 'pieces'>) | undefined {
  if (!making || wayMetres > STANDARD_METRES) return undefined;
  const leadOf = (map: readonly Conductor[], lengthMetres: number): Lead =>
    makeLead(output.connector, input.connector, map, { lengthMetres });
  const key = JSON.stringify([plainJack(output), plainJack(input)]);
  let conductors = maps.get(key);
  if (conductors === undefined) {
    const straight = lineByLine(output, input);
    const runs = straight.length > 0 && works([leadOf(straight, SOLVED_METRES[0])]);
    conductors = runs ? straight : bestMap(output, input);
    maps.set(key, conductors);
  }
  if (!conductors) return undefined;
  const metres = leadLengthMetres(wayMetres);
  const solvedAt = SOLVED_METRES.find((one) => one >= metres) ?? STANDARD_METRES;
  if (!works([leadOf(conductors, solvedAt)])) return undefined;
  const lead = leadOf(conductors, metres);
  return { cost: priced(makingCost(making, lead)), uses: [], pieces: [{ stock: -1, lead }] };
}

function bestMap(output: Jack, input: Jack): readonly Conductor[] | null {
  const flowing = solveMaps(output, input).candidates.filter(({ outcome }) => outcome === 'flows');
  const [best] = flowing.sort(
    (a, b) =>
      Number(b.shieldJoined) - Number(a.shieldJoined) ||
      a.spares - b.spares ||
      a.conductors.length - b.conductors.length,
  );
  return best?.conductors ?? null;
}

/** Length of a lead to be made for a way of so many metres, rounded up to the next step; the usual length where no way is known. */
export function leadLengthMetres(wayMetres: number): number {
  if (wayMetres <= 0) return UNPLACED_METRES;
  return Number((Math.ceil(wayMetres / STEP_METRES - 1e-9) * STEP_METRES).toFixed(2));
}

/** What a made lead costs at the reader's own figures, its cable as long as it is cut, at most what a plan can hold as a price. */
export function makingCost({ plugs, plug, wirePerMetre, perLead }: MakingPrices, lead: Lead): number {
  const ends = [lead.from, lead.to].map(({ connector }) => plugs[connector] ?? plug);
  const sum = ends.reduce((all, one) => all + one, wirePerMetre * cutLength(lead.lengthMetres) + perLead);
  return Math.min(sum, PLAN_LIMITS.price);
}
