/** What a circuit's shape alone decides: which nodes stand a source apart, which parts float, and which rows move. */
import { describe, expect, it } from 'vitest';
import { compileCircuit, setValue } from '../../../src/core/circuit/compile.ts';
import { nodeNumber } from '../../../src/core/circuit/compiled.ts';
import type { CompiledCircuit } from '../../../src/core/circuit/compiled.ts';
import type { Element } from '../../../src/core/circuit/elements.ts';
import { setOffsets } from '../../../src/core/circuit/supernodes.ts';
import { topologyFor } from '../../../src/core/circuit/topology.ts';
import { current, resistor, source } from './parts.ts';

const compiled = (...elements: readonly Element[]): CompiledCircuit =>
  compileCircuit({ ground: '0', elements });
const switchOf = (name: string, a: string, b: string, closed: boolean): Element => ({
  kind: 'switch',
  name,
  a,
  b,
  closed,
});
const capacitor = (name: string, a: string, b: string): Element => ({
  kind: 'capacitor',
  name,
  a,
  b,
  farads: 1e-9,
});

describe('nodes that sources join', () => {
  const stacked = compiled(
    source('V1', 'a', '0', 5),
    source('V2', 'b', 'a', 3),
    source('V3', 'b', 'c', 1),
    resistor('R', 'c', 'd', 1e3),
  );
  const root = (node: string): number => stacked.supernodes.root[nodeNumber(stacked, node)] ?? NaN;

  it('share one root, and that is ground where a source reaches it', () => {
    expect(['a', 'b', 'c'].map(root)).toEqual([0, 0, 0]);
    expect(root('d')).toBe(nodeNumber(stacked, 'd'));
  });

  it('stand above it by the sum of the sources on the way, each by its sign: 5, 5 + 3 and 5 + 3 - 1 V', () => {
    setOffsets(stacked);
    const volts = (node: string): number => stacked.supernodes.offsets[nodeNumber(stacked, node)] ?? NaN;
    expect(['a', 'b', 'c', 'd'].map(volts)).toEqual([5, 8, 7, 0]);
    setOffsets(stacked, 0.5);
    expect(['a', 'b', 'c'].map(volts)).toEqual([2.5, 4, 3.5]);
  });

  it('in a ring have no answer of their own: the node is told', () => {
    expect(stacked.supernodes.loop).toBeUndefined();
    const ring = compiled(source('V1', 'a', '0', 5), source('V2', 'a', '0', 5), resistor('R', 'a', '0', 1));
    expect(ring.supernodes.loop).toBe(nodeNumber(ring, 'a'));
  });
});

describe('parts that float', () => {
  const floats = (circuit: CompiledCircuit, node: string): boolean =>
    (topologyFor(circuit).floating[nodeNumber(circuit, node)] ?? NaN) >= 0;

  it('have no way to ground by resistors, sources, diodes or closed switches; a capacitor or a current is none', () => {
    const circuit = compiled(
      resistor('R1', 'a', '0', 1e3),
      source('V', 'b', 'a', 1),
      {
        kind: 'diode',
        name: 'D',
        anode: 'b',
        cathode: 'c',
        saturationAmperes: 1e-12,
        emission: 1,
        seriesOhms: 0,
      },
      capacitor('C', 'c', 'd'),
      current('I', 'd', 'a', 0),
      resistor('R2', 'd', 'e', 1e3),
    );
    expect(['a', 'b', 'c', 'd', 'e'].map((node) => floats(circuit, node))).toEqual([
      ...[false, false, false],
      ...[true, true],
    ]);
    expect(topologyFor(circuit).tied).toHaveLength(1);
  });

  it('are as many as there are pieces without ground, each tied once', () => {
    const circuit = compiled(
      resistor('R0', 'a', '0', 1),
      ...[1, 2, 3].map((piece) => resistor(`R${piece}`, `x${piece}`, `y${piece}`, 1e3)),
    );
    expect(topologyFor(circuit).tied).toHaveLength(3);
    const { floating } = topologyFor(circuit);
    const part = (node: string): number => floating[nodeNumber(circuit, node)] ?? NaN;
    for (const piece of [1, 2, 3]) expect(part(`x${piece}`)).toBe(part(`y${piece}`));
    expect(new Set([1, 2, 3].map((piece) => part(`x${piece}`))).size).toBe(3);
  });

  it('are taken back by a switch when it is closed, and not while it is on its way', () => {
    const circuit = compiled(
      resistor('R', 'a', '0', 1e3),
      resistor('R2', 'b', 'c', 1e3),
      switchOf('S', 'a', 'b', false),
    );
    expect(floats(circuit, 'b')).toBe(true);
    setValue(circuit, 'S', 0.5);
    expect(floats(circuit, 'b')).toBe(true);
    expect(topologyFor(circuit).ramps).toHaveLength(1);
    setValue(circuit, 'S', 1);
    expect([floats(circuit, 'b'), floats(circuit, 'c')]).toEqual([false, false]);
    const closed = topologyFor(circuit);
    setValue(circuit, 'S', 0);
    expect(floats(circuit, 'b')).toBe(true);
    setValue(circuit, 'S', 1);
    expect(topologyFor(circuit)).toBe(closed);
  });
});

describe('rows in the order of elimination', () => {
  it('are those of resistors alone, then those of capacitors, then those of diodes; ground comes last', () => {
    const circuit = compiled(
      source('V', 'in', '0', 5),
      resistor('R1', 'in', 'still', 1e3),
      resistor('R2', 'still', 'slow', 1e3),
      capacitor('C', 'slow', '0'),
      resistor('R3', 'slow', 'bent', 1e3),
      {
        kind: 'diode',
        name: 'D',
        anode: 'bent',
        cathode: '0',
        saturationAmperes: 1e-12,
        emission: 1,
        seriesOhms: 0,
      },
    );
    const { row, stillCount, linearCount, watched } = topologyFor(circuit);
    const at = (node: string): number => row[nodeNumber(circuit, node)] ?? NaN;
    expect(['still', 'slow', 'bent'].map(at)).toEqual([0, 1, 2]);
    expect([at('0'), at('in')]).toEqual([3, 3]);
    expect([stillCount, linearCount]).toEqual([1, 2]);
    // Counted from the first that moves: the capacitor's and the diode's.
    expect([...watched].sort()).toEqual([0, 1]);
  });
});
