/** How far apart each permitted reading would show what is still possible, against the noise: the ground of 'a meter cannot tell'. */
import { nameOf } from './evidence.ts';
import type { Evidence } from './evidence.ts';
import { predictionOf } from './finder.ts';
import type { Finding, Scored } from './finder.ts';
import { expected } from './gauss.ts';
import { safeReadings } from './safe-readings.ts';
import type { JackReading } from './subjects.ts';

/** A candidate with less than this probability is no longer counted as possible (our choice: half of what 'sure' leaves over). */
const LEAST_POSSIBLE = 0.005;

/** A reading, and the most by which it differs between two possible candidates of different names, in units of its noise. */
interface Parting {
  readonly at: JackReading;
  readonly steps: number;
}

/** Below this many units of noise a reading tells nothing. */
export const LEAST_STEPS = 1;

/** Every permitted reading that was not taken, the one that parts best first. */
export function partingsOf(
  evidence: Evidence,
  finding: Finding,
  taken: readonly JackReading[],
): readonly Parting[] {
  const possible = finding.scored.filter(({ probability }) => probability >= LEAST_POSSIBLE);
  return safeReadings(evidence)
    .filter((at) => !taken.some((one) => sameReading(one, at)))
    .map((at) => ({ at, steps: stepsOf(at, possible) }))
    .sort((a, b) => b.steps - a.steps);
}

/** Noise is what the meter and the tolerances of both candidates leave open after the readings taken. */
function stepsOf(at: JackReading, possible: readonly Scored[]): number {
  const expectations = possible.map(({ under, profile, joint }) => {
    const prediction = predictionOf(under, at, profile);
    const { mean, deviation } = expected(joint, prediction);
    // All that lies beyond the meter's range looks the same: overload.
    return { name: nameOf(under), mean: Math.min(mean, prediction.limit), deviation };
  });
  let most = 0;
  expectations.forEach((a, place) => {
    for (const b of expectations.slice(place + 1))
      if (a.name !== b.name)
        most = Math.max(most, Math.abs(a.mean - b.mean) / Math.hypot(a.deviation, b.deviation));
  });
  return most;
}

/** Whether two readings are taken in the same way on the same contacts. */
export function sameReading(a: JackReading, b: JackReading): boolean {
  return a.meter === b.meter && a.power === b.power && a.red === b.red && a.black === b.black;
}
