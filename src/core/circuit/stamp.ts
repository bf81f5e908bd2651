/** Stamps: how each part enters the matrix of modified nodal analysis, and which parts of a circuit float. */
import { GROUND } from './compile.ts';
import type { CompiledCircuit } from './compile.ts';
import { FLOATING_TIE_OHMS, SWITCH_ON_OHMS } from './elements.ts';
import { factorLinear, makeFactor, sparseOf } from './matrix.ts';
import type { Factor } from './matrix.ts';

/** Factors kept for one set of switch positions: the steps a link uses in time are some thirty, so this is a guard. */
const FACTORS_KEPT = 128;

/** What the switch positions alone decide, and the factors made for them. */
export interface Plan {
  /** For each node the number of the floating part it belongs to at DC, or -1 where a way to ground exists. */
  readonly floating: Int32Array;
  /** One node of each floating part, tied to ground. */
  readonly tied: readonly number[];
  /** Numbers of the switches that are part closed: their conductance is added at each step, like that of a junction. */
  readonly ramps: Int32Array;
  /**
   * Unknowns in the order of elimination: the first `stillCount` are touched by resistors and sources alone, so that they follow
   * the others at once; the first `linearCount` are touched by nothing that is not linear.
   */
  readonly order: Int32Array;
  readonly stillCount: number;
  readonly linearCount: number;
  /** Capacitors open. */
  atRest: Factor | undefined;
  still: Still | undefined;
  /** By companion of the capacitors. */
  readonly inTime: Map<number, Factor>;
}

/** The factored linear part at DC, where capacitors are open, for the present switch positions. */
export function factorFor(compiled: CompiledCircuit): Factor {
  const plan = planFor(compiled);
  const revision = compiled.revision[0] as number;
  const factor = (plan.atRest ??= emptyFactor(compiled, plan, compiled.unknowns));
  if (factor.revision === revision) return factor;
  stampLinear(compiled, plan, factor);
  factorLinear(factor, plan.linearCount);
  factor.revision = revision;
  const { rowPlace, columnPlace } = factor;
  placeEnds(
    compiled,
    factor,
    (node) => rowPlace[node] as number,
    (node) => columnPlace[node] as number,
  );
  return factor;
}

/**
 * A circuit with its still unknowns eliminated, for the present switch positions: whatever the length of a step, they follow the
 * moving ones. Made anew when a resistor changes, so that what was solved before keeps its own.
 */
export interface Still {
  readonly factor: Factor;
  /** How many unknowns move. */
  readonly moving: number;
  /** Ends of each capacitor among the moving unknowns; ground is the place after the last. */
  readonly firstEnds: Int32Array;
  readonly secondEnds: Int32Array;
  /**
   * Moving unknowns that a step is judged by: nodes of capacitors, junctions and switches. All others follow these in a
   * straight line.
   */
  readonly watched: Int32Array;
}

/** The still part for the present switch positions. */
export function stillFor(compiled: CompiledCircuit): Still {
  const plan = planFor(compiled);
  const revision = compiled.revision[0] as number;
  if (plan.still?.factor.revision === revision) return plan.still;
  const factor = emptyFactor(compiled, plan, compiled.unknowns);
  stampLinear(compiled, plan, factor);
  factorLinear(factor, plan.stillCount);
  factor.revision = revision;
  factor.sparse = sparseOf(factor);
  const { ofKind, first, second } = compiled;
  const moving = compiled.unknowns - factor.pivots;
  const place = (node: number): number => (node === GROUND ? moving : (factor.columnPlace[node] as number));
  const watched = new Set<number>();
  for (const kind of ['capacitor', 'diode', 'switch'] as const)
    for (const at of ofKind[kind]) watched.add(place(first[at] as number)).add(place(second[at] as number));
  // A switch that is not part closed is a resistor or nothing.
  const kept = [...watched].filter((at) => at >= 0 && at < moving);
  plan.still = {
    factor,
    moving,
    firstEnds: ofKind.capacitor.map((at) => place(first[at] as number)),
    secondEnds: ofKind.capacitor.map((at) => place(second[at] as number)),
    watched: Int32Array.from(kept),
  };
  return plan.still;
}

/**
 * The factored moving part for steps of one length; its unknowns are the moving ones of `stillFor`, in their order.
 * @param perSecond companion of the capacitors, siemens for each farad; more than 0.
 */
