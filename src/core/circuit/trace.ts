/** A solution in time to be read: any voltage and any current at any moment. */
import { GROUND, elementNumber } from './compile.ts';
import type { CompiledCircuit } from './compile.ts';
import { GMIN_SIEMENS, switchSiemens } from './elements.ts';
import type { Element } from './elements.ts';
import { junctionLaw } from './junction.ts';
import { nodeNumber } from './operating-point.ts';
import { blendAt, readBlend, readUnknown } from './blend.ts';
import type { Blend } from './blend.ts';
import type { Trajectory } from './trajectory.ts';

/** A stretch of time without a corner; `run` starts at its start and goes at least to its end. */
export interface Stretch {
  readonly fromSeconds: number;
  readonly toSeconds: number;
  readonly run: Trajectory;
  /** Values of the driven parts at both ends, by number of the part. */
  readonly driven: ReadonlyMap<number, readonly [number, number]>;
}

/** A solved stretch of time: volts against ground, amperes from a part's first node through it to its second. */
export interface Transient {
  readonly ok: true;
  readonly stretches: readonly Stretch[];
  /** Every moment solved, seconds, in order; a corner counts once. */
  moments(): readonly number[];
  volts(node: string, seconds: number): number;
  /** Current of a part; that of a diode includes the current of its charge. */
  amperes(element: string, seconds: number): number;
  /** Current that crosses a diode's junction, without that of its charge: what makes light in an LED. */
  crossing(diode: string, seconds: number): number;
}

/** The stretch that holds a moment; the earlier one at a corner. */
export function stretchAt(stretches: readonly Stretch[], seconds: number): Stretch {
  let low = 0;
  let high = stretches.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((stretches[middle] as Stretch).toSeconds >= seconds) high = middle;
    else low = middle + 1;
  }
  return stretches[low] as Stretch;
}

/** Stretches made ready to be read. Between steps a value is read from the parabola through the nearest rows. */
export function transientOf(compiled: CompiledCircuit, stretches: readonly Stretch[]): Transient {
  const values = compiled.values.slice();
  const blend: Blend = { first: 0, weights: [1, 0, 0] };
  const read = (at: number, column: (run: Trajectory) => number): number => {
    const { run, fromSeconds } = stretchAt(stretches, at);
    blendAt(run, at - fromSeconds, blend);
    return readBlend(run, blend, column(run));
  };
  const unknown = (number: number, at: number): number => {
    const { run, fromSeconds } = stretchAt(stretches, at);
    blendAt(run, at - fromSeconds, blend);
    return readUnknown(run, blend, number);
  };
  const nodeVolts = (node: number, at: number): number => (node === GROUND ? 0 : unknown(node, at));
  const across = (index: number, at: number): number =>
    nodeVolts(compiled.first[index] as number, at) - nodeVolts(compiled.second[index] as number, at);
  const valueAt = (index: number, at: number): number => {
    const { driven, fromSeconds, toSeconds } = stretchAt(stretches, at);
    const ends = driven.get(index);
    if (!ends) return values[index] as number;
    return ends[0] + ((ends[1] - ends[0]) * (at - fromSeconds)) / (toSeconds - fromSeconds);
  };
  const { junctions } = compiled;
  const law = { amperes: 0, siemens: 0 };
  return {
    ok: true,
    stretches,
    moments: () => momentsOf(stretches),
    volts: (node, at) => nodeVolts(nodeNumber(compiled, node), at),
    crossing: (name, at) => {
      const place = junctions.element.indexOf(elementNumber(compiled, name));
      if (place < 0) throw new Error(`circuit: '${name}' is no diode`);
      const volts = read(at, ({ still }) => still.moving + place);
      junctionLaw(volts, junctions.saturation[place] as number, junctions.slope[place] as number, law);
      return law.amperes + GMIN_SIEMENS * volts;
    },
    amperes: (name, at) => {
      const index = elementNumber(compiled, name);
      const element = compiled.circuit.elements[index] as Element;
      switch (element.kind) {
        case 'resistor':
          return across(index, at) / (values[index] as number);
        case 'switch':
          return across(index, at) * switchSiemens(valueAt(index, at));
        case 'current':
          return valueAt(index, at);
        case 'voltage':
          return unknown(compiled.branch[index] as number, at);
        case 'diode':
          return read(
            at,
            ({ still, junctions: count }) => still.moving + 2 * count + junctions.element.indexOf(index),
          );
        case 'capacitor': {
          const { fromSeconds, toSeconds } = stretchAt(stretches, at);
          // The parabola's own slope, taken across a millionth of the stretch.
          const width = (toSeconds - fromSeconds) * 1e-6;
          const low = Math.max(fromSeconds, at - width);
          const high = Math.min(toSeconds, at + width);
          return ((values[index] as number) * (across(index, high) - across(index, low))) / (high - low);
        }
      }
    },
  };
}

function momentsOf(stretches: readonly Stretch[]): readonly number[] {
  const moments: number[] = [];
  for (const { fromSeconds, toSeconds, run } of stretches) {
    for (let row = moments.length === 0 ? 0 : 1; row < run.count; row++) {
      const seconds = fromSeconds + (run.times[row] as number) * run.unitSeconds;
      if (seconds >= toSeconds) break;
      moments.push(seconds);
    }
    moments.push(toSeconds);
  }
  return moments;
}
