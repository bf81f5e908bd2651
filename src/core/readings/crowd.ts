/**
 * The devices that a kind of jack stands for: its circuit many times over, each with values of its own. What a reading tells is how
 * many of them would show it, and no single value decides.
 */
import { elementNumber, setValueAt } from '../circuit/index.ts';
import type { LinkPart } from '../wiring/index.ts';
import { GATE, GATE_OHMS, decades, drawOf, placeOf } from './crowd-values.ts';
import { METER_PARTS } from './instruments.ts';
import type { MeterProfile } from './instruments.ts';
import { measure, setUp } from './measure.ts';
import type { Bench } from './measure.ts';
import { clamp, powerOff } from './power.ts';
import { isVolts, onScale } from './scale.ts';
import type { ScaledFunction } from './scale.ts';
import { PROBE_LEAD_OHMS, jackSubject } from './subjects.ts';
import type { JackReading, JackSubject, JackUnderTest } from './subjects.ts';

/** Devices in a crowd: with fewer, some readings that can be are shown by none of them (a third as many name two jacks in a hundred less). */
export const CROWD = 1024;

/** Volts and ohms behind the resistance range of meters, and the factor by which the current of a diode test differs. */
const OHMS_VOLTS = [0.25, 0.9] as const;
const OHMS_BEHIND = [400, 4e3] as const;
const TEST_FACTOR = 1.6;

/** What a device of a crowd would show, on the scale of the function. */
type CrowdPoint = (device: number) => number;

const KEPT = new WeakMap<JackUnderTest, Map<string, CrowdPoint>>();

/** What each device of a crowd would show. Solved when asked for and kept: it depends on nothing that a reader enters. */
export function crowdPoints(under: JackUnderTest, at: JackReading, profile: MeterProfile): CrowdPoint {
  const { voltsOhms, diodeAmperes } = profile;
  const own = isVolts(at.meter) ? voltsOhms : at.meter === 'diode' ? diodeAmperes : 0;
  const key = [at.meter, at.power, at.red, at.black, own].join();
  const kept = KEPT.get(under) ?? new Map<string, CrowdPoint>();
  KEPT.set(under, kept);
  const points = kept.get(key) ?? crowdOf(under, at, profile);
  kept.set(key, points);
  return points;
}

function crowdOf(under: JackUnderTest, at: JackReading, profile: MeterProfile): CrowdPoint {
  const subject = clampedSubject(under);
  const placement = { ...at, red: subject.node(at.red), black: subject.node(at.black) };
  // Where a meter's diode test ends differs from one to the next, so it is let run on past its end.
  const bench = setUp(subject, placement, { ...profile, diodeVolts: Infinity }, PROBE_LEAD_OHMS);
  const off = powerOff(subject.parts);
  const places = [...new Set([...subject.parts, ...off].map(placeOf))];
  const drawn = (at.power === 'off' ? off : subject.parts).flatMap((part) => {
    const draw = drawOf(under, part);
    const number = elementNumber(bench.compiled, part.element.name);
    return draw ? [{ draw, place: places.indexOf(placeOf(part)), number }] : [];
  });
  const points = new Float64Array(CROWD).fill(NaN);
  return (device) => {
    const known = points[device]!;
    if (!Number.isNaN(known)) return known;
    for (const { draw, place, number } of drawn)
      setValueAt(bench.compiled, number, draw(evenly(device, place)));
    const meter = meterOf(bench, device, places.length);
    return (points[device] = onScale(at.meter as ScaledFunction, measure({ ...bench, profile: meter })));
  };
}

/** The reader's own meter: what it puts on its probes differs from one to the next, and so does a diode under its ohms. */
function meterOf({ compiled, profile, placement }: Bench, device: number, place: number): MeterProfile {
  const [first, second] = [evenly(device, place), evenly(device, place + 1)];
  const ohmsVolts = decades(...OHMS_VOLTS)(first);
  const ohmsBehind = decades(...OHMS_BEHIND)(second);
  const diodeAmperes = profile.diodeAmperes * decades(1 / TEST_FACTOR, TEST_FACTOR)(first);
  const set = (name: string, value: number): void =>
    setValueAt(compiled, elementNumber(compiled, name), value);
  if (placement.meter === 'diode') set(METER_PARTS.source, diodeAmperes);
  if (placement.meter === 'ohms') {
    set(METER_PARTS.source, ohmsVolts);
    set(METER_PARTS.resistor, ohmsBehind);
  }
  return { ...profile, ohmsVolts, ohmsBehind, diodeAmperes };
}

/** A jack of another use with what mostly stands behind a contact that has a supply: a resistor, then clamp diodes. */
function clampedSubject(under: JackUnderTest): JackSubject {
  const subject = jackSubject(under);
  const rail = subject.parts.find(({ role }) => role === 'supply')?.element;
  if (rail?.kind !== 'voltage') return subject;
  const { plus, minus } = rail;
  const stage = subject.parts.find(({ role }) => role === 'stage-low')?.element;
  if (stage?.kind === 'switch') {
    const clamps = [
      clamp('stage clamp to rail', stage.a, plus),
      clamp('stage clamp to ground', minus, stage.a),
    ];
    return { ...subject, parts: [...subject.parts, ...clamps] };
  }
  if (under.kind === 'control') return subject;
  // The amplifier of a control-voltage output is its own supply here.
  if (under.other === 'control-voltage')
    return {
      ...subject,
      parts: [...subject.parts, { ...clamp('amplifier clamp', minus, plus), role: 'bridge-diode' as const }],
    };
  const behind = subject.parts.flatMap(({ element, ...part }): LinkPart[] => {
    if (element.kind !== 'resistor' || (part.role !== 'pull-up' && part.role !== 'input-resistor')) return [];
    const { name, a } = element;
    const gate = `${name}${GATE}`;
    return [
      {
        ...part,
        role: 'stage-resistor',
        element: { kind: 'resistor', name: gate, a, b: gate, ohms: GATE_OHMS[0] },
      },
      clamp(`${gate} clamp to rail`, gate, plus),
      clamp(`${gate} clamp to ground`, minus, gate),
    ];
  });
  return { ...subject, parts: [...subject.parts, ...behind] };
}

const PRIMES = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37] as const;

/** Shares that fill a box evenly, one dimension a part (Halton, 1960: digits of the number turned round, in a prime base each). */
function evenly(device: number, place: number): number {
  const base = PRIMES[place % PRIMES.length]!;
  let [share, digit] = [0, 1 / base];
  for (let left = device + 1; left > 0; left = Math.floor(left / base), digit /= base)
    share += digit * (left % base);
  return share;
}
