/** Seeded circuits with something that moves, for comparison in time. */
import type { Drive } from '../../src/core/circuit/drive.ts';
import type { Circuit, Element } from '../../src/core/circuit/elements.ts';
import { circuitsFor, makeJack, makeLead, wires } from '../../src/core/wiring/link.ts';
import type { Link } from '../../src/core/wiring/link.ts';
import { PARTS } from '../../src/core/wiring/parts.ts';
import { randomNetwork } from './networks.ts';
import type { Random } from './random.ts';

/** Junction charge that a diode of a random network may have: from none to that of an LED. */
const CHARGES = [
  {},
  { junctionFarads: 4e-12, grading: 0.4, transitSeconds: 20e-9 },
  { junctionFarads: 60e-12, transitSeconds: 50e-9 },
  { junctionFarads: 1e-9, junctionVolts: 0.6, grading: 0.33 },
];

/** A random network with a capacitor from each of some nodes to ground, charge in its diodes and one source that moves. */
interface TimedNetwork {
  readonly circuit: Circuit;
  readonly drives: readonly Drive[];
  readonly toSeconds: number;
}

/** Draw one. The source steps or slides between corners some microseconds apart. */
export function timedNetwork(random: Random): TimedNetwork {
  const { circuit: base } = randomNetwork(random, random.integer(4, 9));
  const elements: Element[] = base.elements
    .filter(({ kind }) => kind !== 'capacitor')
    .map((element) => (element.kind === 'diode' ? { ...element, ...random.pick(CHARGES) } : element));
  const nodes = [
    ...new Set(elements.flatMap((one) => (one.kind === 'resistor' ? [one.a, one.b] : []))),
  ].filter((node) => node !== 'ground');
  nodes.forEach((node, at) => {
    if (random.chance(0.6)) {
      const farads = random.decades(1e-11, 3e-9);
      elements.push({ kind: 'capacitor', name: `extra${at}`, a: node, b: 'ground', farads });
    }
  });
  const volts = random.decades(1, 12);
  elements.push({ kind: 'voltage', name: 'mover', plus: 'moved', minus: 'ground', volts: 0 });
  elements.push({
    kind: 'resistor',
    name: 'feed',
    a: 'moved',
    b: random.pick(nodes),
    ohms: random.decades(30, 1e4),
  });
  const points = [{ seconds: 2e-6, value: 0 }];
  let seconds = 2e-6;
  for (let edge = 0; edge < 4; edge++) {
    const value = edge % 2 === 0 ? volts : 0;
    const lasts = random.decades(30e-9, 2e-6);
    points.push({ seconds: seconds + lasts, value });
    seconds += lasts + random.decades(5e-6, 30e-6);
    points.push({ seconds, value });
  }
  return { circuit: { ...base, elements }, drives: [{ part: 'mover', points }], toSeconds: seconds + 10e-6 };
}

/** A link drawn from every driver and receiver, straight or crossed, sound or with a bad joint. */
export function timedLink(random: Random): Link {
  const grounded = random.chance(0.3);
  const style = grounded ? 'tip-signal' : random.pick(['type-a', 'type-b'] as const);
  const circuit = random.pick(circuitsFor('out', style).filter((one) => one !== 'driver-off'));
  const receiver = random.pick(circuitsFor('in', style));
  const part = receiver === 'receiver-logic' ? '6N138' : random.pick(PARTS);
  const crossed = !grounded && random.chance(0.2);
  const map = crossed ? ['tip-ring', 'ring-tip', 'sleeve-sleeve'] : ['tip-tip', 'ring-ring', 'sleeve-sleeve'];
  const joint = { kind: 'joint', side: 'to', contact: 'tip', ohms: random.decades(1, 300) } as const;
  const lead = makeLead('trs-3.5', 'trs-3.5', wires(...map), {
    lengthMetres: random.decades(0.5, 30),
    gauge: random.pick([24, 26, 28, 30]),
    faults: random.chance(0.3) ? [joint] : [],
  });
  return {
    output: makeJack('out', 'trs-3.5', style, { circuit }),
    branches: [{ input: makeJack('in', 'trs-3.5', style, { circuit: receiver, part }), leads: [lead] }],
  };
}
