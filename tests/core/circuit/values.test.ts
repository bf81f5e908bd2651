import { describe, expect, it } from 'vitest';
import { compileCircuit, setValue, solveOperatingPoint } from '../../../src/core/circuit/index.ts';
import type { Element } from '../../../src/core/circuit/index.ts';

const resistor = (name: string, ohms: number): Element => ({ kind: 'resistor', name, a: 'a', b: '0', ohms });
const supply: Element = { kind: 'voltage', name: 'V', plus: 'a', minus: '0', volts: 5 };
const compile = (...elements: readonly Element[]) => compileCircuit({ ground: '0', elements });

describe('a circuit with a mistake in it', () => {
  it('names the part, what its value must be and what came', () => {
    expect(() => compile(resistor('R1', 0))).toThrow("resistor 'R1': value must be more than 0 ohm, got 0");
    expect(() => compile(resistor('R1', -220))).toThrow(
      "resistor 'R1': value must be more than 0 ohm, got -220",
    );
    expect(() => compile(resistor('R1', Infinity))).toThrow(
      "resistor 'R1': value must be more than 0 ohm, got Infinity",
    );
    expect(() => compile({ ...supply, volts: NaN } as Element)).toThrow(
      "voltage 'V': value must be a finite number, got NaN",
    );
    expect(() => compile({ kind: 'capacitor', name: 'C', a: 'a', b: '0', farads: 0 })).toThrow(
      "capacitor 'C': value must be more than 0 F, got 0",
    );
  });

  it('names a diode whose model cannot be', () => {
    const diode = (model: object): Element =>
      ({
        kind: 'diode',
        name: 'D1',
        anode: 'a',
        cathode: '0',
        saturationAmperes: 1e-12,
        emission: 1,
        seriesOhms: 0,
        ...model,
      }) as Element;
    expect(() => compile(diode({ saturationAmperes: 0 }))).toThrow(
      "diode 'D1': value must be more than 0 A, got 0",
    );
    for (const [emission, seriesOhms] of [
      [0, 0],
      [1, -1],
      [Infinity, 0],
      [1, Infinity],
      [NaN, 0],
    ]) {
      expect(() => compile(diode({ emission, seriesOhms }))).toThrow(
        `diode 'D1': emission must be more than 0 and series resistance at least 0 ohm, got ${emission} and ${seriesOhms}`,
      );
    }
  });

  it('names a part that is there twice, or that has no name', () => {
    expect(() => compile(resistor('R1', 1), resistor('R1', 2))).toThrow(
      "circuit: part names must differ, got 'R1' twice",
    );
    expect(() => compile(supply, resistor('', 1))).toThrow(
      "circuit: every part needs a name, got '' for a resistor",
    );
  });

  it('names a ground that no part touches', () => {
    expect(() => compileCircuit({ ground: 'earth', elements: [supply, resistor('R1', 1)] })).toThrow(
      "circuit: ground must be a node of some part, got 'earth'",
    );
  });

  it('names a part or node that is asked for and does not exist', () => {
    const compiled = compile(supply, resistor('R1', 1e3));
    expect(() => setValue(compiled, 'R2', 1)).toThrow("circuit: no part is called 'R2'");
    const point = solveOperatingPoint(compiled);
    if (!point.ok) throw new Error(point.reason);
    expect(() => point.volts('b')).toThrow("circuit: no node is called 'b'");
    expect(() => point.amperes('R2')).toThrow("circuit: no part is called 'R2'");
  });
});

describe('another value for a part', () => {
  const parts: readonly Element[] = [
    supply,
    { kind: 'resistor', name: 'R', a: 'a', b: 'b', ohms: 1e3 },
    { kind: 'switch', name: 'S', a: 'b', b: '0', closed: true },
    {
      kind: 'diode',
      name: 'D',
      anode: 'b',
      cathode: '0',
      saturationAmperes: 1e-14,
      emission: 1,
      seriesOhms: 0,
    },
    { kind: 'current', name: 'I', from: '0', to: 'b', amperes: 0 },
  ];
  const solve = (compiled: ReturnType<typeof compile>): ((name: string) => number) => {
    const point = solveOperatingPoint(compiled);
    if (!point.ok) throw new Error(point.reason);
    return point.amperes;
  };

  it('gives what a circuit made afresh with it gives, in whatever order values are set', () => {
    const compiled = compile(...parts);
    solve(compiled);
    setValue(compiled, 'S', 0);
    setValue(compiled, 'R', 220);
    solve(compiled);
    setValue(compiled, 'V', 3.3);
    setValue(compiled, 'D', 1e-16);
    setValue(compiled, 'I', 1e-3);
    const fresh = compile(
      ...parts.map((part): Element => {
        if (part.kind === 'voltage') return { ...part, volts: 3.3 };
        if (part.kind === 'resistor') return { ...part, ohms: 220 };
        if (part.kind === 'switch') return { ...part, closed: false };
        if (part.kind === 'diode') return { ...part, saturationAmperes: 1e-16 };
        if (part.kind === 'current') return { ...part, amperes: 1e-3 };
        return part;
      }),
    );
    for (const { name } of parts) expect(solve(compiled)(name)).toBeCloseTo(solve(fresh)(name), 12);
  });

  it('leaves an answer that was taken before as it was', () => {
    const compiled = compile(...parts);
    const before = solve(compiled);
    setValue(compiled, 'R', 500);
    solve(compiled);
    expect(before('R')).toBeCloseTo(5 / 1000.001, 9);
  });

  it('keeps the old value when the new one is refused', () => {
    const compiled = compile(...parts);
    expect(() => setValue(compiled, 'R', -1)).toThrow("resistor 'R': value must be more than 0 ohm, got -1");
    expect(() => setValue(compiled, 'S', 2)).toThrow("switch 'S': position must be from 0");
    expect(solve(compiled)('R')).toBeCloseTo(5 / 1000.001, 9);
  });
});
