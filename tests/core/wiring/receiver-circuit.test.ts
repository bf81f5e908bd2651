import { describe, expect, it } from 'vitest';
import {
  PARTS,
  addReceiver,
  collector,
  inputNode,
  makeJack,
  partEntry,
  PROTECTION_DIODE,
} from '../../../src/core/wiring/index.ts';
import type { Element } from '../../../src/core/circuit/index.ts';
import type { Jack } from '../../../src/core/wiring/index.ts';
import { IN_GROUND, diodeVolts, held, resistor, seriesAmperes, solvedParts } from './by-hand.ts';

const SOURCE = inputNode(0, '4');
const SINK = inputNode(0, '5');
const isolated = (more: Partial<Jack> = {}): Jack => makeJack('in', 'din5', 'din', more);
const bothWays = (more: Partial<Jack> = {}): Jack => makeJack('in', 'trs-3.5', 'both-ways', more);
const grounded = (circuit: 'receiver-logic' | 'receiver-led', more: Partial<Jack> = {}): Jack =>
  makeJack('in', 'trs-3.5', 'tip-signal', { circuit, ...more });

/** An input with something across it; `ground` is the node that counts as 0 V. */
function inputWith(jack: Jack, loads: readonly Element[], ground: string) {
  const into = collector();
  addReceiver(into, jack, 0);
  return solvedParts([...into.parts.map(({ element }) => element), ...loads], [], ground);
}

/** A bench supply of so many volts across the loop, behind so many ohms. */
const across = (volts: number, ohms: number, plus = SOURCE, minus = SINK): readonly Element[] => [
  held('bench', 'bench plus', minus, volts),
  resistor('bench resistor', 'bench plus', plus, ohms),
];

describe('an isolated input', () => {
  it('takes what Ohm and Shockley leave of a supply, for every part', () => {
    for (const part of PARTS) {
      const point = inputWith(isolated({ part }), across(5, 440), SINK);
      const expected = seriesAmperes(5, 440 + 220, partEntry(part).led);
      // The protection diode, backwards at 1.5 V, takes its saturation current of 2.5 nA.
      expect(point.amperes('in0 LED'), part).toBeCloseTo(expected, 8);
      expect(point.amperes('in0 protection diode')).toBeCloseTo(-PROTECTION_DIODE.saturationAmperes, 10);
    }
  });

  it('lets a current the wrong way past its LED, through the protection diode', () => {
    // Facts sheet, section 2: 6.56 mA at 5 V and 9.91 mA at 3.3 V; the LED then sees -0.67 V, far from its limit of 5 V.
    for (const [volts, ohms, milliamperes] of [
      [5, 440, 6.56],
      [3.3, 43, 9.91],
    ] as const) {
      const point = inputWith(isolated(), across(volts, ohms, SINK, SOURCE), SOURCE);
      expect(point.amperes('in0 protection diode') * 1e3).toBeCloseTo(milliamperes, 2);
      // No more than the picosiemens across every junction lets by.
      expect(Math.abs(point.amperes('in0 LED'))).toBeLessThan(1e-12);
    }
    const point = inputWith(isolated(), across(5, 440, SINK, SOURCE), SOURCE);
    expect(point.volts('in0 entry') - point.volts(SINK)).toBeCloseTo(-0.67, 2);
  });

  it('puts its resistor in the source line, where a reader finds it', () => {
    const point = inputWith(isolated(), across(5, 440), SINK);
    const amperes = point.amperes('in0 resistor');
    expect(point.volts(SOURCE) - point.volts('in0 entry')).toBeCloseTo(220 * amperes, 9);
  });

  it('loses to an activity LED what that LED takes, by the current law', () => {
    const plain = inputWith(isolated(), across(5, 440), SINK);
    const shared = inputWith(isolated({ values: { activityOhms: 1000 } }), across(5, 440), SINK);
    const total = shared.amperes('bench resistor');
    expect(shared.amperes('in0 activity LED') + shared.amperes('in0 resistor')).toBeCloseTo(total, 12);
    expect(shared.amperes('in0 activity LED')).toBeGreaterThan(1e-4);
    expect(shared.amperes('in0 LED')).toBeLessThan(plain.amperes('in0 LED'));
    // A bigger resistor takes less, so the input keeps more.
    const gentle = inputWith(isolated({ values: { activityOhms: 4700 } }), across(5, 440), SINK);
    expect(gentle.amperes('in0 LED')).toBeGreaterThan(shared.amperes('in0 LED'));
  });

  it('counts volts added to its LED as so much less supply', () => {
    // The series law: V = I R + V(I) + shift, so a shift of 0.3 V is a supply of 0.3 V less, whatever the curve.
    for (const part of ['6N138', 'H11L1', 'PC817'] as const)
      for (const ledShiftVolts of [-0.1, 0.3, 1]) {
        const moved = inputWith(isolated({ part, values: { ledShiftVolts } }), across(5, 440), SINK);
        const less = inputWith(isolated({ part }), across(5 - ledShiftVolts, 440), SINK);
        expect(moved.amperes('in0 LED')).toBeCloseTo(less.amperes('in0 LED'), 8);
      }
  });

  it('spreads its LED from 0.1 V less to 0.3 V more, and its resistor by 5 %', () => {
    // 6N138: 1.4 V typical, 1.7 V at most (twin data sheet 83669; MMA CA-033 gives 1.7 V too). IS times exp(-V / (N VT)).
    const into = collector();
    addReceiver(into, isolated(), 0);
    expect(into.spreads.map(({ name }) => name)).toEqual(['receiver resistor', 'LED voltage']);
    const [ohms, led] = into.spreads;
    expect([ohms?.low, ohms?.nominal, ohms?.high]).toEqual([[209], [220], [231]]);
    const { emission, saturationAmperes } = partEntry('6N138').led;
    const moved = (saturation: number | undefined) =>
      -Math.log((saturation ?? 0) / saturationAmperes) * emission * 25.864917e-3;
    expect(moved(led?.low[0])).toBeCloseTo(-0.1, 6);
    expect(moved(led?.nominal[0])).toBeCloseTo(0, 9);
    expect(moved(led?.high[0])).toBeCloseTo(0.3, 6);
  });
});

