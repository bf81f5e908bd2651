/** What the switch positions of a circuit decide: which parts float, and in which order rows are eliminated. */
import { GROUND } from './compiled.ts';
import type { CompiledCircuit, Topology } from './compiled.ts';
import { makeSolidMesh } from './mesh.ts';
import { takeIndices, takeNumbers } from './room.ts';

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
  const { room, values, ofKind } = compiled;
  const floating = floatingParts(compiled);
  const ramps = ofKind.switch.filter((at) => values[at]! % 1 !== 0);
  const { row, roots, stillCount, linearCount } = orderRows(compiled, ramps);
  const size = roots.length;
  const moving = size - stillCount;
  const left = size - linearCount;
  const side = takeNumbers(room, size + 1);
  return {
    floating,
    tied: tiedNodes(floating),
    ramps,
    rampRows: rowsOf(compiled, ramps, row, linearCount),
    rampVolts: takeNumbers(room, ramps.length),
    row,
    roots,
    stillCount,
    linearCount,
    capacitorRows: rowsOf(compiled, ofKind.capacitor, row, stillCount),
    junctionRows: rowsOf(compiled, ofKind.diode, row, linearCount),
    watched: watchedRows(compiled, row, stillCount, size),
    side,
    movingSide: side.subarray(stillCount),
    flow: takeNumbers(room, size * (size + 1)),
    movingFlow: takeNumbers(room, moving * (moving + 1)),
    linearFlow: takeNumbers(room, left * (left + 1)),
    newtonFlow: takeNumbers(room, left * (left + 1)),
    newtonMesh: makeSolidMesh(room, left),
    newtonSide: takeNumbers(room, left + 1),
    still: undefined,
    moving: new Map(),
  };
}

/** Number the rows: still ones first, then those that only capacitors touch besides, then the others. */
function orderRows(
  { room, first, second, ofKind, junctions, supernodes: { root } }: CompiledCircuit,
  ramps: readonly number[],
): Pick<Topology, 'row' | 'roots' | 'stillCount' | 'linearCount'> {
  const touched = new Uint8Array(root.length);
  const touch = (part: number, by: number): void => {
    const [a, b] = [root[first[part]!]!, root[second[part]!]!];
    if (touched[a]! < by) touched[a] = by;
    if (touched[b]! < by) touched[b] = by;
  };
  for (const at of ofKind.capacitor) touch(at, CHARGED);
  for (const { element } of junctions) touch(element, NONLINEAR);
  for (const at of ramps) touch(at, NONLINEAR);
  const row = takeIndices(room, root.length);
  const places = takeIndices(room, root.length);
  let size = 0;
  const place = (by: number): number => {
    for (let node = 1; node < root.length; node++) {
      if (root[node] !== node || touched[node] !== by) continue;
      places[size] = node;
      row[node] = size++;
    }
    return size;
  };
  const stillCount = place(STILL);
  const linearCount = place(CHARGED);
  place(NONLINEAR);
  row[GROUND] = size;
  for (let node = 0; node < root.length; node++) row[node] = row[root[node]!]!;
  return { row, roots: places.subarray(0, size), stillCount, linearCount };
}

/** The two rows of each part, counted from `start`. */
function rowsOf(
  { room, first, second }: CompiledCircuit,
  parts: readonly number[],
  row: Int32Array,
  start: number,
): Int32Array {
  const rows = takeIndices(room, 2 * parts.length);
  parts.forEach((part, at) => {
    rows[2 * at] = row[first[part]!]! - start;
    rows[2 * at + 1] = row[second[part]!]! - start;
  });
  return rows;
}

/** Rows, counted from the first that moves, of capacitors, junctions and switches: one that is not part closed is a resistor or nothing. */
function watchedRows(
  { first, second, ofKind }: CompiledCircuit,
  row: Int32Array,
  stillCount: number,
  size: number,
): readonly number[] {
  const seen = new Uint8Array(size + 1);
  const watched: number[] = [];
  const watch = (node: number): void => {
    const at = row[node]!;
    if (at >= stillCount && at < size && seen[at] === 0) watched.push(at - stillCount);
    seen[at] = 1;
  };
  for (const parts of [ofKind.capacitor, ofKind.diode, ofKind.switch])
    for (const at of parts) {
      watch(first[at]!);
      watch(second[at]!);
    }
  return watched;
}

/** One node of each floating part. */
function tiedNodes(floating: Int32Array): readonly number[] {
  const tied: number[] = [];
  for (let node = 0; node < floating.length; node++)
    if (floating[node]! >= 0 && floating.indexOf(floating[node]!) === node) tied.push(node);
  return tied;
}

/**
 * For each node the number of the floating part it belongs to, or -1 where a way to ground exists. A switch that is part closed is
 * no way yet: it begins with a picosiemens, over which the rounding of amperes that flow within a part alone would drive it by
 * millivolts. The tie carries a part until the switch is closed, and so its volts do not jump when the switch begins to move.
 */
function floatingParts({ room, circuit, first, second, values, nodeNames }: CompiledCircuit): Int32Array {
  const parent = takeIndices(room, nodeNames.length);
  for (let node = 0; node < parent.length; node++) parent[node] = node;
  const top = (at: number): number => {
    let here = at;
    while (parent[here] !== here) here = parent[here]!;
    return here;
  };
  const { elements } = circuit;
  for (let at = 0; at < elements.length; at++) {
    const { kind } = elements[at]!;
    if (kind === 'current' || kind === 'capacitor' || (kind === 'switch' && values[at]! < 1)) continue;
    parent[top(first[at]!)] = top(second[at]!);
  }
  const grounded = top(GROUND);
  const floating = takeIndices(room, parent.length);
  for (let node = 0; node < parent.length; node++) {
    const part = top(node);
    floating[node] = part === grounded ? -1 : part;
  }
  return floating;
}
