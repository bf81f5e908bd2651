/**
 * The devices that a kind of jack stands for: its circuit many times over, each with values of its own. Makers do not agree on
 * them, so they spread over decades; clamp and protection diodes are left out now and then. Every range is common practice
 * without a source. What a reading tells is how many of them would show it, and no single value decides.
 */
import { elementNumber, setValueAt } from '../circuit/index.ts';
import { styleEntry } from '../wiring/index.ts';
import type { LinkPart } from '../wiring/index.ts';
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

/** Resistors of an output's two lines, and a supply rail to ground with the power off, ohms. */
const LINE_OHMS = [4.7, 700] as const;
const DEAD_RAIL_OHMS = [100, 2e6] as const;

/** Resistor of an output that gives a level, ohms: builders put up to a kilohm there, and more now and then. */
const LEVEL_OHMS = [15, 1500] as const;

/** Pull-ups, ohms: a switch that pulls the contact to ground draws the whole supply through them, so few are smaller. */
const PULL_UP_OHMS = [470, 1e6] as const;

/** Feed of an expression pedal of some ten kilohms, and the resistor behind a control voltage, ohms. */
const FEED_OHMS = [30, 5e3] as const;
const CONTROL_OHMS = [50, 10e3] as const;

/** Factors by which an input's series resistor, and any resistor that is in no loop, may be off the usual one. */
const SERIES_FACTOR = 2.2;
const OTHER_FACTOR = 100;

/** Between a contact that has a supply and the gate that reads it, ohms. */
const GATE_OHMS = [3, 20e3] as const;
const GATE = ' gate';

/** Supplies of what is no 5 V loop, volts; the share by which any supply may be off. */
const SUPPLIES = [3.3, 5] as const;
const OTHER_SUPPLIES = [3.3, 5, 3.3, 5, 9] as const;
const SUPPLY_OFF = 0.07;

/** A control-voltage output rests at nothing half of the time, and else anywhere here, volts. */
const CONTROL_VOLTS = [-6, 11] as const;

/** Factors on saturation currents: an LED by 0.2 V either way; a diode from 0.7 V down to the 0.2 V of a Schottky one. */
const LED_FACTORS = [1 / 60, 60] as const;
const DIODE_FACTORS = [0.1, 1e3] as const;

/** Shares of diodes that are not there, and the saturation current that stands for that, amperes. */
const ABSENT = { clamp: 0.35, protection: 0.1 } as const;
const ABSENT_AMPERES = 1e-30;

/** Volts and ohms behind the resistance range of meters, and the factor by which the current of a diode test differs. */
const OHMS_VOLTS = [0.25, 0.9] as const;
const OHMS_BEHIND = [400, 4e3] as const;
const TEST_FACTOR = 1.6;

type Draw = (share: number) => number;

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
  // Parts of one role are alike in one device: two pull-ups, two clamps.
  const places = [...new Set([...subject.parts, ...off].map(({ role }) => role))];
  const drawn = (at.power === 'off' ? off : subject.parts).flatMap((part) => {
    const draw = drawOf(under, part);
    const number = elementNumber(bench.compiled, part.element.name);
    return draw ? [{ draw, place: places.indexOf(part.role), number }] : [];
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

/** How a part is drawn from a share of 0 to 1; undefined for what does not vary. */
function drawOf(under: JackUnderTest, { element, role }: LinkPart): Draw | undefined {
  if (element.kind === 'resistor') {
    const range = element.name.endsWith(GATE) ? GATE_OHMS : ohmsOf(under, role, element.ohms);
    return range && decades(...range);
  }
  if (element.kind === 'voltage') return voltsOf(under, element.volts);
  if (element.kind !== 'diode') return undefined;
  const [least, most] = role === 'led' ? LED_FACTORS : DIODE_FACTORS;
  const absent = role === 'clamp' || role === 'protection' ? ABSENT[role] : 0;
  const there = decades(least * element.saturationAmperes, most * element.saturationAmperes);
  return (share) => (share < absent ? ABSENT_AMPERES : there((share - absent) / (1 - absent)));
}

type Range = readonly [least: number, most: number];

const around = (usual: number, factor: number): Range => [usual / factor, usual * factor];

/** From where to where a resistor of a role goes, beside its usual value, ohms; undefined for what does not vary. */
function ohmsOf(under: JackUnderTest, role: LinkPart['role'], usual: number): Range | undefined {
  const loop = under.kind === 'control' && styleEntry(under.jack.style).family === 'loop';
  const ranges: Partial<Record<LinkPart['role'], Range>> = {
    rail: DEAD_RAIL_OHMS,
    'source-resistor': loop ? LINE_OHMS : LEVEL_OHMS,
    'sink-resistor': loop ? LINE_OHMS : LEVEL_OHMS,
    'series-resistor': around(usual, SERIES_FACTOR),
    'pull-up': pullUpOf(under),
    'input-resistor': around(usual, OTHER_FACTOR),
  };
  return ranges[role];
}

function pullUpOf(under: JackUnderTest): Range {
  if (under.kind === 'control') return PULL_UP_OHMS;
  if (under.other === 'control-voltage') return CONTROL_OHMS;
  return under.other.startsWith('expression') ? FEED_OHMS : PULL_UP_OHMS;
}

function voltsOf(under: JackUnderTest, usual: number): Draw {
  if (under.kind === 'other' && under.other === 'control-voltage') {
    const [least, most] = CONTROL_VOLTS;
    return (share) => (share < 0.5 ? 0 : least + (most - least) * (2 * share - 1));
  }
  const loop = under.kind === 'control' && under.jack.circuit === 'driver-5v';
  const supplies = loop ? [usual] : under.kind === 'control' ? SUPPLIES : OTHER_SUPPLIES;
  return (share) => {
    const at = share * supplies.length;
    return supplies[Math.floor(at)]! * (1 + SUPPLY_OFF * (2 * (at % 1) - 1));
  };
}

function decades(least: number, most: number): Draw {
  return (share) => least * (most / least) ** share;
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
