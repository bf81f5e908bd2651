/** A circuit made ready for solving: names become integers, values sit in typed arrays that are reused. */
import { chargesOf } from './charge.ts';
import type { JunctionCharges } from './charge.ts';
import { THERMAL_VOLTS, nodesOf } from './elements.ts';
import type { Circuit, Diode, Element, ElementKind } from './elements.ts';
import type { Plan } from './plans.ts';

/** Node number of ground: it has no row in the matrix. */
export const GROUND = -1;

/** Junctions of a compiled circuit, one entry a diode; the arrays run side by side. */
export interface Junctions {
  readonly element: Int32Array;
  readonly anode: Int32Array;
  readonly cathode: Int32Array;
  /** IS, amperes. */
  readonly saturation: Float64Array;
  /** N VT, volts. */
  readonly slope: Float64Array;
  /** RS, ohms. */
  readonly series: Float64Array;
  /** Voltage from which junction limiting starts, volts. */
  readonly critical: Float64Array;
  /** Present junction voltage behind RS, volts: where the next solution starts. */
  readonly volts: Float64Array;
  /** Present current into the anode, that of a moving charge included, amperes. */
  readonly amperes: Float64Array;
  /** Work space of Newton's method: slope and offset of each junction's straight-line companion. */
  readonly slopes: Float64Array;
  readonly offsets: Float64Array;
  readonly charges: JunctionCharges;
}

/**
 * Work object of the solver. Unknowns are the node voltages (ground left out), then the current of each voltage source.
 * Change values only with `setValue`, which keeps the factors true.
 */
export interface CompiledCircuit {
  readonly circuit: Circuit;
  readonly nodeNames: readonly string[];
  readonly nodeNumbers: ReadonlyMap<string, number>;
  readonly elementNumbers: ReadonlyMap<string, number>;
  readonly first: Int32Array;
  readonly second: Int32Array;
  /** Row of a voltage source's current among the unknowns, or -1. */
  readonly branch: Int32Array;
  /** Ohms, volts, amperes, farads, IS of a diode; a switch from 0, open, to 1, closed. */
  readonly values: Float64Array;
  /** Numbers of the parts of each kind. */
  readonly ofKind: Readonly<Record<ElementKind, Int32Array>>;
  readonly junctions: Junctions;
  readonly unknowns: number;
  /** Latest solution: node volts, then source amperes. */
  readonly solution: Float64Array;
  /** What is known for each set of switch positions, the factored linear parts with it. */
  readonly plans: Map<number | string, Plan>;
  /** Counts changes of resistors and capacitors: a factor made before the last change is out of date. One entry. */
  readonly revision: Int32Array;
}

/**
 * Make a circuit ready for solving.
 * @throws on a doubled or empty name, an unknown ground, or a value out of its range, naming part, need and value.
 */
export function compileCircuit(circuit: Circuit): CompiledCircuit {
  const { elements, ground } = circuit;
  const nodeNumbers = new Map<string, number>([[ground, GROUND]]);
  const nodeNames: string[] = [];
  const elementNumbers = new Map<string, number>();
  const count = elements.length;
  const first = new Int32Array(count);
  const second = new Int32Array(count);
  const values = new Float64Array(count);
  const number = (name: string): number => {
    const known = nodeNumbers.get(name);
    if (known !== undefined) return known;
    nodeNumbers.set(name, nodeNames.length);
    return nodeNames.push(name) - 1;
  };
  const diodes: number[] = [];
  if (!elements.some((element) => touches(element, ground)))
    throw new Error(`circuit: ground must be a node of some part, got '${ground}'`);
  elements.forEach((element, index) => {
    if (element.name === '')
      throw new Error(`circuit: every part needs a name, got '' for a ${element.kind}`);
    if (elementNumbers.has(element.name))
      throw new Error(`circuit: part names must differ, got '${element.name}' twice`);
    elementNumbers.set(element.name, index);
    const [from, to] = nodesOf(element);
    first[index] = number(from);
    second[index] = number(to);
    values[index] = checkedValue(element, valueOf(element));
    if (element.kind === 'diode') diodes.push(index);
  });
  const branch = new Int32Array(count).fill(-1);
  let unknowns = nodeNames.length;
  elements.forEach((element, index) => {
    if (element.kind === 'voltage') branch[index] = unknowns++;
  });
  return {
    circuit,
    nodeNames,
    nodeNumbers,
    elementNumbers,
    first,
    second,
    branch,
    values,
    ofKind: sortByKind(elements),
    junctions: junctionsOf(elements, diodes, first, second),
    unknowns,
    solution: new Float64Array(unknowns),
    plans: new Map(),
    revision: new Int32Array(1),
  };
}

function touches(element: Element, node: string): boolean {
  const [first, second] = nodesOf(element);
  return first === node || second === node;
}

