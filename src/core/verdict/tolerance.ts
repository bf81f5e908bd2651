/** Ten thousand builds of one link, each tolerance drawn by chance: how many work, how far from failing, and what decides. */
import { elementNumber, setValueAt, settle, settleAgain } from '../circuit/index.ts';
import { STATES, spreadName } from '../wiring/index.ts';
import type { Grounding, Link, State } from '../wiring/index.ts';
import { addShare, influenceOf, spreadSums } from './influence.ts';
import type { Influence, SpreadSums } from './influence.ts';
import { levelOf } from './judge.ts';
import { prepareLink, readInput, setState } from './prepare.ts';
import type { PreparedLink } from './prepare.ts';

/** Builds drawn when nothing else is asked for: the share that works is then known to a per cent (1/sqrt(10 000)) or better. */
export const BUILDS = 10_000;

/** Builds between two reports of progress. */
const BUILDS_A_CHUNK = 250;

/** Bars of a histogram (our choice: readable at the width of a phone). */
export const BARS = 40;

/** How to draw; everything may be left out. */
export interface DrawOptions {
  readonly seed?: number;
  readonly builds?: number;
  readonly grounding?: Grounding;
}

/** How many builds fell into each of even steps from `from` to `to`, amperes or volts. */
export interface Histogram {
  readonly from: number;
  readonly to: number;
  readonly counts: readonly number[];
}

/** One input over all builds: amperes of its LED, or volts of a level input. */
export interface InputTolerance {
  readonly kind: 'current' | 'level';
  /** Builds in which this input is off in idle and on in active. */
  readonly works: number;
  readonly least: { readonly idle: number; readonly active: number };
  readonly most: { readonly idle: number; readonly active: number };
  readonly histogram: { readonly idle: Histogram; readonly active: Histogram };
  /** On from here and off below there; for a level, on below `on` and off above `off`. */
  readonly on: number;
  readonly off: number;
  /**
   * The tolerances that matter most to the value in active, at most three. Measured over the builds: the square of the correlation
   * between where a tolerance fell in its range and the value; as they fall independently, the squares of all add up to about 1.
   */
  readonly matters: readonly Influence[];
}

/** What came of all the builds. */
export interface ToleranceResult {
  readonly builds: number;
  readonly works: number;
  readonly seed: number;
  readonly inputs: readonly InputTolerance[];
}

/** How far the drawing has come. */
export interface DrawProgress {
  readonly done: number;
  readonly builds: number;
}

/** The parts of one tolerance, by number, and the value each has at a share of its range. */
interface ReadySpread {
  readonly name: string;
  readonly parts: readonly number[];
  readonly valueAt: readonly ((share: number) => number)[];
}

/**
 * Draw builds of a link, chunk by chunk: each `next()` draws some and tells how far it has come; the last returns the result. To
 * cancel, stop asking. Every tolerance falls evenly anywhere in its range, independently of the others (our choice: makers
 * promise no more than the ends); parts of one tolerance move together. An LED's voltage falls evenly in volts. Thresholds are
 * not drawn: they are the worst that a data sheet promises.
 * @throws when the link has no input, or no state at rest.
 */
