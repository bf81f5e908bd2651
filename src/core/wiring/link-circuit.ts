/** The whole circuit of a link, ready to be compiled, with all that is needed to speak of it. */
import type { Circuit } from '../circuit/elements.ts';
import type { LinkPart, Spread } from './build.ts';
import { OUTPUT_GROUND, collector, inputGround } from './build.ts';
import type { Switching } from './driver-circuit.ts';
import { addDriver } from './driver-circuit.ts';
import type { LeadSpreads, Misfit } from './lead-circuit.ts';
import { addLeadSpreads, addLeads } from './lead-circuit.ts';
import type { Link } from './link.ts';
import type { Sense } from './receiver-circuit.ts';
import { addReceiver } from './receiver-circuit.ts';

/** Whether the devices' grounds meet only through the lead, or elsewhere too (audio leads, a shared supply). */
export const GROUNDINGS = ['separate', 'joined'] as const;
export type Grounding = (typeof GROUNDINGS)[number];

/** A link as a circuit. `senses` has one entry an input; `switching` tells the two states. */
export interface LinkCircuit {
  readonly circuit: Circuit;
  readonly parts: readonly LinkPart[];
  readonly spreads: readonly Spread[];
  readonly switching: Switching;
  readonly senses: readonly Sense[];
  readonly misfits: readonly Misfit[];
  /** Whether any input has a ground of its own, so that the grounding can matter. */
  readonly groundMatters: boolean;
}

/** Put the circuit of a link together. Values must be in range (see `linkProblem`). */
export function linkCircuit(link: Link, grounding: Grounding): LinkCircuit {
  const into = collector();
  const switching = addDriver(into, link.output);
  const senses = link.branches.map(({ input }, branch) => addReceiver(into, input, branch));
  const spreads: LeadSpreads = { touches: [], conductors: [] };
  const misfits = link.branches.flatMap((branch, number) =>
    addLeads(into, spreads, link.output, branch, number),
  );
  addLeadSpreads(into, spreads);
  const grounded = link.branches.map(
    ({ input }) => input.circuit === 'receiver-logic' || input.circuit === 'receiver-led',
  );
  if (grounding === 'joined') {
    grounded.forEach((has, branch) => {
      if (!has) return;
      into.add({ place: 'world' }, 'grounds', {
        kind: 'switch',
        name: `grounds joined ${branch}`,
        a: OUTPUT_GROUND,
        b: inputGround(branch),
        closed: true,
      });
    });
  }
  return {
    circuit: { ground: OUTPUT_GROUND, elements: into.parts.map(({ element }) => element) },
    parts: into.parts,
    spreads: into.spreads,
    switching,
    senses,
    misfits,
    groundMatters: grounded.includes(true),
  };
}
