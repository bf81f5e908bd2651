import { describe, expect, it } from 'vitest';
import { leadFor, makeJack, prepareLink, solveState, wires } from '../../../src/core/index.ts';

describe('a part of a circuit that hangs on the rest by one blocked junction', () => {
  // 3.3 V on the input's signal contact, its ground on a line that the open stage lets go of: no current can come back.
  it.each(['6N138', 'H11L1', 'PC900V', 'unknown'] as const)('settles with a %s', (part) => {
    const output = makeJack('out', 'din5', 'din', { circuit: 'driver-3v3' });
    const input = makeJack('in', 'trs-3.5', 'tip-signal', { circuit: 'receiver-led', part });
    const link = {
      output,
      branches: [{ input, leads: [leadFor(output, input, wires('4-tip', '5-sleeve'))] }],
    };
    const point = solveState(prepareLink(link, 'separate'), 'idle');
    if (!point.ok) throw new Error(point.reason);
    expect(Math.abs(point.amperes('in0 LED'))).toBeLessThan(1e-11);
    expect(point.volts('in0 tip')).toBeCloseTo(3.3, 6);
  });
});
