/** Which lead? Every map of conductors between two jacks is solved; those that flow come back ranked. */
import type { Contact } from '../wiring/index.ts';
import { contactsOf, familyOf } from '../wiring/index.ts';
import type { Conductor, Jack, Lead, Link } from '../wiring/index.ts';
import { makeLead } from '../wiring/index.ts';
import type { Grounding } from '../wiring/index.ts';
import { lineAt, styleEntry } from '../wiring/index.ts';
import { checkLink } from './check.ts';
import type { LinkVerdict } from './check.ts';
import { judgeInputs } from './judge.ts';
import { OUTCOMES } from './outcomes.ts';
import type { Outcome } from './outcomes.ts';
import { prepareLink } from './prepare.ts';
import { outcomeOf, quickOutcome } from './quick.ts';
import { sayAmperes } from './speak.ts';

/** One map of conductors with its outcome. */
export interface LeadCandidate {
  readonly conductors: readonly Conductor[];
  readonly outcome: Outcome;
  /** Whether shield meets shield, as the standard wants it; true where a jack has no shield. */
  readonly shieldJoined: boolean;
  /** Conductors on contacts that carry no line in either jack. */
  readonly spares: number;
  /** Whether the output's source line is led to the input's ground: it works while grounds are apart, and is shorted where they meet. */
  readonly sourceGrounded: boolean;
}

