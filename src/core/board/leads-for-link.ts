/** The leads that a new link of a board would really use: the cheapest on offer that work, or a lead that fits, to be explained. */
import { MAKING_DEFAULTS, waysRound, wholeDevice } from '../plan/index.ts';
import type { JackPlace, MakingPrices, Plan, PlanLead, StockLead } from '../plan/index.ts';
import { lineByLine } from '../verdict/index.ts';
import type { LinkMemory } from '../verdict/index.ts';
import { makeLead, turnLead } from '../wiring/index.ts';
import type { Conductor, Jack, Lead } from '../wiring/index.ts';
import { jackAt, samePlace, wayMetres } from './jacks.ts';
import type { JackOnBoard } from './jacks.ts';
import { leadLengthMetres, makingCost, waysToJoin } from './lead-offers.ts';
import type { OfferedChoice } from './lead-offers.ts';
import { offersOf } from './offers.ts';
import type { Piece } from './offers.ts';
import { usualConductors } from './conductors.ts';

/** Leads in series with what the jacks are set to. Without a choice nothing on offer works, and the lead only fits. */
export interface LeadsForLink {
  /** `stock` numbers the plan's own stock, or is -1 for a lead to be made. */
  readonly pieces: readonly Piece[];
  readonly choice: Pick<OfferedChoice, 'output' | 'input'> | undefined;
  /** Whether a lead must be made although the owner wishes no soldering. */
  readonly againstWish: boolean;
}

/** Choose the leads from an output to an input; leads that links of the plan use already are not taken again. */
export function leadsForLink(
  plan: Plan,
  output: JackPlace,
  input: JackPlace,
  memory: LinkMemory,
): LeadsForLink {
  const from = fixedIfUsed(plan, output);
  const to = fixedIfUsed(plan, input);
  const making = plan.making ?? MAKING_DEFAULTS;
  const noSoldering = plan.wishes?.noSoldering === true;
  const [way = 0] = wayMetres(waysRound(plan.devices.map(wholeDevice)), from, [to]);
  const left = leftInDrawer(plan);
  const stock = left.map(({ kept }) => kept);
  const cheapest = (prices: MakingPrices | undefined): OfferedChoice | undefined =>
    waysToJoin(offersOf(stock, prices, memory), from, to, way).toSorted(
      (a, b) => a.cost - b.cost || a.pieces.length - b.pieces.length,
    )[0];
  const choice = cheapest(noSoldering ? undefined : making) ?? (noSoldering ? cheapest(making) : undefined);
  const fallback = (): Lead =>
    makeLead(from.jack.connector, to.jack.connector, fallbackMap(from.jack, to.jack), {
      lengthMetres: leadLengthMetres(way),
    });
  const pieces = choice
    ? choice.pieces.map((piece) => ({ ...piece, stock: left[piece.stock]?.at ?? -1 }))
    : [{ stock: -1, lead: fallback() }];
  return { pieces, choice, againstWish: noSoldering && pieces.some((piece) => piece.stock < 0) };
}

/** Chosen pieces as leads of the plan, each with a name that no other has, its origin and its price. */
export function planLeads(
  plan: Plan,
  pieces: readonly Piece[],
  others: readonly PlanLead[],
): readonly PlanLead[] {
  const taken = others.map(({ name }) => name);
  return pieces.map(({ stock, lead }): PlanLead => {
    const name = firstFree('lead', taken);
    taken.push(name);
    const kept = plan.stock?.[stock];
    if (!kept)
      return { ...lead, name, origin: 'made', price: makingCost(plan.making ?? MAKING_DEFAULTS, lead) };
    const [origin, price] = kept.owned > 0 ? (['owned', 0] as const) : (['shop', kept.price] as const);
    return { ...lead, name, origin, price };
  });
}

/** The first of 'word 1', 'word 2' … that is not taken. */
export function firstFree(word: string, taken: readonly string[]): string {
  for (let number = 1; ; number++) if (!taken.includes(`${word} ${number}`)) return `${word} ${number}`;
}

/** The jack with the style it must keep where another link stands on it. */
function fixedIfUsed(plan: Plan, place: JackPlace): JackOnBoard {
  const { device, jack } = jackAt(plan, place);
  const used = plan.links.some(({ output, inputs }) =>
    inputs.some((one) => one.leads.length > 0 && (samePlace(one, place) || samePlace(output, place))),
  );
  return { device, jack: used ? { ...jack, styles: [] } : jack };
}

/** The stock that is still there, with its number in the plan: owned pieces in use are taken out, and kinds that are used up. */
function leftInDrawer(plan: Plan): readonly { readonly kept: StockLead; readonly at: number }[] {
  const used = new Set(plan.links.flatMap(({ inputs }) => inputs.flatMap(({ leads }) => leads)));
  const taken = plan.leads.filter(({ name, origin }) => origin === 'owned' && used.has(name)).map(shapeOf);
  return (plan.stock ?? []).flatMap((kept, at) => {
    const shapes = [shapeOf(kept.lead), shapeOf(turnLead(kept.lead))];
    let { owned } = kept;
    for (; owned > 0; owned--) {
      const one = taken.findIndex((shape) => shapes.includes(shape));
      if (one < 0) break;
      taken.splice(one, 1);
    }
    return kept.owned > 0 && owned === 0 ? [] : [{ kept: { ...kept, owned }, at }];
  });
}

/** A lead but for its name, conductors in one order. */
function shapeOf({ from, to, conductors, lengthMetres, gauge, contactOhms, faults }: Lead): string {
  const sorted = conductors.map((one) => `${one.from} ${one.to}`).sort();
  const ends = [from, to].map(({ connector, form }) => `${connector} ${form}`);
  return JSON.stringify([ends, sorted, lengthMetres, gauge, contactOhms, faults.length]);
}

/** A map for two jacks that no lead joins: line by line, or as leads of these plugs usually are. */
function fallbackMap(output: Jack, input: Jack): readonly Conductor[] {
  const lines = lineByLine(output, input);
  return lines.length > 0 ? lines : usualConductors(output, input);
}
