import { describe, expect, it } from 'vitest';
import { powerOff } from '../../../src/core/readings/power.ts';
import { SAFE_RULE, probedContacts, safeReadings } from '../../../src/core/readings/index.ts';
import { CONNECTORS, addDriver, addReceiver, collector, makeJack } from '../../../src/core/wiring/index.ts';
import type { Jack, LinkPart } from '../../../src/core/wiring/index.ts';
import { jackEvidence } from '../../support/evidence.ts';

function partsOf(jack: Jack): readonly LinkPart[] {
  const into = collector();
  if (jack.direction === 'out') addDriver(into, jack);
  else addReceiver(into, jack, 0);
  return into.parts;
}
const names = (parts: readonly LinkPart[]): readonly string[] => parts.map(({ element }) => element.name);

describe('a device with its power off', () => {
  const output = makeJack('out', 'din5', 'din');

  it('has no source left in it, whatever it was', () => {
    for (const jack of [
      output,
      makeJack('out', 'din5', 'din', { circuit: 'driver-3v3' }),
      makeJack('out', 'trs-3.5', 'tip-signal'),
      makeJack('in', 'trs-3.5', 'tip-signal', { circuit: 'receiver-logic' }),
      makeJack('in', 'trs-3.5', 'tip-signal', { circuit: 'receiver-led' }),
    ])
      for (const { element } of powerOff(partsOf(jack))) expect(element.kind).not.toBe('voltage');
  });

  it('has 1 kohm from its rail to ground in place of its supply', () => {
    const rail = powerOff(partsOf(output)).find(({ element }) => element.name === 'out supply')?.element;
    expect(rail).toEqual({
      kind: 'resistor',
      name: 'out supply',
      a: 'out rail',
      b: 'out ground',
      ohms: 1000,
    });
  });

  it('has its output stage open, with a clamp diode to the rail and one to ground', () => {
    const off = powerOff(partsOf(output));
    expect(names(off)).not.toContain('out stage low');
    expect(names(off)).not.toContain('out stage high');
    const clamps = off.filter(({ role }) => role === 'clamp').map(({ element }) => element);
    expect(clamps.map((one) => (one.kind === 'diode' ? [one.anode, one.cathode] : []))).toEqual([
      ['out stage', 'out rail'],
      ['out ground', 'out stage'],
    ]);
  });

  it('keeps every other part as it was', () => {
    for (const jack of [output, makeJack('in', 'din5', 'din')]) {
      const before = partsOf(jack);
      const kept = powerOff(before).filter((part) => before.includes(part));
      expect(names(kept)).toEqual(
        names(before.filter(({ element, role }) => element.kind !== 'voltage' && !role.startsWith('stage-'))),
      );
    }
  });

  it('is the same for an isolated input, which has no supply on its side of the light', () => {
    const parts = partsOf(makeJack('in', 'din5', 'din'));
    expect(powerOff(parts)).toEqual(parts);
  });
});

describe('the readings that cannot harm', () => {
  const all = (canSwitchOn: boolean, canStreamClock: boolean) =>
    CONNECTORS.map((connector) => ({
      connector,
      readings: safeReadings(jackEvidence({ connector, canSwitchOn, canStreamClock })),
    }));

  it('put a current into a jack only while its device is off', () => {
    // Resistance, continuity and the diode test drive a current of their own; volts and the LED tester do not.
    for (const { readings } of all(true, true))
      for (const { meter, power } of readings)
        if (meter === 'ohms' || meter === 'continuity' || meter === 'diode') expect(power).toBe('off');
  });

  it('touch two contacts that the plug has, and never one twice', () => {
    for (const { connector, readings } of all(true, true)) {
      expect(readings.length, connector).toBeGreaterThan(0);
      for (const { red, black } of readings) {
        expect(probedContacts(connector)).toContain(red);
        expect(probedContacts(connector)).toContain(black);
        expect(red).not.toBe(black);
      }
      const keys = readings.map((one) => JSON.stringify(one));
      expect(new Set(keys).size).toBe(keys.length);
    }
  });

  it('are as many as contacts and power allow', () => {
    // Three contacts: six ways round for resistance and for the diode test, three pairs for volts with power,
    // with and without the resistor at rest, without it while clock runs.
    const count = (canSwitchOn: boolean, canStreamClock: boolean) =>
      all(canSwitchOn, canStreamClock).find(({ connector }) => connector === 'trs-3.5')?.readings.length;
    expect(count(false, false)).toBe(12);
    expect(count(false, true)).toBe(12);
    expect(count(true, false)).toBe(18);
    expect(count(true, true)).toBe(21);
  });

  it('come with their rule in a sentence', () => {
    expect(SAFE_RULE).toMatch(/^[A-Z].*\.$/);
  });
});
