/** What a meter would show at a kind of jack, in words: devices differ, so it is what the middle half of the likeliest of them show. */
import { crowdPoints } from './crowd.ts';
import type { Finding } from './finder.ts';
import { sayReading, shown } from './reading.ts';
import { offScale } from './scale.ts';
import type { ScaledFunction } from './scale.ts';
import type { JackReading, JackUnderTest } from './subjects.ts';

/** Shares of the devices below the ends of what is told (our choice: what every second device shows). */
const MIDDLE_HALF = [0.25, 0.75] as const;

/** A meter that shows no number, in a word. */
const OVERLOAD = 'overload';

/** Devices that are asked, the likeliest first; while all are alike, the first are spread evenly over what devices are. */
const ASKED = 128;

/**
 * 'about 1.02 V' where they agree, else 'mostly 0.68 V to 2.87 V'.
 * @param under a jack of the finding, with the weights that the readings so far give its devices.
 */
export function sayWouldShow(under: JackUnderTest, at: JackReading, { weighed }: Finding): string {
  const meter = at.meter as ScaledFunction;
  const asked = weighed
    .filter((one) => one.under === under)
    .flatMap(({ profile, weights }) => Array.from(weights, (weight, device) => ({ profile, weight, device })))
    .sort((one, other) => other.weight - one.weight)
    .slice(0, ASKED)
    .map((one) => ({ ...one, point: crowdPoints(under, at, one.profile)(one.device) }))
    .sort((one, other) => one.point - other.point);
  const total = asked.reduce((sum, { weight }) => sum + weight, 0);
  const [low = '', high = ''] = MIDDLE_HALF.map((share) => {
    let below = 0;
    const found = asked.find(({ weight }) => (below += weight) >= share * total) ?? asked.at(-1);
    if (!found) return '';
    const reading = shown({ meter, value: offScale(meter, found.point) }, found.profile);
    return reading.shows === 'overload' ? OVERLOAD : sayReading(reading);
  });
  if (low !== high) return `mostly ${low} to ${high}`;
  return low === OVERLOAD ? low : `about ${low}`;
}
