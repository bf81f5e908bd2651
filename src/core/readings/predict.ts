/** What each candidate would read, how that moves with its tolerances, and from where on the meter shows overload. */
import { elementNumber, setValueAt } from '../circuit/index.ts';
import type { CompiledCircuit } from '../circuit/index.ts';
import type { Spread } from '../wiring/index.ts';
import { METER_PARTS } from './instruments.ts';
import type { MeterProfile } from './instruments.ts';
import { measure, setUp } from './measure.ts';
import type { Bench } from './measure.ts';
import { onScale } from './scale.ts';
import type { ScaledFunction } from './scale.ts';
import { PROBE_LEAD_OHMS, jackSubject } from './subjects.ts';
import type { JackReading, JackUnderTest } from './subjects.ts';

/** A reading before it is taken: where it would stand on its scale, and how far each tolerance moves it in one standard step. */
export interface Prediction {
  readonly meter: ScaledFunction;
  readonly point: number;
  readonly slopes: Readonly<Record<string, number>>;
  /** From here on the meter shows overload. */
  readonly limit: number;
}

/** Corners of a tolerance count as two standard steps: nineteen parts of twenty lie between them. */
const STEPS_TO_CORNER = 2;

/** Share by which a meter's test current may be off, one standard step (our choice). */
const METER_CURRENT_STEP = 0.05;

/** Standard step of a silicon diode's saturation current, a factor: two published cards of one part lie 25 mV apart. */
const DIODE_STEP = Math.exp(0.5);

/** Everything that may move a reading: the tolerances of the circuit, its diodes, and the meter's own current. */
function tolerancesOf(spreads: readonly Spread[], compiled: CompiledCircuit): readonly Spread[] {
  const diodes = compiled.circuit.elements.flatMap((element) =>
    element.kind === 'diode' && !element.name.endsWith('LED')
      ? [{ name: element.name, amperes: element.saturationAmperes }]
      : [],
  );
  const around = (
    name: string,
    parts: readonly string[],
    nominal: readonly number[],
    step: number,
  ): Spread => ({
    name,
    parts,
    nominal,
    low: nominal.map((value) => value / step ** STEPS_TO_CORNER),
    high: nominal.map((value) => value * step ** STEPS_TO_CORNER),
  });
  const source = compiled.circuit.elements.find(({ name }) => name === METER_PARTS.source);
  return [
    ...spreads,
    ...(diodes.length > 0
      ? [
          around(
            'diodes',
            diodes.map(({ name }) => name),
            diodes.map(({ amperes }) => amperes),
            DIODE_STEP,
          ),
        ]
      : []),
    ...(source?.kind === 'current'
      ? [around('meter current', [METER_PARTS.source], [source.amperes], 1 + METER_CURRENT_STEP)]
      : []),
  ];
}

/** Predict one reading of one candidate with one meter. */
export function predict(under: JackUnderTest, at: JackReading, profile: MeterProfile): Prediction {
  const meter = at.meter as ScaledFunction;
  const subject = jackSubject(under);
  // Overload is a matter of the limit below, so the diode test is let run on past it.
  const bench = setUp(
    subject,
    { ...at, red: subject.node(at.red), black: subject.node(at.black) },
    { ...profile, diodeVolts: Infinity },
    PROBE_LEAD_OHMS,
  );
  const point = onScale(meter, measure(bench));
  const slopes: Record<string, number> = {};
  for (const spread of tolerancesOf(subject.spreads, bench.compiled)) {
    const slope = slopeOf(bench, meter, spread);
    if (Math.abs(slope) > 1e-6) slopes[spread.name] = slope;
  }
  return { meter, point, slopes, limit: limitOf(meter, profile) };
}

/** Where a meter's overload begins, on the scale. */
function limitOf(meter: ScaledFunction, profile: MeterProfile): number {
  if (meter === 'volts') return Infinity;
  return meter === 'diode' ? profile.diodeVolts : onScale('ohms', profile.ohmsMost);
}

/** How far one standard step of a tolerance moves a reading; the bench is left at nominal. */
function slopeOf(bench: Bench, meter: ScaledFunction, spread: Spread): number {
  const { compiled } = bench;
  const numbers = spread.parts.map((part) => elementNumber(compiled, part));
  // With the power off the supply's place is taken by a resistor: its volts mean nothing there.
  if (
    numbers.some(
      (number, at) =>
        compiled.circuit.elements[number]?.kind === 'resistor' && spread.parts[at] === 'out supply',
    )
  )
    return 0;
  const set = (values: readonly number[]): void =>
    numbers.forEach((number, at) => setValueAt(compiled, number, values[at] as number));
  set(spread.low);
  const below = onScale(meter, measure(bench));
  set(spread.high);
  const above = onScale(meter, measure(bench));
  set(spread.nominal);
  return (above - below) / (2 * STEPS_TO_CORNER);
}
