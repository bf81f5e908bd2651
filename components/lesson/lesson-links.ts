/**
 * The links of a lesson: written by its author as plain data in links.json, solved by the core, printed in the prose.
 * A test solves each one and compares it with the outcome the author claims.
 */
import { checkLink, findLead, sayAmperes, sayOhms, sayVolts } from '../../src/core/verdict/index.ts';
import {
  contactWords,
  jackProblem,
  layConductor,
  makeJack,
  makeLead,
  valuesOf,
  wires,
} from '../../src/core/wiring/index.ts';
import { planOfLink } from '../../src/core/plan/index.ts';
import type {
  CircuitKind,
  Connector,
  Fault,
  Form,
  Jack,
  Lead,
  Link,
  Part,
  Role,
  State,
  Style,
  ValueName,
} from '../../src/core/wiring/index.ts';
import type { LeadAnswer, LinkVerdict, NoteKind, Outcome } from '../../src/core/verdict/index.ts';
import type { Plan } from '../../src/core/plan/index.ts';

/** A jack as an author writes it; the circuit is the usual one of its style where none is named. */
export interface AuthoredJack {
  readonly connector: Connector;
  readonly style: Style;
  readonly circuit?: CircuitKind;
  readonly part?: Part;
}

/** A lead as an author writes it: two connectors, conductors as '4-ring', metres (1 where left out). */
export interface AuthoredLead {
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

/** links.json of a lesson: its links by name. */
export type LessonLinks = Readonly<Record<string, AuthoredLink>>;

/** A jack with its circuit. @throws when it cannot be, in the words of the core. */
export function jackFrom(direction: 'out' | 'in', authored: AuthoredJack): Jack {
  const { connector, style, ...more } = authored;
  const jack = makeJack(direction, connector, style, more);
  const problem = jackProblem(jack);
  if (problem !== undefined) throw new Error(`lesson link: ${problem}`);
  return jack;
}

/** A lead with its conductors. @throws when a conductor names a contact that its connector lacks. */
export function leadFrom({
  ends,
  wires: pairs,
  metres = 1,
  firstEnd = 'plug',
  faults = [],
}: AuthoredLead): Lead {
  const empty = makeLead(ends[0], ends[1], [], {
    lengthMetres: metres,
    from: { connector: ends[0], form: firstEnd },
    faults,
  });
  return wires(...pairs).reduce((lead, { from, to }) => layConductor(lead, from, to), empty);
}

/** The link to be solved. */
export function linkFrom(authored: AuthoredLink): Link {
  return {
    output: jackFrom('out', authored.output),
    branches: [{ input: jackFrom('in', authored.input), leads: authored.leads.map(leadFrom) }],
  };
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

/** What of a solved link may be printed in a lesson. */
export const QUANTITIES = [
  'idle',
  'active',
  'worst',
  'needed',
  'backwards',
  'backwards at rest',
  'LED volts',
  'source resistor',
  'rail',
  'high from',
] as const;
export type Quantity = (typeof QUANTITIES)[number];

/** One quantity of a solved link in words: '5.38 mA'. */
export function say(authored: AuthoredLink, quantity: Quantity): string {
  const verdict = checkLink(linkFrom(authored));
  const input = verdict.inputs[verdict.decides];
  if (input === undefined) throw new Error('lesson link: needs an input, got none');
  const unit = input.kind === 'current' ? sayAmperes : sayVolts;
  switch (quantity) {
    case 'idle':
      return unit(input.idle);
    case 'active':
      return unit(input.active);
    case 'worst':
      return unit(input.worstActive);
    case 'needed':
      return unit(input.on);
    case 'high from':
      return unit(input.off);
    case 'backwards':
      return sayAmperes(input.reverseAmperes.active);
    case 'backwards at rest':
      return sayAmperes(input.reverseAmperes.idle);
    case 'LED volts':
      return sayVolts(partOf(verdict, 'led').volts);
    case 'source resistor':
      return sayAmperes(partOf(verdict, 'source-resistor').amperes);
    case 'rail':
      return sayAmperes(verdict.readings.active.supplyAmperes);
  }
}

function partOf(
  verdict: LinkVerdict,
  role: Role,
  state: State = 'active',
): LinkVerdict['readings']['active']['parts'][number] {
  const found = verdict.readings[state].parts.find(({ part }) => part.role === role);
  if (found === undefined) throw new Error(`lesson link: has no part '${role}' to print`);
  return found;
}

/** A value of a circuit as it stands by default: '220 ohm', '5 V'. @throws when the circuit has no such value. */
export function sayValue(circuit: CircuitKind, name: ValueName, part: Part = '6N138'): string {
  const entry = valuesOf(circuit, part).find((one) => one.name === name);
  if (entry === undefined) throw new Error(`lesson: circuit '${circuit}' has no value '${name}'`);
  switch (entry.unit) {
    case 'ohm':
      return sayOhms(entry.value);
    case 'A':
      return sayAmperes(entry.value);
    case 'V':
      return `${entry.value} V`;
    case 'W':
      return `${entry.value} W`;
  }
}

/** The conductors of the first lead in words: 'pin 4 to ring, pin 5 to tip'. */
export function sayMap(authored: AuthoredLink): string {
  return (authored.leads[0] === undefined ? [] : leadFrom(authored.leads[0]).conductors)
    .map(({ from, to }) => `${contactWords(from)} to ${contactWords(to)}`)
    .join(', ');
}

/** Keeps a number and its unit on one line. */
export function unbroken(words: string): string {
  return words.replaceAll(' ', '\u00a0');
}
