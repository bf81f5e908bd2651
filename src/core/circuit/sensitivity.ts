/**
 * How one reading of a settled circuit changes with the value of every part, by the adjoint network: the circuit with its junctions
 * as conductances, its sources dead, and the reading's own part fed instead. As the conductances are the same both ways one solution
 * serves all parts. (Director and Rohrer, IEEE Transactions on Circuit Theory CT-16, 1969.)
 */
import type { CompiledCircuit } from './compiled.ts';
import { amperesAt } from './currents.ts';
import { junctionLaw } from './junction.ts';
import { backSubstitute, reduceSide } from './mesh.ts';
import { movingMesh, stillMesh } from './stamp.ts';
import { topologyFor } from './topology.ts';

/** A reading: amperes into a junction's anode, or volts of a node above another, by number. */
export type Quantity =
  | { readonly kind: 'amperes'; readonly junction: number }
  | { readonly kind: 'volts'; readonly node: number; readonly above: number };

/**
 * Change of a reading with the value of a part, by its number: per ohm, volt, or ampere of IS; 0 for parts of other kinds. The circuit
 * must just have been settled, and its values must not change before all are asked for.
 */
export function sensitivityOf(compiled: CompiledCircuit, quantity: Quantity): (part: number) => number {
  const { first, second, volts, values, circuit, junctions, ofKind } = compiled;
  const fed = feedOf(compiled, quantity);
  const adjoint = adjointVolts(compiled, fed);
  const across = (part: number): number => adjoint[first[part]!]! - adjoint[second[part]!]!;
  const reading = {
    across,
    value: (part: number) => values[part]!,
    junction: (at: number) => junctions[at]!.companionSiemens * across(junctions[at]!.element),
    charging: () => 0,
    fed: (node: number) => fed.get(node) ?? 0,
  };
  const law = { amperes: 0, siemens: 0 };
  return (part) => {
    const { kind } = circuit.elements[part]!;
    if (kind === 'resistor')
      return ((volts[first[part]!]! - volts[second[part]!]!) * across(part)) / values[part]! ** 2;
    if (kind === 'voltage') return amperesAt(compiled, part, reading);
    if (kind !== 'diode') return 0;
    const at = ofKind.diode.indexOf(part);
    const { seriesOhms, saturationAmperes, volts: behind } = junctions[at]!;
    junctionLaw(junctions[at]!, behind, law);
    const own = quantity.kind === 'amperes' && quantity.junction === at ? 1 : 0;
    return ((own - across(part)) * law.amperes) / (saturationAmperes * (1 + law.siemens * seriesOhms));
  };
}

/** What the adjoint network is fed at each node: how the reading changes with the node's volts. */
function feedOf({ junctions }: CompiledCircuit, quantity: Quantity): ReadonlyMap<number, number> {
  if (quantity.kind === 'volts')
    return new Map([
      [quantity.node, 1],
      [quantity.above, -1],
    ]);
  const { anode, cathode, companionSiemens } = junctions[quantity.junction]!;
  return new Map([
    [anode, companionSiemens],
    [cathode, -companionSiemens],
  ]);
}

/** Volts of every node of the adjoint network. */
function adjointVolts(compiled: CompiledCircuit, fed: ReadonlyMap<number, number>): Float64Array {
  const topology = topologyFor(compiled);
  const { side, movingSide, newtonMesh, newtonSide, row } = topology;
  const still = stillMesh(compiled, topology);
  const moving = movingMesh(compiled, topology, 0);
  const left = moving.size - moving.eliminated;
  side.fill(0);
  for (const [node, amperes] of fed) side[row[node]!]! += amperes;
  reduceSide(still, side);
  reduceSide(moving, movingSide);
  for (let at = 0; at < left; at++) newtonSide[at] = movingSide[at + moving.eliminated]!;
  reduceSide(newtonMesh, newtonSide);
  backSubstitute(newtonMesh, newtonSide);
  for (let at = 0; at < left; at++) movingSide[at + moving.eliminated] = newtonSide[at]!;
  backSubstitute(moving, movingSide);
  backSubstitute(still, side);
  side[still.size] = 0;
  return Float64Array.from(row, (at) => side[at]!);
}
