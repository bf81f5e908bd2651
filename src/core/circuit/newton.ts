/** Damped Newton on the Schur complement of the rows that are not linear: shared by the operating point and by every time step. */
import type { CompiledCircuit, Topology } from './compiled.ts';
import { GMIN_SIEMENS, switchSiemens } from './elements.ts';
import { junctionLaw, limitJunction, setCharge } from './junction.ts';
import type { Junction, JunctionLaw } from './junction.ts';
import { backSubstitute, eliminate, join, reduceSide } from './mesh.ts';
import type { Mesh } from './mesh.ts';

/** How close two Newton steps must be: the tight options used to compare with a SPICE engine. */
const RELATIVE_TOLERANCE = 1e-6;
const VOLT_TOLERANCE = 1e-9;

/** Steps before another way is tried; loops of the workbook need 4 to 12. */
const MOST_STEPS = 100;

/**
 * Beyond so many steps a junction whose current moves by less than a picoampere, or whose volts by less than a microvolt, is
 * moved by rounding and not by Newton's method: where milliohms meet blocked junctions the last digits never rest. (Our choice;
 * a picoampere is what SPICE programs allow from the start.)
 */
const PATIENT_STEPS = 20;
const ROUNDING_AMPERES = 1e-12;
const ROUNDING_VOLTS = 1e-6;
/**
 * But no junction may move by more than this, volts, whatever its current: where tens of volts and microhms meet a node between
 * blocked junctions, its last digits are millivolts and femtoamperes. (Our choice: what moves so far carries less than a picoampere.)
 */
const MOST_ROUNDING_VOLTS = 0.1;

/** How charge moves in a time step: siemens of the companion of one farad, and how close two Newton steps must be, volts. */
export interface Motion {
  perSecond: number;
  voltTolerance: number;
}

const AT_REST: Motion = { perSecond: 0, voltTolerance: VOLT_TOLERANCE };

const law: JunctionLaw = { amperes: 0, siemens: 0 };

/**
 * Run Newton's method from the present junction voltages, and write the junctions' voltages, currents and, in motion, charges.
 * @param mesh the moving rows, linear ones eliminated.
 * @param side currents into the moving rows, reduced by `mesh`; how far the volts of all of them lie from the base on return.
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
  const { newtonSiemens, newtonSide } = topology;
  const { size, eliminated, schur } = mesh;
  const left = size - eliminated;
  let worst: Junction | undefined;
  for (let step = 1; step <= MOST_STEPS; step++) {
    for (let at = 0; at < schur.length; at++) newtonSiemens[at] = schur[at]!;
    for (let at = 0; at < left; at++) newtonSide[at] = side[at + eliminated]!;
    newtonSide[left] = 0;
    if (topology.ramps.length > 0) stampRamps(compiled, topology, left);
    for (const junction of compiled.junctions) {
      setCompanion(junction, motion.perSecond);
      const { anode, cathode, companionSiemens, companionAmperes } = junction;
      stamp(topology, left, anode, cathode, companionSiemens, companionAmperes);
    }
    eliminate(newtonSiemens, left, left);
    reduceSide(newtonSiemens, left, left, newtonSide);
    newtonSide[left] = 0;
    backSubstitute(newtonSiemens, left, left, newtonSide);
    let settled = true;
    let most = -1;
    for (const junction of compiled.junctions) {
      const before = junction.volts;
      const next = follow(topology, junction, motion.perSecond);
      const change = Math.abs(next - before);
      const allowed = motion.voltTolerance + RELATIVE_TOLERANCE * Math.max(Math.abs(next), Math.abs(before));
      if (junction.volts !== next || !(change <= allowed))
        settled &&= step > PATIENT_STEPS && isRounding(change, junction.companionSiemens);
      if (!(change <= most)) {
        most = change;
        worst = junction;
      }
    }
    if (!settled) continue;
    for (let at = 0; at < left; at++) side[at + eliminated] = newtonSide[at]!;
    backSubstitute(mesh.siemens, size, eliminated, side);
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

/** Move a junction to where the solved companion model puts it, as far as limiting lets it. @returns where it would be without. */
function follow({ newtonSide, row, linearCount }: Topology, junction: Junction, perSecond: number): number {
  const { anode, cathode, volts } = junction;
  const moved = newtonSide[row[anode]! - linearCount]! - newtonSide[row[cathode]! - linearCount]!;
  junction.amperes = junction.companionAmperes + junction.companionSiemens * moved;
  const next = junction.baseVolts + moved - junction.seriesOhms * junction.amperes;
  junction.volts = limitJunction(junction, next);
  // The charge that the companion used, so that the next time step starts from what this one solved.
  if (perSecond > 0) junction.coulombs += junction.farads * (junction.volts - volts);
  return next;
}

/** Add the switches that are part closed. */
function stampRamps(compiled: CompiledCircuit, topology: Topology, left: number): void {
  const { first, second, values } = compiled;
  topology.ramps.forEach((part, at) => {
    const siemens = switchSiemens(values[part]!);
    stamp(topology, left, first[part]!, second[part]!, siemens, siemens * topology.rampVolts[at]!);
  });
}

/** Add a branch between two nodes to the work space: so many siemens, and so many amperes where the solution is sought from. */
function stamp(
  { newtonSiemens, newtonSide, row, linearCount }: Topology,
  left: number,
  from: number,
  to: number,
  siemens: number,
  amperes: number,
): void {
  const a = row[from]! - linearCount;
  const b = row[to]! - linearCount;
  join(newtonSiemens, left, a, b, siemens);
  newtonSide[a]! -= amperes;
  newtonSide[b]! += amperes;
}

/** Whether a junction with this slope, siemens, that moves by so many volts is moved by rounding. */
function isRounding(volts: number, siemens: number): boolean {
  return volts < ROUNDING_VOLTS || (volts < MOST_ROUNDING_VOLTS && volts * siemens < ROUNDING_AMPERES);
}
