/** One reading of a circuit: attach the instrument, solve, take the mean over idle and active, show. */
import { compileCircuit, junctionNumber, nodeNumber, setValue, settle } from '../circuit/index.ts';
import type { CompiledCircuit, Element } from '../circuit/index.ts';
import type { LinkPart, State, Switching } from '../wiring/index.ts';
import { shareOf } from './clock.ts';
import { METER_PARTS, attach } from './instruments.ts';
import type { MeterFunction, MeterProfile } from './instruments.ts';
import { powerOff } from './power.ts';
import type { Power } from './power.ts';
import { shown } from './reading.ts';
import type { Reading } from './reading.ts';

/** Something to be measured: its parts, and how its output stage switches (no entry where there is none). */
export interface Subject {
  readonly parts: readonly LinkPart[];
  readonly switching: Switching;
}

/** Where and how a reading is taken; `red` and `black` are nodes of the subject. */
export interface Placement {
  readonly meter: MeterFunction;
  readonly power: Power;
  readonly red: string;
  readonly black: string;
}

/** A placement compiled for solving again and again with other values. */
export interface Bench {
  readonly compiled: CompiledCircuit;
  readonly switching: Switching;
  readonly placement: Placement;
  readonly profile: MeterProfile;
}

/** Put an instrument on a subject. `through`: ohms of the lead between a jack's contact and each probe; 0 for none. */
export function setUp(subject: Subject, placement: Placement, profile: MeterProfile, through = 0): Bench {
  const off = placement.power === 'off';
  const elements: Element[] = (off ? powerOff(subject.parts) : subject.parts).map(({ element }) => element);
  let { red, black } = placement;
  if (through > 0 && red !== black) {
    const lead = (name: string, a: string): string => {
      elements.push({ kind: 'resistor', name, a, b: name, ohms: through });
      return name;
    };
    red = lead('red lead', red);
    black = lead('black lead', black);
  }
  return {
    compiled: compileCircuit(attach(elements, placement.meter, profile, red, black)),
    switching: off ? { idle: [], active: [] } : subject.switching,
    placement: { ...placement, red, black },
    profile,
  };
}

/** What the instrument measures: volts, ohms, or mean amperes of the tester's LED. @throws when a state has no solution. */
export function measure(bench: Bench): number {
  const idle = inState(bench, 'idle');
  const share = shareOf(bench.placement.power);
  if (share === 0 || bench.switching.active.length === 0) return convert(bench, idle);
  return convert(bench, (1 - share) * idle + share * inState(bench, 'active'));
}

/** The reading that the instrument shows. */
export function takeReading(bench: Bench): Reading {
  return shown({ meter: bench.placement.meter, value: measure(bench) }, bench.profile);
}

/** Volts at the probes, or amperes of the tester, in one state. */
function inState({ compiled, switching, placement, profile }: Bench, state: State): number {
  for (const [name, position] of switching[state]) setValue(compiled, name, position);
  const failed = settle(compiled);
  if (failed)
    throw new Error(
      `meter: ${placement.meter} from '${placement.red}' to '${placement.black}': ${failed.reason}`,
    );
  if (placement.meter === 'led')
    return compiled.junctions[junctionNumber(compiled, METER_PARTS.led)]!.amperes;
  const volts = compiled.volts[nodeNumber(compiled, placement.red)]!;
  // A constant current that would need more volts than the meter has: overload, however short the state.
  return placement.meter === 'diode' && volts > profile.diodeVolts ? Infinity : volts;
}

/** Volts at the probes to what the dial asks for: ohms are volts over the amperes that leave the meter. */
function convert({ placement, profile }: Bench, value: number): number {
  if (placement.meter !== 'ohms' && placement.meter !== 'continuity') return value;
  const amperes = (profile.ohmsVolts - value) / profile.ohmsBehind;
  return amperes > 0 ? value / amperes : Infinity;
}
