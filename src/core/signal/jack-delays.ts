/** How much later than its LED an input's output comes, for a jack by itself: what a board counts without solving every link. */
import { outputStage } from '../wiring/index.ts';
import type { OutputJack } from '../wiring/index.ts';
import { BITS_PER_FRAME, bitSecondsOf, sendBytes } from './frames.ts';
import { outputShape, throughTransistor } from './opto-output.ts';
import type { Follower, LedAmperes, OutputShape, StageDelays } from './opto-output.ts';

/** Current of the usual 5 V link, amperes: 5 V, 660 ohm and a 6N138 (worked out; the standard names 5 mA). */
const USUAL_AMPERES = 5.4e-3;

/** The byte whose stop bit is the hardest to keep: nine bits of light, one of dark, and the next start right behind it. */
const HARDEST = 0x00;

const USUAL: LedAmperes = { dark: 0, bright: USUAL_AMPERES };

/** What follows the LED of an input, in the usual link where nothing is known of its current. */
export function followerOf(jack: OutputJack, lit: LedAmperes = USUAL, baseResistor?: boolean): Follower {
  const stage = outputStage(jack, baseResistor);
  return 'toOnSeconds' in stage ? stage : { stage, lit };
}

/**
 * The delays of an input's output in the usual link, while the hardest byte is sent over and over. An output that loses bits has
 * a delay to off of a whole byte.
 */
export function delaysOf(jack: OutputJack, baseResistor?: boolean): StageDelays {
  const follower = followerOf(jack, USUAL, baseResistor);
  if ('toOnSeconds' in follower) return follower;
  const { wave } = sendBytes([HARDEST, HARDEST, HARDEST]);
  const out = throughTransistor(wave, follower);
  const late = (fromEnd: number): number =>
    (out.edges.at(-fromEnd)?.seconds ?? NaN) - (wave.edges.at(-fromEnd)?.seconds ?? NaN);
  if (out.edges.length !== wave.edges.length)
    return { toOnSeconds: 0, toOffSeconds: BITS_PER_FRAME * bitSecondsOf({}) };
  return { toOffSeconds: late(1), toOnSeconds: late(2) };
}

/** How much later an input's output is to off than to on, seconds: 0s grow and 1s shrink by it; below 0 the other way round. */
export function edgeShiftSeconds(jack: OutputJack): number {
  const { toOnSeconds, toOffSeconds } = delaysOf(jack);
  return toOffSeconds - toOnSeconds;
}

/** How low the output of an input comes in the usual link, and how steep its edges are; undefined where it has no transistor. */
export function outputShapeOf(jack: OutputJack, baseResistor?: boolean): OutputShape | undefined {
  const follower = followerOf(jack, USUAL, baseResistor);
  return 'toOnSeconds' in follower ? undefined : outputShape(follower);
}
