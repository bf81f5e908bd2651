/** The jacks that a lesson puts under a meter: plain data in jacks.json, read by the core when the site is built. */
import { makeJack, jackProblem, otherJackEntry, otherJackSuits } from '../../src/core/wiring/index.ts';
import { meterProfile, readJack, sayReading } from '../../src/core/readings/index.ts';
import type { Contact, OtherJackKind } from '../../src/core/wiring/index.ts';
import type {
  JackReading,
  JackUnderTest,
  MeterFunction,
  Power as MeterPower,
  MeterProfileName,
  Reading as MeterReading,
} from '../../src/core/readings/index.ts';
import type { AuthoredJack } from './lesson-links.ts';
import { unbroken } from './lesson-links.ts';

/** A jack under the meter as an author writes it: a control jack with its direction, or one that is no control jack. */
export type AuthoredUnderTest =
  | (AuthoredJack & { readonly direction: 'out' | 'in' })
  | { readonly other: OtherJackKind; readonly connector: AuthoredJack['connector'] };

/** jacks.json of a lesson: its jacks by name. */
export type LessonJacks = Readonly<Record<string, AuthoredUnderTest>>;

/** How the dial and the power stand: 'volts idle', 'diode off'. */
export type MeterSetting = `${MeterFunction} ${MeterPower}`;

/** Two contacts, the red probe's first: 'ring-sleeve'. */
export type ProbePair = `${Contact}-${Contact}`;

/** The jack to be measured. @throws when there can be no such jack, in the words of the core. */
export function underTestFrom(authored: AuthoredUnderTest): JackUnderTest {
  if ('other' in authored) {
    const { other, connector } = authored;
    if (!otherJackSuits(other, connector))
      throw new Error(`lesson jack: a ${otherJackEntry(other).label} cannot be on a ${connector}`);
    return { kind: 'other', other, connector };
  }
  const { direction, connector, style, ...more } = authored;
  const jack = makeJack(direction, connector, style, more);
  const problem = jackProblem(jack);
  if (problem !== undefined) throw new Error(`lesson jack: ${problem}`);
  return { kind: 'control', jack };
}

/** A setting and two probes as the core takes them. */
export function jackReading(setting: MeterSetting, probes: ProbePair): JackReading {
  const [meter, power] = setting.split(' ') as [MeterFunction, MeterPower];
  const [red, black] = probes.split('-') as [Contact, Contact];
  return { meter, power, red, black };
}

/** What a meter shows on a lesson's jack. */
export function meterOn(
  authored: AuthoredUnderTest,
  setting: MeterSetting,
  probes: ProbePair,
  profile: MeterProfileName = 'usual',
): MeterReading {
  return readJack(underTestFrom(authored), jackReading(setting, probes), meterProfile(profile));
}

/** The same in words: '5.00 V', 'overload: more than the meter can show'. */
export function sayMeter(...taken: Parameters<typeof meterOn>): string {
  return unbroken(sayReading(meterOn(...taken)));
}
