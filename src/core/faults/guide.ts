/** The guide 'nothing arrives': which observation tells most of what is left, and how likely each fault is now. */
import { USUAL_FREQUENCIES, benchTable, suspectsLeft, weigh } from './bench-table.ts';
import type { BenchTable, Frequencies, Seen } from './bench-table.ts';
import { sayBoardFault } from './board-faults.ts';
import type { BenchBoard, BoardFault } from './board-faults.ts';
import type { Observation } from './observation.ts';
import type { Symptom } from './board-symptoms.ts';
import { bitsOfObservation } from './decision.ts';
import type { Suspects } from './decision.ts';

/** The next observation, and how likely each name is now. */
export interface GuideStep {
  readonly observation: Observation | undefined;
  readonly bits: number;
  readonly words: string;
  readonly suspects: readonly {
    readonly name: string;
    readonly words: string;
    readonly probability: number;
  }[];
}

/**
 * The guide: the most telling observation among those not made, easier ones first where they tell as much. What is
 * `skipped`, by identifier, cannot be observed and is not asked for.
 */
export function guide(
  board: BenchBoard,
  symptoms: readonly Symptom[] | undefined,
  made: readonly Seen[],
  frequencies: Frequencies = USUAL_FREQUENCIES,
  skipped: readonly string[] = [],
): GuideStep {
  const table = benchTable(board);
  const left = suspectsLeft(table, symptoms, made);
  const suspects = weigh(table, frequencies);
  const ranked = table.observations
    .map((observation, at) => ({ observation, bits: bitsOfObservation(suspects, left, at) }))
    .filter(({ observation: { id } }) => !skipped.includes(id) && !made.some((one) => one.id === id))
    .sort((a, b) => b.bits - 0.001 * b.observation.effort - (a.bits - 0.001 * a.observation.effort));
  const best = ranked[0] && ranked[0].bits > 1e-9 ? ranked[0] : undefined;
  const named = namesOf(table, suspects, left);
  return {
    observation: best?.observation,
    bits: best?.bits ?? 0,
    words: sayStep(best?.observation, named),
    suspects: named,
  };
}

function namesOf(table: BenchTable, suspects: Suspects, left: readonly number[]): GuideStep['suspects'] {
  const total = left.reduce((sum, at) => sum + (suspects.weights[at] as number), 0);
  const names = new Map<string, { words: string; probability: number }>();
  for (const at of left) {
    const name = suspects.names[at] as string;
    const known = names.get(name) ?? { words: sayBoardFault(table.faults[at] as BoardFault), probability: 0 };
    known.probability += (suspects.weights[at] as number) / total;
    names.set(name, known);
  }
  return [...names].map(([name, one]) => ({ name, ...one })).sort((a, b) => b.probability - a.probability);
}

function sayStep(observation: Observation | undefined, named: GuideStep['suspects']): string {
  if (named.length === 0)
    return 'No single fault of this board shows all of that. Look again, from the start.';
  if (named.length === 1) return `Only one fault is left. ${named[0]?.words ?? ''}.`;
  if (!observation)
    return `Nothing more can tell these apart: ${named.map(({ words }) => words).join('; ')}. Open the plug and look.`;
  return `${named.length} faults are left. ${observation.words}`;
}
