/** Stamps: how each part enters the matrix of modified nodal analysis, and which parts of a circuit float. */
import { GROUND } from './compile.ts';
import type { CompiledCircuit } from './compile.ts';
import { FLOATING_TIE_OHMS, SWITCH_ON_OHMS } from './elements.ts';
import { factorLinear } from './matrix.ts';
import type { Factor } from './matrix.ts';

/** Factors kept for one circuit: enough for the states of every switch of a link, few enough to stay small. */
const FACTORS_KEPT = 64;

/**
 * The factored linear part for the present switch positions.
 * @param perSecond companion of the capacitors, siemens for each farad; 0 at DC, where they are open.
 */
export function factorFor(compiled: CompiledCircuit, perSecond: number): Factor {
  const key = keyOf(compiled, perSecond);
  const known = compiled.factors.get(key);
  if (known) return known;
  if (compiled.factors.size >= FACTORS_KEPT) compiled.factors.clear();
  const made = buildFactor(compiled, perSecond);
  compiled.factors.set(key, made);
  return made;
}

function keyOf(compiled: CompiledCircuit, perSecond: number): string {
  let key = perSecond === 0 ? '' : String(perSecond);
  const { elements } = compiled.circuit;
  for (let at = 0; at < elements.length; at++) {
    if (elements[at]?.kind === 'switch') key += compiled.values[at] === 1 ? 'c' : 'o';
  }
  return key;
}

function buildFactor(compiled: CompiledCircuit, perSecond: number): Factor {
  const { unknowns: size, circuit, first, second, values, branch, junctions } = compiled;
  const matrix = new Float64Array(size * size);
  const add = (row: number, column: number, value: number): void => {
    if (row !== GROUND && column !== GROUND)
      matrix[row * size + column] = (matrix[row * size + column] as number) + value;
  };
  const join = (a: number, b: number, siemens: number): void => {
    add(a, a, siemens);
    add(b, b, siemens);
    add(a, b, -siemens);
    add(b, a, -siemens);
  };
  circuit.elements.forEach((element, at) => {
    const a = first[at] as number;
    const b = second[at] as number;
    const value = values[at] as number;
    if (element.kind === 'resistor') join(a, b, 1 / value);
    else if (element.kind === 'switch' && value === 1) join(a, b, 1 / SWITCH_ON_OHMS);
    else if (element.kind === 'capacitor' && perSecond > 0) join(a, b, value * perSecond);
    else if (element.kind === 'voltage') {
      const row = branch[at] as number;
      add(a, row, 1);
      add(b, row, -1);
      add(row, a, 1);
      add(row, b, -1);
    }
  });
  const floating = floatingParts(compiled, perSecond > 0);
  tieFloating(floating, (node) => add(node, node, 1 / FLOATING_TIE_OHMS));
  const linear = new Array<boolean>(size).fill(true);
  for (const ends of [junctions.anode, junctions.cathode])
    ends.forEach((node) => node !== GROUND && (linear[node] = false));
  return factorLinear(matrix, size, linear, floating);
}

/** For each node the number of the floating part it belongs to, or -1 where a way to ground exists. */
function floatingParts(compiled: CompiledCircuit, capacitorsJoin: boolean): Int32Array {
  const count = compiled.nodeNames.length;
  const parent = Int32Array.from({ length: count + 1 }, (_, at) => at);
  const root = (at: number): number => {
    let here = at;
    while (parent[here] !== here) here = parent[here] as number;
    return here;
  };
  compiled.circuit.elements.forEach((element, at) => {
    if (element.kind === 'current') return;
    if (element.kind === 'capacitor' && !capacitorsJoin) return;
    if (element.kind === 'switch' && compiled.values[at] !== 1) return;
    parent[root((compiled.first[at] as number) + 1)] = root((compiled.second[at] as number) + 1);
  });
  const grounded = root(0);
  const parts = new Int32Array(count);
  for (let node = 0; node < count; node++) {
    const here = root(node + 1);
    parts[node] = here === grounded ? -1 : here;
  }
  return parts;
}

function tieFloating(parts: Int32Array, tie: (node: number) => void): void {
  const tied = new Set<number>([-1]);
  parts.forEach((part, node) => {
    if (tied.has(part)) return;
    tied.add(part);
    tie(node);
  });
}

/** Write the sources into a right-hand side, each scaled; `side` is in the circuit's own order. */
export function loadSources(compiled: CompiledCircuit, scale: number, side: Float64Array): void {
  side.fill(0);
  const { circuit, first, second, values, branch } = compiled;
  for (let at = 0; at < circuit.elements.length; at++) {
    const kind = (circuit.elements[at] as { kind: string }).kind;
    const value = (values[at] as number) * scale;
    if (kind === 'voltage') side[branch[at] as number] = value;
    else if (kind === 'current') {
      const from = first[at] as number;
      const to = second[at] as number;
      if (from !== GROUND) side[from] = (side[from] as number) - value;
      if (to !== GROUND) side[to] = (side[to] as number) + value;
    }
  }
}
