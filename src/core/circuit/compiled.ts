/** What the solver works on: a compiled circuit, and what its switch positions decide. */
import type { Circuit, ElementKind } from './elements.ts';
import type { Junction } from './junction.ts';
import type { Mesh } from './mesh.ts';
import type { Room } from './room.ts';

/** Node number of ground. */
export const GROUND = 0;

/**
 * Work object of the solver: the unknowns of nodal analysis are the volts of its supernodes. Change values only with `setValue`,
 * which keeps the eliminated meshes true.
 */
export interface CompiledCircuit {
  readonly circuit: Circuit;
  /** By number: ground is the first. */
  readonly nodeNames: readonly string[];
  readonly nodeNumbers: ReadonlyMap<string, number>;
  readonly elementNumbers: ReadonlyMap<string, number>;
  readonly first: Int32Array;
  readonly second: Int32Array;
  /** Ohms, volts, amperes, farads, IS of a diode; a switch from 0, open, to 1, closed. */
  readonly values: Float64Array;
  /** Numbers of the parts of each kind. */
  readonly ofKind: Readonly<Record<ElementKind, readonly number[]>>;
  readonly junctions: readonly Junction[];
  readonly supernodes: Supernodes;
  /** Where the circuit's arrays are cut from. */
  readonly room: Room;
  /** Latest solution: volts of each node against ground. */
  readonly volts: Float64Array;
  /** What is known for each set of switch positions, and that of the present ones where it was asked for. */
  readonly topologies: Map<string, Topology>;
  topology: Topology | undefined;
  /** Counts changes of resistors and capacitors: a mesh eliminated before the last change is out of date. */
  revision: number;
}

/** Which nodes share an unknown, and how far apart they stand. */
export interface Supernodes {
  /** The node that stands for each node's supernode; ground where sources alone reach it. */
  readonly root: Int32Array;
  /** Volts of each node above its root, by the sources as they were last loaded. */
  readonly offsets: Float64Array;
  /** The sources by which nodes hang on their roots, roots first: the node, the one it hangs on, and whether it is the plus. */
  readonly tree: readonly Branch[];
  /** Resistors and switches with an end that is no root: the volts between drive a current through them. */
  readonly fedResistors: readonly number[];
  readonly fedSwitches: readonly number[];
  /** A node in a loop of sources, where no current is the answer; undefined where there is none. */
  readonly loop: number | undefined;
}

/** A node hung on another by a voltage source. */
interface Branch {
  readonly node: number;
  readonly from: number;
  readonly source: number;
  readonly sign: 1 | -1;
}

/** What the switch positions of a circuit decide, and the meshes eliminated for them. */
export interface Topology {
  /** For each node the floating part it belongs to at DC, or -1 where a way to ground exists. */
  readonly floating: Int32Array;
  /** One node of each floating part, tied to ground. */
  readonly tied: readonly number[];
  /** Numbers of the switches that are part closed: their conductance is added at each step, like that of a junction. */
  readonly ramps: readonly number[];
  /** The two rows of each of them, counted from `linearCount`, and the volts across it from which a solution is sought. */
  readonly rampRows: Int32Array;
  readonly rampVolts: Float64Array;
  /**
   * Row of each node in the order of elimination; nodes of one supernode share it, and that of ground comes last. The first
   * `stillCount` rows are touched by resistors and sources alone; the first `linearCount` by nothing that is not linear.
   */
  readonly row: Int32Array;
  /** The root of each row's supernode. */
  readonly roots: Int32Array;
  readonly stillCount: number;
  readonly linearCount: number;
  /** The two rows of each capacitor, counted from `stillCount`. */
  readonly capacitorRows: Int32Array;
  /** The two rows of each junction, counted from `linearCount`. */
  readonly junctionRows: Int32Array;
  /** Rows, counted from `stillCount`, of capacitors, junctions and switches: all others follow these in a straight line. */
  readonly watched: readonly number[];
  /** Work space: right-hand side that becomes the volts of every row, and of the moving rows alone. */
  readonly side: Float64Array;
  readonly movingSide: Float64Array;
  /** Work space: what is driven between all rows, and between the moving rows. */
  readonly flow: Float64Array;
  readonly movingFlow: Float64Array;
  /** Work space of Newton's method: the rows that are not linear, and what is driven between them by all that is linear. */
  readonly linearFlow: Float64Array;
  readonly newtonFlow: Float64Array;
  readonly newtonMesh: Mesh;
  readonly newtonSide: Float64Array;
  /** The whole circuit with its still rows eliminated, whatever the length of a step. */
  still: Mesh | undefined;
  /** The moving rows with their linear ones eliminated, by siemens of the companion of one farad; 0 at DC. */
  readonly moving: Map<number, Mesh>;
}

/** The number of a part. @throws when no part has that name. */
export function elementNumber(compiled: CompiledCircuit, name: string): number {
  const index = compiled.elementNumbers.get(name);
  if (index === undefined) throw new Error(`circuit: no part is called '${name}'`);
  return index;
}

/** The number of a node. @throws when no node has that name. */
export function nodeNumber(compiled: CompiledCircuit, node: string): number {
  const number = compiled.nodeNumbers.get(node);
  if (number === undefined) throw new Error(`circuit: no node is called '${node}'`);
  return number;
}

/** The place of a diode among the junctions. @throws when no part has that name, or it is no diode. */
export function junctionNumber(compiled: CompiledCircuit, diode: string): number {
  const place = compiled.ofKind.diode.indexOf(elementNumber(compiled, diode));
  if (place < 0) throw new Error(`circuit: '${diode}' is no diode`);
  return place;
}
