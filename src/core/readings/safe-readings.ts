/** Which readings the finder may ask for: only those that cannot harm a device, whatever the jack turns out to be. */
import { METER_FUNCTIONS } from './instruments.ts';
import type { MeterFunction } from './instruments.ts';
import type { Evidence } from './evidence.ts';
import { POWERS } from './power.ts';
import type { Power } from './power.ts';
import { probedContacts } from './subjects.ts';
import type { JackReading } from './subjects.ts';

/** The rule in words, to be printed beside every proposal. */
export const SAFE_RULE =
  'Power off: resistance and the diode test, which push at most 1.5 mA at 3.2 V. Power on: DC volts only, through the free plug of a tested lead, so that nothing but the 1 Mohm or more of the meter touches the device and no probe can slip between two contacts. Continuity is left to leads.';

/**
 * Whether a reading keeps to the rule.
 * With the power off a meter pushes less than any part of the catalogue is rated for (an LED 20 mA and 5 V in reverse). With the
 * power on a resistance range or a diode test would meet a foreign voltage, and the LED tester would load an unknown output.
 */
function isSafe(meter: MeterFunction, power: Power): boolean {
  if (power === 'off') return meter === 'ohms' || meter === 'diode';
  return meter === 'volts';
}

/** Every reading that is safe and that the reader can take on this jack. */
export function safeReadings(evidence: Evidence): readonly JackReading[] {
  const contacts = probedContacts(evidence.connector);
  return POWERS.flatMap((power) =>
    METER_FUNCTIONS.filter((meter) => isSafe(meter, power) && canTake(evidence, power)).flatMap((meter) =>
      contacts.flatMap((red, first) =>
        contacts
          .filter((black, second) => black !== red && (meter !== 'volts' || first < second))
          .map((black): JackReading => ({ meter, power, red, black })),
      ),
    ),
  );
}

function canTake({ canSwitchOn, canStreamClock }: Evidence, power: Power): boolean {
  return power === 'off' || (canSwitchOn && (power === 'idle' || canStreamClock));
}

/** How to take a reading safely, in order. */
export function howToTake({ meter, power }: JackReading): readonly string[] {
  const lead =
    'Test the lead first, then plug it into the jack and nothing else; put the probes on its free plug.';
  switch (power) {
    case 'off':
      return [
        'Switch the device off and take its supply plug out; wait half a minute.',
        lead,
        meter === 'diode' ? 'Set the dial to the diode test.' : 'Set the dial to resistance.',
        'Touch the two contacts, red and black as said, and read.',
      ];
    case 'idle':
    case 'clock':
      return [
        `${lead} Do this with the device off.`,
        'Set the dial to DC volts, never to resistance, diode or current, and clip the probes on so that they cannot slip together.',
        power === 'clock'
          ? 'Switch the device on and start its clock at 120 beats a minute.'
          : 'Switch the device on; let it rest.',
        'Read. Switch it off before you move a probe.',
      ];
  }
}
