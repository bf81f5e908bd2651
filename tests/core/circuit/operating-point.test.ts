import { describe, expect, it } from 'vitest';
import { compileCircuit, setValue, solveOperatingPoint } from '../../../src/core/circuit/index.ts';
import type { Circuit, DiodeModel, Element, Solved } from '../../../src/core/circuit/index.ts';
import { seededRandom } from '../../support/random.ts';

const OPTO_LED: DiodeModel = { saturationAmperes: 7.91e-20, emission: 1.44, seriesOhms: 1 };
const SMALL_SIGNAL: DiodeModel = { saturationAmperes: 2.52e-9, emission: 1.752, seriesOhms: 0.568 };

const circuit = (...elements: readonly Element[]): Circuit => ({ ground: '0', elements });
const resistor = (name: string, a: string, b: string, ohms: number): Element => ({
  kind: 'resistor',
  name,
  a,
  b,
  ohms,
});
const source = (name: string, plus: string, minus: string, volts: number): Element => ({
  kind: 'voltage',
  name,
  plus,
  minus,
  volts,
});
const current = (name: string, from: string, to: string, amperes: number): Element => ({
  kind: 'current',
  name,
  from,
  to,
  amperes,
});
const diode = (name: string, anode: string, cathode: string, model: DiodeModel): Element => ({
  kind: 'diode',
  name,
  anode,
  cathode,
  ...model,
});
const ideal = (saturationAmperes: number, emission: number): DiodeModel => ({
  saturationAmperes,
  emission,
  seriesOhms: 0,
});

function solved(from: Circuit): Solved {
  const solution = solveOperatingPoint(compileCircuit(from));
  if (!solution.ok) throw new Error(`expected a solution, got: ${solution.reason}`);
  return solution;
}

describe('the operating point of networks that can be worked by hand', () => {
  it('splits 10 V over 1 kohm and 2 kohm into 6.6667 V', () => {
    const point = solved(
      circuit(
        source('V', 'top', '0', 10),
        resistor('R1', 'top', 'mid', 1e3),
        resistor('R2', 'mid', '0', 2e3),
      ),
    );
    expect(point.volts('mid')).toBeCloseTo(20 / 3, 9);
    expect(point.amperes('R1')).toBeCloseTo(10 / 3e3, 12);
    // A source that delivers carries current from minus to plus, so it counts negative.
    expect(point.amperes('V')).toBeCloseTo(-10 / 3e3, 12);
  });

  it('finds 1 mA in the detector of a bridge with 6.0 V and 5.5 V at its sides', () => {
    // Kirchhoff at left: (10 - 6)/1k - 6/2k - 1 mA = 0; at right: (10 - 5.5)/1k - 5.5/1k + 1 mA = 0.
    const point = solved(
      circuit(
        source('V', 'top', '0', 10),
        resistor('R1', 'top', 'left', 1e3),
        resistor('R2', 'left', '0', 2e3),
        resistor('R3', 'top', 'right', 1e3),
        resistor('R4', 'right', '0', 1e3),
        resistor('detector', 'left', 'right', 500),
      ),
    );
    expect(point.volts('left')).toBeCloseTo(6, 9);
    expect(point.volts('right')).toBeCloseTo(5.5, 9);
    expect(point.amperes('detector')).toBeCloseTo(1e-3, 12);
  });

  it('drives a current source out of its first node, through itself, into its second', () => {
    const point = solved(circuit(current('I', '0', 'a', 2e-3), resistor('R', 'a', '0', 1e3)));
    expect(point.volts('a')).toBeCloseTo(2, 9);
    expect(point.amperes('I')).toBe(2e-3);
  });

  it('lets no current through an open switch or a capacitor, and 1 mohm stand for a closed switch', () => {
    const parts = (closed: boolean): Circuit =>
      circuit(
        source('V', 'a', '0', 5),
        { kind: 'switch', name: 'S', a: 'a', b: 'b', closed },
        resistor('R', 'b', '0', 1e3),
        { kind: 'capacitor', name: 'C', a: 'b', b: '0', farads: 1e-6 },
      );
    const open = solved(parts(false));
    expect(open.volts('b')).toBeCloseTo(0, 9);
    expect(open.amperes('S')).toBe(0);
    const shut = solved(parts(true));
    expect(shut.amperes('S')).toBeCloseTo(5 / (1e3 + 1e-3), 9);
    expect(shut.amperes('C')).toBe(0);
  });

  it('takes a part with both ends on one node as carrying nothing', () => {
    const point = solved(
      circuit(
        source('V', 'a', '0', 5),
        resistor('R', 'a', '0', 1e3),
        resistor('loop', 'a', 'a', 10),
        diode('D', 'a', 'a', SMALL_SIGNAL),
      ),
    );
    expect(point.amperes('loop')).toBe(0);
    expect(Math.abs(point.amperes('D'))).toBeLessThan(1e-15);
    expect(point.amperes('R')).toBeCloseTo(5e-3, 12);
  });
});

