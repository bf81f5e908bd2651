/** The ways to join two jacks with the leads on offer, each solved as a circuit, at the length that the way round asks for. */
import { plainJack } from '../plan/index.ts';
import type { MakingPrices, StockLead, WholeDevice, WholeJack } from '../plan/index.ts';
import { checkLink, lineByLine, solveMaps } from '../verdict/index.ts';
import type { LinkMemory } from '../verdict/index.ts';
import { STANDARD_METRES, circuitsFor, makeLead, mate, turnLead } from '../wiring/index.ts';
import type { Conductor, Connector, Jack, Lead, Style } from '../wiring/index.ts';
import type { Choice } from './problem.ts';

/** One piece of a run of leads: number in the stock, or -1 for a lead to be made. */
export interface Piece {
  readonly stock: number;
  readonly lead: Lead;
}

/** A choice with what it stands for: the leads in series, and the jacks with the style each is set to. */
export interface OfferedChoice extends Choice {
  readonly pieces: readonly Piece[];
  readonly output: { readonly jack: string; readonly style: Style };
  readonly input: { readonly jack: string; readonly style: Style };
}

/** What can be bought, made or taken from the drawer. */
export interface Offers {
  readonly stock: readonly StockLead[];
  /** Number of each stock lead among the owned kinds, or -1 for the shop's. */
  readonly kinds: readonly number[];
  readonly making: MakingPrices | undefined;
  readonly memory: LinkMemory;
  readonly runs: Map<string, readonly Run[]>;
  readonly maps: Map<string, readonly Conductor[] | null>;
}

/** Leads in series between two connectors, with their cost and length. */
interface Run {
  readonly pieces: readonly Piece[];
  readonly cost: number;
  readonly metres: number;
  readonly uses: readonly number[];
}

/** Most leads in series that a plan proposes: a lead with an adapter at each end. */
const MOST_PIECES = 3;

/** Most runs between two connectors, cheapest first. */
const MOST_RUNS = 120;

/** Length of a made lead where devices have no place, and the step to which lengths are rounded up, metres (our choice). */
const UNPLACED_METRES = 1;
const STEP_METRES = 0.05;

/** Lengths at which a made lead is solved: at the next of these, since a longer lead never carries more current. */
const SOLVED_METRES = [1, 2, 3, 5, 7.5, 10, STANDARD_METRES] as const;

/** Make the offers ready. `making` undefined means no soldering. */
export function offersOf(
  stock: readonly StockLead[],
  making: MakingPrices | undefined,
  memory: LinkMemory,
): Offers {
  let kind = 0;
  const kinds = stock.map(({ owned }) => (owned > 0 ? kind++ : -1));
  return { stock, kinds, making, memory, runs: new Map(), maps: new Map() };
}

/** A jack set to one of its styles; its circuit follows where the style asks for another. */
export function jackSetTo(jack: WholeJack, style: Style): WholeJack {
  if (style === jack.style) return jack;
  const allowed = circuitsFor(jack.direction, style);
  if (allowed.includes(jack.circuit)) return { ...jack, style };
  const circuit = allowed[0];
  return circuit === undefined ? jack : { ...jack, style, circuit, values: {} };
}

/** The styles a jack can have, the one it is set to first. */
export function stylesOf(jack: WholeJack): readonly Style[] {
  return [jack.style, ...jack.styles.filter((style) => style !== jack.style)];
}

/**
 * Every way worth having to feed an input from an output: none is dearer than another that takes no more of the owned leads.
 * @param wayMetres least length of lead; 0 where a device has no place.
 */
export function waysToJoin(
  offers: Offers,
  from: { readonly device: WholeDevice; readonly jack: WholeJack },
  to: { readonly device: WholeDevice; readonly jack: WholeJack },
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
        if (run.metres < wayMetres - 1e-9) continue;
        if (found.some((one) => one.cost <= run.cost && isWithin(one.uses, run.uses))) continue;
        if (works(run.pieces.map(({ lead }) => lead)))
          found.push({ cost: run.cost, uses: run.uses, pieces: run.pieces, ...ends });
      }
    }
  }
  return bestOf(found);
}

/** Those choices that no other one beats. */
export function bestOf(choices: readonly OfferedChoice[]): readonly OfferedChoice[] {
  return choices.filter((one, at) =>
    choices.every((other, place) => {
      if (place === at || !(other.cost <= one.cost && isWithin(other.uses, one.uses))) return true;
      const equal = other.cost === one.cost && other.uses.length === one.uses.length;
      return equal && place > at;
    }),
  );
}

function isWithin(few: readonly number[], many: readonly number[]): boolean {
  return few.every(
    (kind) => few.filter((one) => one === kind).length <= many.filter((one) => one === kind).length,
  );
}

type JackAt = { readonly device: WholeDevice; readonly jack: WholeJack };

