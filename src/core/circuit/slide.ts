/** Parts whose values slide from one breakpoint of a drive to the next. */
import { setValueAt } from './compile.ts';
import type { CompiledCircuit } from './compiled.ts';

/** Parts whose value changes evenly over a unit of a trajectory; each list has one entry a part. */
export interface Slide {
  readonly parts: readonly number[];
  readonly from: readonly number[];
  readonly to: readonly number[];
}

/** A switch that moves stays this far from both its ends, so that its ends are moments only. */
const SWITCH_MARGIN = 1e-9;

/** A slide of some parts between values: a switch keeps off its ends. */
export function slideOf(
  { circuit }: CompiledCircuit,
  parts: readonly number[],
  from: readonly number[],
  to: readonly number[],
): Slide {
  const moving = (value: number, at: number): number =>
    circuit.elements[parts[at]!]!.kind === 'switch'
      ? Math.min(1 - SWITCH_MARGIN, Math.max(SWITCH_MARGIN, value))
      : value;
  return { parts, from: from.map(moving), to: to.map(moving) };
}

/** Set the parts of a slide to where they stand at a time, units. */
export function setSlide(compiled: CompiledCircuit, { parts, from, to }: Slide, time: number): void {
  for (let at = 0; at < parts.length; at++)
    setValueAt(compiled, parts[at]!, from[at]! + (to[at]! - from[at]!) * time);
}
