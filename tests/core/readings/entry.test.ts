import { describe, expect, it } from 'vitest';
import { readEntry, unitsOf } from '../../../src/core/readings/entry.ts';

describe('what is typed from a display', () => {
  it('is taken in the unit shown, with a comma or a point, and with either minus sign', () => {
    expect(readEntry('volts', ' 4,98 ', 'V')).toEqual({ meter: 'volts', shows: 'value', value: 4.98 });
    expect(readEntry('diode', '650', 'mV')).toEqual({ meter: 'diode', shows: 'value', value: 0.65 });
    expect(readEntry('ohms', '1.2', 'Mohm')).toEqual({ meter: 'ohms', shows: 'value', value: 1.2e6 });
    expect(readEntry('volts', '−3', 'V')).toMatchObject({ value: -3 });
  });

  it('is refused in words when it is no number or beyond any jack', () => {
    expect(readEntry('diode', '650', 'V')).toBe("reading: expected a number from -1 to 4 V, got '650'");
    expect(readEntry('ohms', 'OL', 'kohm')).toBe(
      "reading: expected a number from 0 to 100000 kohm, got 'OL'",
    );
    expect(readEntry('volts', '', 'mV')).toBe("reading: expected a number from -60000 to 60000 mV, got ''");
  });

  it('has the units that a display shows', () => {
    expect(unitsOf('ohms')).toEqual(['ohm', 'kohm', 'Mohm']);
    expect(unitsOf('diode')).toEqual(['V', 'mV']);
  });
});
