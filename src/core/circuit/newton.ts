/** Damped Newton on the Schur complement of the rows that are not linear: shared by the operating point and by every time step. */
import type { CompiledCircuit, Topology } from './compiled.ts';
import { GMIN_SIEMENS, switchSiemens } from './elements.ts';
import { junctionLaw, limitJunction, setCharge } from './junction.ts';
import type { Junction, JunctionLaw } from './junction.ts';
import { drive } from './flow.ts';
import { backSubstitute, join, solveFlow } from './mesh.ts';
import type { Mesh } from './mesh.ts';

/** How close two Newton steps must be: the tight options used to compare with a SPICE engine. */
const RELATIVE_TOLERANCE = 1e-6;
const VOLT_TOLERANCE = 1e-9;

/** Steps before another way is tried; loops of the workbook need 4 to 12. */
const MOST_STEPS = 100;

/** How charge moves in a time step: siemens of the companion of one farad, and how close two Newton steps must be, volts. */
export interface Motion {
  perSecond: number;
  voltTolerance: number;
}

const AT_REST: Motion = { perSecond: 0, voltTolerance: VOLT_TOLERANCE };

const law: JunctionLaw = { amperes: 0, siemens: 0 };

/**
 * Run Newton's method from the present junction voltages, and write the junctions' voltages, currents and, in motion, charges. What
 * drives the rows that are not linear stands in the topology's `linearFlow`.
 * @param mesh the moving rows, linear ones eliminated.
 * @param side currents into the linear rows, reduced by `mesh`; how far the volts of all moving rows lie from the base on return.
 * @param motion left out at DC, where charge stands still.
 * @returns undefined, or the number of the node that does not settle.
 */
export function newton(
  compiled: CompiledCircuit,
  topology: Topology,
  mesh: Mesh,
  side: Float64Array,
  motion = AT_REST,
): number | undefined {
  const { newtonMesh, newtonSide, linearFlow, newtonFlow, junctionRows } = topology;
  const { junctions } = compiled;
  const { size, eliminated, schur } = mesh;
  const left = size - eliminated;
  let worst: Junction | undefined;
  for (let step = 1; step <= MOST_STEPS; step++) {
    for (let at = 0; at < schur.length; at++) {
      newtonMesh.siemens[at] = schur[at]!;
      newtonFlow[at] = linearFlow[at]!;
    }
    if (topology.ramps.length > 0) stampRamps(compiled, topology, left);
    for (let at = 0; at < junctions.length; at++) {
      const junction = junctions[at]!;
      setCompanion(junction, motion.perSecond);
      const { companionSiemens, companionAmperes } = junction;
      stamp(
        topology,
        left,
        junctionRows[2 * at]!,
        junctionRows[2 * at + 1]!,
        companionSiemens,
        companionAmperes,
      );
    }
    solveFlow(newtonMesh, newtonFlow, newtonSide);
    let settled = true;
    let most = -1;
    for (let at = 0; at < junctions.length; at++) {
      const junction = junctions[at]!;
      const before = junction.volts;
      const moved = newtonSide[junctionRows[2 * at]!]! - newtonSide[junctionRows[2 * at + 1]!]!;
      const next = follow(junction, moved, motion.perSecond);
      const change = Math.abs(next - before);
      const allowed = motion.voltTolerance + RELATIVE_TOLERANCE * Math.max(Math.abs(next), Math.abs(before));
      settled &&= junction.volts === next && change <= allowed;
      if (!(change <= most)) {
        most = change;
        worst = junction;
      }
    }
    if (!settled) continue;
    for (let at = 0; at < left; at++) side[at + eliminated] = newtonSide[at]!;
    backSubstitute(mesh, side);
    return undefined;
  }
  return worst!.anode || worst!.cathode;
}

/**
 * Work out a junction's companion model. The series resistance is folded in: g becomes g / (1 + g RS), whatever makes up g,
 * since all of the current, that of the charge too, passes through it.
 */
function setCompanion(junction: Junction, perSecond: number): void {
  const { volts, baseVolts } = junction;
  junctionLaw(junction, volts, law);
  let siemens = law.siemens + GMIN_SIEMENS;
  let amperes = law.amperes + GMIN_SIEMENS * volts;
  if (perSecond > 0) {
    setCharge(junction, volts, law);
    siemens += perSecond * junction.farads;
    amperes += perSecond * junction.coulombs + junction.pastAmperes;
  }
  const fold = 1 + siemens * junction.seriesOhms;
  junction.companionSiemens = siemens / fold;
  junction.companionAmperes = (amperes + siemens * (baseVolts - volts)) / fold;
}

/**
 * Move a junction to where the solved companion model puts it, as far as limiting lets it.
 * @param moved how far its volts, RS included, lie from the base.
 * @returns where it would be without limiting.
 */
function follow(junction: Junction, moved: number, perSecond: number): number {
  const { volts } = junction;
  junction.amperes = junction.companionAmperes + junction.companionSiemens * moved;
  const next = junction.baseVolts + moved - junction.seriesOhms * junction.amperes;
  junction.volts = limitJunction(junction, next);
  // The charge that the companion used, so that the next time step starts from what this one solved.
  if (perSecond > 0) junction.coulombs += junction.farads * (junction.volts - volts);
  return next;
}

/** Add the switches that are part closed. */
function stampRamps(compiled: CompiledCircuit, topology: Topology, left: number): void {
  const { ramps, rampRows, rampVolts } = topology;
  ramps.forEach((part, at) => {
    const siemens = switchSiemens(compiled.values[part]!);
    stamp(topology, left, rampRows[2 * at]!, rampRows[2 * at + 1]!, siemens, siemens * rampVolts[at]!);
  });
}

/** Add a branch between two rows to the work space: so many siemens, and so many amperes where the solution is sought from. */
function stamp(
  { newtonMesh, newtonFlow }: Topology,
  left: number,
  a: number,
  b: number,
  siemens: number,
  amperes: number,
): void {
  join(newtonMesh.siemens, left, a, b, siemens);
  drive(newtonFlow, left, a, b, amperes);
}
