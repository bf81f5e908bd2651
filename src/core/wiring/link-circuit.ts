/** The whole circuit of a link, ready to be compiled, with all that is needed to speak of it. */
import type { Circuit } from '../circuit/index.ts';
import type { Collector, LinkPart, Spread } from './build.ts';
import { OUTPUT_GROUND, collector, inputGround, inputNode } from './build.ts';
import type { Switching } from './driver-circuit.ts';
import { addDriver } from './driver-circuit.ts';
import type { Misfit } from './lead-circuit.ts';
import { addLeadSpreads, addLeads } from './lead-circuit.ts';
import type { Jack, Link } from './link.ts';
import type { Sense } from './receiver-circuit.ts';
import { addReceiver } from './receiver-circuit.ts';
import { styleEntry } from './styles.ts';
import type { Timing } from './timing.ts';

/** Whether the devices' grounds meet only through the lead, or elsewhere too (audio leads, a shared supply). */
export const GROUNDINGS = ['separate', 'joined'] as const;
/** How the grounds of a link meet. */
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

/**
 * Put the circuit of a link together. Values must be in range (see `linkProblem`).
 * @param timing given for a solution in time: adds the capacitance of the leads and a stage that has edges.
 */
export function linkCircuit(link: Link, grounding: Grounding, timing?: Timing): LinkCircuit {
  const into = collector();
  const switching = addDriver(into, link.output, timing !== undefined);
  const senses = link.branches.map(({ input }, branch) => addReceiver(into, input, branch));
  const misfits = link.branches.flatMap((branch, number) =>
    addLeads(into, link.output, branch, number, timing !== undefined),
  );
  addLeadSpreads(into);
  const grounded = link.branches.map(
    ({ input }) => input.circuit === 'receiver-logic' || input.circuit === 'receiver-led',
  );
  const pin2 = link.branches.map(({ input }, branch) => addPin2(into, input, branch, timing));
  if (grounding === 'joined') {
    grounded.forEach((has, branch) => {
      if (!has && !pin2[branch]) return;
      into.at({ place: 'world' }).tie(`grounds joined ${branch}`, OUTPUT_GROUND, inputGround(branch));
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

/** Add the capacitor from an isolated input's shield contact to its device's ground, if there is one. */
function addPin2(into: Collector, input: Jack, branch: number, timing: Timing | undefined): boolean {
  const { shield } = styleEntry(input.style).lines;
  const isolated = input.circuit === 'receiver-isolated' || input.circuit === 'receiver-both-ways';
  if (!timing || timing.pin2Farads === 0 || !isolated || shield === undefined) return false;
  into.at({ place: 'input', branch }).add('capacitance', {
    kind: 'capacitor',
    name: `in${branch} shield capacitor`,
    a: inputNode(branch, shield),
    b: inputGround(branch),
    farads: timing.pin2Farads,
  });
  return true;
}