export function* drawBuilds(
  link: Link,
  options: DrawOptions = {},
): Generator<DrawProgress, ToleranceResult, undefined> {
  const { seed = 1, builds = BUILDS, grounding = 'separate' } = options;
  if (!(Number.isInteger(builds) && builds > 0))
    throw new Error(`tolerance: builds must be a whole number above 0, got ${builds}`);
  const prepared = prepareLink(link, grounding);
  const spreads = readySpreads(prepared);
  const { senses } = prepared.model;
  if (senses.length === 0) throw new Error('link: needs at least one input, got none');
  const random = drawer(seed);
  const values = { idle: senses.map(column), active: senses.map(column) };
  const sums = senses.map(() => spreadSums(spreads.length));
  const worked = senses.map(() => 0);
  const starts = { idle: startOf(prepared, 'idle'), active: startOf(prepared, 'active') };
  const shares = new Float64Array(spreads.length);
  let works = 0;
  for (let build = 0; build < builds; build++) {
    drawOne(prepared, spreads, random, shares);
    for (const state of STATES) {
      setState(prepared, state);
      prepared.compiled.junctions.volts.set(starts[state]);
      const failed = settleAgain(prepared.compiled);
      if (failed)
        throw new Error(`link: the ${state} state of build ${build} has no solution: ${failed.reason}`);
      for (let input = 0; input < senses.length; input++)
        (values[state][input] as Float64Array)[build] = readInput(prepared, input).value;
    }
    let all = true;
    senses.forEach((sense, input) => {
      const active = (values.active[input] as Float64Array)[build] as number;
      const idle = (values.idle[input] as Float64Array)[build] as number;
      if (levelOf(sense, active) === 'on' && levelOf(sense, idle) === 'off') worked[input]!++;
      else all = false;
      addShare(sums[input] as SpreadSums, shares, active);
    });
    if (all) works++;
    if ((build + 1) % BUILDS_A_CHUNK === 0 && build + 1 < builds) yield { done: build + 1, builds };
  }
  return {
    builds,
    works,
    seed,
    inputs: senses.map((sense, input): InputTolerance => {
      const idle = values.idle[input] as Float64Array;
      const active = values.active[input] as Float64Array;
      const current = sense.kind === 'current';
      const on = current ? sense.onAmperes : sense.lowVolts;
      const off = current ? sense.offAmperes : sense.highVolts;
      const [least, most] = [Math.min, Math.max].map((end) => ({
        idle: idle.reduce((one, other) => end(one, other)),
        active: active.reduce((one, other) => end(one, other)),
      })) as [InputTolerance['least'], InputTolerance['most']];
      const from = Math.min(0, least.idle, least.active);
      const to = Math.max(on, off, most.idle, most.active);
      return {
        kind: sense.kind,
        works: worked[input] as number,
        least,
        most,
        histogram: { idle: histogramOf(idle, from, to), active: histogramOf(active, from, to) },
        on,
        off,
        matters: influenceOf(
          sums[input] as SpreadSums,
          spreads.map(({ name }) => name),
        ),
      };
    }),
  };

  function column(): Float64Array {
    return new Float64Array(builds);
  }
}

/** Draw all builds at once: for tests and the command line. */
export function drawAllBuilds(link: Link, options: DrawOptions = {}): ToleranceResult {
  const drawing = drawBuilds(link, options);
  let step = drawing.next();
  while (!step.done) step = drawing.next();
  return step.value;
}

/** Junction voltages of a state at nominal: where every build of it starts. */
function startOf(prepared: PreparedLink, state: State): Float64Array {
  setState(prepared, state);
  const failed = settle(prepared.compiled);
  if (failed) throw new Error(`link: the ${state} state has no solution: ${failed.reason}`);
  return prepared.compiled.junctions.volts.slice();
}

function readySpreads({ model, compiled }: PreparedLink): readonly ReadySpread[] {
  return model.spreads.map((spread) => ({
    name: spreadName(model.spreads, spread),
    parts: spread.parts.map((part) => elementNumber(compiled, part)),
    valueAt: spread.parts.map((part, at) => {
      const low = spread.low[at] as number;
      const high = spread.high[at] as number;
      const kind = compiled.circuit.elements[elementNumber(compiled, part)]?.kind;
      // IS is the exponential of the LED's added voltage, so that even in volts is geometric in IS.
      const ratio = Math.log(high / low);
      return kind === 'diode'
        ? (share) => low * Math.exp(ratio * share)
        : (share) => low + (high - low) * share;
    }),
  }));
}

function drawOne(
  { compiled }: PreparedLink,
  spreads: readonly ReadySpread[],
  random: () => number,
  shares: Float64Array,
): void {
  for (let at = 0; at < spreads.length; at++) {
    const { parts, valueAt } = spreads[at] as ReadySpread;
    const share = random();
    shares[at] = share;
    for (let one = 0; one < parts.length; one++) {
      setValueAt(compiled, parts[one] as number, (valueAt[one] as (share: number) => number)(share));
    }
  }
}

function histogramOf(values: Float64Array, from: number, to: number): Histogram {
  const counts = new Array<number>(BARS).fill(0);
  for (const value of values) {
    const bar = Math.min(BARS - 1, Math.floor(((value - from) / (to - from)) * BARS));
    counts[bar] = (counts[bar] as number) + 1;
  }
  return { from, to, counts };
}

/**
 * Numbers from 0 to below 1 that look random and are the same for the same seed.
 * Generator: a Weyl sequence mixed by multiply and shift (mulberry32, public domain, 32 bits of state).
 */
function drawer(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
