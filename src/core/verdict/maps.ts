/** Every way to lay conductors between two jacks, each one solved. */
import { contactsOf, lineAt, makeLead, styleEntry } from '../wiring/index.ts';
import type { Conductor, Contact, Jack, Link } from '../wiring/index.ts';
import { checkLink } from './check.ts';
import { works } from './outcomes.ts';
import type { LinkOutcome } from './outcomes.ts';

/** One map of conductors with its outcome. */
export interface LeadCandidate extends LinkOutcome {
  readonly conductors: readonly Conductor[];
  /** Whether shield meets shield, as the standard wants it; true where a jack has no shield. */
  readonly shieldJoined: boolean;
  /** Conductors on contacts that carry no line in either jack. */
  readonly spares: number;
  /** Whether the output's source line is led to the input's ground: it works while grounds are apart, and is shorted where they meet. */
  readonly sourceGrounded: boolean;
}

/** The contacts a conductor may use: the shell of a DIN is left out. */
export function wiredContacts(jack: Pick<Jack, 'connector'>): readonly Contact[] {
  return contactsOf(jack.connector).filter((contact) => contact !== 'shell');
}

/** Every map of conductors between two sets of contacts, each contact used at most once: 34 for three to three. */
export function conductorMaps(
  from: readonly Contact[],
  to: readonly Contact[],
): readonly (readonly Conductor[])[] {
  const maps: Conductor[][] = [];
  const used = new Set<Contact>();
  const laid: Conductor[] = [];
  const place = (at: number): void => {
    const contact = from[at];
    if (contact === undefined) {
      maps.push([...laid]);
      return;
    }
    place(at + 1);
    for (const other of to) {
      if (used.has(other)) continue;
      used.add(other);
      laid.push({ from: contact, to: other });
      place(at + 1);
      laid.pop();
      used.delete(other);
    }
  };
  place(0);
  return maps;
}

/** Contacts behind which a jack has no circuit: a conductor that touches one carries nothing. */
function deadContacts(jack: Jack): ReadonlySet<Contact> {
  const dead = new Set<Contact>();
  for (const contact of wiredContacts(jack)) {
    const line = lineAt(jack.style, contact);
    const openShield =
      line === 'shield' && jack.direction === 'in' && styleEntry(jack.style).family === 'loop';
    if (line === undefined || openShield) dead.add(contact);
  }
  return dead;
}

/** The link that a map stands for: one lead, 1 m of 26 AWG with plugs that match the jacks. */
export function linkFor(output: Jack, input: Jack, conductors: readonly Conductor[]): Link {
  return {
    output,
    branches: [{ input, leads: [makeLead(output.connector, input.connector, conductors)] }],
  };
}

/** Outcomes by the two circuits and the lines that a map joins; a caller that asks for many pairs of jacks keeps one. */
export type MapMemory = Map<string, LinkOutcome>;

/** What a jack is but for which contact carries which line: with the lines joined, all that an outcome hangs on. */
function circuitKey({ style, circuit, part, values }: Jack): string {
  return JSON.stringify([Object.keys(styleEntry(style).lines).sort(), circuit, part, values]);
}

/** Solve every map between two jacks. Maps that join the same lines, and differ only in conductors that carry nothing, share one solution. */
export function solveMaps(
  output: Jack,
  input: Jack,
  memory: MapMemory = new Map(),
): { candidates: readonly LeadCandidate[]; circuits: number } {
  const deadOut = deadContacts(output);
  const deadIn = deadContacts(input);
  const jacks = `${circuitKey(output)} ${circuitKey(input)}`;
  const circuits = new Set<string>();
  const candidates = conductorMaps(wiredContacts(output), wiredContacts(input)).map((conductors) => {
    const live = conductors.filter(({ from, to }) => !deadOut.has(from) && !deadIn.has(to));
    const joined = live.map(({ from, to }) => `${lineAt(output.style, from)}-${lineAt(input.style, to)}`);
    const key = `${jacks} ${joined.sort().join()}`;
    circuits.add(key);
    const found = memory.get(key) ?? checkLink(linkFor(output, input, live), 'outcome');
    memory.set(key, found);
    return candidateOf(output, input, conductors, found);
  });
  return { candidates, circuits: circuits.size };
}

/** Whether any way to lay conductors between two jacks works: only contacts with a circuit behind them are tried. */
export function someMapWorks(output: Jack, input: Jack): boolean {
  const live = (jack: Jack): readonly Contact[] => {
    const dead = deadContacts(jack);
    return wiredContacts(jack).filter((contact) => !dead.has(contact));
  };
  return conductorMaps(live(output), live(input)).some((conductors) =>
    works(checkLink(linkFor(output, input, conductors), 'outcome')),
  );
}

function candidateOf(
  output: Jack,
  input: Jack,
  conductors: readonly Conductor[],
  { outcome, danger }: LinkOutcome,
): LeadCandidate {
  const out = styleEntry(output.style).lines.shield;
  const into = styleEntry(input.style).lines.shield;
  const spares = conductors.filter(
    ({ from, to }) => lineAt(output.style, from) === undefined || lineAt(input.style, to) === undefined,
  ).length;
  const shieldJoined =
    out === undefined || into === undefined || conductors.some(({ from, to }) => from === out && to === into);
  const source = styleEntry(output.style).lines.source;
  const sourceGrounded =
    styleEntry(input.style).family === 'ground-referenced' &&
    source !== undefined &&
    conductors.some(({ from, to }) => from === source && to === into);
  return { conductors, outcome, danger, shieldJoined, spares, sourceGrounded };
}
