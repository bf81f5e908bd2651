/** What a figure of a link in time shows: the amount at an input, moment by moment. */
import type { LegRun } from './send.ts';
import type { TimeLink } from './time-link.ts';

/** Amperes that light the LED of an input, or volts of a level input over its ground, at a moment. */
export function inputAmountAt(
  time: TimeLink,
  run: Pick<LegRun, 'transient'>,
  input: number,
  seconds: number,
): number {
  const sense = time.model.senses[input];
  if (!sense) throw new Error(`link: has no input ${input}`);
  if (sense.kind === 'current') return run.transient.crossing(sense.led, seconds);
  return run.transient.volts(sense.node, seconds) - run.transient.volts(sense.ground, seconds);
}

/** The amount at an input at every moment solved between two moments, seconds and amperes or volts. */
export function inputTrace(
  time: TimeLink,
  run: Pick<LegRun, 'transient'>,
  input: number,
  fromSeconds: number,
  toSeconds: number,
): readonly (readonly [seconds: number, amount: number])[] {
  const moments = run.transient.moments().filter((one) => one > fromSeconds && one < toSeconds);
  return [fromSeconds, ...moments, toSeconds].map((one) => [one, inputAmountAt(time, run, input, one)]);
}
