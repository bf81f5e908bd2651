/** Which lead? Every map of conductors between two jacks is solved; those that flow come back ranked. */
import { styleEntry } from '../wiring/index.ts';
import type { Jack } from '../wiring/index.ts';
import { checkLink } from './check.ts';
import type { InputVerdict } from './judge.ts';
import { linkFor, solveMaps } from './maps.ts';
import type { LeadCandidate, MapMemory } from './maps.ts';
import { OUTCOMES, works } from './outcomes.ts';
import type { Outcome } from './outcomes.ts';
import { sayBeside } from './speak.ts';

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

/** The leads that work between two jacks, best first: those that flow, or where none does those that are weak. */
function pickWorking(candidates: readonly LeadCandidate[]): Pick<LeadAnswer, 'answer' | 'leads'> {
  const working = candidates.filter(works).sort(rank);
  const flowing = working.filter(({ outcome }) => outcome === 'flows');
  if (flowing.length > 0) return { answer: 'lead', leads: flowing };
  return { answer: working.length > 0 ? 'weak-only' : 'no-passive-lead', leads: working };
}

/** The leads that work between two jacks, best first, without a word: for callers that ask for many pairs. */
export function workingLeads(output: Jack, input: Jack, memory?: MapMemory): readonly LeadCandidate[] {
  return pickWorking(solveMaps(output, input, memory).candidates).leads;
}

/** Find every lead that works between two jacks, and the near misses with their reasons. */
export function findLead(output: Jack, input: Jack): LeadAnswer {
  const { candidates, circuits } = solveMaps(output, input);
  const counts = Object.fromEntries(OUTCOMES.map((outcome) => [outcome, 0])) as Record<Outcome, number>;
  for (const { outcome } of candidates) counts[outcome]++;
  const { answer, leads } = pickWorking(candidates);
  const nearMisses = OUTCOMES.flatMap((outcome) => {
    const [best] = candidates
      .filter((one) => one.outcome === outcome && one.conductors.length >= 2 && !leads.includes(one))
      .sort(nearest);
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
  const parts =
    input.part === 'unknown' ? ' The part in the receiver is not known: each usual one was solved.' : '';
  const some = `${leads.length} of ${maps} possible wirings work`;
  switch (answer) {
    case 'lead':
      return `${some}; the simplest is first.${parts}`;
    case 'weak-only': {
      const [lead] = leads as readonly [LeadCandidate];
      const [best] = checkLink(linkFor(output, input, lead.conductors), 'outcome').inputs;
      const margin = best?.kind === 'current' ? sayMargin(best) : '';
      return `${some} at typical values, none with every part at its worst.${margin}${parts}`;
    }
    case 'no-passive-lead':
      if (output.circuit === 'driver-off')
        return 'No lead can do anything while the output has no supply: switch it on first.';
      return `No passive lead can: none of ${maps} possible wirings works between ${styleEntry(output.style).label} out and ${styleEntry(input.style).label} in. It needs a powered converter, or another output.`;
  }
}

function sayMargin({ active, worstActive, on }: InputVerdict): string {
  const say = sayBeside([active, worstActive], [on]);
  return ` The simplest gives ${say(active)} at typical values and ${say(worstActive)} with every part at its worst, against ${say(on)} to turn on.`;
}
