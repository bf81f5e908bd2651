/** A link's circuit made ready: set a state, settle, read what each input gets. */
import {
  compileCircuit,
  junctionNumber,
  nodeNumber,
  setValue,
  settle,
  solveOperatingPoint,
} from '../circuit/index.ts';
import type { CompiledCircuit, Quantity, Solution, Unsolved } from '../circuit/index.ts';
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
  /** What each of them gets, as a reading of the circuit. */
  readonly quantities: readonly Quantity[];
  readonly readers: readonly (() => InputReading)[];
}

/** Build and compile a link for one way its grounds are joined. */
export function prepareLink(link: Link, grounding: Grounding): PreparedLink {
  const model = linkCircuit(link, grounding);
  const compiled = compileCircuit(model.circuit);
  const senses = model.senses.slice(0, link.branches.length);
  const quantities = senses.map((sense): Quantity =>
    sense.kind === 'current'
      ? { kind: 'amperes', junction: junctionNumber(compiled, sense.led) }
      : {
          kind: 'volts',
          node: nodeNumber(compiled, sense.node),
          above: nodeNumber(compiled, sense.ground),
        },
  );
  const readers = senses.map((sense, at) => readerOf(compiled, sense, quantities[at] as Quantity));
  return { grounding, model, compiled, senses, quantities, readers };
}

function readerOf(compiled: CompiledCircuit, sense: Sense, quantity: Quantity): () => InputReading {
  const { volts, junctions } = compiled;
  if (quantity.kind === 'volts')
    return () => ({ value: volts[quantity.node]! - volts[quantity.above]!, reverseAmperes: 0 });
  const led = junctions[quantity.junction]!;
  const named = sense.kind === 'current' ? sense.reverse : undefined;
  const reverse = named === undefined ? undefined : junctions[junctionNumber(compiled, named)];
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
