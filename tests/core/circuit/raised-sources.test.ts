import { expect, it } from 'vitest';
import { compileCircuit } from '../../../src/core/circuit/compile.ts';
import { solveAtRest, solveOperatingPoint } from '../../../src/core/circuit/operating-point.ts';
import { topologyFor } from '../../../src/core/circuit/topology.ts';

// Diodes straight across 20.6 V, one of them with nothing to hold its current back: no circuit of a workbook, but the plain
// method runs out of steps on it. The nodes are known without it: one is held by the source, the other divides.
const HELD_VOLTS = 20.6;
const compiled = () =>
  compileCircuit({
    ground: '0',
    elements: [
      { kind: 'voltage', name: 'source', plus: 'held', minus: '0', volts: HELD_VOLTS },
      {
        kind: 'diode',
        name: 'soft',
        anode: 'held',
        cathode: '0',
        saturationAmperes: 9e-10,
        emission: 1.05,
        seriesOhms: 1.7,
      },
      {
        kind: 'diode',
        name: 'hard',
        anode: 'held',
        cathode: '0',
        saturationAmperes: 5.1e-11,
        emission: 1.52,
        seriesOhms: 0,
      },
      { kind: 'resistor', name: 'upper', a: 'held', b: 'divided', ohms: 75 },
      { kind: 'resistor', name: 'lower', a: 'divided', b: '0', ohms: 925 },
    ],
  });

it('a circuit that the plain method does not settle is settled by raising its sources', () => {
  const plain = compiled();
  expect(plain.nodeNames[solveAtRest(plain, topologyFor(plain)) ?? -1]).toBe('held');

  const solved = solveOperatingPoint(compiled());
  if (!solved.ok) throw new Error(solved.reason);
  expect(solved.volts('held')).toBeCloseTo(HELD_VOLTS, 9);
  expect(solved.volts('divided')).toBeCloseTo(HELD_VOLTS * 0.925, 9);
  // What the source gives is what the three branches take.
  const taken = solved.amperes('soft') + solved.amperes('hard') + solved.amperes('upper');
  expect(solved.amperes('source') / -taken).toBeCloseTo(1, 9);
});
