/** Stamps: how each part enters the meshes of conductances, and how the sources enter the right-hand side. */
import type { CompiledCircuit, Topology } from './compiled.ts';
import { FLOATING_TIE_OHMS, SWITCH_ON_OHMS } from './elements.ts';
import { eliminateMesh, join, makeMesh } from './mesh.ts';
import type { Mesh } from './mesh.ts';
import { setOffsets } from './supernodes.ts';

/** Meshes kept for one set of switch positions: the steps a link uses in time are some thirty, so this is a guard. */
const MESHES_KEPT = 128;

/** Resistors, closed switches and ties of floating parts, the still rows eliminated. */
export function stillMesh(compiled: CompiledCircuit, topology: Topology): Mesh {
  const { revision, ofKind, first, second, values } = compiled;
  const { row, stillCount, tied } = topology;
  let mesh = topology.still;
  if (mesh?.revision === revision) return mesh;
  if (!mesh || mesh.kept) topology.still = mesh = makeMesh(topology.roots.length, stillCount);
  else mesh.siemens.fill(0);
  const { siemens, size } = mesh;
  for (const at of ofKind.resistor) join(siemens, size, row[first[at]!]!, row[second[at]!]!, 1 / values[at]!);
  for (const at of ofKind.switch)
    if (values[at] === 1) join(siemens, size, row[first[at]!]!, row[second[at]!]!, 1 / SWITCH_ON_OHMS);
  for (const node of tied) join(siemens, size, row[node]!, size, 1 / FLOATING_TIE_OHMS);
  eliminateMesh(mesh);
  mesh.revision = revision;
  return mesh;
}

/**
 * The moving rows with the companion models of the capacitors, the linear ones eliminated.
 * @param perSecond siemens of the companion of one farad; 0 at DC, where capacitors are open.
 */
export function movingMesh(compiled: CompiledCircuit, topology: Topology, perSecond: number): Mesh {
  const still = stillMesh(compiled, topology);
  const { moving, row, stillCount, linearCount } = topology;
  let mesh = moving.get(perSecond);
  if (mesh?.revision === still.revision) return mesh;
  if (moving.size >= MESHES_KEPT) moving.clear();
  if (!mesh)
    moving.set(perSecond, (mesh = makeMesh(still.size - stillCount, linearCount - stillCount, perSecond)));
  const { siemens, size } = mesh;
  siemens.set(still.schur);
  const { ofKind, first, second, values } = compiled;
  if (perSecond > 0)
    for (const at of ofKind.capacitor)
      join(
        siemens,
        size,
        row[first[at]!]! - stillCount,
        row[second[at]!]! - stillCount,
        values[at]! * perSecond,
      );
  eliminateMesh(mesh);
  mesh.revision = still.revision;
  return mesh;
}

/**
 * Note from which volts across junctions and part-closed switches a solution is sought.
 * @param base volts of the moving rows, ground's the last; all 0 where left out. What sources hold apart is added.
 */
export function setBase(compiled: CompiledCircuit, topology: Topology, base?: Float64Array): void {
  const { junctions, first, second, supernodes } = compiled;
  const { row, stillCount, ramps, rampVolts } = topology;
  const { offsets } = supernodes;
  for (const junction of junctions) {
    const { anode, cathode } = junction;
    const apart = base ? base[row[anode]! - stillCount]! - base[row[cathode]! - stillCount]! : 0;
    junction.baseVolts = apart + (offsets[anode]! - offsets[cathode]!);
  }
  for (let at = 0; at < ramps.length; at++) {
    const a = first[ramps[at]!]!;
    const b = second[ramps[at]!]!;
    const apart = base ? base[row[a]! - stillCount]! - base[row[b]! - stillCount]! : 0;
    rampVolts[at] = apart + (offsets[a]! - offsets[b]!);
  }
}

/** Write the sources into a right-hand side, row by row, each scaled: amperes into every row, ground's the last. */
export function loadSources(
  compiled: CompiledCircuit,
  { row }: Topology,
  scale: number,
  side: Float64Array,
): void {
  setOffsets(compiled, scale);
  const { first, second, values, ofKind, supernodes, circuit } = compiled;
  const { offsets, fed } = supernodes;
  side.fill(0);
  const drive = (at: number, amperes: number): void => {
    side[row[first[at]!]!]! -= amperes;
    side[row[second[at]!]!]! += amperes;
  };
  for (const at of ofKind.current) drive(at, values[at]! * scale);
  for (const at of fed) {
    const value = values[at]!;
    const siemens =
      circuit.elements[at]!.kind === 'resistor' ? 1 / value : value === 1 ? 1 / SWITCH_ON_OHMS : 0;
    drive(at, siemens * (offsets[first[at]!]! - offsets[second[at]!]!));
  }
}
