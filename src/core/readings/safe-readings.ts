/** Which readings the finder may ask for: only those that cannot harm a device, whatever the jack turns out to be. */
import { METER_FUNCTIONS } from './instruments.ts';
import type { MeterFunction } from './instruments.ts';
import type { Evidence } from './evidence.ts';
import { POWERS } from './power.ts';
import type { Power } from './power.ts';
import { isVolts } from './scale.ts';
import { LEAST_SEEN_VOLTS } from './finder.ts';
import type { TakenReading } from './taken.ts';
import { probedContacts } from './subjects.ts';
import type { JackReading } from './subjects.ts';

/** The rule in words, to be printed beside every proposal. */
export const SAFE_RULE =
  'Power off: resistance and the diode test, which push at most 1.5 mA at 3.2 V. Power on: DC volts only, through the free plug of a tested lead, so that nothing but the 1 Mohm or more of the meter touches the device and no probe can slip between two contacts. A resistor of 1 kohm goes across the probes only where volts were read before and were 6 V or less, so that at most 6 mA flow. Continuity is left to leads.';

/**
 * Whether a reading keeps to the rule.
 * With the power off a meter pushes less than any part of the catalogue is rated for (an LED 20 mA and 5 V in reverse). With the
 * power on a resistance range or a diode test would meet a foreign voltage, and the LED tester would load an unknown output.
 */
function isSafe(meter: MeterFunction, power: Power): boolean {
  if (power === 'off') return meter === 'ohms' || meter === 'diode';
  return isVolts(meter);
}

/** Most volts on which the resistor may be put, volts: a 5 V supply with room for the meter. */
const MOST_LOADED_VOLTS = 6;

/** Whether the resistor may go across these contacts: volts were read there before, and were some and not too many. */
export function mayLoad(at: JackReading, taken: readonly TakenReading[]): boolean {
  const there = taken.filter(
    ({ at: { meter, red, black } }) =>
      meter === 'volts' && ((red === at.red && black === at.black) || (red === at.black && black === at.red)),
  );
  return (
    there.length > 0 &&
    there.every(
      ({ reading }) =>
        reading.shows === 'value' &&
        Math.abs(reading.value) >= LEAST_SEEN_VOLTS &&
        Math.abs(reading.value) <= MOST_LOADED_VOLTS,
    )
  );
}

/** Every reading that is safe and that the reader can take on this jack. */
export function safeReadings(evidence: Evidence): readonly JackReading[] {
  const contacts = probedContacts(evidence.connector);
  return POWERS.flatMap((power) =>
    METER_FUNCTIONS.filter((meter) => isSafe(meter, power) && canTake(evidence, meter, power)).flatMap(
      (meter) =>
        contacts.flatMap((red, first) =>
          contacts
            .filter((black, second) => black !== red && (!isVolts(meter) || first < second))
            .map((black): JackReading => ({ meter, power, red, black })),
        ),
    ),
  );
}

function canTake({ canSwitchOn, canStreamClock }: Evidence, meter: MeterFunction, power: Power): boolean {
  if (power === 'off') return true;
  return canSwitchOn && (power === 'idle' || (power === 'clock' && canStreamClock && meter === 'volts'));
}

const WHAT_IT_DOES = {
  idle: 'Switch the device on; let it rest.',
  clock: 'Switch the device on and start its clock at 120 beats a minute.',
  notes: 'Switch the device on and play a note now and then.',
} as const;

/** How to take a reading safely, in order. */
export function howToTake({ meter, power }: JackReading): readonly string[] {
  const lead =
    'Test the lead first, then plug it into the jack and nothing else; put the probes on its free plug.';
  switch (power) {
    case 'off':
      return [
        'Switch the device off and take out whatever feeds it: supply plug, USB lead, battery. Wait half a minute.',
        lead,
        meter === 'diode' ? 'Set the dial to the diode test.' : 'Set the dial to resistance.',
        'Touch the two contacts, red and black as said, and read.',
      ];
    case 'idle':
    case 'clock':
    case 'notes':
      return [
        `${lead} Do this with the device off.`,
        'Set the dial to DC volts, never to resistance, diode or current, and clip the probes on so that they cannot slip together.',
        WHAT_IT_DOES[power],
        ...(meter === 'loaded'
          ? [
              'Hold a resistor of 1 kohm (brown, black, red) across the two probe tips. A foot controller may take that for a pressed switch, so turn the sound down first.',
            ]
          : []),
        'Read. Switch it off before you move a probe.',
      ];
  }
}
