/** Stamps: how each part enters the meshes of conductances, and how the sources enter the right-hand side. */
import type { CompiledCircuit, Topology } from './compiled.ts';
import { FLOATING_TIE_OHMS, SWITCH_ON_OHMS } from './elements.ts';
import { drive } from './flow.ts';
import { eliminateMesh, join, makeMesh, reduceFlow, restOf } from './mesh.ts';
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
  if (!mesh || mesh.kept) topology.still = mesh = makeMesh(compiled.room, topology.roots.length, stillCount);
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
  const { moving, capacitorRows, stillCount, linearCount } = topology;
  let mesh = moving.get(perSecond);
  if (mesh?.revision === still.revision) return mesh;
  if (moving.size >= MESHES_KEPT) moving.clear();
  if (!mesh)
    moving.set(
      perSecond,
      (mesh = makeMesh(compiled.room, still.size - stillCount, linearCount - stillCount, perSecond)),
    );
  const { siemens, size } = mesh;
  siemens.set(still.schur);
  const { ofKind, values } = compiled;
  if (perSecond > 0)
    ofKind.capacitor.forEach((at, place) => {
      join(siemens, size, capacitorRows[2 * place]!, capacitorRows[2 * place + 1]!, values[at]! * perSecond);
    });
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
  const { stillCount, linearCount, junctionRows, ramps, rampRows, rampVolts } = topology;
  const { offsets } = supernodes;
  const skip = linearCount - stillCount;
  for (let at = 0; at < junctions.length; at++) {
    const junction = junctions[at]!;
    const { anode, cathode } = junction;
    const apart = base ? base[skip + junctionRows[2 * at]!]! - base[skip + junctionRows[2 * at + 1]!]! : 0;
    junction.baseVolts = apart + (offsets[anode]! - offsets[cathode]!);
  }
  for (let at = 0; at < ramps.length; at++) {
    const [a, b] = [first[ramps[at]!]!, second[ramps[at]!]!];
    const apart = base ? base[skip + rampRows[2 * at]!]! - base[skip + rampRows[2 * at + 1]!]! : 0;
    rampVolts[at] = apart + (offsets[a]! - offsets[b]!);
  }
}

/**
 * Work out what the sources drive, each scaled, with the still rows eliminated: amperes between the moving rows go into `movingFlow`,
 * those into the still rows into `side`.
 */
export function loadSources(compiled: CompiledCircuit, topology: Topology, scale: number): void {
  const { row, flow, movingFlow, side, stillCount } = topology;
  const still = stillMesh(compiled, topology);
  const { size } = still;
  setOffsets(compiled, scale);
  const { first, second, values, ofKind, supernodes } = compiled;
  const { offsets, fedResistors, fedSwitches } = supernodes;
  flow.fill(0);
  // By way of ground: no conductance need lie beside a current source.
  for (const at of ofKind.current) {
    drive(flow, size, row[first[at]!]!, size, values[at]! * scale);
    drive(flow, size, size, row[second[at]!]!, values[at]! * scale);
  }
  const feed = (at: number, siemens: number): void => {
    const a = first[at]!;
    const b = second[at]!;
    drive(flow, size, row[a]!, row[b]!, siemens * (offsets[a]! - offsets[b]!));
  };
  for (const at of fedResistors) feed(at, 1 / values[at]!);
  for (const at of fedSwitches) if (values[at] === 1) feed(at, 1 / SWITCH_ON_OHMS);
  reduceFlow(still, flow, side);
  restOf(flow, size, stillCount, movingFlow);
}
