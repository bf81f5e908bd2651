/** The leads that a new link of a board would really use: the cheapest on offer that work, or a lead that fits, to be explained. */
import {
  MAKING_DEFAULTS,
  findJack,
  isPlaced,
  jackPoint,
  leadMetres,
  waysRound,
  wholeDevice,
  wholeJack,
} from '../plan/index.ts';
import type { JackPlace, MakingPrices, Plan, StockLead, WholeDevice, WholeJack } from '../plan/index.ts';
import { lineByLine } from '../verdict/index.ts';
import type { LinkMemory } from '../verdict/index.ts';
import { contactsOf, makeLead, turnLead, wires } from '../wiring/index.ts';
import type { Conductor, Jack, Lead } from '../wiring/index.ts';
import { leadLengthMetres, offersOf, waysToJoin } from './lead-offers.ts';
import type { OfferedChoice, Piece } from './lead-offers.ts';

/** Leads in series with what the jacks are set to. Without a choice nothing on offer works, and the lead only fits. */
export interface LeadsForLink {
  /** `stock` numbers the plan's own stock, or is -1 for a lead to be made. */
  readonly pieces: readonly Piece[];
  readonly choice: Pick<OfferedChoice, 'output' | 'input'> | undefined;
  /** Whether a lead must be made although the owner wishes no soldering. */
  readonly againstWish: boolean;
}

/** A jack of the plan with its device, both whole. */
export interface JackOnBoard {
  readonly device: WholeDevice;
  readonly jack: WholeJack;
}

/** Whether two places are the same jack. */
export function samePlace(one: JackPlace, other: JackPlace): boolean {
  return one.device === other.device && one.jack === other.jack;
}

/** The jack at a place. @throws when the plan has none. */
export function jackAt(plan: Plan, place: JackPlace): JackOnBoard {
  const device = plan.devices.find(({ name }) => name === place.device);
  const jack = findJack(plan, place);
  if (!device || !jack) throw new Error(`board: no jack '${place.jack}' on a device '${place.device}'`);
  return { device: wholeDevice(device), jack: wholeJack(jack) };
}

/** The jack with the style it must keep where another link stands on it. */
function fixedIfUsed(plan: Plan, place: JackPlace, { device, jack }: JackOnBoard): JackOnBoard {
  const uses = plan.links.flatMap(({ output, inputs }) => [
    ...inputs.filter((one) => one.leads.length > 0 && samePlace(one, place)),
    ...(samePlace(output, place) && inputs.some(({ leads }) => leads.length > 0) ? [output] : []),
  ]);
  return uses.length === 0 ? { device, jack } : { device, jack: { ...jack, styles: [] } };
}

/** Choose the leads from an output to an input; leads that links of the plan use already are not taken again. */
export function leadsForLink(
  plan: Plan,
  output: JackPlace,
  input: JackPlace,
  memory: LinkMemory,
): LeadsForLink {
  const from = fixedIfUsed(plan, output, jackAt(plan, output));
  const to = fixedIfUsed(plan, input, jackAt(plan, input));
  const making = plan.making ?? MAKING_DEFAULTS;
  const noSoldering = plan.wishes?.noSoldering === true;
  const way = wayBetween(plan, from, to);
  const left = leftInDrawer(plan);
  const cheapest = (prices: MakingPrices | undefined): OfferedChoice | undefined => {
    const offers = offersOf(
      left.map(({ kept }) => kept),
      prices,
      memory,
    );
    const choices = waysToJoin(offers, from, to, way);
    return choices.toSorted((a, b) => a.cost - b.cost || a.pieces.length - b.pieces.length)[0];
  };
  const choice = cheapest(noSoldering ? undefined : making) ?? (noSoldering ? cheapest(making) : undefined);
  const lead = makeLead(from.jack.connector, to.jack.connector, fallbackMap(from.jack, to.jack), {
    lengthMetres: leadLengthMetres(way),
  });
  const pieces = choice
    ? choice.pieces.map((piece) => ({ ...piece, stock: left[piece.stock]?.at ?? -1 }))
    : [{ stock: -1, lead }];
  return { pieces, choice, againstWish: noSoldering && pieces.some(({ stock }) => stock < 0) };
}

/** The stock that is still there, with its number in the plan: owned pieces in use are taken out, and kinds that are used up. */
function leftInDrawer(plan: Plan): readonly { readonly kept: StockLead; readonly at: number }[] {
  const used = new Set(plan.links.flatMap(({ inputs }) => inputs.flatMap(({ leads }) => leads)));
  const taken = plan.leads.filter(({ name, origin }) => origin === 'owned' && used.has(name)).map(shapeOf);
  return (plan.stock ?? []).flatMap((kept, at) => {
    if (kept.owned === 0) return [{ kept, at }];
    const shapes = [shapeOf(kept.lead), shapeOf(turnLead(kept.lead))];
    let owned = kept.owned;
    while (owned > 0) {
      const one = taken.findIndex((shape) => shapes.includes(shape));
      if (one < 0) break;
      taken.splice(one, 1);
      owned--;
    }
    return owned > 0 ? [{ kept: { ...kept, owned }, at }] : [];
  });
}

/** A lead but for its name, conductors in one order. */
function shapeOf({ from, to, conductors, lengthMetres, gauge, contactOhms, faults }: Lead): string {
  const sorted = conductors.map((one) => `${one.from} ${one.to}`).sort();
  const ends = [from, to].map(({ connector, form }) => `${connector} ${form}`);
  return JSON.stringify([ends, sorted, lengthMetres, gauge, contactOhms, faults.length]);
}

/** A map for two jacks that no lead joins: line by line, or the contacts of one name. */
function fallbackMap(output: Jack, input: Jack): readonly Conductor[] {
  const lines = lineByLine(output, input);
  if (lines.length > 0) return lines;
  const there = contactsOf(input.connector);
  const same = contactsOf(output.connector).filter((one) => one !== 'shell' && there.includes(one));
  if (same.length > 0) return same.map((contact) => ({ from: contact, to: contact }));
  return contactsOf(output.connector).includes('tip')
    ? wires('tip-5', 'sleeve-2')
    : wires('5-tip', '2-sleeve');
}

function wayBetween(plan: Plan, from: JackOnBoard, to: JackOnBoard): number {
  if (!isPlaced(from.device) || !isPlaced(to.device)) return 0;
  const ways = waysRound(plan.devices.map(wholeDevice));
  const [length = 0] = ways.lengths(jackPoint(from.device, from.jack), [jackPoint(to.device, to.jack)]);
  return leadMetres(length);
}