/** Whether a link flows at every corner, harms nothing, and passes a supply on only to what lives on it. */
function passes(offers: Offers, from: JackAt, to: JackAt, leads: readonly Lead[]): boolean {
  const link = { output: plainJack(from.jack), branches: [{ input: plainJack(to.jack), leads }] };
  const { outcome, notes } = checkLink(link, 'notes', offers.memory);
  if (outcome !== 'flows') return false;
  const has = (kind: (typeof notes)[number]['kind']): boolean => notes.some((note) => note.kind === kind);
  if (has('over-rating') || has('source-shorted') || has('stage-shorted') || has('too-long')) return false;
  const live = from.jack.supplyOnSpares || to.jack.supplyOnSpares;
  const hungry = from.device.power === 'spare-pins' || to.device.power === 'spare-pins';
  return !live || has('spare-pins') === hungry;
}

function madeLead(
  offers: Offers,
  output: Jack,
  input: Jack,
  wayMetres: number,
  works: (leads: readonly Lead[]) => boolean,
): Pick<OfferedChoice, 'cost' | 'uses' | 'pieces'> | undefined {
  const { making, maps } = offers;
  if (!making || wayMetres > STANDARD_METRES) return undefined;
  const key = JSON.stringify([plainJack(output), plainJack(input)]);
  let conductors = maps.get(key);
  if (conductors === undefined) {
    const straight = lineByLine(output, input);
    const first = leadOf(output.connector, input.connector, straight, SOLVED_METRES[0]);
    conductors = straight.length > 0 && works([first]) ? straight : bestMap(output, input);
    maps.set(key, conductors);
  }
  if (!conductors) return undefined;
  const metres = leadLengthMetres(wayMetres);
  const solvedAt = SOLVED_METRES.find((one) => one >= metres) ?? STANDARD_METRES;
  if (!works([leadOf(output.connector, input.connector, conductors, solvedAt)])) return undefined;
  const lead = leadOf(output.connector, input.connector, conductors, metres);
  return { cost: makingCost(making, lead), uses: [], pieces: [{ stock: -1, lead }] };
}

function bestMap(output: Jack, input: Jack): readonly Conductor[] | null {
  const flowing = solveMaps(output, input).candidates.filter(({ outcome }) => outcome === 'flows');
  flowing.sort(
    (a, b) =>
      Number(b.shieldJoined) - Number(a.shieldJoined) ||
      a.spares - b.spares ||
      a.conductors.length - b.conductors.length,
  );
  return flowing[0]?.conductors ?? null;
}

function leadOf(
  from: Connector,
  to: Connector,
  conductors: readonly Conductor[],
  lengthMetres: number,
): Lead {
  return makeLead(from, to, conductors, { lengthMetres });
}

/** Length of a lead to be made for a way of so many metres, rounded up to the next step; the usual length where no way is known. */
export function leadLengthMetres(wayMetres: number): number {
  if (wayMetres <= 0) return UNPLACED_METRES;
  return Number((Math.ceil(wayMetres / STEP_METRES - 1e-9) * STEP_METRES).toFixed(2));
}

/** What a made lead costs at the reader's own figures. */
export function makingCost(making: MakingPrices, lead: Lead): number {
  const plug = (connector: Connector): number => making.plugs[connector] ?? making.plug;
  return (
    plug(lead.from.connector) +
    plug(lead.to.connector) +
    making.wirePerMetre * lead.lengthMetres +
    making.perLead
  );
}

/** Every run of stock leads, turned either way, whose plugs fit these two jacks and each other; cheapest first. */
function runsBetween(offers: Offers, output: Connector, input: Connector): readonly Run[] {
  const key = `${output} ${input}`;
  const known = offers.runs.get(key);
  if (known) return known;
  const pieces = offers.stock.flatMap(({ lead }, stock): Piece[] => [
    { stock, lead },
    { stock, lead: turnLead(lead) },
  ]);
  const runs: Run[] = [];
  const grow = (run: readonly Piece[]): void => {
    const last = run.at(-1)?.lead.to;
    if (last?.form === 'plug' && mate(last.connector, input).fits) runs.push(runOf(offers, run));
    if (run.length === MOST_PIECES) return;
    for (const piece of pieces) {
      const { from } = piece.lead;
      const owned = offers.stock[piece.stock]?.owned ?? 0;
      if (owned > 0 && run.filter(({ stock }) => stock === piece.stock).length >= owned) continue;
      const fits = last
        ? last.form !== from.form &&
          (from.form === 'plug' ? mate(from.connector, last.connector) : mate(last.connector, from.connector))
            .fits
        : from.form === 'plug' && mate(from.connector, output).fits;
      if (fits) grow([...run, piece]);
    }
  };
  grow([]);
  runs.sort((a, b) => a.cost - b.cost || a.pieces.length - b.pieces.length || a.metres - b.metres);
  const kept = runs.slice(0, MOST_RUNS);
  offers.runs.set(key, kept);
  return kept;
}

function runOf(offers: Offers, pieces: readonly Piece[]): Run {
  const cost = pieces.reduce((sum, { stock }) => {
    const { owned = 0, price = 0 } = offers.stock[stock] ?? {};
    return sum + (owned > 0 ? 0 : price);
  }, 0);
  const uses = pieces.flatMap(({ stock }) => {
    const kind = offers.kinds[stock] ?? -1;
    return kind < 0 ? [] : [kind];
  });
  return { pieces, cost, uses, metres: pieces.reduce((sum, { lead }) => sum + lead.lengthMetres, 0) };
}