describe('the operating point of circuits with diodes', () => {
  it('gives the textbook diode of 0.7 V at 1 mA 4.2625 mA and 0.73750 V from 5 V and 1 kohm', () => {
    // Sedra and Smith, iterative analysis (from memory); carried to convergence with N = 1 at 300.15 K, IS from 0.7 V at 1 mA.
    const point = solved(
      circuit(
        source('V', 'a', '0', 5),
        resistor('R', 'a', 'd', 1e3),
        diode('D', 'd', '0', ideal(1.7636e-15, 1)),
      ),
    );
    expect(point.amperes('D')).toBeCloseTo(4.2625e-3, 7);
    expect(point.volts('d')).toBeCloseTo(0.7375, 4);
  });

  it('gives the same diode at 60 mV a decade 4.2622 mA and 0.73778 V', () => {
    // 60 mV a decade is N VT = 0.06/ln 10; IS = 1 mA exp(-0.7 ln 10/0.06).
    const slope = 0.06 / Math.LN10;
    const emission = slope / ((1.380649e-23 * 300.15) / 1.602176634e-19);
    const point = solved(
      circuit(
        source('V', 'a', '0', 5),
        resistor('R', 'a', 'd', 1e3),
        diode('D', 'd', '0', ideal(1e-3 * Math.exp(-0.7 / slope), emission)),
      ),
    );
    expect(point.amperes('D')).toBeCloseTo(4.2622e-3, 7);
    expect(point.volts('d')).toBeCloseTo(0.73778, 5);
  });

  it('gives 0.3365 mA and 0.6635 V from 1 V and 1 kohm into IS 1e-15 at VT 25 mV', () => {
    // Sedra and Smith, problem (statement read, answer worked out by bisection of 1 = 1000 I + VT ln(I/IS + 1)).
    const emission = 0.025 / ((1.380649e-23 * 300.15) / 1.602176634e-19);
    const point = solved(
      circuit(
        source('V', 'a', '0', 1),
        resistor('R', 'a', 'd', 1e3),
        diode('D', 'd', '0', ideal(1e-15, emission)),
      ),
    );
    expect(point.amperes('D')).toBeCloseTo(0.3365e-3, 7);
    expect(point.volts('d')).toBeCloseTo(0.6635, 4);
  });

  it('gives the bare loop of 5 V and three times 220 ohm 5.38 mA and 1.449 V on a 6N138', () => {
    // By hand: 5 = 660 I + I + 1.44 x 25.865 mV x ln(I/7.91e-20) at I = 5.38 mA: 3.556 + 1.444.
    const point = solved(
      circuit(
        source('V', 'a', '0', 5),
        resistor('R', 'a', 'd', 660),
        diode('LED', 'd', '0', OPTO_LED),
        diode('D1', '0', 'd', SMALL_SIGNAL),
      ),
    );
    expect(point.amperes('LED')).toBeCloseTo(5.38e-3, 5);
    expect(point.volts('d')).toBeCloseTo(1.449, 3);
  });

  it('gives the loop the wrong way round 6.556 mA and 0.6731 V on the protection diode', () => {
    const point = solved(
      circuit(
        source('V', 'a', '0', 5),
        resistor('R', 'a', 'd', 660),
        diode('LED', '0', 'd', OPTO_LED),
        diode('D1', 'd', '0', SMALL_SIGNAL),
      ),
    );
    expect(point.amperes('D1')).toBeCloseTo(6.556e-3, 6);
    expect(point.volts('d')).toBeCloseTo(0.6731, 4);
    expect(point.amperes('LED')).toBeLessThanOrEqual(0);
  });

  it('lets no more than the least conductance and IS through a diode in reverse', () => {
    const point = solved(
      circuit(source('V', 'a', '0', -5), resistor('R', 'a', 'd', 1e3), diode('D', 'd', '0', OPTO_LED)),
    );
    expect(point.amperes('D')).toBeCloseTo(-5e-12, 14);
  });
});

