/** Which lead? Every map of conductors between two jacks is solved; those that flow come back ranked. */
import { styleEntry } from '../wiring/index.ts';
import type { Jack } from '../wiring/index.ts';
import { checkLink } from './check.ts';
import { linkFor, solveMaps } from './maps.ts';
import type { LeadCandidate } from './maps.ts';
import { OUTCOMES } from './outcomes.ts';
import type { Outcome } from './outcomes.ts';
import { sayAmperes } from './speak.ts';

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
    return [{ candidate: best, reason: checkLink(linkFor(output, input, best.conductors)).sentence }];
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
      const [lead] = leads as readonly [LeadCandidate];
      const [best] = checkLink(linkFor(output, input, lead.conductors), 'outcome').inputs;
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
