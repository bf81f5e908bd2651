import { describe, expect, it } from 'vitest';
import {
  OUTPUT_GROUND,
  STATES,
  addDriver,
  collector,
  makeJack,
  outputNode,
} from '../../../src/core/wiring/index.ts';
import type { CircuitKind, Jack } from '../../../src/core/wiring/index.ts';
import { outputAt, resistor } from './by-hand.ts';

const SOURCE = outputNode('4');
const SINK = outputNode('5');
const SHIELD = outputNode('2');
const LOOP: readonly CircuitKind[] = ['driver-5v', 'driver-3v3', 'driver-3v3-push-pull', 'driver-off'];

const din = (circuit: CircuitKind, values: Jack['values'] = {}): Jack =>
  makeJack('out', 'din5', 'din', { circuit, values });
/** A piece of wire, 1 milliohm: what a slipped screwdriver does. */
const short = (a: string, b: string) => resistor('short', a, b, 1e-3);
/** A voltmeter of 10 Mohm. */
const meter = (a: string, b: string) => resistor('meter', a, b, 10e6);
const milliamperes = (amperes: number): number => amperes * 1e3;

describe('an output with a meter on it', () => {
  it('shows its supply on the source line in both states, whatever the stage does', () => {
    for (const [circuit, volts] of [
      ['driver-5v', 5],
      ['driver-3v3', 3.3],
      ['driver-3v3-push-pull', 3.3],
    ] as const)
      for (const state of STATES)
        expect(outputAt(din(circuit), state, [meter(SOURCE, SHIELD)]).volts(SOURCE)).toBeCloseTo(volts, 3);
  });

  it('shows the supply on the sink line of a push-pull stage at rest, and nothing while a 0 is sent', () => {
    // Facts sheet, section 11: at idle a 5 V push-pull output reads 5.00 V on source and on sink alike.
    const sinkVolts = (circuit: CircuitKind, state: 'idle' | 'active') =>
      outputAt(din(circuit), state, [meter(SINK, SHIELD)]).volts(SINK);
    expect(sinkVolts('driver-5v', 'idle')).toBeCloseTo(5, 3);
    expect(sinkVolts('driver-3v3-push-pull', 'idle')).toBeCloseTo(3.3, 3);
    for (const circuit of LOOP) expect(sinkVolts(circuit, 'active')).toBeCloseTo(0, 3);
  });

  it('leaves the sink line of an open-drain stage floating at rest', () => {
    const point = outputAt(din('driver-3v3'), 'idle', [meter(SINK, SHIELD)]);
    expect(point.volts(SINK)).toBeCloseTo(0, 9);
    expect(point.amperes('out sink resistor')).toBe(0);
  });

  it('shows nothing at all with its supply off', () => {
    for (const state of STATES)
      for (const line of [SOURCE, SINK])
        expect(outputAt(din('driver-off'), state, [meter(line, SHIELD)]).volts(line)).toBeCloseTo(0, 6);
  });
});