describe('parts of a circuit that float', () => {
  it('solves them and says that their volts mean nothing by themselves', () => {
    const point = solved(
      circuit(
        source('V', 'a', '0', 5),
        resistor('R', 'a', '0', 1e3),
        source('battery', 'p', 'm', 1.5),
        resistor('load', 'p', 'm', 150),
      ),
    );
    expect(point.volts('p') - point.volts('m')).toBeCloseTo(1.5, 9);
    expect(point.amperes('load')).toBeCloseTo(0.01, 9);
    expect(point.floats('p')).toBe(true);
    expect(point.floats('a')).toBe(false);
    expect(point.floats('0')).toBe(false);
  });

  it('takes a part back that a switch ties to ground, and lets it go again', () => {
    const compiled = compileCircuit(
      circuit(
        source('battery', 'p', 'm', 1.5),
        resistor('load', 'p', 'm', 150),
        { kind: 'switch', name: 'S', a: 'm', b: '0', closed: false },
        resistor('bleed', '0', '0', 1),
      ),
    );
    const floats = (): boolean => {
      const point = solveOperatingPoint(compiled);
      return point.ok && point.floats('m');
    };
    expect(floats()).toBe(true);
    setValue(compiled, 'S', 1);
    expect(floats()).toBe(false);
    setValue(compiled, 'S', 0);
    expect(floats()).toBe(true);
  });

  it('solves a part that hangs on one diode alone, at any bias that its supply may have', () => {
    // No current can return, so the diode must carry none, whatever the rounding of 1e3 S beside 1e-12 S does.
    for (const model of [
      OPTO_LED,
      SMALL_SIGNAL,
      { saturationAmperes: 1.11e-12, emission: 1.99, seriesOhms: 2 },
    ]) {
      for (const volts of [0.8, 3.3, 5, 12]) {
        const point = solved(
          circuit(
            source('V', 'rail', '0', 3.3),
            resistor('R1', 'rail', 'signal', 33.2),
            source('own', 'top', 'low', volts),
            { kind: 'switch', name: 'tie', a: 'low', b: 'far', closed: true },
            resistor('R2', 'far', 'dead', 10.13),
            resistor('R3', 'top', 'anode', 470),
            diode('LED', 'anode', 'signal', model),
          ),
        );
        expect(Math.abs(point.amperes('LED'))).toBeLessThan(1e-11);
        expect(point.volts('signal')).toBeCloseTo(3.3, 6);
      }
    }
  });
});

describe('circuits without an operating point', () => {
  const reason = (from: Circuit): { node: string; reason: string } => {
    const solution = solveOperatingPoint(compileCircuit(from));
    if (solution.ok) throw new Error('expected no solution');
    return solution;
  };

  it('names a node between two sources that want different volts', () => {
    const found = reason(
      circuit(source('V1', 'a', '0', 5), source('V2', 'a', '0', 3), resistor('R', 'a', '0', 1e3)),
    );
    expect(found.node).toBe('a');
    expect(found.reason).toBe("no operating point was found: node 'a' does not settle");
  });

  it('names a node where two equal sources in parallel leave their currents open', () => {
    expect(reason(circuit(source('V1', 'a', '0', 5), source('V2', 'a', '0', 5))).node).toBe('a');
  });

  it('names the node of a source that is short-circuited by its own wire', () => {
    expect(reason(circuit(resistor('R', 'a', '0', 1), source('V', 'a', 'a', 5))).node).toBe('a');
  });

  it('names the node of a current that is forced into a diode the wrong way', () => {
    const found = reason(circuit(current('I', '0', 'a', 1e-3), diode('D', '0', 'a', SMALL_SIGNAL)));
    expect(found).toMatchObject({
      node: 'a',
      reason: "a current is forced into node 'a', and every way out of it blocks",
    });
  });

  it('names the node of a current that has no way to ground at all', () => {
    const found = reason(
      circuit(resistor('R', 'b', '0', 1), current('I', '0', 'a', 1e-3), resistor('R2', 'a', 'c', 1e3)),
    );
    expect(found).toMatchObject({
      node: 'a',
      reason: "a current is forced into node 'a', which has no way to ground",
    });
  });

  it('finds an open switch between a current and its way out, and the answer once it closes', () => {
    const compiled = compileCircuit(
      circuit(
        current('I', '0', 'a', 1e-3),
        { kind: 'switch', name: 'S', a: 'a', b: '0', closed: false },
        resistor('R', 'b', '0', 1),
      ),
    );
    expect(solveOperatingPoint(compiled)).toMatchObject({ ok: false, node: 'a' });
    setValue(compiled, 'S', 1);
    const point = solveOperatingPoint(compiled);
    expect(point.ok && point.volts('a')).toBeCloseTo(1e-6, 12);
  });

  it('lets a floating part have a current that goes round inside it', () => {
    const point = solved(
      circuit(resistor('R0', 'g', '0', 1), current('I', 'a', 'b', 1e-3), resistor('R', 'a', 'b', 1e3)),
    );
    expect(point.volts('b') - point.volts('a')).toBeCloseTo(1, 6);
  });
});

