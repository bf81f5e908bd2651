/** Everything that can be read off a solved link: volts at contacts, amperes and watts in parts, against their ratings. */
import { nodesOf } from '../circuit/index.ts';
import type { Solved } from '../circuit/index.ts';
import { OUTPUT_GROUND, SIDES, contactsOf, inputNode, leadNode, outputNode } from '../wiring/index.ts';
import type { Contact, Lead, Link, LinkPart, Side, State } from '../wiring/index.ts';
import { solveState } from './prepare.ts';
import type { PreparedLink } from './prepare.ts';
import { sayBeside } from './speak.ts';

/** A contact of a jack or of one end of a lead. */
export type Spot =
  | { readonly place: 'output'; readonly contact: Contact }
  | { readonly place: 'input'; readonly branch: number; readonly contact: Contact }
  | {
      readonly place: 'lead';
      readonly branch: number;
      readonly lead: number;
      readonly side: Side;
      readonly contact: Contact;
    };

/** Volts of a contact against the output's ground; null where it touches nothing that has a way to ground. */
export interface ContactReading {
  readonly spot: Spot;
  readonly volts: number | null;
}

/** A part in one state: amperes from its first node to its second, watts it turns to heat, and what it exceeds. */
export interface PartReading {
  readonly part: LinkPart;
  readonly amperes: number;
  readonly volts: number;
  readonly watts: number;
  /** In words, when over its rating. */
  readonly over: string | undefined;
}

/** A conductor in one state; amperes from its first end to its second. */
interface ConductorReading {
  readonly branch: number;
  readonly lead: number;
  readonly from: Contact;
  readonly to: Contact;
  readonly amperes: number;
}

/** One state of a link, read in full. */
export interface StateReading {
  readonly state: State;
  readonly contacts: readonly ContactReading[];
  readonly parts: readonly PartReading[];
  readonly conductors: readonly ConductorReading[];
  /** Out of the output's supply; 0 when it has none. */
  readonly supplyAmperes: number;
  /** Into the output's shield contact, from the lead. */
  readonly shieldAmperes: number;
}

/** Read one state of a prepared link; where it has no solution no part carries anything and no contact has a voltage. */
export function readState(prepared: PreparedLink, link: Link, state: State): StateReading {
  const solved = solveState(prepared, state);
  const parts = solved.ok ? prepared.model.parts.map((part) => readPart(part, solved)) : [];
  const amperesOf = (name: string): number =>
    parts.find(({ part }) => part.element.name === name)?.amperes ?? 0;
  return {
    state,
    contacts: spotsOf(link).map((spot) => ({
      spot,
      volts: solved.ok ? voltsAt(prepared, solved, nodeOf(spot)) : null,
    })),
    parts,
    conductors: link.branches.flatMap(({ leads }, branch) =>
      leads.flatMap((lead, at) =>
        lead.conductors.map(({ from, to }) => ({
          branch,
          lead: at,
          from,
          to,
          amperes: amperesOf(`wire${branch}.${at} ${from} ${to}`),
        })),
      ),
    ),
    supplyAmperes: Math.abs(amperesOf('out supply')) < 1e-12 ? 0 : -amperesOf('out supply'),
    shieldAmperes: amperesOf('out shield tie'),
  };
}

/** Every contact of the link: the output's, each lead's, each input's. */
function spotsOf(link: Link): readonly Spot[] {
  const spots: Spot[] = contactsOf(link.output.connector).map((contact) => ({ place: 'output', contact }));
  link.branches.forEach(({ input, leads }, branch) => {
    leads.forEach((lead: Lead, at) => {
      for (const side of SIDES) {
        for (const contact of contactsOf(lead[side].connector))
          spots.push({ place: 'lead', branch, lead: at, side, contact });
      }
    });
    for (const contact of contactsOf(input.connector)) spots.push({ place: 'input', branch, contact });
  });
  return spots;
}

/** The circuit's node at a contact. */
export function nodeOf(spot: Spot): string {
  switch (spot.place) {
    case 'output':
      return outputNode(spot.contact);
    case 'input':
      return inputNode(spot.branch, spot.contact);
    case 'lead':
      return leadNode(spot.branch, spot.lead, spot.side, spot.contact);
  }
}

function voltsAt(prepared: PreparedLink, solved: Solved, node: string): number | null {
  if (node !== OUTPUT_GROUND && !prepared.compiled.nodeNumbers.has(node)) return null;
  return solved.floats(node) ? null : solved.volts(node);
}

/** What one part carries in a solved state. */
export function readPart(part: LinkPart, solved: Solved): PartReading {
  const { element, rating } = part;
  const [a, b] = nodesOf(element);
  const amperes = solved.amperes(element.name);
  const volts = solved.volts(a) - solved.volts(b);
  const watts = Math.abs(amperes * volts);
  return {
    part,
    amperes,
    volts,
    watts: element.kind === 'voltage' ? 0 : watts,
    over: overRating(rating, amperes, volts, watts),
  };
}

function overRating(
  { watts, amperes, reverseVolts }: LinkPart['rating'],
  carried: number,
  volts: number,
  heat: number,
): string | undefined {
  if (watts !== undefined && heat > watts) return `${heat.toFixed(2)} W, rated ${watts} W`;
  if (amperes !== undefined && Math.abs(carried) > amperes) {
    const say = sayBeside([Math.abs(carried)], [amperes]);
    return `${say(Math.abs(carried))}, rated ${say(amperes)}`;
  }
  if (reverseVolts !== undefined && -volts > reverseVolts)
    return `${(-volts).toFixed(1)} V in reverse, rated ${reverseVolts} V`;
  return undefined;
}
