/** What stands behind the LED of an input as a scope shows it: volts at the pull-up, how low it comes and how steep it is. */
import { valueAt } from '../wiring/index.ts';
import { READ_SHARE, outputShape, outputVolts } from './opto-output.ts';
import type { OutputShape } from './opto-output.ts';
import type { LegRun } from './send.ts';
import { ownHop } from './send.ts';
import { restAmperes } from './line.ts';
import type { TimeLink } from './time-link.ts';
import { levelAt } from './waveform.ts';

/** From one point of a trace to the next, seconds: far below the time constant of any output. */
const STEP_SECONDS = 0.5e-6;

/** The low level of an output with logic behind it, volts (common practice, no source). */
const LOGIC_LOW_VOLTS = 0.2;

/** The output side of an input in its link: amperes of its LED while a 0 lasts, volts, and seconds from 10 % to 90 %. */
interface OutputFacts extends OutputShape {
  readonly litAmperes: number;
  readonly supplyVolts: number;
  /** A serial input reads 0 below this. */
  readonly readVolts: number;
}

/** What the output of the first input of a link does. A logic output's edges are taken as no time. @throws where it has no LED. */
export function outputFacts(time: TimeLink): OutputFacts {
  const hop = ownHop(time);
  const supplyVolts = outputSupply(time);
  const litAmperes = restAmperes(time, 0).bright;
  const shape =
    'stage' in hop
      ? outputShape(hop)
      : { lowVolts: LOGIC_LOW_VOLTS, highVolts: supplyVolts, riseSeconds: 0, fallSeconds: 0 };
  return { ...shape, litAmperes, supplyVolts, readVolts: READ_SHARE * supplyVolts };
}

/** The output of the first input of a link between two moments, seconds and volts over its device's ground. */
export function outputTrace(
  time: TimeLink,
  { led, output }: Pick<LegRun, 'led' | 'output'>,
  fromSeconds: number,
  toSeconds: number,
): readonly (readonly [seconds: number, volts: number])[] {
  const count = Math.ceil((toSeconds - fromSeconds) / STEP_SECONDS);
  const moments = Array.from({ length: count + 1 }, (_, at) =>
    Math.min(toSeconds, fromSeconds + at * STEP_SECONDS),
  );
  const hop = ownHop(time);
  const supplyVolts = outputSupply(time);
  const volts =
    'stage' in hop
      ? outputVolts(led, hop, moments)
      : moments.map((one) => (levelAt(output, one) ? supplyVolts : LOGIC_LOW_VOLTS));
  return moments.map((one, at) => [one, volts[at] as number]);
}

function outputSupply({ link }: TimeLink): number {
  const input = link.branches[0]?.input;
  if (!input) throw new Error('link: needs an input, got none');
  return valueAt(input, 'outputVolts');
}
