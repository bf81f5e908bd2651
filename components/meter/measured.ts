/** A measurement whole: what the reader has chosen, and what the meter shows of it. */
import { explainReading, meterProfile, readUnder } from '../../src/core/readings/index.ts';
import type {
  MeterFunction,
  Power as MeterPower,
  MeterProfileName,
  Reading as MeterReading,
  UnderTest,
} from '../../src/core/readings/index.ts';
import { FIRST_PROBES } from './probes.ts';
import type { Probes } from './probes.ts';
import { FIRST_CHOICES } from './under-test.ts';
import type { Choices } from './under-test.ts';

/** What the reader has chosen. The power and the probes are as wanted: not everything under test has them. */
export interface Setting {
  readonly choices: Choices;
  readonly power: MeterPower;
  readonly meter: MeterFunction;
  readonly profile: MeterProfileName;
  readonly probes: Probes;
}

/** What the page starts with. */
export const FIRST_SETTING: Setting = {
  choices: FIRST_CHOICES,
  power: 'idle',
  meter: 'volts',
  profile: 'usual',
  probes: FIRST_PROBES,
};

/** The power while it is measured: a lead has none. */
export function powerOn(under: UnderTest, wanted: MeterPower): MeterPower {
  return under.kind === 'lead' ? 'off' : wanted;
}

/** What the meter shows, and why. */
export interface Measured {
  readonly reading: MeterReading;
  readonly why: string;
}

/** Solve what is under the meter, with the probes where they are and the meter as it is set. */
export function measure({ power, meter, profile }: Setting, under: UnderTest, at: Probes): Measured {
  const probing = { meter, power: powerOn(under, power), ...at };
  const given = [under, probing, meterProfile(profile)] as const;
  return { reading: readUnder(...given), why: explainReading(...given) };
}
