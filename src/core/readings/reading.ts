/** What an instrument shows, as data and in words. */
import { sayOhms, sayVolts } from '../verdict/index.ts';
import { LED_TESTER } from './instruments.ts';
import type { MeterFunction, MeterProfile } from './instruments.ts';
import type { ScaledFunction } from './scale.ts';

/** A reading as the instrument shows it: `value` in volts (volts, loaded, diode) or ohms. */
export type Reading =
  | { readonly meter: ScaledFunction; readonly shows: 'value'; readonly value: number }
  | { readonly meter: 'ohms' | 'diode'; readonly shows: 'overload' }
  | { readonly meter: 'continuity'; readonly shows: 'beep' | 'silent' }
  | { readonly meter: 'led'; readonly shows: 'glows' | 'faint' | 'dark' };

/** Least volts that are said with two decimals; below it three, in millivolts. */
const SMALL_VOLTS = 0.2;

/** Volts as a meter shows them: '5.00 V', '31 mV'. */
export function sayMeterVolts(volts: number): string {
  if (Math.abs(volts) >= SMALL_VOLTS) return sayVolts(volts);
  const milli = Math.round(volts * 1e3);
  return `${milli < 0 ? '−' : ''}${Math.abs(milli)} mV`;
}

/** The name of a dial setting: 'DC volts'. */
export function sayFunction(meter: MeterFunction): string {
  switch (meter) {
    case 'volts':
      return 'DC volts';
    case 'ohms':
      return 'resistance';
    case 'diode':
      return 'diode test';
    case 'continuity':
      return 'continuity';
    case 'led':
      return 'LED tester';
    case 'loaded':
      return 'volts with a 1 kohm resistor across the probes';
  }
}

/** A reading in words: '1.60 V', 'overload: more than this meter can show', 'beeps', 'the LED stays dark'. */
export function sayReading(reading: Reading): string {
  switch (reading.shows) {
    case 'value':
      return reading.meter === 'ohms' ? sayMeterOhms(reading.value) : sayMeterVolts(reading.value);
    case 'overload':
      return 'overload: more than the meter can show';
    case 'beep':
      return 'beeps';
    case 'silent':
      return 'stays silent';
    case 'glows':
      return 'the LED glows';
    case 'faint':
      return 'the LED glows faintly';
    case 'dark':
      return 'the LED stays dark';
  }
}

function sayMeterOhms(ohms: number): string {
  if (ohms >= 1e6) return `${Number((ohms / 1e6).toPrecision(3))} Mohm`;
  return ohms < 10 ? `${ohms.toFixed(1)} ohm` : sayOhms(ohms);
}

/** What a meter shows between two values, volts or ohms: '0.4 V to 0.85 V', 'less than 3 ohm', '0 V ± 0.01 V'. Undefined is no end. */
export function sayBetween(
  meter: MeterFunction,
  least: number | undefined,
  most: number | undefined,
): string {
  const say = (value: number): string =>
    meter === 'ohms' ? sayOhms(value) : `${String(value).replace('-', '−')} V`;
  if (least === undefined) return most === undefined ? 'any number' : `less than ${say(most)}`;
  if (most === undefined) return `more than ${say(least)}`;
  return least === -most ? `0 V ± ${say(most)}` : `${say(least)} to ${say(most)}`;
}

/** What is measured before it is shown: volts at the probes, ohms as volts over amperes, mean amperes of an LED. */
interface Measured {
  readonly meter: MeterFunction;
  readonly value: number;
}

/** A measured value as the instrument shows it. A resistance range that meets a foreign voltage shows overload. */
export function shown({ meter, value }: Measured, profile: MeterProfile): Reading {
  switch (meter) {
    case 'volts':
    case 'loaded':
      return { meter, shows: 'value', value };
    case 'ohms':
      return value >= 0 && value <= profile.ohmsMost
        ? { meter, shows: 'value', value }
        : { meter, shows: 'overload' };
    case 'diode':
      return value <= profile.diodeVolts ? { meter, shows: 'value', value } : { meter, shows: 'overload' };
    case 'continuity':
      return { meter, shows: value >= 0 && value < profile.beepOhms ? 'beep' : 'silent' };
    case 'led':
      return {
        meter,
        shows:
          value >= LED_TESTER.plainAmperes ? 'glows' : value >= LED_TESTER.seenAmperes ? 'faint' : 'dark',
      };
  }
}
