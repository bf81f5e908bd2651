/** Theorems of linear networks (any circuits text: superposition, reciprocity, Thevenin and Norton, Tellegen, Rayleigh), on networks by seed. */
import { describe, expect, test } from 'vitest';
import { nodesOf } from '../../../src/core/circuit/index.ts';
import type { Element } from '../../../src/core/circuit/index.ts';
import { seededRandom } from '../../support/random.ts';
import type { Random } from '../../support/random.ts';
import { current, near, resistor, solved, source } from './parts.ts';

const NODES = ['0', 'a', 'b', 'c', 'd', 'e'];

/** A connected network of resistors between 10 ohm and 100 kohm on six nodes. */
function network(random: Random): readonly Element[] {
  const tree = NODES.slice(1).map((node, at) =>
    resistor(`t${at}`, node, random.pick(NODES.slice(0, at + 1)), random.decades(10, 1e5)),
  );
  const more = Array.from({ length: 6 }, (_, at) => {
    const a = random.pick(NODES);
    const b = random.pick(NODES.filter((node) => node !== a));
    return resistor(`m${at}`, a, b, random.decades(10, 1e5));
  });
  return [...tree, ...more];
}
const NETWORKS = Array.from({ length: 40 }, (_, at) => network(seededRandom(300 + at)));

/** Ohms that a network shows between two nodes: 1 A is driven in at one and out at the other. */
function ohmsBetween(parts: readonly Element[], a: string, b: string): number {
  const point = solved([...parts, current('probe', b, a, 1)]);
  return point.volts(a) - point.volts(b);
}
describe('A network of resistors', () => {
  test('adds up what each source does alone', () => {
    for (const parts of NETWORKS) {
      const both = solved([...parts, source('V', 'a', '0', 7), current('I', '0', 'd', 3e-3)]);
      const volts = solved([...parts, source('V', 'a', '0', 7), current('I', '0', 'd', 0)]);
      const amperes = solved([...parts, source('V', 'a', '0', 0), current('I', '0', 'd', 3e-3)]);
      for (const node of NODES) near(both.volts(node), volts.volts(node) + amperes.volts(node));
      for (const { name } of parts) near(both.amperes(name), volts.amperes(name) + amperes.amperes(name));
    }
  });

  test('scales with its sources, and its currents against its resistances', () => {
    for (const parts of NETWORKS) {
      const once = solved([...parts, source('V', 'a', '0', 5)]);
      const thrice = solved([...parts, source('V', 'a', '0', 15)]);
      const dear = solved([
        ...parts.map((part) => (part.kind === 'resistor' ? { ...part, ohms: 10 * part.ohms } : part)),
        source('V', 'a', '0', 5),
      ]);
      for (const node of NODES) {
        near(thrice.volts(node), 3 * once.volts(node));
        near(dear.volts(node), once.volts(node));
      }
      near(10 * dear.amperes('V'), once.amperes('V'));
    }
  });

  test('answers at one place to a source at another as it would the other way round', () => {
    // Reciprocity: 1 A into b raises c by as much as 1 A into c raises b.
    for (const parts of NETWORKS) {
      const intoB = solved([...parts, current('I', '0', 'b', 1e-3)]).volts('c');
      const intoC = solved([...parts, current('I', '0', 'c', 1e-3)]).volts('b');
      near(intoB, intoC);
    }
  });

  test('is to any load a source behind a resistor, and a current beside one', () => {
    for (const parts of NETWORKS) {
      const fed = [...parts, source('V', 'a', '0', 9)];
      const open = solved(fed).volts('d');
      const inner = ohmsBetween([...parts, source('V', 'a', '0', 0)], 'd', '0');
      for (const ohms of [1, 330, 47e3]) {
        const loaded = solved([...fed, resistor('load', 'd', '0', ohms)]).amperes('load');
        near(loaded, open / (inner + ohms));
        const norton = solved([
          current('I', '0', 'd', open / inner),
          resistor('inner', 'd', '0', inner),
          resistor('load', 'd', '0', ohms),
        ]);
        near(norton.amperes('load'), loaded);
      }
    }
  });

  test('gives a load most power where it matches the inner resistance: half the volts, V squared over 4 R', () => {
    for (const parts of NETWORKS.slice(0, 10)) {
      const fed = [...parts, source('V', 'a', '0', 9)];
      const open = solved(fed).volts('c');
      const inner = ohmsBetween([...parts, source('V', 'a', '0', 0)], 'c', '0');
      if (inner < 1e-6) continue;
      const watts = (ohms: number): number =>
        solved([...fed, resistor('load', 'c', '0', ohms)]).volts('c') ** 2 / ohms;
      near(watts(inner), open ** 2 / (4 * inner));
      expect(watts(inner * 1.1)).toBeLessThan(watts(inner) + 1e-15);
      expect(watts(inner / 1.1)).toBeLessThan(watts(inner) + 1e-15);
    }
  });

  test('spends what its sources give: volts times amperes sum to nothing over all parts', () => {
    for (const parts of NETWORKS) {
      const all = [...parts, source('V', 'a', '0', 7), current('I', 'b', 'd', 2e-3)];
      const point = solved(all);
      const watts = all.map((element) => {
        const [from, to] = nodesOf(element);
        return (point.volts(from) - point.volts(to)) * point.amperes(element.name);
      });
      const spent = watts.reduce((sum, one) => sum + Math.abs(one), 0);
      expect(Math.abs(watts.reduce((sum, one) => sum + one, 0))).toBeLessThan(1e-9 * spent);
    }
  });

  test('never shows less resistance for more in any part, nor more for one part added', () => {
    // Rayleigh's monotonicity law.
    for (const parts of NETWORKS) {
      const before = ohmsBetween(parts, 'a', '0');
      parts.forEach((_, raised) => {
        const more = parts.map((part, at) =>
          at === raised && part.kind === 'resistor' ? { ...part, ohms: 3 * part.ohms } : part,
        );
        expect(ohmsBetween(more, 'a', '0')).toBeGreaterThan(before - 1e-9 * before);
      });
      expect(ohmsBetween([...parts, resistor('new', 'b', 'e', 100)], 'a', '0')).toBeLessThan(
        before * (1 + 1e-9),
      );
    }
  });

  test('does not care in what order its parts are listed, or which way round they lie', () => {
    for (const parts of NETWORKS) {
      const fed = [...parts, source('V', 'a', '0', 5)];
      const turned = fed
        .toReversed()
        .map((part) => (part.kind === 'resistor' ? { ...part, a: part.b, b: part.a } : part));
      const [here, there] = [solved(fed), solved(turned)];
      for (const node of NODES) near(there.volts(node), here.volts(node));
      for (const { name } of parts) near(there.amperes(name), -here.amperes(name));
    }
  });
});

