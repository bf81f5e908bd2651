/** What comes out of an optocoupler's transistor for the light that goes in, in closed form between two edges. */
import { collectorAmperes, saturationAmperes } from '../wiring/index.ts';
import type { TransistorStage } from '../wiring/index.ts';
import type { Edge, Waveform } from './waveform.ts';

/** Steady currents of the LED in the two states of its link, amperes: the lesser and the greater, whichever state is which. */
export interface LedAmperes {
  readonly dark: number;
  readonly bright: number;
}

/** A transistor behind an LED of known currents. */
export interface LitStage {
  readonly stage: TransistorStage;
  readonly lit: LedAmperes;
}

/**
 * Delays of a stage, seconds, 0 or more. On: LED current begins, the line falls to 0. Off: current ends, the line rises
 * to 1. A stage that is slower to off than to on stretches the 0s and shrinks the 1s.
 */
export interface StageDelays {
  readonly toOnSeconds: number;
  readonly toOffSeconds: number;
}

/** What follows the LED of an input: a transistor whose light is known, or fixed delays. */
export type Follower = StageDelays | LitStage;

/** A serial input reads its line at this share of the supply (our choice: the middle). */
export const READ_SHARE = 0.5;

/** The load's part of the time constant is for a load that saturates at this current, amperes (how the fits were made). */
const FITTED_AT_AMPERES = 5e-3;

/** Time constants after which a current has arrived: what is left is below a part in 10^17. */
const ARRIVED = 40;

/** Halvings until a current in the tail is known: to a part in 10^12 of its way. */
const HALVINGS = 40;

/** The numbers of a stage that its movement needs; amperes of the collector, seconds. */
interface Motion {
  readonly saturation: number;
  readonly read: number;
  readonly below: number;
  readonly storage: number;
  readonly tail: number;
}

function motionOf(stage: TransistorStage): Motion {
  const { model, loadOhms, supplyVolts } = stage;
  const saturation = saturationAmperes(stage);
  const gainLeft = Math.min(1, saturation / FITTED_AT_AMPERES) ** model.loadPower;
  return {
    saturation,
    read: ((1 - READ_SHARE) * supplyVolts) / loadOhms,
    below: model.bareSeconds + model.loadFarads * gainLeft * loadOhms,
    storage: model.storageSeconds,
    tail: model.tailCoulombs,
  };
}

/** Time of a current from one value to another on its way to a target, all on one side of saturation, seconds. */
function secondsBetween(
  motion: Motion,
  from: number,
  to: number,
  target: number,
  saturated: boolean,
): number {
  const way = Math.log((target - from) / (target - to));
  if (!saturated) return motion.below * way;
  if (motion.tail === 0) return motion.storage * way;
  const tail =
    target === 0
      ? motion.tail * (1 / to - 1 / from)
      : (motion.tail / target) * Math.log((to * (target - from)) / (from * (target - to)));
  return motion.storage * way + tail;
}

/** Where a current stands after a time that ends before it leaves its side of saturation. */
function currentAfter(
  motion: Motion,
  from: number,
  target: number,
  seconds: number,
  saturated: boolean,
): number {
  if (!saturated || motion.tail === 0) {
    const constant = saturated ? motion.storage : motion.below;
    return target + (from - target) * Math.exp(-seconds / constant);
  }
  const end = target > motion.saturation ? target : motion.saturation;
  if (target === end && seconds > ARRIVED * (motion.storage + motion.tail / Math.min(from, target)))
    return target;
  let [near, far] = [from, end];
  for (let step = 0; step < HALVINGS; step += 1) {
    const middle = (near + far) / 2;
    if (secondsBetween(motion, from, middle, target, true) > seconds) far = middle;
    else near = middle;
  }
  return near;
}

/**
 * Let the current move towards a target for a time. `onRead` is told how long after the start it passes the level that is read.
 * A current never falls below 0.
 */
function move(
  motion: Motion,
  start: number,
  target: number,
  seconds: number,
  onRead: (afterSeconds: number, rising: boolean) => void,
): number {
  let current = start;
  let spent = 0;
  while (spent < seconds && current !== target && !(current === 0 && target < 0)) {
    const rising = target > current;
    const saturated = current > motion.saturation || (current === motion.saturation && rising);
    const limit = saturated
      ? rising || target >= motion.saturation
        ? undefined
        : motion.saturation
      : rising
        ? target > motion.saturation
          ? motion.saturation
          : undefined
        : target < 0
          ? 0
          : undefined;
    const toRead =
      !saturated &&
      (rising
        ? current < motion.read && target > motion.read
        : current >= motion.read && target < motion.read);
    if (toRead) {
      const after = spent + secondsBetween(motion, current, motion.read, target, false);
      if (after < seconds) onRead(after, rising);
    }
    const lasts = limit === undefined ? Infinity : secondsBetween(motion, current, limit, target, saturated);
    if (spent + lasts > seconds) return currentAfter(motion, current, target, seconds - spent, saturated);
    current = limit ?? target;
    spent += lasts;
  }
  return current;
}

