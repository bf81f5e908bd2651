/** A circuit made ready for solving: names become numbers, values sit in arrays that are reused. */
import { GROUND, elementNumber } from './compiled.ts';
import type { CompiledCircuit } from './compiled.ts';
import { nodesOf } from './elements.ts';
import type { Circuit, Element, ElementKind } from './elements.ts';
import { junctionOf, setSaturation } from './junction.ts';
import { makeRoom, takeIndices, takeNumbers } from './room.ts';
import { supernodesOf } from './supernodes.ts';

/**
 * Make a circuit ready for solving.
 * @throws on a doubled or empty name, an unknown ground, or a value out of its range, naming part, need and value.
 */
export function compileCircuit(circuit: Circuit): CompiledCircuit {
  const { elements, ground } = circuit;
  const nodeNumbers = new Map<string, number>([[ground, GROUND]]);
  const nodeNames = [ground];
  const elementNumbers = new Map<string, number>();
  const room = makeRoom();
  const first = takeIndices(room, elements.length);
  const second = takeIndices(room, elements.length);
  const values = takeNumbers(room, elements.length);
  const ofKind: Record<ElementKind, number[]> = {
    resistor: [],
    diode: [],
    voltage: [],
    current: [],
    switch: [],
    capacitor: [],
  };
  const number = (name: string): number => {
    const known = nodeNumbers.get(name);
    if (known !== undefined) return known;
    nodeNumbers.set(name, nodeNames.length);
    return nodeNames.push(name) - 1;
  };
  if (!elements.some((element) => nodesOf(element).includes(ground)))
    throw new Error(`circuit: ground must be a node of some part, got '${ground}'`);
  elements.forEach((element, index) => {
    const { kind, name } = element;
    if (name === '') throw new Error(`circuit: every part needs a name, got '' for a ${kind}`);
    if (elementNumbers.has(name)) throw new Error(`circuit: part names must differ, got '${name}' twice`);
    elementNumbers.set(name, index);
    const [from, to] = nodesOf(element);
    first[index] = number(from);
    second[index] = number(to);
    values[index] = checkedValue(element, valueOf(element));
    ofKind[kind].push(index);
  });
  const junctions = ofKind.diode.map((at) => junctionOf(elements[at]!, at, first[at]!, second[at]!));
  return {
    circuit,
    nodeNames,
    nodeNumbers,
    elementNumbers,
    first,
    second,
    values,
    ofKind,
    junctions,
    supernodes: supernodesOf(room, nodeNames.length, first, second, ofKind),
    room,
    volts: takeNumbers(room, nodeNames.length),
    topologies: new Map(),
    topology: undefined,
    revision: 0,
  };
}

/**
 * Give a part another value: ohms, volts, amperes, farads, IS of a diode, or 0 to 1 for a switch.
 * @throws when no part has that name or the value is out of range.
 */
export function setValue(compiled: CompiledCircuit, name: string, value: number): void {
  setValueAt(compiled, elementNumber(compiled, name), value);
}

/** As `setValue`, by the part's number: for loops that set thousands. */
export function setValueAt(compiled: CompiledCircuit, index: number, value: number): void {
  const { values, circuit, junctions } = compiled;
  const before = values[index]!;
  if (before === value) return;
  const element = circuit.elements[index]!;
  values[index] = checkedValue(element, value);
  if (element.kind === 'resistor' || element.kind === 'capacitor') compiled.revision++;
  if (element.kind === 'switch' && (before % 1 === 0 || value % 1 === 0)) compiled.topology = undefined;
  if (element.kind === 'diode')
    setSaturation(
      junctions.find((one) => one.element === index)!,
      value,
    );
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

/** Units of the values that must be more than 0. */
const POSITIVE: Partial<Record<ElementKind, string>> = { resistor: 'ohm', capacitor: 'F', diode: 'A' };

function checkedValue({ kind, name }: Element, value: number): number {
  const unit = POSITIVE[kind];
  if (!Number.isFinite(value) || (unit && value <= 0)) {
    const need = unit ? `more than 0 ${unit}` : 'a finite number';
    throw new Error(`${kind} '${name}': value must be ${need}, got ${value}`);
  }
  if (kind === 'switch' && !(value >= 0 && value <= 1))
    throw new Error(`switch '${name}': position must be from 0 (open) to 1 (closed), got ${value}`);
  return value;
}
