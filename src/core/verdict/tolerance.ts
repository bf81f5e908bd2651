/** Ten thousand builds of one link, each tolerance drawn by chance: how many work, how far from failing, and what decides. */
import { elementNumber, setValueAt, settleFrom } from '../circuit/index.ts';
import { STATES, spreadName } from '../wiring/index.ts';
import type { Grounding, Link, Sense, State } from '../wiring/index.ts';
import { seededChance } from './chance.ts';
import { checkLink } from './check.ts';
import { influenceOf } from './influence.ts';
import type { Influence } from './influence.ts';
import { boundsOf, levelOf } from './judge.ts';
import { prepareLink, readInput, setState, settleState } from './prepare.ts';
import type { PreparedLink } from './prepare.ts';

/** Builds drawn when nothing else is asked for: the share that works is then known to a per cent (1/sqrt(10 000)) or better. */
export const BUILDS = 10_000;

/** Builds between two reports of progress. */
const BUILDS_A_CHUNK = 250;

/** Bars of a histogram (our choice: readable at the width of a phone). */
const BARS = 40;

/** How to draw; everything may be left out. */
interface DrawOptions {
  readonly seed?: number;
  readonly builds?: number;
  readonly grounding?: Grounding;
}

/** How many builds fell into each of even steps from `from` to `to`, amperes or volts. */
interface Histogram {
  readonly from: number;
  readonly to: number;
  readonly counts: readonly number[];
}

/** One input over all builds: amperes of its LED, or volts of a level input. */
interface InputTolerance {
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

/** One tolerance, by the numbers of its parts. */
interface ReadySpread {
  readonly name: string;
  /** Put its parts at a share of their range, 0 to 1. */
  readonly moveTo: (share: number) => void;
}

/**
 * Draw builds of a link, chunk by chunk: each `next()` draws some and tells how far it has come; the last returns the result. To
 * cancel, stop asking. Every tolerance falls evenly anywhere in its range, independently of the others (our choice: makers
 * promise no more than the ends); parts of one tolerance move together. An LED's voltage falls evenly in volts. Thresholds are
 * not drawn: they are the worst that a data sheet promises. A part that is not known is the named one that leaves the least.
 * @throws when the link has no input, or no state at rest.
 */
export function* drawBuilds(
  link: Link,
  options: DrawOptions = {},
): Generator<DrawProgress, ToleranceResult, undefined> {
  const { seed = 1, builds = BUILDS, grounding = 'separate' } = options;
  if (!(Number.isInteger(builds) && builds > 0))
    throw new Error(`tolerance: builds must be a whole number above 0, got ${builds}`);
  const prepared = prepareLink(checkLink(link, 'outcome').link, grounding);
  const { senses } = prepared;
  const spreads = readySpreads(prepared);
  const columns = (count: number): Float64Array[] =>
    Array.from({ length: count }, () => new Float64Array(builds));
  const places = columns(spreads.length);
  const values = { idle: columns(senses.length), active: columns(senses.length) };
  const starts = { idle: startOf(prepared, 'idle'), active: startOf(prepared, 'active') };
  const random = seededChance(seed);
  for (let build = 0; build < builds; build++) {
    spreads.forEach(({ moveTo }, at) => moveTo(((places[at] as Float64Array)[build] = random())));
    for (const state of STATES) {
      setState(prepared, state);
      const failed = settleFrom(prepared.compiled, starts[state]);
      if (failed)
        throw new Error(`link: the ${state} state of build ${build} has no solution: ${failed.reason}`);
      values[state].forEach((column, input) => (column[build] = readInput(prepared, input).value));
    }
    if ((build + 1) % BUILDS_A_CHUNK === 0 && build + 1 < builds) yield { done: build + 1, builds };
  }
  const worked = senses.map((sense, input) => {
    const [idle, active] = [values.idle[input] as Float64Array, values.active[input] as Float64Array];
    return active.map((value, at) =>
      Number(levelOf(sense, value) === 'on' && levelOf(sense, idle[at] as number) === 'off'),
    );
  });
  return {
    builds,
    works: sumOf(
      (worked[0] as Float64Array).map((_, at) => Math.min(...worked.map((one) => one[at] as number))),
    ),
    seed,
    inputs: senses.map((sense, input) => {
      const [idle, active] = [values.idle[input] as Float64Array, values.active[input] as Float64Array];
      return {
        ...rangesOf(sense, idle, active),
        works: sumOf(worked[input] as Float64Array),
        matters: influenceOf(
          spreads.map(({ name }) => name),
          places,
          active,
        ),
      };
    }),
  };
}

function sumOf(column: Float64Array): number {
  return column.reduce((sum, one) => sum + one, 0);
}

function rangesOf(
  sense: Sense,
  idle: Float64Array,
  active: Float64Array,
): Omit<InputTolerance, 'works' | 'matters'> {
  const least = { idle: endOf(Math.min, idle), active: endOf(Math.min, active) };
  const most = { idle: endOf(Math.max, idle), active: endOf(Math.max, active) };
  const { on, off } = boundsOf(sense);
  const from = Math.min(0, least.idle, least.active);
  const to = Math.max(on, off, most.idle, most.active);
  const histogram = { idle: histogramOf(idle, from, to), active: histogramOf(active, from, to) };
  return { kind: sense.kind, least, most, histogram, on, off };
}

function endOf(end: (a: number, b: number) => number, column: Float64Array): number {
  return column.reduce((one, other) => end(one, other));
}

/** Junction voltages of a state at nominal: where every build of it starts. */
function startOf(prepared: PreparedLink, state: State): readonly number[] {
  const failed = settleState(prepared, state);
  if (failed) throw new Error(`link: the ${state} state has no solution: ${failed.reason}`);
  return prepared.compiled.junctions.map(({ volts }) => volts);
}

function readySpreads({ model, compiled }: PreparedLink): readonly ReadySpread[] {
  return model.spreads.map((spread) => {
    const moves = spread.parts.map((part, at) => {
      const number = elementNumber(compiled, part);
      const [low, high] = [spread.low[at] as number, spread.high[at] as number];
      // IS is the exponential of the LED's added voltage, so that even in volts is geometric in IS.
      return compiled.circuit.elements[number]?.kind === 'diode'
        ? (share: number) => setValueAt(compiled, number, low * (high / low) ** share)
        : (share: number) => setValueAt(compiled, number, low + (high - low) * share);
    });
    return {
      name: spreadName(model.spreads, spread),
      moveTo: (share) => {
        for (const move of moves) move(share);
      },
    };
  });
}

function histogramOf(values: Float64Array, from: number, to: number): Histogram {
  const counts = new Array<number>(BARS).fill(0);
  for (const value of values)
    counts[Math.min(BARS - 1, Math.floor(((value - from) / (to - from)) * BARS))]!++;
  return { from, to, counts };
}