describe('hard circuits', () => {
  it('solves a stack of rectifiers on 230 V peaks and a long chain of diodes', () => {
    const chain: Element[] = [source('V', 'n0', '0', 230)];
    for (let at = 0; at < 60; at++) chain.push(diode(`D${at}`, `n${at}`, `n${at + 1}`, SMALL_SIGNAL));
    chain.push(resistor('R', 'n60', '0', 1e3));
    const point = solved(circuit(...chain));
    // 230 = 60 Vd + 1000 I with Vd near 0.83 V at 0.18 A.
    expect(point.amperes('R')).toBeCloseTo(point.amperes('D0'), 9);
    expect(point.volts('n0') - point.volts('n1')).toBeCloseTo(point.volts('n59') - point.volts('n60'), 6);
    expect(60 * (point.volts('n0') - point.volts('n1')) + 1e3 * point.amperes('R')).toBeCloseTo(230, 6);
  });

  it('never answers with a value that is not a number, over 400 seeded networks of anything joined to anything', () => {
    const random = seededRandom(20140);
    let solutions = 0;
    for (let run = 0; run < 400; run++) {
      const count = random.integer(2, 12);
      const node = (): string => {
        const at = random.integer(0, count);
        return at === 0 ? '0' : `n${at}`;
      };
      const elements: Element[] = [resistor('first', 'n1', '0', random.decades(1e-3, 1e9))];
      for (let at = 0; at < 2 * count; at++) {
        const [a, b] = [node(), node()];
        const draw = random.next();
        if (draw < 0.35) elements.push(resistor(`p${at}`, a, b, random.decades(1e-3, 1e9)));
        else if (draw < 0.65)
          elements.push(
            diode(`p${at}`, a, b, {
              saturationAmperes: random.decades(1e-22, 1),
              emission: random.decades(0.5, 4),
              seriesOhms: random.chance(0.3) ? 0 : random.decades(1e-3, 100),
            }),
          );
        else if (draw < 0.85)
          elements.push(source(`p${at}`, a, b, (random.next() - 0.5) * random.decades(1, 1e4)));
        else if (draw < 0.95) elements.push(current(`p${at}`, a, b, random.decades(1e-12, 10)));
        else elements.push({ kind: 'switch', name: `p${at}`, a, b, closed: random.chance(0.5) });
      }
      const from = circuit(...elements);
      const solution = solveOperatingPoint(compileCircuit(from));
      if (!solution.ok) {
        expect([...Array(count + 1).keys()].map((at) => (at === 0 ? '0' : `n${at}`))).toContain(
          solution.node,
        );
        continue;
      }
      solutions++;
      for (const element of elements) {
        expect(Number.isFinite(solution.amperes(element.name)), `${run} ${element.name}`).toBe(true);
      }
    }
    expect(solutions).toBeGreaterThan(40);
  });
});

describe('networks of 200 nodes', () => {
  it('solves a ladder whose volts fall by the golden section at every rung', () => {
    // Series R and shunt R: the ladder seen from any rung is R times the golden mean; each rung keeps 1/phi^2 of the last.
    const elements: Element[] = [source('V', 'n0', '0', 1)];
    for (let at = 1; at <= 199; at++) {
      elements.push(resistor(`s${at}`, `n${at - 1}`, `n${at}`, 100));
      elements.push(resistor(`p${at}`, `n${at}`, '0', 100));
    }
    const point = solved(circuit(...elements));
    const golden = (1 + Math.sqrt(5)) / 2;
    for (let at = 1; at < 20; at++) expect(point.volts(`n${at}`) / golden ** (-2 * at)).toBeCloseTo(1, 9);
  });

  it('balances every node of a random network of 200 nodes with diodes to a nanoampere', () => {
    const random = seededRandom(200);
    const elements: Element[] = [source('V', 'n1', '0', 9)];
    for (let at = 2; at <= 200; at++)
      elements.push(resistor(`r${at}`, `n${at}`, `n${random.integer(1, at - 1)}`, random.decades(10, 1e4)));
    for (let at = 0; at < 100; at++) {
      elements.push(resistor(`g${at}`, `n${random.integer(2, 200)}`, '0', random.decades(100, 1e5)));
      elements.push(
        diode(`d${at}`, `n${random.integer(2, 200)}`, `n${random.integer(2, 200)}`, SMALL_SIGNAL),
      );
    }
    const point = solved(circuit(...elements));
    const net = new Map<string, number>();
    for (const element of elements) {
      const [from, to] =
        element.kind === 'resistor'
          ? [element.a, element.b]
          : element.kind === 'diode'
            ? [element.anode, element.cathode]
            : ['n1', '0'];
      const amperes = point.amperes(element.name);
      net.set(from, (net.get(from) ?? 0) - amperes);
      net.set(to, (net.get(to) ?? 0) + amperes);
    }
    for (const [node, amperes] of net) expect(Math.abs(amperes), node).toBeLessThan(1e-9);
  });
});
