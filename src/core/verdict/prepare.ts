/** A link's circuit made ready: set a state, settle, read what each input gets. */
import type { CompiledCircuit } from '../circuit/index.ts';
import { compileCircuit, elementNumber, setValue } from '../circuit/index.ts';
import type { Solution, Unsolved } from '../circuit/index.ts';
import { nodeNumber, settle, solveOperatingPoint } from '../circuit/index.ts';
import type { State } from '../wiring/index.ts';
import type { Link } from '../wiring/index.ts';
import type { Grounding, LinkCircuit } from '../wiring/index.ts';
import { linkCircuit } from '../wiring/index.ts';

/** Where to read one input in the compiled circuit. */
interface Probe {
  readonly led: number;
  readonly reverse: number;
  readonly node: number;
  readonly ground: number;
}

/** A link ready to be solved again and again. */
export interface PreparedLink {
  readonly grounding: Grounding;
  readonly model: LinkCircuit;
  readonly compiled: CompiledCircuit;
  readonly probes: readonly Probe[];
}

/** What one input gets in one state: LED amperes (forward counts positive) and amperes the wrong way, or volts of a level input. */
export interface InputReading {
  readonly value: number;
  readonly reverseAmperes: number;
}

/** Build and compile a link for one way its grounds are joined. */
export function prepareLink(link: Link, grounding: Grounding): PreparedLink {
  const model = linkCircuit(link, grounding);
  const compiled = compileCircuit(model.circuit);
  const diode = (name: string | undefined): number =>
    name === undefined ? -1 : compiled.junctions.element.indexOf(elementNumber(compiled, name));
  const probes = model.senses.map((sense) =>
    sense.kind === 'current'
      ? { led: diode(sense.led), reverse: diode(sense.reverse), node: -1, ground: -1 }
      : {
          led: -1,
          reverse: -1,
          node: nodeNumber(compiled, sense.node),
          ground: nodeNumber(compiled, sense.ground),
        },
  );
  return { grounding, model, compiled, probes };
}

/** Put the output into a state. */
export function setState(prepared: PreparedLink, state: State): void {
  for (const [name, position] of prepared.model.switching[state]) setValue(prepared.compiled, name, position);
}

/** Solve one state. @returns undefined when solved, else what went wrong. */
export function settleState(prepared: PreparedLink, state: State): Unsolved | undefined {
  setState(prepared, state);
  return settle(prepared.compiled);
}

/** Solve one state and keep a snapshot of everything. */
export function solveState(prepared: PreparedLink, state: State): Solution {
  setState(prepared, state);
  return solveOperatingPoint(prepared.compiled);
}

/** What input number `input` gets in the state settled last. */
export function readInput(prepared: PreparedLink, input: number): InputReading {
  const { compiled } = prepared;
  const probe = prepared.probes[input] as Probe;
  if (probe.led >= 0) {
    return {
      value: compiled.junctions.amperes[probe.led] as number,
      reverseAmperes: probe.reverse < 0 ? 0 : (compiled.junctions.amperes[probe.reverse] as number),
    };
  }
  const volts = (node: number): number => (node < 0 ? 0 : (compiled.solution[node] as number));
  return { value: volts(probe.node) - volts(probe.ground), reverseAmperes: 0 };
}
