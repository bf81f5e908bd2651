/** Operating point of a circuit: capacitors open, every junction settled; or the node that keeps it from having one. */
import { nodeNumber } from './compiled.ts';
import type { CompiledCircuit, Topology } from './compiled.ts';
import { amperesThrough } from './currents.ts';
import { backSubstitute, reduceFlow, restOf } from './mesh.ts';
import { newton } from './newton.ts';
import { loadSources, movingMesh, setBase, stillMesh } from './stamp.ts';
import { topologyFor } from './topology.ts';

/** A node beyond this is no operating point but a current forced into parts that block it, volts. */
const VOLTS_BEYOND_REASON = 1e5;

/** Current into a floating part beyond this has nowhere to go, amperes. */
const STRANDED_AMPERES = 1e-15;

/** Steps in which sources are raised when nothing else settles. */
const SOURCE_STEPS = 50;

/** A solved circuit: volts against ground; amperes from a part's first node through it to its second. */
export interface Solved {
  readonly ok: true;
  volts(node: string): number;
  amperes(element: string): number;
  /** True where no way to ground exists, so that the volts mean nothing by themselves. */
  floats(node: string): boolean;
}

/** A circuit that has no operating point, or no solution in time from some moment on, and the node at which that shows. */
export interface Unsolved {
  readonly ok: false;
  readonly node: string;
  readonly reason: string;
  /** Only in time: up to where it is solved. */
  readonly seconds?: number;
}

/** What became of a circuit at DC. */
export type Solution = Solved | Unsolved;

/**
 * Solve a compiled circuit at DC, junctions started afresh.
 * Newton first; then with the sources raised step by step. (Lowering the conductance across the junctions step by step, the usual
 * third way, was tried on circuits drawn by chance that the first way fails: it settled none that the second did not.)
 * @returns a snapshot, or the node that has no solution; never NaN.
 */
export function solveOperatingPoint(compiled: CompiledCircuit): Solution {
  return settle(compiled) ?? snapshot(compiled);
}

/**
 * As `solveOperatingPoint`, but leaves the answer in `compiled.volts` without a snapshot: for sweeps.
 * @returns undefined when solved, else what went wrong.
 */
export function settle(compiled: CompiledCircuit): Unsolved | undefined {
  const { loop } = compiled.supernodes;
  const topology = topologyFor(compiled);
  const stranded = strandedAt(compiled, topology);
  if (stranded !== undefined)
    return unsolved(
      compiled,
      stranded,
      (node) => `a current is forced into ${node}, which has no way to ground`,
    );
  for (const junction of compiled.junctions) junction.volts = junction.criticalVolts;
  const failed =
    loop ?? (solveAtRest(compiled, topology) === undefined ? undefined : raiseSources(compiled, topology));
  if (failed !== undefined)
    return unsolved(compiled, failed, (node) => `no operating point was found: ${node} does not settle`);
  const beyond = compiled.volts.findIndex((volts) => !(Math.abs(volts) < VOLTS_BEYOND_REASON));
  if (beyond < 0) return undefined;
  return unsolved(
    compiled,
    beyond,
    (node) => `a current is forced into ${node}, and every way out of it blocks`,
  );
}

/**
 * As `settle`, but starts from the junction voltages given: for a circuit whose values moved a little. Falls back on a fresh start
 * where that does not settle.
 */
export function settleFrom(
  compiled: CompiledCircuit,
  junctionVolts: readonly number[],
): Unsolved | undefined {
  for (let at = 0; at < junctionVolts.length; at++) compiled.junctions[at]!.volts = junctionVolts[at]!;
  if (compiled.supernodes.loop === undefined && solveAtRest(compiled, topologyFor(compiled)) === undefined)
    return undefined;
  return settle(compiled);
}

function unsolved(compiled: CompiledCircuit, at: number, reason: (node: string) => string): Unsolved {
  const node = compiled.nodeNames[at]!;
  return { ok: false, node, reason: reason(`node '${node}'`) };
}

/** Solve with the sources scaled. @returns undefined, or the number of the node that does not settle. */
export function solveAtRest(compiled: CompiledCircuit, topology: Topology, scale = 1): number | undefined {
  const { side, movingSide, movingFlow, linearFlow, row } = topology;
  const still = stillMesh(compiled, topology);
  const mesh = movingMesh(compiled, topology, 0);
  loadSources(compiled, topology, scale);
  setBase(compiled, topology);
  reduceFlow(mesh, movingFlow, movingSide);
  restOf(movingFlow, mesh.size, mesh.eliminated, linearFlow);
  const failed = newton(compiled, topology, mesh, movingSide);
  if (failed !== undefined) return failed;
  backSubstitute(still, side);
  side[still.size] = 0;
  const { volts, supernodes } = compiled;
  for (let node = 0; node < volts.length; node++) volts[node] = side[row[node]!]! + supernodes.offsets[node]!;
  return undefined;
}

function raiseSources(compiled: CompiledCircuit, topology: Topology): number | undefined {
  for (const junction of compiled.junctions) junction.volts = 0;
  for (let step = 1; step <= SOURCE_STEPS; step++) {
    const failed = solveAtRest(compiled, topology, step / SOURCE_STEPS);
    if (failed !== undefined) return failed;
  }
  return undefined;
}

/** A node of a floating part into which current sources drive more than they take out, if there is one. */
function strandedAt(
  { ofKind, first, second, values }: CompiledCircuit,
  { floating }: Topology,
): number | undefined {
  if (ofKind.current.length === 0) return undefined;
  const net = new Map<number, { node: number; amperes: number }>();
  for (const at of ofKind.current) {
    for (const [node, amperes] of [
      [first[at]!, -values[at]!],
      [second[at]!, values[at]!],
    ] as const) {
      const part = floating[node]!;
      if (part >= 0) net.set(part, { node, amperes: (net.get(part)?.amperes ?? 0) + amperes });
    }
  }
  return [...net.values()].find(({ amperes }) => Math.abs(amperes) > STRANDED_AMPERES)?.node;
}

function snapshot(compiled: CompiledCircuit): Solved {
  const volts = compiled.volts.slice();
  const values = compiled.values.slice();
  const junctionAmperes = compiled.junctions.map(({ amperes }) => amperes);
  const { floating } = topologyFor(compiled);
  const reading = {
    across: (at: number) => volts[compiled.first[at]!]! - volts[compiled.second[at]!]!,
    value: (at: number) => values[at]!,
    junction: (at: number) => junctionAmperes[at]!,
    charging: () => 0,
  };
  return {
    ok: true,
    volts: (node) => volts[nodeNumber(compiled, node)]!,
    floats: (node) => floating[nodeNumber(compiled, node)]! >= 0,
    amperes: (name) => amperesThrough(compiled, name, reading),
  };
}
