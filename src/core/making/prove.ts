/** The proof of a lead: the smallest sets of faults that explain what continuity said, and what would part them. */
import { sayList } from '../verdict/index.ts';
import type { Lead } from '../wiring/index.ts';
import { faultsOf, madeLead, placedEnds, sayLeadFault } from './lead-faults.ts';
import type { LeadFault } from './lead-faults.ts';
import { fullTable, sayPlace, tableOf } from './lead-table.ts';
import type { Beep, ProofPlace, ProofReading } from './lead-table.ts';

/** Most faults that are looked for together: more are a lead to make again. */
const MOST_FAULTS = 2;

/** What the proof says. */
export interface Proof {
  readonly state: 'as-planned' | 'faults' | 'not-explained';
  /** Every smallest set of faults that explains the readings; empty sets are not listed. */
  readonly sets: readonly (readonly LeadFault[])[];
  /** The same sets, grouped: those of one group read alike in every place of the table, so no reading can tell them apart. */
  readonly alike: readonly (readonly number[])[];
  /** The place of the table, not read yet, that parts the groups best. */
  readonly next: ProofPlace | undefined;
  readonly sentence: string;
}

/** Prove a lead against its plan by the readings taken; places not read are taken to say nothing. */
export function proveLead(lead: Lead, readings: readonly ProofReading[]): Proof {
  // What differs from the plan comes first: most sets of faults fail there.
  const planned = tableOf(madeLead(lead, []));
  const odd = readings.filter((reading) => planned(reading) !== reading.says);
  const ordered = [...odd, ...readings.filter((reading) => !odd.includes(reading))];
  const explains = (faults: readonly LeadFault[]): boolean => {
    const says = tableOf(madeLead(lead, faults));
    return ordered.every((reading) => says(reading) === reading.says);
  };
  const sets = smallestSets(lead, explains);
  const asPlanned = sets?.length === 1 && sets[0]?.length === 0;
  if (!sets) return { state: 'not-explained', sets: [], alike: [], next: undefined, sentence: NOT_EXPLAINED };
  if (asPlanned)
    return {
      state: 'as-planned',
      sets: [],
      alike: [],
      next: undefined,
      sentence: sayPlanned(lead, readings),
    };
  const { alike, next } = partSets(lead, sets, readings);
  return { state: 'faults', sets, alike, next, sentence: saySets(lead, sets, alike, next) };
}

type Sets = readonly (readonly LeadFault[])[];

/** Every smallest set of at most `MOST_FAULTS` faults that explains the readings, or undefined when there is none. */
function smallestSets(lead: Lead, explains: (faults: readonly LeadFault[]) => boolean): Sets | undefined {
  const faults = faultsOf(lead);
  const ends = faults.map(placedEnds);
  const grow = (
    chosen: readonly LeadFault[],
    placed: readonly string[],
    from: number,
    size: number,
  ): Sets => {
    if (size === 0) return explains(chosen) ? [chosen] : [];
    const found: (readonly LeadFault[])[] = [];
    for (let at = from; at < faults.length; at++) {
      const mine = ends[at] as readonly string[];
      // Two faults that say where the same end goes are not one set.
      if (mine.some((end) => placed.includes(end))) continue;
      found.push(...grow([...chosen, faults[at] as LeadFault], [...placed, ...mine], at + 1, size - 1));
    }
    return found;
  };
  for (let size = 0; size <= MOST_FAULTS; size++) {
    const found = grow([], [], 0, size);
    if (found.length > 0) return found;
  }
  return undefined;
}

/** Group sets that read alike everywhere, and find the place that leaves the largest group of answers smallest. */
function partSets(
  lead: Lead,
  sets: readonly (readonly LeadFault[])[],
  readings: readonly ProofReading[],
): { readonly alike: readonly (readonly number[])[]; readonly next: ProofPlace | undefined } {
  const places = fullTable(lead);
  const columns = sets.map((set) => places.map(tableOf(madeLead(lead, set))));
  const groups = new Map<string, number[]>();
  columns.forEach((column, at) => {
    const name = column.join();
    groups.set(name, [...(groups.get(name) ?? []), at]);
  });
  const alike = [...groups.values()];
  let next: ProofPlace | undefined;
  let least = alike.length;
  places.forEach((place, at) => {
    if (readings.some((one) => samePlace(one, place))) return;
    const answers = new Map<Beep, number>();
    for (const [first = 0] of alike) {
      const says = (columns[first] as Beep[])[at] as Beep;
      answers.set(says, (answers.get(says) ?? 0) + 1);
    }
    const most = Math.max(...answers.values());
    if (most < least) [least, next] = [most, place];
  });
  return { alike, next };
}

function samePlace(a: ProofPlace, b: ProofPlace): boolean {
  const same = (x: ProofPlace['a'], y: ProofPlace['a']): boolean =>
    x.side === y.side && x.contact === y.contact;
  return a.hold === b.hold && ((same(a.a, b.a) && same(a.b, b.b)) || (same(a.a, b.b) && same(a.b, b.a)));
}

const NOT_EXPLAINED =
  'No one or two faults explain these readings. Take them again with clean probes; if they stay, open the plugs and make the lead again from the table.';

function sayPlanned(lead: Lead, readings: readonly ProofReading[]): string {
  // What is silent while the lead lies still is silent with a plug moved too: no fault joins contacts by moving.
  const told = (place: ProofPlace): boolean =>
    readings.some(
      (one) =>
        samePlace(one, place) || (one.says === 'silent' && samePlace(one, { ...place, hold: 'still' })),
    );
  const left = fullTable(lead).filter((place) => !told(place)).length;
  return left === 0
    ? 'The lead is as planned: every reading of the full table agrees.'
    : `So far the lead is as planned; ${left} places of the full table are not read.`;
}

/** A set of faults in words. */
export function saySet(lead: Lead, set: readonly LeadFault[]): string {
  return sayList(set.map((fault) => sayLeadFault(lead, fault)));
}

/** The smallest sets of faults in words, those that no reading tells apart in one group. */
export function sayAlike(lead: Lead, { sets, alike }: Proof): readonly (readonly string[])[] {
  return alike.map((group) => group.map((at) => saySet(lead, sets[at] ?? [])));
}

/** Sets named in a sentence; the rest are counted. */
const SETS_NAMED = 3;

function saySets(
  lead: Lead,
  sets: readonly (readonly LeadFault[])[],
  alike: readonly (readonly number[])[],
  next: ProofPlace | undefined,
): string {
  const named = sets.slice(0, SETS_NAMED).map((set) => saySet(lead, set));
  const rest = sets.length > SETS_NAMED ? `, or ${sets.length - SETS_NAMED} more explanations` : '';
  const cannot = alike.some((group) => group.length > 1)
    ? ' Some of these read alike everywhere: look inside the plug.'
    : '';
  const ask = next ? ` Next: ${sayPlace(next)}.` : '';
  return `Either ${named.join('; or ')}${rest}.${cannot}${ask}`.replace(
    /^Either (?!.*; or |.*, or )/,
    'Found: ',
  );
}
