import { describe, expect, test } from 'vitest';
import { compileCircuit, setValue, solveOperatingPoint } from '../../../src/core/circuit/index.ts';
import type { DiodeModel, Element, Solved } from '../../../src/core/circuit/index.ts';
import { current, near, resistor, solved, source } from './parts.ts';

describe('Junctions beside resistors', () => {
  const MODEL: DiodeModel = { saturationAmperes: 2.52e-9, emission: 1.752, seriesOhms: 0.568 };
  const diode = (name: string, anode: string, cathode: string, model = MODEL): Element => ({
    kind: 'diode',
    name,
    anode,
    cathode,
    ...model,
  });
  const fed = (...parts: readonly Element[]): Solved =>
    solved([source('V', 'in', '0', 5), resistor('R', 'in', 'd', 1e3), ...parts]);

  test('are one of twice the area where two lie side by side: twice IS, half RS', () => {
    const two = fed(diode('D1', 'd', '0'), diode('D2', 'd', '0'));
    const wide = fed(diode('D', 'd', '0', { ...MODEL, saturationAmperes: 2 * 2.52e-9, seriesOhms: 0.284 }));
    near(two.volts('d'), wide.volts('d'));
    near(two.amperes('D1'), two.amperes('D2'));
  });

  test('are one of twice the slope where two are in series: twice N and RS', () => {
    const two = fed(diode('D1', 'd', 'm'), diode('D2', 'm', '0'));
    const one = fed(diode('D', 'd', '0', { ...MODEL, emission: 2 * 1.752, seriesOhms: 2 * 0.568 }));
    near(two.volts('d'), one.volts('d'));
  });

  test('rise by N VT ln 10 for each decade of current', () => {
    // 1.752 x 25.865 mV x 2.3026 = 104.3 mV, where RS is left out.
    const bare = { ...MODEL, seriesOhms: 0 };
    const volts = (amperes: number): number =>
      solved([current('I', '0', 'd', amperes), diode('D', 'd', '0', bare)]).volts('d');
    for (const amperes of [1e-5, 1e-4, 1e-3])
      expect(volts(10 * amperes) - volts(amperes)).toBeCloseTo(0.10434, 4);
  });

  test('never carry less for more supply, less resistance or more saturation current', () => {
    const compiled = compileCircuit({
      ground: '0',
      elements: [source('V', 'in', '0', 5), resistor('R', 'in', 'd', 1e3), diode('D', 'd', '0')],
    });
    const amperes = (name: string, value: number): number => {
      setValue(compiled, name, value);
      const point = solveOperatingPoint(compiled);
      if (!point.ok) throw new Error(point.reason);
      return point.amperes('D');
    };
    for (const [name, values] of [
      ['V', [0, 0.3, 0.6, 1, 5, 24]],
      ['R', [1e6, 1e4, 470, 33]],
      ['D', [1e-20, 1e-15, 1e-9, 1e-6]],
    ] as const) {
      const row = values.map((value) => amperes(name, value));
      expect(row, name).toEqual([...row].sort((one, other) => one - other));
    }
  });
});