/** Numbers of the parts of each kind. One pass with plain lists: a link is compiled a thousand times in a search. */
function sortByKind(elements: readonly Element[]): Record<ElementKind, Int32Array> {
  const lists: Record<ElementKind, number[]> = {
    resistor: [],
    diode: [],
    voltage: [],
    current: [],
    switch: [],
    capacitor: [],
  };
  for (let at = 0; at < elements.length; at++) lists[(elements[at] as Element).kind].push(at);
  return {
    resistor: new Int32Array(lists.resistor),
    diode: new Int32Array(lists.diode),
    voltage: new Int32Array(lists.voltage),
    current: new Int32Array(lists.current),
    switch: new Int32Array(lists.switch),
    capacitor: new Int32Array(lists.capacitor),
  };
}

/**
 * Give a part another value: ohms, volts, amperes, farads, IS of a diode, or 0 to 1 for a switch.
 * Sources and diodes keep the factored matrix; a resistor or capacitor puts it out of date; a switch has one factor for
 * each position.
 * @throws when no part has that name or the value is out of range.
 */
export function setValue(compiled: CompiledCircuit, name: string, value: number): void {
  setValueAt(compiled, elementNumber(compiled, name), value);
}

/** As `setValue`, by the part's number: for loops that set thousands. */
export function setValueAt(compiled: CompiledCircuit, index: number, value: number): void {
  if (compiled.values[index] === value) return;
  const element = compiled.circuit.elements[index] as Element;
  compiled.values[index] = checkedValue(element, value);
  if (element.kind === 'resistor' || element.kind === 'capacitor') compiled.revision[0]!++;
  if (element.kind === 'diode') {
    const { junctions } = compiled;
    const at = junctions.element.indexOf(index);
    junctions.saturation[at] = value;
    junctions.critical[at] = criticalVolts(value, junctions.slope[at] as number);
  }
}

/** The number of a part. @throws when no part has that name. */
export function elementNumber(compiled: CompiledCircuit, name: string): number {
  const index = compiled.elementNumbers.get(name);
  if (index === undefined) throw new Error(`circuit: no part is called '${name}'`);
  return index;
}

/** Start every junction afresh, at the voltage from which limiting starts. */
export function coolJunctions(compiled: CompiledCircuit): void {
  compiled.junctions.volts.set(compiled.junctions.critical);
}

function valueOf(element: Element): number {
  switch (element.kind) {
    case 'resistor':
      return element.ohms;
    case 'voltage':
      return element.volts;
    case 'current':
      return element.amperes;
    case 'switch':
      return element.closed ? 1 : 0;
    case 'capacitor':
      return element.farads;
    case 'diode':
      return element.saturationAmperes;
  }
}

const UNIT = { resistor: 'ohm', capacitor: 'F', diode: 'A', voltage: 'V', current: 'A', switch: '' } as const;

function checkedValue(element: Element, value: number): number {
  const positive = element.kind === 'resistor' || element.kind === 'capacitor' || element.kind === 'diode';
  if (!Number.isFinite(value) || (positive && value <= 0)) {
    const need = positive ? `more than 0 ${UNIT[element.kind]}` : 'a finite number';
    throw new Error(`${element.kind} '${element.name}': value must be ${need}, got ${value}`);
  }
  if (element.kind === 'switch' && !(value >= 0 && value <= 1)) {
    throw new Error(`switch '${element.name}': position must be from 0 (open) to 1 (closed), got ${value}`);
  }
  if (
    element.kind === 'diode' &&
    !(
      element.emission > 0 &&
      element.emission < Infinity &&
      element.seriesOhms >= 0 &&
      element.seriesOhms < Infinity
    )
  ) {
    throw new Error(
      `diode '${element.name}': emission must be more than 0 and series resistance at least 0 ohm, got ${element.emission} and ${element.seriesOhms}`,
    );
  }
  return value;
}

function criticalVolts(saturation: number, slope: number): number {
  return slope * Math.log(slope / (Math.SQRT2 * saturation));
}

function junctionsOf(
  elements: readonly Element[],
  diodes: readonly number[],
  first: Int32Array,
  second: Int32Array,
): Junctions {
  const count = diodes.length;
  const models = diodes.map((index) => elements[index] as Diode);
  const made = {
    element: new Int32Array(diodes),
    anode: new Int32Array(count),
    cathode: new Int32Array(count),
    saturation: new Float64Array(count),
    slope: new Float64Array(count),
    series: new Float64Array(count),
    critical: new Float64Array(count),
  };
  for (let at = 0; at < count; at++) {
    const model = models[at] as Diode;
    const index = diodes[at] as number;
    const slope = model.emission * THERMAL_VOLTS;
    made.anode[at] = first[index] as number;
    made.cathode[at] = second[index] as number;
    made.saturation[at] = model.saturationAmperes;
    made.slope[at] = slope;
    made.series[at] = model.seriesOhms;
    made.critical[at] = criticalVolts(model.saturationAmperes, slope);
  }
  return {
    ...made,
    volts: made.critical.slice(),
    amperes: new Float64Array(count),
    slopes: new Float64Array(count),
    offsets: new Float64Array(count),
    charges: chargesOf(models),
  };
}