/** A time in which the light holds still: where the collector current starts, and where it is bound, amperes. */
interface Held {
  readonly fromSeconds: number;
  readonly start: number;
  readonly target: number;
}

/** The current at rest, with every time that the light holds still told to `see`, which gives the current at its end. */
function throughLight(
  led: Waveform,
  { stage, lit }: LitStage,
  see: (held: Held, seconds: number) => number,
): number {
  const [bare, drained] = stage.model.wakeCoulombs;
  const wakeSeconds = lit.bright > 0 ? (stage.baseOhms > 0 ? drained : bare) / lit.bright : Infinity;
  const targets = { dark: collectorAmperes(stage, lit.dark), lit: collectorAmperes(stage, lit.bright) };
  const atRest = Math.max(0, led.before ? targets.dark : targets.lit);
  let current = atRest;
  const pass = (fromSeconds: number, target: number, seconds: number): void => {
    if (seconds > 0) current = see({ fromSeconds, start: current, target }, seconds);
  };
  led.edges.forEach(({ seconds, level }, at) => {
    const lasts = (led.edges[at + 1]?.seconds ?? Infinity) - seconds;
    const waits = level ? 0 : Math.min(wakeSeconds, lasts);
    pass(seconds, targets.dark, level ? lasts : waits);
    if (!level) pass(seconds + waits, targets.lit, lasts - waits);
  });
  return atRest;
}

/**
 * The output line of a transistor for the line of its LED (false while lit): low while the collector pulls the load below the
 * middle of its supply. Light takes hold only after it has filled what its first charge needs; a pulse shorter than that is lost.
 */
export function throughTransistor(led: Waveform, lit: LitStage): Waveform {
  const motion = motionOf(lit.stage);
  const edges: Edge[] = [];
  const atRest = throughLight(led, lit, ({ fromSeconds, start, target }, lasts) =>
    move(motion, start, target, lasts, (after, rising) => {
      edges.push({ seconds: fromSeconds + after, level: !rising });
    }),
  );
  return { before: atRest < motion.read, edges };
}

/** The output of a transistor at some moments in order, volts over its ground. */
export function outputVolts(led: Waveform, lit: LitStage, moments: readonly number[]): readonly number[] {
  const motion = motionOf(lit.stage);
  const held: Held[] = [];
  const unread = (): void => undefined;
  const atRest = throughLight(led, lit, (one, lasts) => {
    held.push(one);
    return move(motion, one.start, one.target, lasts, unread);
  });
  let at = -1;
  return moments.map((seconds) => {
    while (at + 1 < held.length && (held[at + 1] as Held).fromSeconds <= seconds) at += 1;
    const now = held[at];
    const current = now ? move(motion, now.start, now.target, seconds - now.fromSeconds, unread) : atRest;
    return voltsOf(lit.stage, current);
  });
}

/** The output of a transistor whose collector current is asked for, volts: never below what saturation leaves. */
function voltsOf({ supplyVolts, loadOhms, model }: TransistorStage, current: number): number {
  return Math.max(model.saturationVolts, supplyVolts - loadOhms * current);
}

/** The output of a transistor at rest and its edges: volts, and seconds from 10 % to 90 % of the way. */
export interface OutputShape {
  readonly lowVolts: number;
  readonly highVolts: number;
  readonly riseSeconds: number;
  readonly fallSeconds: number;
}

/** How low a transistor's output comes, how high, and how steep its edges are. */
export function outputShape({ stage, lit }: LitStage): OutputShape {
  const motion = motionOf(stage);
  const [dark, light] = [collectorAmperes(stage, lit.dark), collectorAmperes(stage, lit.bright)];
  const settled = (current: number): number => Math.min(motion.saturation, Math.max(0, current));
  const voltsAt = (current: number): number => voltsOf(stage, settled(current));
  const swing = settled(light) - settled(dark);
  const [few, most] = [settled(dark) + 0.1 * swing, settled(dark) + 0.9 * swing];
  return {
    lowVolts: voltsAt(light),
    highVolts: voltsAt(dark),
    fallSeconds: swing > 0 ? secondsBetween(motion, few, most, light, false) : 0,
    riseSeconds: swing > 0 ? secondsBetween(motion, most, few, dark, false) : 0,
  };
}
