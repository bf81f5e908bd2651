/** Stamps: how each part enters the matrix of modified nodal analysis, and which parts of a circuit float. */
import { GROUND } from './compile.ts';
import type { CompiledCircuit } from './compile.ts';
import { FLOATING_TIE_OHMS, SWITCH_ON_OHMS } from './elements.ts';
import { factorLinear, makeFactor, sparseOf } from './matrix.ts';
import type { Factor } from './matrix.ts';

/** Factors kept for one set of switch positions: the steps a link uses in time are some thirty, so this is a guard. */
const FACTORS_KEPT = 128;

/** What the switch positions alone decide, and the factors made for them by capacitor companion. */
export interface Plan {
  /** For each node the number of the floating part it belongs to at DC, or -1 where a way to ground exists. */
  readonly floating: Int32Array;
  /** One node of each floating part, tied to ground. */
  readonly tied: readonly number[];
  /** Numbers of the switches that are part closed: their conductance is added at each step, like that of a junction. */
  readonly ramps: Int32Array;
  /** Unknowns in the order of elimination; the first `linearCount` are touched by nothing that changes. */
  readonly order: Int32Array;
  readonly linearCount: number;
  readonly factors: Map<number, Factor>;
}

/**
 * The factored linear part for the present switch positions.
 * @param perSecond companion of the capacitors, siemens for each farad; 0 at DC, where they are open.
 */
export function factorFor(compiled: CompiledCircuit, perSecond: number): Factor {
  const plan = planFor(compiled);
  let factor = plan.factors.get(perSecond);
  const revision = compiled.revision[0] as number;
  if (factor && factor.revision === revision) return factor;
  if (!factor) {
    if (plan.factors.size >= FACTORS_KEPT) plan.factors.clear();
    factor = makeFactor(compiled.unknowns, plan.floating, plan.ramps, 2 * compiled.junctions.anode.length);
    plan.factors.set(perSecond, factor);
  }
  factor.rowOrder.set(plan.order);
  factor.columnOrder.set(plan.order);
  stampLinear(compiled, plan, perSecond, factor);
  factorLinear(factor, plan.linearCount);
  factor.revision = revision;
  placeJunctions(compiled, factor);
  // A step of one length comes again and again; an operating point may be the only one before values change.
  if (perSecond > 0) factor.sparse = sparseOf(factor);
  return factor;
}

function placeJunctions(
  { junctions }: CompiledCircuit,
  { rowPlace, columnPlace, endRows, endColumns }: Factor,
): void {
  const count = junctions.anode.length;
  for (let at = 0; at < count; at++) {
    const anode = junctions.anode[at] as number;
    const cathode = junctions.cathode[at] as number;
    endRows[at] = anode === GROUND ? -1 : (rowPlace[anode] as number);
    endColumns[at] = anode === GROUND ? -1 : (columnPlace[anode] as number);
    endRows[count + at] = cathode === GROUND ? -1 : (rowPlace[cathode] as number);
    endColumns[count + at] = cathode === GROUND ? -1 : (columnPlace[cathode] as number);
  }
}

/** Switches whose positions fit into one whole number, three positions each, without rounding: 3^33 < 2^53. */
const SWITCHES_IN_A_NUMBER = 33;

/** The plan for the present switch positions: what floats does not depend on values. */
export function planFor(compiled: CompiledCircuit): Plan {
  const { plans } = compiled;
  const key = positionsKey(compiled);
  const known = plans.get(key);
  if (known) return known;
  const made = makePlan(compiled);
  plans.set(key, made);
  return made;
}

function positionsKey({ ofKind, values }: CompiledCircuit): number | string {
  const switches = ofKind.switch;
  const position = (at: number): number => (values[at] === 0 ? 0 : values[at] === 1 ? 1 : 2);
  if (switches.length > SWITCHES_IN_A_NUMBER) return Array.from(switches, position).join('');
  let key = 0;
  for (let at = 0; at < switches.length; at++) key = key * 3 + position(switches[at] as number);
  return key;
}

