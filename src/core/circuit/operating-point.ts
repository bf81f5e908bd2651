/** Operating point of a circuit: capacitors open, every junction settled; or the node that keeps it from having one. */
import { GROUND, coolJunctions, elementNumber } from './compile.ts';
import type { CompiledCircuit } from './compile.ts';
import { GMIN_SIEMENS, SWITCH_ON_OHMS, switchSiemens } from './elements.ts';
import type { Element } from './elements.ts';
import { reduceSide, unfold } from './matrix.ts';
import type { Factor } from './matrix.ts';
import { newton } from './newton.ts';
import { factorFor } from './factors.ts';
import { loadSources } from './stamp.ts';

/** A node beyond this is no operating point but a current forced into parts that block it, volts. */
const VOLTS_BEYOND_REASON = 1e5;

/** Current into a floating part beyond this has nowhere to go, amperes. */
const STRANDED_AMPERES = 1e-15;

/** A solved circuit: volts against ground; amperes from a part's first node through it to its second. */
export interface Solved {
  readonly ok: true;
  volts(node: string): number;
  amperes(element: string): number;
  /** True where no way to ground exists, so that the volts mean nothing by themselves. */
  floats(node: string): boolean;
}

/** A circuit that has no operating point, and the node at which that shows. */
export interface Unsolved {
  readonly ok: false;
  readonly node: string;
  readonly reason: string;
}

export type Solution = Solved | Unsolved;

/**
 * Solve a compiled circuit at DC, junctions started afresh.
 * Newton first; then with the sources raised step by step. (Lowering the conductance across the junctions step by step, the usual
 * third way, was tried on circuits drawn by chance that the first way fails: it settled none that the second did not.)
 * @returns a snapshot, or the node that has no solution; never NaN.
 */
export function solveOperatingPoint(compiled: CompiledCircuit): Solution {
  const end = settle(compiled);
  return end ?? snapshot(compiled, factorFor(compiled));
}

/**
 * As `solveOperatingPoint`, but leaves the answer in `compiled.solution` without a snapshot: for sweeps.
 * @returns undefined when solved, else what went wrong.
 */
export function settle(compiled: CompiledCircuit): Unsolved | undefined {
  const factor = factorFor(compiled);
  const stranded = strandedCurrent(compiled, factor);
  if (stranded) return stranded;
  coolJunctions(compiled);
  const side = factor.answer;
  loadSources(compiled, 1, side);
  reduceSide(factor, side);
  let end = newton(compiled, factor, GMIN_SIEMENS);
  if (!end.converged) end = raiseSources(compiled, factor);
  if (!end.converged) {
    const node = unknownName(compiled, end.failedAt);
    return { ok: false, node, reason: `no operating point was found: node '${node}' does not settle` };
  }
  unfold(factor, compiled.solution);
  for (let node = 0; node < compiled.nodeNames.length; node++) {
    if (!(Math.abs(compiled.solution[node] as number) < VOLTS_BEYOND_REASON)) {
      const name = compiled.nodeNames[node] as string;
      return {
        ok: false,
        node: name,
        reason: `a current is forced into node '${name}', and every way out of it blocks`,
      };
    }
  }
  return undefined;
}

/**
 * As `settle`, but starts from the junction voltages as they stand: for a circuit whose values moved a little. Falls back on a
 * fresh start where that does not settle.
 */
export function settleAgain(compiled: CompiledCircuit): Unsolved | undefined {
  const factor = factorFor(compiled);
  loadSources(compiled, 1, factor.answer);
  reduceSide(factor, factor.answer);
  if (!newton(compiled, factor, GMIN_SIEMENS).converged) return settle(compiled);
  unfold(factor, compiled.solution);
  return undefined;
}

/** Steps in which sources are raised when nothing else settles. */
const SOURCE_STEPS = 50;

function raiseSources(compiled: CompiledCircuit, factor: Factor): ReturnType<typeof newton> {
  compiled.junctions.volts.fill(0);
  let end = { converged: true, steps: 0, failedAt: -1 };
  for (let step = 1; end.converged && step <= SOURCE_STEPS; step++) {
    const side = factor.answer;
    loadSources(compiled, step / SOURCE_STEPS, side);
    reduceSide(factor, side);
    end = newton(compiled, factor, GMIN_SIEMENS);
  }
  return end;
}

function strandedCurrent(compiled: CompiledCircuit, factor: Factor): Unsolved | undefined {
  const net = new Map<number, number>();
  const nodeIn = new Map<number, number>();
  compiled.circuit.elements.forEach((element, at) => {
    if (element.kind !== 'current') return;
    for (const [node, sign] of [
      [compiled.first[at] as number, -1],
      [compiled.second[at] as number, 1],
    ] as const) {
      const part = node === GROUND ? -1 : (factor.floating[node] as number);
      if (part < 0) continue;
      net.set(part, (net.get(part) ?? 0) + sign * (compiled.values[at] as number));
      nodeIn.set(part, node);
    }
  });
  for (const [part, amperes] of net) {
    if (Math.abs(amperes) <= STRANDED_AMPERES) continue;
    const node = compiled.nodeNames[nodeIn.get(part) as number] as string;
    return { ok: false, node, reason: `a current is forced into node '${node}', which has no way to ground` };
  }
  return undefined;
}

function unknownName(compiled: CompiledCircuit, at: number): string {
  const node = compiled.nodeNames[at];
  if (node !== undefined) return node;
  const source = compiled.branch.indexOf(at);
  const plus = source < 0 ? GROUND : (compiled.first[source] as number);
  const held = plus === GROUND && source >= 0 ? (compiled.second[source] as number) : plus;
  return compiled.nodeNames[held] ?? compiled.circuit.ground;
}

function snapshot(compiled: CompiledCircuit, factor: Factor): Solved {
  const solution = compiled.solution.slice();
  const junctionAmperes = compiled.junctions.amperes.slice();
  const values = compiled.values.slice();
  const nodeVolts = (node: number): number => (node === GROUND ? 0 : (solution[node] as number));
  return {
    ok: true,
    volts: (node) => nodeVolts(nodeNumber(compiled, node)),
    floats: (node) => {
      const number = nodeNumber(compiled, node);
      return number !== GROUND && (factor.floating[number] as number) >= 0;
    },
    amperes: (name) => {
      const at = elementNumber(compiled, name);
      const element = compiled.circuit.elements[at] as Element;
      const value = values[at] as number;
      const across = nodeVolts(compiled.first[at] as number) - nodeVolts(compiled.second[at] as number);
      switch (element.kind) {
        case 'resistor':
          return across / value;
        case 'switch':
          return across * (value === 1 ? 1 / SWITCH_ON_OHMS : switchSiemens(value));
        case 'capacitor':
          return 0;
        case 'current':
          return value;
        case 'voltage':
          return solution[compiled.branch[at] as number] as number;
        case 'diode':
          return junctionAmperes[compiled.junctions.element.indexOf(at)] as number;
      }
    },
  };
}

/** The number of a node. @throws when no node has that name. */
export function nodeNumber(compiled: CompiledCircuit, node: string): number {
  const number = compiled.nodeNumbers.get(node);
  if (number === undefined) throw new Error(`circuit: no node is called '${node}'`);
  return number;
}
