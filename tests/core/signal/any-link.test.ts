import { describe, expect, test } from 'vitest';
import { compileCircuit } from '../../../src/core/circuit/compile.ts';
import { edgeWork, followEdges } from '../../../src/core/circuit/edges.ts';
import type { Element } from '../../../src/core/circuit/elements.ts';
import type { Transient } from '../../../src/core/circuit/index.ts';
import { sendBytes } from '../../../src/core/signal/frames.ts';
import { driveLine } from '../../../src/core/signal/line.ts';
import { prepareTimeLink } from '../../../src/core/signal/time-link.ts';
import { checkLink } from '../../../src/core/verdict/index.ts';
import { GROUNDINGS, makeJack, makeLead, wires } from '../../../src/core/wiring/index.ts';
import type { Link } from '../../../src/core/wiring/index.ts';
import { anyLink } from '../../support/any-link.ts';
import { seededRandom } from '../../support/random.ts';
import { tryLink } from '../../support/try-link.ts';

/** Some of those that `npm run soak:links` tries. */
const LINKS = 120;
/**
 * Seeds whose steps once fell below a picosecond, or were thousands: amperes that a foreign supply drives round within a part, which
 * rounding moves; and nine that had no operating point: a part that hangs on blocked junctions, while tens of volts drive amperes round
 * within it.
 */
const ONCE_STUCK = [
  ...[60241, 60651, 65425, 69926, 144972],
  ...[4272, 4752, 29652, 49861, 54858, 71404, 85089, 130781, 189623],
];

test(`${LINKS} links drawn over all allowed values have a verdict each, and each byte ends`, () => {
  for (const seed of [...ONCE_STUCK, ...Array.from({ length: LINKS }, (_, at) => at + 1)]) {
    const random = seededRandom(seed);
    const { problem } = tryLink(anyLink(random), random.integer(0, 255));
    expect(problem, `seed ${seed}`).toBeUndefined();
  }
});

test('an input that floats with its foreign supplies stays where it stands while a byte is sent to it', () => {
  // Nothing comes back from the input, so that joining its ground changes nothing: 60 V drive amperes round within it, whose rounding
  // once moved it by half a volt.
  const random = seededRandom(6448);
  const link = anyLink(random);
  const { wave } = sendBytes([random.integer(0, 255)]);
  const [apart, joined] = GROUNDINGS.map(
    (grounding) => driveLine(prepareTimeLink(link, { grounding }), wave).transient,
  ) as [Transient, Transient];
  for (const node of ['in0 tip', 'in0 ring', 'in0 ground', 'out 4'])
    for (const seconds of apart.moments())
      expect(Math.abs(apart.volts(node, seconds) - joined.volts(node, seconds)), node).toBeLessThan(1e-6);
});

describe('links that once had no answer', () => {
  const output = makeJack('out', 'din7', 'din', { circuit: 'driver-3v3' });
  const tip = makeJack('in', 'trs-3.5', 'tip-signal', { circuit: 'receiver-led' });
  const lead = (...pairs: readonly string[]) =>
    makeLead('din7', 'trs-3.5', wires(...pairs), { lengthMetres: 0.01 });
  const link = (stageOhms: number, contactOhms: number, ...pairs: readonly string[]): Link => ({
    output: { ...output, values: { stageOhms } },
    branches: [{ input: tip, leads: [{ ...lead(...pairs), contactOhms }] }],
  });
  test.each<[string, Link]>([
    ['an input that reads a voltage, 1 cm from its output', link(0, 0.03, '5-tip', '3-sleeve')],
    ['no conductor, a stage of a ten-millionth of an ohm', link(1e-7, 0.03)],
    ['no conductor, contacts of no resistance', link(1e-7, 0)],
    ['a stage of the least number there is', link(5e-324, 0, '5-tip', '2-sleeve')],
  ])('%s', (_what, one) => {
    expect(tryLink(one, 0x55).problem).toBeUndefined();
  });

  test('a stage of next to no resistance is judged as one of none', () => {
    const dinLink = (stageOhms: number): Link => ({
      output: makeJack('out', 'din5', 'din', { values: { stageOhms } }),
      branches: [
        {
          input: makeJack('in', 'din5', 'din'),
          leads: [makeLead('din5', 'din5', wires('4-4', '5-5', '2-2'))],
        },
      ],
    });
    for (const ohms of [5e-324, 1e-14, 1e-6]) {
      const { outcome, inputs } = checkLink(dinLink(ohms));
      expect(outcome).toBe(checkLink(dinLink(0)).outcome);
      expect(inputs[0]?.active).toBeCloseTo(checkLink(dinLink(0)).inputs[0]?.active ?? NaN, 9);
    }
  });
});

describe('a circuit that cannot be followed', () => {
  const RC: readonly Element[] = [
    { kind: 'voltage', name: 'source', plus: 'in', minus: '0', volts: 0 },
    { kind: 'resistor', name: 'r', a: 'in', b: 'out', ohms: 1000 },
    { kind: 'capacitor', name: 'c', a: 'out', b: '0', farads: 1e-9 },
  ];
  const follow = (elements: readonly Element[], volts: number) =>
    followEdges(
      edgeWork(
        compileCircuit({ ground: '0', elements }),
        { parts: [0], values: (level) => [level ? 0 : 1], riseSeconds: 1e-6, fallSeconds: 1e-6 },
        { volts, share: 0 },
      ),
      true,
      [{ seconds: 1e-6, level: false }],
      0,
      5e-6,
    );

  test('says the node and the moment, and stands still from there, where no error at all is allowed', () => {
    const { stretches, unsolved } = follow(RC, 0);
    expect(unsolved).toMatchObject({ ok: false, node: 'out' });
    expect(unsolved?.seconds).toBeGreaterThanOrEqual(1e-6);
    expect(unsolved?.seconds).toBeLessThan(2e-6);
    expect(stretches.at(-1)?.toSeconds).toBe(5e-6);
    expect(follow(RC, 1e-6).unsolved).toBeUndefined();
  });

  test('says the node alone where it has no state at rest', () => {
    const twice: Element = { kind: 'voltage', name: 'other', plus: 'in', minus: '0', volts: 1 };
    const { stretches, unsolved } = follow([...RC, twice], 1e-6);
    expect(unsolved).toMatchObject({ ok: false, node: 'in' });
    expect(unsolved?.seconds).toBeUndefined();
    expect(
      stretches
        .map(({ fromSeconds, toSeconds }) => [fromSeconds, toSeconds])
        .flat()
        .at(-1),
    ).toBe(5e-6);
  });
});