function makePlan(compiled: CompiledCircuit): Plan {
  const { unknowns: size, first, second, values, ofKind, junctions } = compiled;
  const floating = floatingParts(compiled);
  const ramps = ofKind.switch.filter((at) => (values[at] as number) > 0 && (values[at] as number) < 1);
  const changes = new Uint8Array(size);
  const keep = (node: number): void => {
    if (node !== GROUND) changes[node] = 1;
  };
  for (let at = 0; at < junctions.element.length; at++) {
    keep(junctions.anode[at] as number);
    keep(junctions.cathode[at] as number);
  }
  for (const at of ramps) {
    keep(first[at] as number);
    keep(second[at] as number);
  }
  const order = new Int32Array(size);
  let placed = 0;
  for (let at = 0; at < size; at++) if (changes[at] === 0) order[placed++] = at;
  const linearCount = placed;
  for (let at = 0; at < size; at++) if (changes[at] === 1) order[placed++] = at;
  return { floating, tied: oneOfEach(floating), ramps, order, linearCount, factors: new Map() };
}

/** One node of each floating part. */
function oneOfEach(floating: Int32Array): readonly number[] {
  const tied: number[] = [];
  for (let node = 0; node < floating.length; node++) {
    const part = floating[node] as number;
    if (part >= 0 && !tied.some((one) => floating[one] === part)) tied.push(node);
  }
  return tied;
}

/** Write the linear parts into a factor's entries, rows and columns in its present order. */
function stampLinear(compiled: CompiledCircuit, plan: Plan, perSecond: number, factor: Factor): void {
  const { unknowns: size, ofKind, first, second, values, branch } = compiled;
  const { entries } = factor;
  const place = factor.columnPlace;
  for (let at = 0; at < size; at++) place[plan.order[at] as number] = at;
  entries.fill(0);
  for (const at of ofKind.resistor)
    join(first[at] as number, second[at] as number, 1 / (values[at] as number));
  for (const at of ofKind.switch)
    if (values[at] === 1) join(first[at] as number, second[at] as number, 1 / SWITCH_ON_OHMS);
  if (perSecond > 0) {
    for (const at of ofKind.capacitor)
      join(first[at] as number, second[at] as number, (values[at] as number) * perSecond);
  }
  for (const at of ofKind.voltage) {
    const row = branch[at] as number;
    const plus = first[at] as number;
    const minus = second[at] as number;
    add(plus, row, 1);
    add(minus, row, -1);
    add(row, plus, 1);
    add(row, minus, -1);
  }
  for (const node of plan.tied) add(node, node, 1 / FLOATING_TIE_OHMS);

  function add(row: number, column: number, value: number): void {
    if (row === GROUND || column === GROUND) return;
    const at = (place[row] as number) * size + (place[column] as number);
    entries[at] = (entries[at] as number) + value;
  }

  function join(a: number, b: number, siemens: number): void {
    add(a, a, siemens);
    add(b, b, siemens);
    add(a, b, -siemens);
    add(b, a, -siemens);
  }
}

/** For each node the number of the floating part it belongs to, or -1 where a way to ground exists. */
function floatingParts(compiled: CompiledCircuit): Int32Array {
  const count = compiled.nodeNames.length;
  const { first, second, values } = compiled;
  const { elements } = compiled.circuit;
  const parent = new Int32Array(count + 1);
  for (let at = 0; at <= count; at++) parent[at] = at;
  const root = (at: number): number => {
    let here = at;
    while (parent[here] !== here) here = parent[here] as number;
    return here;
  };
  for (let at = 0; at < elements.length; at++) {
    const { kind } = elements[at] as { readonly kind: string };
    if (kind === 'current' || kind === 'capacitor' || (kind === 'switch' && values[at] === 0)) continue;
    parent[root((first[at] as number) + 1)] = root((second[at] as number) + 1);
  }
  const grounded = root(0);
  const parts = new Int32Array(count);
  for (let node = 0; node < count; node++) {
    const here = root(node + 1);
    parts[node] = here === grounded ? -1 : here;
  }
  return parts;
}

/** Write the sources into a right-hand side, each scaled; `side` is in the circuit's own order. */
export function loadSources(compiled: CompiledCircuit, scale: number, side: Float64Array): void {
  side.fill(0);
  const { first, second, values, branch, ofKind } = compiled;
  for (const at of ofKind.voltage) side[branch[at] as number] = (values[at] as number) * scale;
  for (const at of ofKind.current) {
    const from = first[at] as number;
    const to = second[at] as number;
    const amperes = (values[at] as number) * scale;
    if (from !== GROUND) side[from] = (side[from] as number) - amperes;
    if (to !== GROUND) side[to] = (side[to] as number) + amperes;
  }
}
