/** Our solution beside the engine's: how far apart, as a share of what is allowed. */
import { nodesOf } from '../../src/core/circuit/elements.ts';
import type { Solved } from '../../src/core/circuit/operating-point.ts';
import type { CircuitDeck } from './deck-of.ts';
import type { Network } from './networks.ts';
import type { EnginePoint } from './spice.ts';

/** Voltages must agree to this, volts. */
export const VOLTS_ALLOWED = 1e-4;

/** Currents must agree to this share of the engine's current. */
const SHARE_ALLOWED = 1e-3;

/** And to this many amperes besides. */
const AMPERES_ALLOWED = 1e-9;

/** One quantity found by both; `excess` is the distance over the distance allowed: above 1, or not a number, they disagree. */
export interface Comparison {
  readonly what: string;
  readonly ours: number;
  readonly theirs: number;
  readonly excess: number;
}

/** Compare a voltage, volts. */
export function compareVolts(
  what: string,
  ours: number,
  theirs: number,
  allowed = VOLTS_ALLOWED,
): Comparison {
  return { what, ours, theirs, excess: Math.abs(ours - theirs) / allowed };
}

/** Compare a current, amperes. */
export function compareAmperes(what: string, ours: number, theirs: number): Comparison {
  return {
    what,
    ours,
    theirs,
    excess: Math.abs(ours - theirs) / (SHARE_ALLOWED * Math.abs(theirs) + AMPERES_ALLOWED),
  };
}

/**
 * Every node and every part of a circuit that the engine solved from our own deck of it; open switches must carry nothing.
 * Where a part floats only the voltages inside it mean anything: they are taken against its node `floating`.
 */
export function compareAll(
  { circuit, floating }: Network,
  deck: CircuitDeck,
  ours: Solved,
  theirs: EnginePoint,
): readonly Comparison[] {
  const nodes = new Set(circuit.elements.flatMap(nodesOf));
  nodes.delete(circuit.ground);
  const engineVolts = (node: string): number => theirs.volts.get(deck.nodes.get(node) ?? '') ?? NaN;
  const base = (node: string, voltsOf: (node: string) => number): number =>
    floating !== undefined && ours.floats(node) ? voltsOf(floating) : 0;
  return [
    ...[...nodes].map((node) =>
      compareVolts(
        node,
        ours.volts(node) - base(node, ours.volts),
        engineVolts(node) - base(node, engineVolts),
      ),
    ),
    ...circuit.elements
      .filter((element) => element.kind !== 'capacitor')
      .map(({ name }) => {
        const part = deck.parts.get(name);
        return compareAmperes(
          name,
          ours.amperes(name),
          part === undefined ? 0 : (theirs.amperes.get(part) ?? NaN),
        );
      }),
  ];
}

/** The worst of some comparisons; one that is not a number is worse than all. */
export function worstOf(comparisons: readonly Comparison[]): Comparison {
  const [first, ...rest] = comparisons;
  if (first === undefined) throw new Error('comparison: nothing was compared');
  return rest.reduce((worst, next) => (next.excess <= worst.excess ? worst : next), first);
}

/** A comparison in words, for a failed test. */
export function said({ what, ours, theirs, excess }: Comparison): string {
  return `${what}: ours ${ours}, engine ${theirs}, ${excess.toPrecision(3)} times the allowed distance`;
}
