/**
 * Supernodes: nodes joined by ideal voltage sources stand a known voltage apart, so that one unknown serves them all. What is
 * left of the matrix of nodal analysis is conductances alone (any circuits text, under nodal analysis).
 */
import { GROUND } from './compiled.ts';
import type { CompiledCircuit, Supernodes } from './compiled.ts';
import { takeIndices, takeNumbers } from './room.ts';
import type { Room } from './room.ts';

/** Find the supernodes of a circuit with `count` nodes. */
export function supernodesOf(
  room: Room,
  count: number,
  first: Int32Array,
  second: Int32Array,
  { voltage, resistor, switch: switches }: CompiledCircuit['ofKind'],
): Supernodes {
  const root = takeIndices(room, count).fill(-1);
  const tree: Supernodes['tree'][number][] = [];
  const used = new Set<number>();
  let loop: number | undefined;
  const reach = (from: number): void => {
    for (const source of voltage) {
      const plus = second[source] === from;
      if ((!plus && first[source] !== from) || used.has(source)) continue;
      used.add(source);
      const node = plus ? first[source]! : second[source]!;
      if (root[node]! >= 0) {
        loop ??= node === GROUND ? from : node;
        continue;
      }
      root[node] = root[from]!;
      tree.push({ node, from, source, sign: plus ? 1 : -1 });
      reach(node);
    }
  };
  for (let node = 0; node < count; node++) {
    if (root[node]! >= 0) continue;
    root[node] = node;
    if (voltage.length > 0) reach(node);
  }
  const hangs = (node: number): boolean => root[node] !== node;
  const fed = (parts: readonly number[]) => parts.filter((at) => hangs(first[at]!) || hangs(second[at]!));
  return {
    root,
    offsets: takeNumbers(room, count),
    tree,
    fedResistors: fed(resistor),
    fedSwitches: fed(switches),
    loop,
  };
}

/** Work out the offsets from the sources as they are set, each scaled. */
export function setOffsets({ supernodes, values }: CompiledCircuit, scale = 1): void {
  const { offsets, tree } = supernodes;
  for (const { node, from, source, sign } of tree)
    offsets[node] = offsets[from]! + sign * scale * values[source]!;
}
