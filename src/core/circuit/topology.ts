/** What the switch positions of a circuit decide: which parts float, and in which order rows are eliminated. */
import { GROUND } from './compiled.ts';
import type { CompiledCircuit, Topology } from './compiled.ts';
import { makeSolidMesh } from './mesh.ts';

/** The topology for the present switch positions: it does not depend on any other value. */
export function topologyFor(compiled: CompiledCircuit): Topology {
  if (compiled.topology) return compiled.topology;
  const { topologies, ofKind, values } = compiled;
  let key = '';
  for (const at of ofKind.switch) key += values[at] === 0 ? 'o' : values[at] === 1 ? 'c' : 'r';
  let found = topologies.get(key);
  if (!found) topologies.set(key, (found = makeTopology(compiled)));
  return (compiled.topology = found);
}

/** What touches a row: resistors and sources only, a capacitor besides, or something that is not linear. */
const STILL = 0;
const CHARGED = 1;
const NONLINEAR = 2;

function makeTopology(compiled: CompiledCircuit): Topology {
  const { first, second, values, ofKind, junctions, supernodes } = compiled;
  const { root } = supernodes;
  const floating = floatingParts(compiled);
  const ramps = ofKind.switch.filter((at) => values[at]! % 1 !== 0);
  const touched = new Uint8Array(root.length);
  const touch = (part: number, by: number): void => {
    for (const node of [root[first[part]!]!, root[second[part]!]!])
      if (touched[node]! < by) touched[node] = by;
  };
  for (const at of ofKind.capacitor) touch(at, CHARGED);
  for (const { element } of junctions) touch(element, NONLINEAR);
  for (const at of ramps) touch(at, NONLINEAR);
  const order: number[] = [];
  const place = (by: number): number => {
    for (let node = 1; node < root.length; node++)
      if (root[node] === node && touched[node] === by) order.push(node);
    return order.length;
  };
  const stillCount = place(STILL);
  const linearCount = place(CHARGED);
  const size = place(NONLINEAR);
  const rowOfRoot = new Int32Array(root.length).fill(size);
  order.forEach((node, at) => (rowOfRoot[node] = at));
  const row = root.map((node) => rowOfRoot[node]!);
  const changing = [...ofKind.capacitor, ...ofKind.diode, ...ofKind.switch];
  const watched = new Set(changing.flatMap((at) => [row[first[at]!]!, row[second[at]!]!]));
  const side = new Float64Array(size + 1);
  const left = size - linearCount;
  return {
    floating,
    tied: [...floating.keys()].filter(
      (node) => floating[node]! >= 0 && floating.indexOf(floating[node]!) === node,
    ),
    ramps,
    rampVolts: new Float64Array(ramps.length),
    row,
    roots: Int32Array.from(order),
    stillCount,
    linearCount,
    // A switch that is not part closed is a resistor or nothing.
    watched: [...watched].filter((at) => at >= stillCount && at < size).map((at) => at - stillCount),
    side,
    movingSide: side.subarray(stillCount),
    flow: new Float64Array(size * (size + 1)),
    movingFlow: new Float64Array((size - stillCount) * (size - stillCount + 1)),
    linearFlow: new Float64Array(left * (left + 1)),
    newtonFlow: new Float64Array(left * (left + 1)),
    newtonMesh: makeSolidMesh(left),
    newtonSide: new Float64Array(left + 1),
    still: undefined,
    moving: new Map(),
  };
}

/**
 * For each node the number of the floating part it belongs to, or -1 where a way to ground exists. A switch that is part closed is
 * no way yet: it begins with a picosiemens, over which the rounding of amperes that flow within a part alone would drive it by
 * millivolts. The tie carries a part until the switch is closed, and so its volts do not jump when the switch begins to move.
 */
function floatingParts({ circuit, first, second, values, nodeNames }: CompiledCircuit): Int32Array {
  const parent = Int32Array.from(nodeNames.keys());
  const top = (at: number): number => {
    let here = at;
    while (parent[here] !== here) here = parent[here]!;
    return here;
  };
  circuit.elements.forEach(({ kind }, at) => {
    if (kind === 'current' || kind === 'capacitor' || (kind === 'switch' && values[at]! < 1)) return;
    parent[top(first[at]!)] = top(second[at]!);
  });
  const grounded = top(GROUND);
  return parent.map((_, node) => (top(node) === grounded ? -1 : top(node)));
}