describe('an output with a short across its lines', () => {
  it('gives supply over both resistors from source to sink while a 0 is sent', () => {
    // Ohm: 5 V / 440 ohm; 3.3 V / 43 ohm. A closed switch and the short add 1 mohm each.
    for (const [circuit, ohms, volts] of [
      ['driver-5v', 440, 5],
      ['driver-3v3', 43, 3.3],
      ['driver-3v3-push-pull', 43, 3.3],
    ] as const) {
      const point = outputAt(din(circuit), 'active', [short(SOURCE, SINK)]);
      expect(point.amperes('short')).toBeCloseTo(volts / ohms, 5);
      expect(point.amperes('out supply')).toBeCloseTo(-volts / ohms, 5);
    }
  });

  it('gives nothing from source to sink at rest: both ends of the loop stand at the supply, or one hangs free', () => {
    for (const circuit of LOOP)
      expect(outputAt(din(circuit), 'idle', [short(SOURCE, SINK)]).amperes('short')).toBeCloseTo(0, 9);
  });

  it('gives 22.7 mA from the source line to ground at 5 V and 100 mA at 3.3 V', () => {
    // Facts sheet, section 2: 5 / 220 and, with parts at their least, 3.465 / 31.35 = 0.111 A and 0.383 W (MMA CA-033).
    const toGround = (circuit: CircuitKind, values: Jack['values'] = {}) =>
      outputAt(din(circuit, values), 'idle', [short(SOURCE, SHIELD)]).amperes('out source resistor');
    expect(milliamperes(toGround('driver-5v'))).toBeCloseTo(22.73, 2);
    expect(milliamperes(toGround('driver-3v3'))).toBeCloseTo(100, 1);
    const worst = toGround('driver-3v3', { supplyVolts: 3.465, sourceOhms: 31.35 });
    expect(worst).toBeCloseTo(0.1105, 4);
    expect(worst ** 2 * 31.35).toBeCloseTo(0.383, 3);
  });

  it('drives 5 V over its one resistor when a push-pull sink line is held to ground at rest', () => {
    const point = outputAt(din('driver-5v'), 'idle', [short(SINK, SHIELD)]);
    expect(milliamperes(point.amperes('out sink resistor'))).toBeCloseTo(-5000 / 220, 3);
    expect(milliamperes(point.amperes('out stage high'))).toBeCloseTo(5000 / 220, 3);
    expect(point.amperes('out stage low')).toBe(0);
  });
});

describe('what an output may have besides', () => {
  it('is a load on the source line: 220 ohm halves its voltage', () => {
    // Two equal resistors across 5 V: 2.5 V, and 5 / 440 A from the supply.
    const point = outputAt(din('driver-5v', { tapOhms: 220 }), 'idle', [meter(SOURCE, SHIELD)]);
    expect(point.volts(SOURCE)).toBeCloseTo(2.5, 3);
    expect(milliamperes(point.amperes('out tap'))).toBeCloseTo(2500 / 220, 3);
  });

  it('is a stage of a lower supply, whose difference flows through the loop at rest', () => {
    // (5 - 3.3) V over 220 + 220 ohm = 3.864 mA, the right way through the input; while a 0 is sent as ever.
    for (const inTime of [false, true]) {
      const mixed = din('driver-5v', { stageVolts: 3.3 });
      const idle = outputAt(mixed, 'idle', [short(SOURCE, SINK)], inTime);
      expect(milliamperes(idle.amperes('short'))).toBeCloseTo(1700 / 440, 3);
      const active = outputAt(mixed, 'active', [short(SOURCE, SINK)], inTime);
      expect(milliamperes(active.amperes('short'))).toBeCloseTo(5000 / 440, 3);
    }
  });

  it('is the resistance of the stage itself, in series with the sink resistor', () => {
    const point = outputAt(din('driver-5v', { stageOhms: 50 }), 'active', [short(SOURCE, SINK)]);
    expect(milliamperes(point.amperes('short'))).toBeCloseTo(5000 / 490, 3);
    expect(milliamperes(point.amperes('out stage resistance'))).toBeCloseTo(5000 / 490, 3);
  });

  it('is two clamp diodes behind a stage without supply, which let a voltage from outside into the rail', () => {
    // 5 V on the sink line: 220 ohm, one diode, 1 kohm to ground. A diode of about 0.66 V leaves 4.34 V / 1220 ohm = 3.56 mA.
    const point = outputAt(din('driver-off'), 'idle', [
      { kind: 'voltage', name: 'outside', plus: SINK, minus: OUTPUT_GROUND, volts: 5 },
    ]);
    expect(milliamperes(point.amperes('out clamp to rail'))).toBeCloseTo(3.56, 1);
    expect(point.amperes('out rail load')).toBeCloseTo(point.amperes('out clamp to rail'), 6);
    expect(point.amperes('out clamp to ground')).toBeLessThan(0);
    expect(point.amperes('out clamp to ground')).toBeGreaterThan(-1e-8);
  });
});

