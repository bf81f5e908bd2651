/** A link's circuit made ready: set a state, settle, read what each input gets. */
import {
  compileCircuit,
  junctionNumber,
  nodeNumber,
  setValue,
  settle,
  solveOperatingPoint,
} from '../circuit/index.ts';
import type { CompiledCircuit, Solution, Unsolved } from '../circuit/index.ts';
import { linkCircuit } from '../wiring/index.ts';
import type { Grounding, Link, LinkCircuit, Sense, State } from '../wiring/index.ts';

/** What one input gets in one state: LED amperes (forward counts positive) and amperes the wrong way, or volts of a level input. */
export interface InputReading {
  readonly value: number;
  readonly reverseAmperes: number;
}

/** A link ready to be solved again and again. `readers` tell what each input gets in the state settled last. */
export interface PreparedLink {
  readonly grounding: Grounding;
  readonly model: LinkCircuit;
  readonly compiled: CompiledCircuit;
  /** How each input of the link is read; those that only rivals feed are left out. */
  readonly senses: readonly Sense[];
  readonly readers: readonly (() => InputReading)[];
}

/** Build and compile a link for one way its grounds are joined. */
export function prepareLink(link: Link, grounding: Grounding): PreparedLink {
  const model = linkCircuit(link, grounding);
  const compiled = compileCircuit(model.circuit);
  const senses = model.senses.slice(0, link.branches.length);
  return { grounding, model, compiled, senses, readers: senses.map((sense) => readerOf(compiled, sense)) };
}

function readerOf(compiled: CompiledCircuit, sense: Sense): () => InputReading {
  if (sense.kind === 'level') {
    const node = nodeNumber(compiled, sense.node);
    const ground = nodeNumber(compiled, sense.ground);
    return () => ({ value: compiled.volts[node]! - compiled.volts[ground]!, reverseAmperes: 0 });
  }
  const junction = (name: string) => compiled.junctions[junctionNumber(compiled, name)]!;
  const led = junction(sense.led);
  const reverse = sense.reverse === undefined ? undefined : junction(sense.reverse);
  return () => ({ value: led.amperes, reverseAmperes: reverse?.amperes ?? 0 });
}

/** Put the output into a state; rivals rest where no state is given for them. */
export function setState(prepared: PreparedLink, state: State, rivals: readonly State[] = []): void {
  const { switching, rivals: others } = prepared.model;
  for (const [name, position] of switching[state]) setValue(prepared.compiled, name, position);
  for (let at = 0; at < others.length; at++)
    for (const [name, position] of others[at]![rivals[at] ?? 'idle'])
      setValue(prepared.compiled, name, position);
}

/** Solve one state. @returns undefined when solved, else what went wrong. */
export function settleState(prepared: PreparedLink, state: State): Unsolved | undefined {
  setState(prepared, state);
  return settle(prepared.compiled);
}

/** Solve one state and keep a snapshot of everything. */
export function solveState(prepared: PreparedLink, state: State, rivals?: readonly State[]): Solution {
  setState(prepared, state, rivals);
  return solveOperatingPoint(prepared.compiled);
}

/** What input number `input` gets in the state settled last. */
export function readInput(prepared: PreparedLink, input: number): InputReading {
  return (prepared.readers[input] as () => InputReading)();
}