describe('an input that takes either direction', () => {
  const TIP = inputNode(0, 'tip');
  const RING = inputNode(0, 'ring');

  it('takes the same current both ways: the mirror changes nothing', () => {
    for (const part of PARTS) {
      const forth = inputWith(bothWays({ part }), across(5, 440, RING, TIP), TIP);
      const back = inputWith(bothWays({ part }), across(5, 440, TIP, RING), RING);
      expect(back.amperes('in0 LED')).toBeCloseTo(forth.amperes('in0 LED'), 9);
    }
  });

  it('takes what is left behind two bridge diodes and the LED', () => {
    // One way through the bridge is entry, diode, LED, diode, out; the other two diodes block and leak 2.5 nA each.
    const point = inputWith(bothWays(), across(5, 440, RING, TIP), TIP);
    const { led } = partEntry('6N138');
    const expected = seriesAmperes(5, 660, led, PROTECTION_DIODE, PROTECTION_DIODE);
    expect(point.amperes('in0 LED')).toBeCloseTo(expected, 7);
    expect(expected).toBeLessThan(seriesAmperes(5, 660, led));
  });

  it('has no part that counts as carrying current the wrong way', () => {
    const into = collector();
    expect(addReceiver(into, bothWays(), 0)).toMatchObject({ kind: 'current', reverse: undefined });
    expect(addReceiver(collector(), isolated(), 0)).toMatchObject({ reverse: 'in0 protection diode' });
  });
});

