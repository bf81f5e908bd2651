/**
 * The links of a lesson: written by its author as plain data beside the lesson, solved when the site is built.
 * A test solves each one and compares it with the outcome the author claims.
 */
import { checkLink, findLead } from '../verdict/index.ts';
import { STRAIGHT_DIN, jackProblem, layConductor, makeJack, makeLead, wires } from '../wiring/index.ts';
import { planOfLink } from '../plan/index.ts';
import type { CircuitKind, Connector, Fault, Form, Jack, Lead, Link, Part, Style } from '../wiring/index.ts';
import type { LeadAnswer, LinkVerdict, NoteKind, Outcome } from '../verdict/index.ts';
import type { Plan } from '../plan/index.ts';

/** A jack as an author writes it; the circuit is the usual one of its style where none is named. */
export interface AuthoredJack {
  readonly connector: Connector;
  readonly style: Style;
  readonly circuit?: CircuitKind;
  readonly part?: Part;
  readonly values?: Jack['values'];
  readonly extras?: NonNullable<Jack['extras']>;
}

/** A lead as an author writes it: two connectors, conductors as '4-ring', metres (1 where left out). */
interface AuthoredLead {
  readonly ends: readonly [Connector, Connector];
  readonly wires: readonly string[];
  readonly metres?: number;
  /** 'jack' for an adapter that takes the plug of the lead before it. */
  readonly firstEnd?: Form;
  /** What is wrong inside its plugs. */
  readonly faults?: readonly Fault[];
}

/** A link as an author writes it, with what the text says of it. */
export interface AuthoredLink {
  readonly output: AuthoredJack;
  readonly input: AuthoredJack;
  readonly leads: readonly AuthoredLead[];
  readonly outcome: Outcome;
  /** Notes that the text relies on. */
  readonly notes?: readonly NoteKind[];
}

/** The links of a lesson by name. */
export type LessonLinks = Readonly<Record<string, AuthoredLink>>;

/** A jack with its circuit. @throws when it cannot be, in the words of the core after `what`. */
export function jackFrom(direction: 'out' | 'in', authored: AuthoredJack, what = 'lesson link'): Jack {
  const { connector, style, ...more } = authored;
  const jack = makeJack(direction, connector, style, more);
  const problem = jackProblem(jack);
  if (problem !== undefined) throw new Error(`${what}: ${problem}`);
  return jack;
}

/** A lead with its conductors. @throws when a conductor names a contact that its connector lacks. */
function leadFrom({ ends, wires: pairs, metres = 1, firstEnd = 'plug', faults = [] }: AuthoredLead): Lead {
  const empty = makeLead(ends[0], ends[1], [], {
    lengthMetres: metres,
    from: { connector: ends[0], form: firstEnd },
    faults,
  });
  return wires(...pairs).reduce((lead, { from, to }) => layConductor(lead, from, to), empty);
}

/** The first lead of a link, the one that the text is about. @throws when the link has none. */
export function firstLead({ leads }: AuthoredLink): Lead {
  const [first] = leads;
  if (first === undefined) throw new Error('lesson link: needs a lead, got none');
  return leadFrom(first);
}

/** The link to be solved. */
export function linkFrom(authored: AuthoredLink): Link {
  return {
    output: jackFrom('out', authored.output),
    branches: [{ input: jackFrom('in', authored.input), leads: authored.leads.map(leadFrom) }],
  };
}

/** What the core makes of the link. */
export function solve(authored: AuthoredLink): LinkVerdict {
  return checkLink(linkFrom(authored));
}

/** The plan that lays the link on a bench. */
export function planFrom(authored: AuthoredLink): Plan {
  return planOfLink(
    jackFrom('out', authored.output),
    jackFrom('in', authored.input),
    authored.leads.map(leadFrom),
  );
}

/** Every lead between the two jacks of the link, by the core's search. */
export function searchFor(authored: AuthoredLink): LeadAnswer {
  return findLead(jackFrom('out', authored.output), jackFrom('in', authored.input));
}

/** A DIN output and a DIN input, the usual ones but for what is told of each, with a straight lead of 1 m but for what is told of it. */
export function dinLink(out: Partial<Jack> = {}, into: Partial<Jack> = {}, lead: Partial<Lead> = {}): Link {
  const { conductors = STRAIGHT_DIN, ...more } = lead;
  return {
    output: makeJack('out', 'din5', 'din', out),
    branches: [
      {
        input: makeJack('in', 'din5', 'din', into),
        leads: [makeLead('din5', 'din5', conductors, more)],
      },
    ],
  };
}

/** Amperes that reach the first input of a link while a 0 is sent. */
export function activeOf(link: Link): number {
  return checkLink(link, 'outcome').inputs[0]?.active ?? NaN;
}