describe('Networks with a known answer', () => {
  test('are a star for every triangle: R1 R2 / (R1 + R2 + R3) at each corner', () => {
    // Triangle of 10, 20 and 30 ohm: arms of 5, 10/3 and 10 ohm.
    const delta = [resistor('ab', 'a', 'b', 10), resistor('bc', 'b', 'c', 20), resistor('ca', 'c', 'a', 30)];
    const star = [
      resistor('a', 'a', 'm', (10 * 30) / 60),
      resistor('b', 'b', 'm', (10 * 20) / 60),
      resistor('c', 'c', 'm', (20 * 30) / 60),
    ];
    for (const [one, other] of [
      ['a', 'b'],
      ['b', 'c'],
      ['c', 'a'],
    ] as const) {
      const ground = [resistor('ground', other, '0', 1)];
      near(ohmsBetween([...delta, ...ground], one, other), ohmsBetween([...star, ...ground], one, other));
    }
    near(ohmsBetween([...delta, resistor('ground', 'b', '0', 1)], 'a', 'b'), (10 * 50) / 60);
  });

  test('are a cube of 1 ohm edges: 5/6 ohm across the body, 3/4 across a face, 7/12 along an edge', () => {
    // The classic of textbooks and examinations.
    const corner = (at: number): string => (at === 0 ? '0' : `n${at}`);
    const edges = Array.from({ length: 8 }, (_, at) => at).flatMap((at) =>
      [1, 2, 4]
        .filter((bit) => (at & bit) === 0)
        .map((bit) => resistor(`${at}-${at | bit}`, corner(at), corner(at | bit), 1)),
    );
    expect(edges).toHaveLength(12);
    near(ohmsBetween(edges, corner(7), '0'), 5 / 6);
    near(ohmsBetween(edges, corner(3), '0'), 3 / 4);
    near(ohmsBetween(edges, corner(1), '0'), 7 / 12);
  });

  test('are Millman’s: branches in parallel come to the sum of V / R over the sum of 1 / R', () => {
    const branches = [
      [5, 220],
      [3.3, 33],
      [0, 1000],
      [-9, 470],
    ] as const;
    const point = solved(
      branches.flatMap(([volts, ohms], at) => [
        source(`V${at}`, `s${at}`, '0', volts),
        resistor(`R${at}`, `s${at}`, 'bus', ohms),
      ]),
    );
    const amperes = branches.reduce((sum, [volts, ohms]) => sum + volts / ohms, 0);
    const siemens = branches.reduce((sum, [, ohms]) => sum + 1 / ohms, 0);
    near(point.volts('bus'), amperes / siemens);
  });

  test('are batteries in series, either way round: 9 + 4.5 - 1.5 V', () => {
    const point = solved([
      source('V1', 'a', '0', 9),
      source('V2', 'b', 'a', 4.5),
      source('V3', 'b', 'c', 1.5),
      resistor('R', 'c', '0', 1200),
    ]);
    near(point.volts('c'), 12);
    near(point.amperes('R'), 0.01);
    // Each source passes on the same current: out of plus for the first two, into plus for the third.
    expect(
      [point.amperes('V1'), point.amperes('V2'), point.amperes('V3')].map((one) => Math.round(one * 1e6)),
    ).toEqual([-10_000, -10_000, 10_000]);
  });
});
