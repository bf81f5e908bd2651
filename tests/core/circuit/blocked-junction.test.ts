import { describe, expect, it } from 'vitest';
import { near, resistor, solved, source } from './parts.ts';
import { PARTS, makeJack, makeLead, wires } from '../../../src/core/wiring/index.ts';
import { prepareLink, solveState } from '../../../src/core/verdict/prepare.ts';

describe('a part of a circuit that hangs on the rest by one blocked junction', () => {
  // 3.3 V on the input's signal contact, its ground on a line that the open stage lets go of: no current can come back.
  it.each(['6N138', 'H11L1', 'PC900V', 'unknown'] as const)('settles with a %s', (part) => {
    const output = makeJack('out', 'din5', 'din', { circuit: 'driver-3v3' });
    const input = makeJack('in', 'trs-3.5', 'tip-signal', { circuit: 'receiver-led', part });
    const link = {
      output,
      branches: [{ input, leads: [makeLead(output.connector, input.connector, wires('4-tip', '5-sleeve'))] }],
    };
    const point = solveState(prepareLink(link, 'separate'), 'idle');
    if (!point.ok) throw new Error(point.reason);
    expect(Math.abs(point.amperes('in0 LED'))).toBeLessThan(1e-11);
    expect(point.volts('in0 tip')).toBeCloseTo(3.3, 6);
  });

  // Idle, open drain: the sink lines of several inputs hang on their diodes, milliohms apart, and the last digits never rest.
  it.each([1, 2, 3, 4])('settles where the sink lines of %i inputs are let go of together', (inputs) => {
    for (const part of PARTS) {
      for (const contactOhms of [0, 1e-3, 0.03, 0.1]) {
        for (const lengthMetres of [0.01, 0.1, 1, 10]) {
          const output = makeJack('out', 'din5', 'din', { circuit: 'driver-3v3' });
          const input = makeJack('in', 'din5', 'din', { part });
          const lead = makeLead('din5', 'din5', wires('4-4', '5-5', '2-2'), {
            contactOhms,
            lengthMetres,
            gauge: 20,
          });
          const branches = Array.from({ length: inputs }, () => ({ input, leads: [lead] }));
          const point = solveState(prepareLink({ output, branches }, 'separate'), 'idle');
          if (!point.ok) throw new Error(`${part}, ${contactOhms} ohm, ${lengthMetres} m: ${point.reason}`);
          expect(Math.abs(point.amperes('in0 LED'))).toBeLessThan(1e-9);
        }
      }
    }
  });

  // 43.9 V drive 43.9 A and more round a loop that one LED alone holds to ground: what comes back by the LED is nothing, so that the
  // LED stands at 0 V and the rest of the loop at volts of a divider, though an ampere's last digit would be volts over the LED.
  it.each([1, 1e-3, 1e-6])('stands where the LED puts it while %d ohm carry what goes round', (ohms) => {
    const around = solved([
      source('supply', 'feed', 'low', 43.9),
      resistor('inner', 'feed', 'held', 1),
      resistor('load', 'held', 'low', ohms),
      {
        kind: 'diode',
        name: 'LED',
        anode: 'held',
        cathode: '0',
        saturationAmperes: 1e-18,
        emission: 1.93,
        seriesOhms: 3,
      },
    ]);
    near(around.volts('held'), 0);
    near(around.volts('low'), (-43.9 * ohms) / (1 + ohms));
    near(around.volts('feed'), 43.9 / (1 + ohms));
    expect(Math.abs(around.amperes('LED'))).toBeLessThan(1e-20);
  });
});
