/** A link made ready to be followed in time. */
import {
  STEP_TOLERANCE,
  compileCircuit,
  edgeWork,
  elementNumber,
  junctionNumber,
  nodeNumber,
  setValue,
} from '../circuit/index.ts';
import type { CompiledCircuit, EdgeWork, StepTolerance, TwoStates } from '../circuit/index.ts';
import { DEFAULT_TIMING, linkCircuit, spreadName } from '../wiring/index.ts';
import type { Grounding, Link, LinkCircuit, Timing } from '../wiring/index.ts';

/** How to look at a link; everything may be left out. */
interface TimeLinkOptions {
  readonly grounding?: Grounding;
  readonly timing?: Partial<Timing>;
  /** End of its range at which each tolerance sits, by `spreadName`; nominal where not named. */
  readonly corner?: Readonly<Record<string, 'low' | 'high' | 'nominal'>>;
  readonly tolerance?: StepTolerance;
  /** False solves every edge afresh. */
  readonly reuse?: boolean;
}

/** Where an input is read in the compiled circuit: its LED's junction, or two nodes. */
export type Probe =
  | { readonly kind: 'current'; readonly junction: number; readonly on: number; readonly off: number }
  | {
      readonly kind: 'level';
      readonly node: number;
      readonly ground: number;
      readonly on: number;
      readonly off: number;
    };

/** A link ready for any number of signals. */
export interface TimeLink {
  readonly link: Link;
  readonly grounding: Grounding;
  readonly timing: Timing;
  readonly model: LinkCircuit;
  readonly compiled: CompiledCircuit;
  readonly work: EdgeWork;
  /** One an input: on from `on` and off below `off`, amperes; for a level, on below `on` and off above `off`, volts. */
  readonly probes: readonly Probe[];
}

/** Build and compile a link in time. @throws when it has no input. */
export function prepareTimeLink(link: Link, options: TimeLinkOptions = {}): TimeLink {
  if (link.branches.length === 0) throw new Error('link: needs at least one input, got none');
  const { grounding = 'separate', corner = {}, tolerance = STEP_TOLERANCE, reuse = true } = options;
  const timing = { ...DEFAULT_TIMING, ...options.timing };
  const model = linkCircuit(link, grounding, timing);
  const compiled = compileCircuit(model.circuit);
  const shifted = new Map<string, number>();
  for (const spread of model.spreads) {
    const place = corner[spreadName(model.spreads, spread)] ?? 'nominal';
    spread.parts.forEach((part, at) => {
      const value = spread[place][at] as number;
      shifted.set(part, value);
      setValue(compiled, part, value);
    });
  }
  return {
    link,
    grounding,
    timing,
    model,
    compiled,
    work: edgeWork(compiled, statesOf(model, compiled, timing, shifted), tolerance, reuse),
    probes: model.senses.map((sense): Probe => {
      if (sense.kind === 'current') {
        const junction = junctionNumber(compiled, sense.led);
        return { kind: 'current', junction, on: sense.onAmperes, off: sense.letGoAmperes };
      }
      return {
        kind: 'level',
        node: nodeNumber(compiled, sense.node),
        ground: nodeNumber(compiled, sense.ground),
        on: sense.lowVolts,
        off: sense.highVolts,
      };
    }),
  };
}

function statesOf(
  { switching }: LinkCircuit,
  compiled: CompiledCircuit,
  { riseSeconds, fallSeconds }: Timing,
  shifted: ReadonlyMap<string, number>,
): TwoStates {
  // A stage that drives high follows its supply to wherever the tolerances put it.
  const idle = switching.idle.map(([part, value]) => shifted.get(part) ?? value);
  const active = switching.active.map(([, value]) => value);
  return {
    parts: switching.idle.map(([part]) => elementNumber(compiled, part)),
    values: (level) => (level ? idle : active),
    riseSeconds,
    fallSeconds,
  };
}
