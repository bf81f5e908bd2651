/** What the switch positions of a circuit decide: which parts float, and in which order unknowns are eliminated. */
import { GROUND } from './compile.ts';
import type { CompiledCircuit } from './compile.ts';
import type { Factor } from './matrix.ts';

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
