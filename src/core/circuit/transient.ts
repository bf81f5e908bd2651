/** A solution in time to be read: any voltage and any current at any moment. */
import { junctionNumber, nodeNumber } from './compiled.ts';
import type { CompiledCircuit } from './compiled.ts';
import { amperesThrough } from './currents.ts';
import { GMIN_SIEMENS } from './elements.ts';
import { blendAt, makeBlend, readBlend } from './interpolation.ts';
import { junctionLaw } from './junction.ts';
import type { Slide } from './slide.ts';
import { voltsIn } from './trajectory.ts';
import type { Trajectory } from './trajectory.ts';

/** A stretch of time without a breakpoint; `run` starts at its start and goes at least to its end. */
export interface Stretch {
  readonly fromSeconds: number;
  readonly toSeconds: number;
  readonly run: Trajectory;
  /** Values of the driven parts at both ends. */
  readonly driven: Slide;
}

/** A solved stretch of time: volts against ground, amperes from a part's first node through it to its second. */
export interface Transient {
  readonly ok: true;
  /** Every moment solved, seconds, in order; a breakpoint counts once. */
  moments(): readonly number[];
  volts(node: string, seconds: number): number;
  /** Current of a part; that of a diode includes the current of its charge. */
  amperes(element: string, seconds: number): number;
  /** Current that crosses a diode's junction, without that of its charge: what makes light in an LED. */
  crossing(diode: string, seconds: number): number;
}

/** The slope of what a capacitor is charged to is taken across this share of its stretch, on the parabola's own curve. */
const SLOPE_SHARE = 1e-6;

/** Stretches made ready to be read. Between steps a value is read from the parabola through the nearest rows. */
export function transientOf(compiled: CompiledCircuit, stretches: readonly Stretch[]): Transient {
  const values = compiled.values.slice();
  const { first, second, junctions } = compiled;
  const blend = makeBlend();
  const read = (at: number, valueIn: (run: Trajectory, row: number) => number): number => {
    const { run, fromSeconds } = stretchAt(stretches, at);
    blendAt(run, at - fromSeconds, blend);
    return readBlend(blend, (row) => valueIn(run, row));
  };
  const nodeVolts = (node: number, at: number): number => read(at, (run, row) => voltsIn(run, row, node));
  const across = (part: number, at: number): number =>
    nodeVolts(first[part]!, at) - nodeVolts(second[part]!, at);
  const law = { amperes: 0, siemens: 0 };
  return {
    ok: true,
    moments: () => momentsOf(stretches),
    volts: (node, at) => nodeVolts(nodeNumber(compiled, node), at),
    crossing: (name, at) => {
      const place = junctionNumber(compiled, name);
      const volts = read(at, ({ rows, width, moving }, row) => rows[row * width + moving + place]!);
      junctionLaw(junctions[place]!, volts, law);
      return law.amperes + GMIN_SIEMENS * volts;
    },
    amperes: (name, at) => {
      const { driven, fromSeconds, toSeconds } = stretchAt(stretches, at);
      return amperesThrough(compiled, name, {
        across: (part) => across(part, at),
        value: (part) => {
          const place = driven.parts.indexOf(part);
          if (place < 0) return values[part]!;
          const from = driven.from[place]!;
          return from + ((driven.to[place]! - from) * (at - fromSeconds)) / (toSeconds - fromSeconds);
        },
        junction: (place) =>
          read(
            at,
            ({ rows, width, moving }, row) => rows[row * width + moving + 2 * junctions.length + place]!,
          ),
        charging: (part) => {
          const reach = (toSeconds - fromSeconds) * SLOPE_SHARE;
          const low = Math.max(fromSeconds, at - reach);
          const high = Math.min(toSeconds, at + reach);
          return (values[part]! * (across(part, high) - across(part, low))) / (high - low);
        },
      });
    },
  };
}

/** The stretch that holds a moment; the earlier one at a breakpoint. */
function stretchAt(stretches: readonly Stretch[], seconds: number): Stretch {
  let low = 0;
  let high = stretches.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (stretches[middle]!.toSeconds >= seconds) high = middle;
    else low = middle + 1;
  }
  return stretches[low]!;
}

function momentsOf(stretches: readonly Stretch[]): readonly number[] {
  const moments: number[] = [];
  for (const { fromSeconds, toSeconds, run } of stretches) {
    for (let row = moments.length === 0 ? 0 : 1; row < run.count; row++) {
      const seconds = fromSeconds + run.times[row]! * run.unitSeconds;
      if (seconds >= toSeconds) break;
      moments.push(seconds);
    }
    moments.push(toSeconds);
  }
  return moments;
}