export function stepFactorFor(compiled: CompiledCircuit, perSecond: number): Factor {
  const plan = planFor(compiled);
  const { factor: still, moving, firstEnds, secondEnds } = stillFor(compiled);
  const known = plan.inTime.get(perSecond);
  if (known?.revision === still.revision) return known;
  if (plan.inTime.size >= FACTORS_KEPT) plan.inTime.clear();
  const factor = emptyFactor(compiled, plan, moving);
  plan.inTime.set(perSecond, factor);
  const { entries } = factor;
  const { size, pivots } = still;
  for (let row = 0; row < moving; row++) {
    factor.rowOrder[row] = factor.columnOrder[row] = row;
    const from = (row + pivots) * size + pivots;
    for (let column = 0; column < moving; column++)
      entries[row * moving + column] = still.entries[from + column] as number;
  }
  compiled.ofKind.capacitor.forEach((at, index) => {
    const siemens = (compiled.values[at] as number) * perSecond;
    const a = firstEnds[index] as number;
    const b = secondEnds[index] as number;
    if (a < moving) entries[a * moving + a]! += siemens;
    if (b < moving) entries[b * moving + b]! += siemens;
    if (a < moving && b < moving) {
      entries[a * moving + b]! -= siemens;
      entries[b * moving + a]! -= siemens;
    }
  });
  factorLinear(factor, plan.linearCount - pivots);
  factor.revision = still.revision;
  factor.sparse = sparseOf(factor);
  placeEnds(
    compiled,
    factor,
    (node) => factor.rowPlace[still.rowPlace[node] as number] as number,
    (node) => factor.columnPlace[still.columnPlace[node] as number] as number,
  );
  return factor;
}

function emptyFactor({ junctions }: CompiledCircuit, { floating, ramps }: Plan, size: number): Factor {
  return makeFactor(size, floating, ramps, 2 * junctions.anode.length);
}

/** Note where the ends of junctions and of part-closed switches stand among the rest. */
function placeEnds(
  { junctions, first, second }: CompiledCircuit,
  { endRows, endColumns, ramps, rampRows }: Factor,
  rowOf: (node: number) => number,
  columnOf: (node: number) => number,
): void {
  const count = junctions.anode.length;
  const row = (node: number): number => (node === GROUND ? -1 : rowOf(node));
  const column = (node: number): number => (node === GROUND ? -1 : columnOf(node));
  for (let at = 0; at < count; at++) {
    const anode = junctions.anode[at] as number;
    const cathode = junctions.cathode[at] as number;
    endRows[at] = row(anode);
    endColumns[at] = column(anode);
    endRows[count + at] = row(cathode);
    endColumns[count + at] = column(cathode);
  }
  ramps.forEach((part, at) => {
    rampRows[at] = row(first[part] as number);
    rampRows[ramps.length + at] = row(second[part] as number);
  });
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

/** Mark of a node that a capacitor touches and nothing else that changes. */
const CHARGED = 2;

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
  for (const at of ofKind.capacitor) {
    for (const node of [first[at] as number, second[at] as number])
      if (node !== GROUND && changes[node] === 0) changes[node] = CHARGED;
  }
  const order = new Int32Array(size);
  let placed = 0;
  const place = (kind: number): number => {
    for (let at = 0; at < size; at++) if (changes[at] === kind) order[placed++] = at;
    return placed;
  };
  const stillCount = place(0);
  const linearCount = place(CHARGED);
  place(1);
  return {
    floating,
    tied: oneOfEach(floating),
    ramps,
    order,
    stillCount,
    linearCount,
    atRest: undefined,
    still: undefined,
    inTime: new Map(),
  };
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

/** Write the resistors, closed switches and sources into a factor's entries, in the plan's order. */
function stampLinear(compiled: CompiledCircuit, plan: Plan, factor: Factor): void {
  factor.rowOrder.set(plan.order);
  factor.columnOrder.set(plan.order);
  const { unknowns: size, ofKind, first, second, values, branch } = compiled;
  const { entries } = factor;
  const place = factor.columnPlace;
  for (let at = 0; at < size; at++) place[plan.order[at] as number] = at;
  entries.fill(0);
  for (const at of ofKind.resistor)
    join(first[at] as number, second[at] as number, 1 / (values[at] as number));
  for (const at of ofKind.switch)
    if (values[at] === 1) join(first[at] as number, second[at] as number, 1 / SWITCH_ON_OHMS);
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
