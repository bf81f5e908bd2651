/** The jacks that a lesson puts under a meter: plain data beside the lesson, read when the site is built. */
import { otherJackEntry, otherJackSuits } from '../wiring/index.ts';
import { meterProfile, readJack, sayReading } from '../readings/index.ts';
import type { Contact, OtherJackKind } from '../wiring/index.ts';
import type {
  JackReading,
  JackUnderTest,
  MeterFunction,
  Power,
  MeterProfileName,
  Reading,
} from '../readings/index.ts';
import { jackFrom, type AuthoredJack } from './links.ts';
import { unbroken } from './say.ts';

/** A jack under the meter as an author writes it: a control jack with its direction, or one that is no control jack. */
export type AuthoredUnderTest =
  | (AuthoredJack & { readonly direction: 'out' | 'in' })
  | { readonly other: OtherJackKind; readonly connector: AuthoredJack['connector'] };

/** The jacks of a lesson by name. */
export type LessonJacks = Readonly<Record<string, AuthoredUnderTest>>;

/** How the dial and the power stand: 'volts idle', 'diode off'. */
export type MeterSetting = `${MeterFunction} ${Power}`;

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
  const { direction, ...jack } = authored;
  return { kind: 'control', jack: jackFrom(direction, jack, 'lesson jack') };
}

/** A setting and two probes as the core takes them. */
export function jackReading(setting: MeterSetting, probes: ProbePair): JackReading {
  const [meter, power] = setting.split(' ') as [MeterFunction, Power];
  const [red, black] = probes.split('-') as [Contact, Contact];
  return { meter, power, red, black };
}

/** What a meter shows on a lesson's jack. */
export function meterOn(
  authored: AuthoredUnderTest,
  setting: MeterSetting,
  probes: ProbePair,
  profile: MeterProfileName = 'usual',
): Reading {
  return readJack(underTestFrom(authored), jackReading(setting, probes), meterProfile(profile));
}

/** The same in words: '5.00 V', 'overload: more than the meter can show'. */
export function sayMeter(...taken: Parameters<typeof meterOn>): string {
  return unbroken(sayReading(meterOn(...taken)));
}