describe('a ground-referenced output', () => {
  const jack = makeJack('out', 'trs-3.5', 'tip-signal');
  const TIP = outputNode('tip');
  const SLEEVE = outputNode('sleeve');

  it('is high at rest and low while a 0 is sent, behind one resistor', () => {
    expect(outputAt(jack, 'idle', [meter(TIP, SLEEVE)]).volts(TIP)).toBeCloseTo(5, 3);
    expect(outputAt(jack, 'active', [meter(TIP, SLEEVE)]).volts(TIP)).toBeCloseTo(0, 6);
    expect(milliamperes(outputAt(jack, 'idle', [short(TIP, SLEEVE)]).amperes('short'))).toBeCloseTo(22.73, 2);
  });

  it('has no part on a contact that its style leaves free, and its shield on its own ground', () => {
    const into = collector();
    addDriver(into, jack);
    const nodes = into.parts.flatMap(({ element }) => Object.values(element));
    expect(nodes).not.toContain(outputNode('ring'));
    expect(outputAt(jack, 'idle', [meter(TIP, SLEEVE)]).volts(SLEEVE)).toBeCloseTo(0, 9);
  });
});

describe('every output alike', () => {
  const jacks = [...LOOP.map((circuit) => din(circuit)), makeJack('out', 'trs-3.5', 'ring-signal')];

  it('takes the same voltages at rest whether its stage is switches or a source with edges', () => {
    for (const jack of jacks) {
      const { source, sink } =
        jack.style === 'din'
          ? ({ source: '4', sink: '5' } as const)
          : ({ source: undefined, sink: 'ring' } as const);
      const loads = [
        resistor('load', outputNode(sink), OUTPUT_GROUND, 1e3),
        ...(source ? [resistor('loop', outputNode(source), outputNode(sink), 470)] : []),
      ];
      for (const state of STATES) {
        const still = outputAt(jack, state, loads);
        const moving = outputAt(jack, state, loads, true);
        for (const contact of [source, sink])
          if (contact)
            // A closed switch is 1 mohm and carries at most 25 mA: 25 uV.
            expect(moving.volts(outputNode(contact))).toBeCloseTo(still.volts(outputNode(contact)), 4);
      }
    }
  });

  it('rates its resistors, its stage and its rail, and nothing else', () => {
    const rated = (jack: Jack) => {
      const into = collector();
      addDriver(into, jack);
      return Object.fromEntries(
        into.parts
          .filter(({ rating }) => Object.keys(rating).length > 0)
          .map(({ element, rating }) => [element.name, Object.values(rating)[0]]),
      );
    };
    // MMA CA-033, fig. 1: RA 0.5 W at 3.3 V, else 0.25 W; stage 25 mA and rail 50 mA are common practice.
    expect(rated(din('driver-3v3'))).toEqual({
      'out supply': 0.05,
      'out source resistor': 0.5,
      'out sink resistor': 0.25,
      'out stage low': 0.025,
    });
    expect(rated(din('driver-off'))).toEqual({ 'out source resistor': 0.25, 'out sink resistor': 0.25 });
    expect(Object.keys(rated(din('driver-5v')))).toContain('out stage high');
  });

  it('lets a supply and its stage spread together where they are one, and apart where they are two', () => {
    const spreadsOf = (jack: Jack, inTime: boolean) => {
      const into = collector();
      addDriver(into, jack, inTime);
      return into.spreads.map(({ name, parts }) => `${name}: ${parts.join(', ')}`);
    };
    expect(spreadsOf(din('driver-5v'), true)).toContain('supply: out supply, out stage drive');
    const mixed = din('driver-5v', { stageVolts: 3 });
    for (const [inTime, part] of [
      [false, 'out stage supply'],
      [true, 'out stage drive'],
    ] as const)
      expect(spreadsOf(mixed, inTime)).toEqual([
        'supply: out supply',
        `supply of the output stage: ${part}`,
        'source resistor: out source resistor',
        'sink resistor: out sink resistor',
      ]);
    expect(spreadsOf(din('driver-off'), false)[0]).toBe('rail to ground: out rail load');
  });
});
