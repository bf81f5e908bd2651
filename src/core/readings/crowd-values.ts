/**
 * Between what bounds the values of the devices of a crowd lie. Makers do not agree on them, so they spread over decades; clamp and
 * protection diodes are left out now and then. Every range is common practice without a source.
 */
import { styleEntry } from '../wiring/index.ts';
import type { LinkPart } from '../wiring/index.ts';
import type { JackUnderTest } from './subjects.ts';

/** Resistors of an output's two lines, and a supply rail to ground with the power off, ohms. */
const LINE_OHMS = [4.7, 700] as const;
const DEAD_RAIL_OHMS = [100, 2e6] as const;

/** Resistor of an output that gives a level, ohms: builders put up to a kilohm there, and more now and then. */
const LEVEL_OHMS = [15, 1500] as const;

/** Pull-ups, ohms: a switch that pulls the contact to ground draws the whole supply through them, so few are smaller. */
const PULL_UP_OHMS = [470, 1e6] as const;

/** Feed of an expression pedal of some ten kilohms, and what its wiper meets, which must not bend its travel, ohms. */
const FEED_OHMS = [30, 5e3] as const;
const WIPER_OHMS = [5e3, 5e6] as const;

/** The resistor behind a control voltage, ohms: with 2.2 kohm an input of 100 kohm already gets 2 % too little. */
const CONTROL_OHMS = [50, 2200] as const;

/** Factors by which an input's series resistor, and any other resistor that is in no loop, may be off the usual one. */
const SERIES_FACTOR = 2.2;
const OTHER_FACTOR = 100;

/** Between a contact that has a supply and the gate that reads it, ohms. */
export const GATE_OHMS = [3, 20e3] as const;

/** How the name of such a resistor ends. */
export const GATE = ' gate';

/** How the clamp from an output stage to its rail is called, with the power on and with it off. */
const RAIL_CLAMPS: readonly string[] = ['stage clamp to rail', 'out clamp to rail'];

/** Supplies of what is no 5 V loop, volts; the share by which any supply may be off. */
const SUPPLIES = [3.3, 5] as const;
const OTHER_SUPPLIES = [3.3, 5, 3.3, 5, 9] as const;
const SUPPLY_OFF = 0.07;

/** A control-voltage output rests at nothing half of the time, and else anywhere here, volts. */
const CONTROL_VOLTS = [-6, 11] as const;

/** Factors on saturation currents: an LED by 0.2 V either way; a silicon diode of 0.48 to 0.7 V at 1 mA, or, but in a bridge, a Schottky one of 0.17 to 0.38 V. */
const LED_FACTORS = [1 / 60, 60] as const;
const SILICON_FACTORS = [0.1, 10] as const;
const SCHOTTKY_FACTORS = [100, 1e4] as const;
const SCHOTTKY_SHARE = 0.1;

/** Shares of diodes that are not there, and the saturation current that stands for that, amperes. */
const ABSENT = { clamp: 0.35, protection: 0.1 } as const;
const ABSENT_AMPERES = 1e-30;

/** A value from a share of 0 to 1. */
type Draw = (share: number) => number;

/** How a part is drawn from a share of 0 to 1; undefined for what does not vary. */
export function drawOf(under: JackUnderTest, { element, role }: LinkPart): Draw | undefined {
  if (element.kind === 'resistor') {
    const range = element.name.endsWith(GATE) ? GATE_OHMS : ohmsOf(under, role, element.ohms);
    return range && decades(...range);
  }
  if (element.kind === 'voltage') return voltsOf(under, element.volts);
  if (element.kind !== 'diode') return undefined;
  const usual = element.saturationAmperes;
  const led = decades(...LED_FACTORS);
  if (role === 'led') return (share) => usual * led(share);
  const absent = role === 'clamp' || role === 'protection' ? ABSENT[role] : 0;
  const rest = role === 'bridge-diode' ? 0 : SCHOTTKY_SHARE;
  const [silicon, schottky] = [decades(...SILICON_FACTORS), decades(...SCHOTTKY_FACTORS)];
  return (share) => {
    if (share < absent) return ABSENT_AMPERES;
    const left = (share - absent) / (1 - absent);
    return left < rest ? usual * schottky(left / rest) : usual * silicon((left - rest) / (1 - rest));
  };
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
    'input-resistor':
      under.kind === 'other' && under.other.startsWith('expression')
        ? WIPER_OHMS
        : around(usual, OTHER_FACTOR),
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

/** What is alike in one device: two pull-ups, the clamps of a gate. A stage that only pulls low has no clamp to its rail. */
export function placeOf({ role, element }: LinkPart): string {
  return RAIL_CLAMPS.includes(element.name) ? 'rail-clamp' : role;
}

/** Draws evenly by decades between two values. */
export function decades(least: number, most: number): Draw {
  return (share) => least * (most / least) ** share;
}