/** The answer to 'which lead?'. `leads` is ranked, best first: those that flow, or where none does those that are weak. `nearMisses` holds the plainest map of each other outcome, with its verdict. */
export interface LeadAnswer {
  readonly answer: 'lead' | 'weak-only' | 'no-passive-lead';
  readonly sentence: string;
  readonly leads: readonly LeadCandidate[];
  readonly nearMisses: readonly { readonly candidate: LeadCandidate; readonly reason: string }[];
  /** Maps looked at, and how many different circuits they make. */
  readonly maps: number;
  readonly circuits: number;
  /** Outcome counts over all maps. */
  readonly counts: Readonly<Record<Outcome, number>>;
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

/** The lead that a map stands for: 1 m of 26 AWG with plugs that match the jacks. */
export function leadFor(output: Jack, input: Jack, conductors: readonly Conductor[]): Lead {
  return makeLead(output.connector, input.connector, conductors);
}

/** Solve every map between two jacks. Maps that differ only in conductors that carry nothing share one solution. */
export function solveMaps(
  output: Jack,
  input: Jack,
): { candidates: readonly LeadCandidate[]; circuits: number } {
  const deadOut = deadContacts(output);
  const deadIn = deadContacts(input);
  const solved = new Map<string, Outcome>();
  const candidates = conductorMaps(wiredContacts(output), wiredContacts(input)).map((conductors) => {
    const live = conductors.filter(({ from, to }) => !deadOut.has(from) && !deadIn.has(to));
    const key = live.map(({ from, to }) => `${from}-${to}`).join();
    let outcome = solved.get(key);
    if (outcome === undefined) {
      outcome = solveMap(output, input, live);
      solved.set(key, outcome);
    }
    return candidateOf(output, input, conductors, outcome);
  });
  return { candidates, circuits: solved.size };
}

/** Solve one map: nominal first, and at all corners where nominal is right. */
export function solveMap(output: Jack, input: Jack, conductors: readonly Conductor[]): Outcome {
  const link: Link = { output, branches: [{ input, leads: [leadFor(output, input, conductors)] }] };
  const nominal = quickOutcome(link, false);
  return nominal === 'flows' ? quickOutcome(link, true) : nominal;
}

/** Nominal outcome of one map, grounds one way: the plain solution that a sweep over all maps repeats. */
export function solveMapOnce(
  output: Jack,
  input: Jack,
  conductors: readonly Conductor[],
  grounding: Grounding,
): Outcome {
  return outcomeOf(
    judgeInputs(
      prepareLink({ output, branches: [{ input, leads: [leadFor(output, input, conductors)] }] }, grounding),
      false,
    ),
  );
}

function candidateOf(
  output: Jack,
  input: Jack,
  conductors: readonly Conductor[],
  outcome: Outcome,
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
  return { conductors, outcome, shieldJoined, spares, sourceGrounded };
}

/** Best first: no source line led to a ground, then shield as the standard wants it, then fewest conductors, then none on spare pins. */
function rank(a: LeadCandidate, b: LeadCandidate): number {
  return (
    Number(a.sourceGrounded) - Number(b.sourceGrounded) ||
    Number(b.shieldJoined) - Number(a.shieldJoined) ||
    a.conductors.length - b.conductors.length ||
    a.spares - b.spares
  );
}

/** Find every lead that works between two jacks, and the near misses with their reasons. */
export function findLead(output: Jack, input: Jack): LeadAnswer {
  const { candidates, circuits } = solveMaps(output, input);
  const counts = Object.fromEntries(OUTCOMES.map((outcome) => [outcome, 0])) as Record<Outcome, number>;
  for (const { outcome } of candidates) counts[outcome]++;
  const ranked = (outcome: Outcome): readonly LeadCandidate[] =>
    candidates.filter((one) => one.outcome === outcome).sort(rank);
  const leads = counts.flows > 0 ? ranked('flows') : ranked('weak');
  const answer = counts.flows > 0 ? 'lead' : leads.length > 0 ? 'weak-only' : 'no-passive-lead';
  const nearMisses = OUTCOMES.filter(
    (outcome) => outcome !== 'flows' && leads[0]?.outcome !== outcome,
  ).flatMap((outcome) => {
    const best = candidates
      .filter((one) => one.outcome === outcome && one.conductors.length >= 2)
      .sort(nearest)[0];
    if (!best) return [];
    return [{ candidate: best, reason: verdictOn(output, input, best).sentence }];
  });
  return {
    answer,
    sentence: sentenceOf(answer, candidates.length, leads, output, input),
    leads,
    nearMisses,
    maps: candidates.length,
    circuits,
    counts,
  };
}

/** Nearest to a lead someone would make: no spare pins, then shield joined, then fewest conductors. */
function nearest(a: LeadCandidate, b: LeadCandidate): number {
  return a.spares - b.spares || rank(a, b);
}

/** The full verdict on a candidate. */
export function verdictOn(output: Jack, input: Jack, candidate: LeadCandidate): LinkVerdict {
  return checkLink({ output, branches: [{ input, leads: [leadFor(output, input, candidate.conductors)] }] });
}

function sentenceOf(
  answer: LeadAnswer['answer'],
  maps: number,
  leads: readonly LeadCandidate[],
  output: Jack,
  input: Jack,
): string {
  const unknown = input.part === 'unknown';
  switch (answer) {
    case 'lead': {
      const sure = unknown
        ? ' The part in the receiver is not known: this holds for the worst part that the 2014 update names.'
        : '';
      return `${leads.length} of ${maps} ways to lay the conductors work; the first is the plainest.${sure}`;
    }
    case 'weak-only': {
      const best = verdictOn(output, input, leads[0] as LeadCandidate).inputs[0];
      const margin = best
        ? ` The plainest gives ${sayAmperes(best.active)} at nominal and ${sayAmperes(best.worstActive)} when every tolerance is at its worst, against ${sayAmperes(best.on)} to turn on.`
        : '';
      const meaning = unknown
        ? ' The part in the receiver is not known, and the worst one is assumed: the lead is right, and will do with all but the least sensitive part on a bad day.'
        : '';
      return `${leads.length} of ${maps} ways to lay the conductors work at nominal, none at every corner of the tolerances.${best?.kind === 'current' ? margin : ''}${meaning}`;
    }
    case 'no-passive-lead':
      if (output.circuit === 'driver-off')
        return 'No lead can do anything while the output has no supply: switch it on first.';
      return `No passive lead can: none of ${maps} ways to lay the conductors works between ${styleEntry(output.style).label} out and ${styleEntry(input.style).label} in. It needs a powered converter, or another outlet.`;
  }
}

/** What to ask a shop for: plugs and order of contacts in words. */
export function shopWords(output: Jack, input: Jack, conductors: readonly Conductor[]): string {
  const live = conductors.filter(
    ({ from, to }) => lineAt(output.style, from) !== undefined && lineAt(input.style, to) !== undefined,
  );
  const map = new Map(live.map(({ from, to }) => [from, to]));
  const straight = live.every(({ from, to }) => from === to);
  const families = [familyOf(output.connector), familyOf(input.connector)];
  if (families[0] === families[1]) {
    if (straight) return 'straight: each contact to the same contact';
    return map.get('tip') === 'ring' && map.get('ring') === 'tip'
      ? 'crossed: tip and ring change places'
      : 'own wiring: have it made';
  }
  const pin = (contact: Contact): Contact | undefined =>
    families[0] === 'din' ? map.get(contact) : [...map].find(([, to]) => to === contact)?.[0];
  const shield = pin('2') === 'sleeve' ? ', pin 2 on sleeve' : '';
  if (pin('5') === 'tip' && pin('4') === 'ring')
    return `wired as Type A: pin 5 on tip, pin 4 on ring${shield}`;
  if (pin('4') === 'tip' && pin('5') === 'ring')
    return `wired as Type B: pin 4 on tip, pin 5 on ring${shield}`;
  return 'own wiring: have it made';
}
