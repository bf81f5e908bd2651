import { describe, expect, it } from 'vitest';
import {
  CONNECTORS,
  OTHER_JACKS,
  OUTPUT_GROUND,
  addOtherJack,
  collector,
  otherJackEntry,
  otherJackSuits,
  outputNode,
} from '../../../src/core/wiring/index.ts';
import type { Contact, OtherJackKind, OtherJackValues } from '../../../src/core/wiring/index.ts';
import { held, resistor, solvedParts } from './by-hand.ts';

/** Volts of a contact over the sleeve with a meter of 10 Mohm, or with any other load. */
function voltsAt(
  kind: OtherJackKind,
  contact: Contact,
  ohms = 10e6,
  more: Partial<OtherJackValues> = {},
): number {
  const into = collector();
  addOtherJack(into, kind, more);
  const load = resistor('load', outputNode(contact), OUTPUT_GROUND, ohms);
  return solvedParts([...into.parts.map(({ element }) => element), load]).volts(outputNode(contact));
}

/** Ohms from a contact to the sleeve with the power off: 1 V is put across, amperes are read. */
function ohmsAt(kind: OtherJackKind, contact: Contact): number {
  const into = collector();
  addOtherJack(into, kind, { volts: 0 });
  const probe = held('probe', outputNode(contact), OUTPUT_GROUND, 1);
  return -1 / solvedParts([...into.parts.map(({ element }) => element), probe]).amperes('probe');
}

describe('a jack that is no control jack', () => {
  it('shows the voltages of its pull-ups on a meter', () => {
    // 10 Mohm behind 10 kohm reads 0.1 % low; behind 1 kohm 0.01 %.
    const expected: Readonly<Record<OtherJackKind, readonly [tip: number, ring: number]>> = {
      footswitch: [3.297, 0],
      'footswitch-double': [3.297, 3.297],
      'expression-ring': [0, 3.2997],
      'expression-tip': [3.2997, 0],
      headphone: [0, 0],
      line: [0, 0],
      'control-voltage': [2.4998, 0],
    };
    for (const kind of OTHER_JACKS) {
      const [tip, ring] = expected[kind];
      expect(voltsAt(kind, 'tip'), `${kind} tip`).toBeCloseTo(tip, 3);
      expect(voltsAt(kind, 'ring'), `${kind} ring`).toBeCloseTo(ring, 3);
    }
  });

  it('halves that voltage under a load of its own resistance', () => {
    for (const [kind, contact, ohms, volts] of [
      ['footswitch', 'tip', 10e3, 1.65],
      ['footswitch-double', 'ring', 10e3, 1.65],
      ['expression-ring', 'ring', 1e3, 1.65],
      ['expression-tip', 'tip', 1e3, 1.65],
      ['control-voltage', 'tip', 1e3, 1.25],
    ] as const)
      expect(voltsAt(kind, contact, ohms)).toBeCloseTo(volts, 6);
  });

  it('has the resistances that its description names, to the sleeve', () => {
    for (const [kind, contact, ohms] of [
      ['headphone', 'tip', 33],
      ['headphone', 'ring', 33],
      ['line', 'tip', 1e6],
      ['footswitch', 'tip', 10e3],
      ['expression-ring', 'ring', 1e3],
      ['expression-ring', 'tip', 100e3],
      ['expression-tip', 'ring', 100e3],
      ['control-voltage', 'tip', 1e3],
    ] as const)
      expect(ohmsAt(kind, contact) / ohms, `${kind} ${contact}`).toBeCloseTo(1, 6);
  });

  it('takes what a real device has in place of its defaults', () => {
    expect(voltsAt('footswitch', 'tip', 4700, { volts: 5, ohms: 4700 })).toBeCloseTo(2.5, 9);
    expect(voltsAt('control-voltage', 'tip', 10e6, { volts: 4 })).toBeCloseTo(4, 2);
  });

  it('may be off by 5 %, and a control voltage may be anything from 0 to 5 V', () => {
    const spreads = (kind: OtherJackKind) => {
      const into = collector();
      addOtherJack(into, kind);
      return into.spreads.map(({ name, low, high }) => [name, low[0], high[0]]);
    };
    const [supply, tip] = spreads('footswitch');
    expect(supply?.[0]).toBe('supply');
    expect(supply?.[1]).toBeCloseTo(3.135, 9);
    expect(supply?.[2]).toBeCloseTo(3.465, 9);
    expect(tip).toEqual(['tip resistor', 9500, 10500]);
    expect(spreads('control-voltage')[0]).toEqual(['supply', 0, 5]);
    expect(spreads('line').map(([name]) => name)).toEqual(['tip resistor']);
    expect(spreads('expression-tip').map(([name]) => name)).toEqual([
      'supply',
      'tip resistor',
      'ring resistor',
    ]);
  });

  it('comes on phone jacks only, and on one with a ring where it needs three contacts', () => {
    const row = (kind: OtherJackKind): string =>
      CONNECTORS.map((connector) => (otherJackSuits(kind, connector) ? 'x' : '.')).join('');
    // Columns: din5 din7 trs-6.35 trs-3.5 trs-2.5 ts-6.35 ts-3.5.
    for (const kind of OTHER_JACKS) {
      const needsRing = ['footswitch-double', 'expression-ring', 'expression-tip', 'headphone'].includes(
        kind,
      );
      expect(row(kind), kind).toBe(needsRing ? '..xxx..' : '..xxxxx');
    }
  });

  it('has a name of its own and admits that no document fixes it', () => {
    const labels = OTHER_JACKS.map((kind) => otherJackEntry(kind).label);
    expect(new Set(labels).size).toBe(OTHER_JACKS.length);
    for (const kind of OTHER_JACKS) expect(otherJackEntry(kind).source).toBe('common practice, no source');
  });
});
