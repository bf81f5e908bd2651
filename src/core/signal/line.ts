/** A driven line through a link: what flows, and when each input turns on and off. */
import {
  followEdges,
  junctionLaw,
  makeBlend,
  setBlend,
  setValueAt,
  settle,
  transientOf,
  voltsIn,
} from '../circuit/index.ts';
import type { CompiledCircuit, Stretch, Trajectory, Transient, Unsolved } from '../circuit/index.ts';
import type { LinkStage } from './hop.ts';
import type { LedAmperes } from './opto-output.ts';
import type { Probe, TimeLink } from './time-link.ts';
import type { Edge, Waveform } from './waveform.ts';

/** Time solved after the last edge, seconds: ten bits, so that a line that goes on falling is seen to. */
const TAIL_SECONDS = 320e-6;

/** Time solved before the first edge, seconds: half a bit of rest, so that a figure shows where the line came from. */
const LEAD_IN_SECONDS = 16e-6;

/**
 * A line followed through a link. `inputs` has one line an input: level false while its LED, or its level, is on. Where `unsolved`
 * is given the link has no solution at rest, or none from that moment on, and everything stands still from there.
 */
export interface LineRun {
  readonly driven: Waveform;
  readonly fromSeconds: number;
  readonly toSeconds: number;
  /** What the transient is read from. */
  readonly stretches: readonly Stretch[];
  readonly transient: Transient;
  readonly inputs: readonly Waveform[];
  readonly unsolved: Unsolved | undefined;
}

/** Follow a driven line through a link. */
export function driveLine(time: TimeLink, driven: Waveform, tailSeconds = TAIL_SECONDS): LineRun {
  const fromSeconds = (driven.edges[0]?.seconds ?? 0) - LEAD_IN_SECONDS;
  const toSeconds = (driven.edges.at(-1)?.seconds ?? 0) + tailSeconds;
  // A stage that cannot switch leaves nothing to follow: the line stands as it is.
  const edges = time.work.states.parts.length === 0 ? [] : driven.edges;
  const { stretches, unsolved } = followEdges(time.work, driven.before, edges, fromSeconds, toSeconds);
  return {
    driven,
    fromSeconds,
    toSeconds,
    stretches,
    transient: transientOf(time.compiled, stretches),
    inputs: time.probes.map((probe) => crossingsOf(time.compiled, stretches, probe)),
    unsolved,
  };
}

/** What the LED of an input carries at rest and while a 0 lasts, amperes; 0 in a state that has no solution. */
export function restAmperes(time: TimeLink, input: number): LedAmperes {
  const known = REST_AMPERES.get(time) ?? [];
  REST_AMPERES.set(time, known);
  return (known[input] ??= solveRestAmperes(time, input));
}

/** Solved once a link: a message of many hops asks for each of them. */
const REST_AMPERES = new WeakMap<TimeLink, LedAmperes[]>();

function solveRestAmperes(time: TimeLink, input: number): LedAmperes {
  const probe = time.probes[input];
  if (probe?.kind !== 'current') throw new Error(`link: input ${input} has no LED`);
  const { compiled, work } = time;
  const at = (level: boolean): number => {
    const values = work.states.values(level);
    work.states.parts.forEach((part, index) => setValueAt(compiled, part, values[index] as number));
    return settle(compiled) ? 0 : compiled.junctions[probe.junction]!.amperes;
  };
  const both = [at(false), at(true)];
  return { dark: Math.min(...both), bright: Math.max(...both) };
}

/** The stage of a chain that a link is: takes the driven line, gives the line at input number `input`. */
export function stageOf(time: TimeLink, input = 0): LinkStage {
  return (driven) => driveLine(time, driven).inputs[input] as Waveform;
}

/**
 * When an input turns on and off. With hysteresis: on from `on`, off below `off` (a level the other way up); between the two it
 * stays as it was, and is off at first. An LED counts by the current that crosses its junction, which makes the light.
 */
function crossingsOf(compiled: CompiledCircuit, stretches: readonly Stretch[], probe: Probe): Waveform {
  const read = readerOf(compiled, probe);
  const sign = probe.kind === 'current' ? 1 : -1;
  const on = sign * probe.on;
  const off = sign * probe.off;
  const first = stretches[0];
  let lit = first !== undefined && sign * read(first.run, 0) >= on;
  const before = !lit;
  const edges: Edge[] = [];
  for (const { fromSeconds, toSeconds, run } of stretches) {
    const end = (toSeconds - fromSeconds) / run.unitSeconds;
    for (let row = 1; row < run.count; row++) {
      const from = run.times[row - 1] as number;
      if (from >= end) break;
      const value = sign * read(run, row);
      if (lit ? value >= off : value < on) continue;
      const level = lit ? off : on;
      const to = run.times[row] as number;
      const time = crossTime(run, row, (one) => sign * read(run, one) - level);
      if (time > end) break;
      lit = !lit;
      edges.push({
        seconds: fromSeconds + Math.min(to, Math.max(from, time)) * run.unitSeconds,
        level: !lit,
      });
    }
  }
  return { before, edges };
}

function readerOf(compiled: CompiledCircuit, probe: Probe): (run: Trajectory, row: number) => number {
  if (probe.kind === 'level')
    return (run, row) => voltsIn(run, row, probe.node) - voltsIn(run, row, probe.ground);
  const junction = compiled.junctions[probe.junction]!;
  const law = { amperes: 0, siemens: 0 };
  return ({ rows, width, moving }, row) => {
    junctionLaw(junction, rows[row * width + moving + probe.junction]!, law);
    return law.amperes;
  };
}

/** Halvings of the stretch between two rows: a nanosecond of it or less. */
const HALVINGS = 20;

/** Where a quantity passes zero between two rows, units: on the parabola through them and one more. */
function crossTime(run: Trajectory, row: number, gap: (row: number) => number): number {
  const first = Math.max(0, Math.min(row - 2, run.count - 3));
  const blend = makeBlend();
  const one = gap(first);
  const two = first + 1 < run.count ? gap(first + 1) : 0;
  const three = first + 2 < run.count ? gap(first + 2) : 0;
  let low = run.times[row - 1] as number;
  let high = run.times[row] as number;
  const rising = gap(row) >= 0;
  for (let step = 0; step < HALVINGS; step++) {
    const middle = (low + high) / 2;
    setBlend(run, first, middle, blend);
    const value = blend.weights[0]! * one + blend.weights[1]! * two + blend.weights[2]! * three;
    if (value >= 0 === rising) high = middle;
    else low = middle;
  }
  return high;
}