describe('a ground-referenced logic input', () => {
  const TIP = inputNode(0, 'tip');
  const SLEEVE = inputNode(0, 'sleeve');
  const gate = (loads: readonly Element[], values: Jack['values'] = {}) =>
    inputWith(grounded('receiver-logic', { values }), loads, IN_GROUND).volts('in0 gate');

  it('is pulled high when nothing is plugged in', () => {
    // The clamp diodes leak nanoamperes through 10 kohm: microvolts.
    expect(gate([])).toBeCloseTo(3.3, 3);
  });

  it('is pulled low by a contact held to ground', () => {
    // Divider: 3.3 V x 1k / (10k + 1k) = 0.3 V, below the 0.8 V that counts as low.
    expect(gate([resistor('switch', TIP, SLEEVE, 1e-3)])).toBeCloseTo(0.3, 4);
  });

  it('is held near its own supply by a clamp when a 5 V output drives it', () => {
    // Without the clamp it would stand at (5 x 10 + 3.3 x 1) / 11 = 4.85 V; the diode holds it about 0.6 V above 3.3 V.
    const volts = gate([held('5 V logic', TIP, SLEEVE, 5)]);
    expect(volts).toBeGreaterThan(3.3 + 0.55);
    expect(volts).toBeLessThan(3.3 + 0.65);
    // The diode carries what the 1 kohm brings less what the pull-up takes back.
    const carried = (5 - volts) / 1e3 + (3.3 - volts) / 10e3;
    expect(3.3 + diodeVolts(PROTECTION_DIODE, carried)).toBeCloseTo(volts, 4);
  });

  it('is held near ground by the other clamp when it is driven below', () => {
    const volts = gate([held('wrong way', SLEEVE, TIP, 3)]);
    expect(volts).toBeLessThan(-0.5);
    expect(volts).toBeGreaterThan(-0.7);
  });

  it('is read between its own node and its own ground, with the bounds of its values', () => {
    const jack = grounded('receiver-logic', { values: { lowVolts: 1, highVolts: 2.5 } });
    expect(addReceiver(collector(), jack, 3)).toEqual({
      kind: 'level',
      node: 'in3 gate',
      ground: 'in3 ground',
      lowVolts: 1,
      highVolts: 2.5,
    });
  });
});

describe('a ground-referenced LED input', () => {
  const TIP = inputNode(0, 'tip');
  const SLEEVE = inputNode(0, 'sleeve');

  it('lights from its own 5 V when the signal contact is held to ground, for every part', () => {
    for (const part of PARTS) {
      const jack = grounded('receiver-led', { part });
      const point = inputWith(jack, [resistor('switch', TIP, SLEEVE, 1e-3)], IN_GROUND);
      expect(point.amperes('in0 LED')).toBeCloseTo(seriesAmperes(5, 470, partEntry(part).led), 7);
    }
  });

  it('stays dark with nothing plugged in, and with 5 V on the contact', () => {
    const jack = grounded('receiver-led');
    expect(inputWith(jack, [], IN_GROUND).amperes('in0 LED')).toBeCloseTo(0, 12);
    expect(inputWith(jack, [held('5 V logic', TIP, SLEEVE, 5)], IN_GROUND).amperes('in0 LED')).toBeCloseTo(
      0,
      9,
    );
  });
});

describe('every input alike', () => {
  it('gives its parts the number of its branch, so that two inputs never share a part', () => {
    const into = collector();
    const jacks = [isolated(), isolated(), bothWays(), grounded('receiver-logic'), grounded('receiver-led')];
    jacks.forEach((jack, branch) => addReceiver(into, jack, branch));
    const names = into.parts.map(({ element }) => element.name);
    expect(new Set(names).size).toBe(names.length);
    into.parts.forEach(({ element, owner }) => {
      if (owner.place !== 'input') throw new Error(`'${element.name}' must belong to an input`);
      expect(element.name.startsWith(`in${owner.branch} `)).toBe(true);
    });
  });

  it('has no way from an isolated input to any ground', () => {
    for (const jack of [isolated(), bothWays()]) {
      const into = collector();
      addReceiver(into, jack, 0);
      const nodes = into.parts.flatMap(({ element }) => Object.values(element));
      expect(nodes).not.toContain(IN_GROUND);
    }
  });

  it('rates an LED by its part: amperes forward and volts in reverse', () => {
    // 6N138: 25 mA, 5 V (83605, C). H11L1: 30 mA, 6 V (H11L3M/D, C).
    const rating = (part: '6N138' | 'H11L1') => {
      const into = collector();
      addReceiver(into, isolated({ part }), 0);
      return into.parts.find(({ role }) => role === 'led')?.rating;
    };
    expect(rating('6N138')).toEqual({ amperes: 0.025, reverseVolts: 5 });
    expect(rating('H11L1')).toEqual({ amperes: 0.03, reverseVolts: 6 });
  });
});
