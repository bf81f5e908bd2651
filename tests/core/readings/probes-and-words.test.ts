import { describe, expect, it } from 'vitest';
import {
  METER_FUNCTIONS,
  POWERS,
  displayText,
  meterProfile,
  plugWords,
  probePlaces,
  probedContacts,
  probedEnds,
  readJack,
  samePlace,
  sayFunction,
  sayJackReading,
  sayPower,
  sayProbePlace,
  sayReading,
} from '../../../src/core/readings/index.ts';
import type {
  JackReading,
  JackUnderTest,
  MeterFunction,
  Reading,
  UnderTest,
} from '../../../src/core/readings/index.ts';
import {
  CONNECTORS,
  OTHER_JACKS,
  contactsOf,
  makeLead,
  otherJackSuits,
  wires,
} from '../../../src/core/wiring/index.ts';

const USUAL = meterProfile('usual');
const other = (kind: (typeof OTHER_JACKS)[number]): JackUnderTest => ({
  kind: 'other',
  other: kind,
  connector: 'trs-3.5',
});
const at = (meter: MeterFunction, power: JackReading['power'], red: 'tip' | 'ring') =>
  ({ meter, power, red, black: 'sleeve' }) as const;

describe('a reading in words', () => {
  it('is said for every setting of the dial, what is off or on, and where the probes are', () => {
    expect(METER_FUNCTIONS.map(sayFunction)).toEqual([
      'DC volts',
      'resistance',
      'diode test',
      'continuity',
      'LED tester',
      'volts with a 1 kohm resistor across the probes',
    ]);
    expect(POWERS.map(sayPower)).toEqual([
      'power off',
      'power on, nothing sent',
      'power on, clock running at 120 beats a minute',
      'power on, a note played now and then',
    ]);
    expect(sayJackReading({ meter: 'diode', power: 'off', red: '4', black: 'shell' })).toBe(
      'diode test, power off, red probe on pin 4, black probe on shell',
    );
  });

  it('is as short on the display as it is plain in a sentence', () => {
    const readings: readonly (readonly [Reading, string, string])[] = [
      [{ meter: 'volts', shows: 'value', value: 0.2 }, '0.20 V', '0.20 V'],
      [{ meter: 'volts', shows: 'value', value: 0.1994 }, '199 mV', '199 mV'],
      [{ meter: 'volts', shows: 'value', value: -0.2 }, '−0.20 V', '−0.20 V'],
      [{ meter: 'volts', shows: 'value', value: -0.0004 }, '0 mV', '0 mV'],
      [{ meter: 'ohms', shows: 'value', value: 9.96 }, '10.0 ohm', '10.0 ohm'],
      [{ meter: 'ohms', shows: 'value', value: 220.4 }, '220 ohm', '220 ohm'],
      [{ meter: 'ohms', shows: 'value', value: 12345 }, '12.3 kohm', '12.3 kohm'],
      [{ meter: 'ohms', shows: 'value', value: 2.2e6 }, '2.2 Mohm', '2.2 Mohm'],
      [{ meter: 'ohms', shows: 'overload' }, 'OL', 'overload: more than the meter can show'],
      [{ meter: 'continuity', shows: 'beep' }, 'beep', 'beeps'],
      [{ meter: 'continuity', shows: 'silent' }, 'silent', 'stays silent'],
      [{ meter: 'led', shows: 'glows' }, 'glows', 'the LED glows'],
      [{ meter: 'led', shows: 'faint' }, 'faint', 'the LED glows faintly'],
      [{ meter: 'led', shows: 'dark' }, 'dark', 'the LED stays dark'],
    ];
    for (const [reading, display, words] of readings) {
      expect(displayText(reading)).toBe(display);
      expect(sayReading(reading)).toBe(words);
    }
  });
});

describe('what a probe can be put on', () => {
  it('is every contact that a lead brings out: all but the shell', () => {
    for (const connector of CONNECTORS)
      expect(probedContacts(connector)).toEqual(contactsOf(connector).filter((one) => one !== 'shell'));
  });

  it('is the free plug of a jack, or both plugs of a lead with their shells', () => {
    const lead = makeLead('din5', 'trs-3.5', wires('4-ring'));
    const jack: UnderTest = { kind: 'jack', jack: other('headphone') };
    const alone: UnderTest = { kind: 'lead', lead };
    expect(probedEnds(jack)).toEqual([{ side: 'from', connector: 'trs-3.5' }]);
    expect(probePlaces(jack)).toHaveLength(3);
    expect(probedEnds(alone).map(({ connector }) => connector)).toEqual(['din5', 'trs-3.5']);
    expect(probePlaces(alone)).toHaveLength(6 + 3);
    expect(sayProbePlace(jack, { side: 'from', contact: 'tip' })).toBe('tip');
    expect(sayProbePlace(alone, { side: 'from', contact: '4' })).toBe('pin 4 of the output plug');
    expect([plugWords('from'), plugWords('to')]).toEqual(['output plug', 'input plug']);
  });

  it('is one place by its end and its contact', () => {
    expect(samePlace({ side: 'from', contact: '4' }, { side: 'from', contact: '4' })).toBe(true);
    expect(samePlace({ side: 'from', contact: '4' }, { side: 'to', contact: '4' })).toBe(false);
    expect(samePlace({ side: 'from', contact: '4' }, { side: 'from', contact: '5' })).toBe(false);
  });

  it('is a place on every jack that is no control jack and suits the connector', () => {
    for (const kind of OTHER_JACKS.filter((one) => otherJackSuits(one, 'trs-3.5')))
      for (const power of POWERS)
        for (const meter of METER_FUNCTIONS)
          expect(displayText(readJack(other(kind), at(meter, power, 'tip'), USUAL))).not.toMatch(
            /NaN|undefined/,
          );
  });
});
