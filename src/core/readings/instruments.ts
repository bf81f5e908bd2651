/** The instruments a reader holds: what each puts on its two probes, and what it shows. */
import type { Circuit, Element } from '../circuit/index.ts';
import type { Status } from '../wiring/index.ts';

/** What the dial of a meter can be set to; the plain-LED tester, an instrument of its own; and volts with a resistor across the probes. */
export const METER_FUNCTIONS = ['volts', 'ohms', 'diode', 'continuity', 'led', 'loaded'] as const;

/** What an instrument is set to for one reading. */
export type MeterFunction = (typeof METER_FUNCTIONS)[number];

/** Meters to choose from, the usual one first. */
export const METER_PROFILES = ['usual', 'low-diode', 'pocket'] as const;

/** The name of a meter to choose. */
export type MeterProfileName = (typeof METER_PROFILES)[number];

/** A meter as a circuit: SI units. */
export interface MeterProfile {
  readonly name: MeterProfileName;
  readonly label: string;
  /** Input resistance on DC volts. */
  readonly voltsOhms: number;
  /** Constant current of the diode test, and the most volts behind it. */
  readonly diodeAmperes: number;
  readonly diodeVolts: number;
  /** Open voltage of the resistance range, the resistor behind it, and the most it shows before overload. */
  readonly ohmsVolts: number;
  readonly ohmsBehind: number;
  readonly ohmsMost: number;
  /** Beeps below this. */
  readonly beepOhms: number;
  readonly status: Status;
  readonly source: string;
}

const USUAL: MeterProfile = {
  name: 'usual',
  label: 'usual meter: diode test up to 3 V',
  voltsOhms: 10e6,
  diodeAmperes: 1e-3,
  diodeVolts: 3,
  ohmsVolts: 0.5,
  ohmsBehind: 1e3,
  ohmsMost: 20e6,
  beepOhms: 50,
  status: 'c',
  source: 'six meter manuals: 0.5 to 1.5 mA, 1.5 to 3.2 V; continuity under 50 ohm',
};

const PROFILES: Readonly<Record<MeterProfileName, MeterProfile>> = {
  usual: USUAL,
  'low-diode': {
    ...USUAL,
    name: 'low-diode',
    label: 'meter whose diode test ends at 1.5 V',
    diodeVolts: 1.5,
  },
  pocket: {
    ...USUAL,
    name: 'pocket',
    label: 'pocket meter: 1 Mohm on volts, half a milliampere on diodes',
    voltsOhms: 1e6,
    diodeAmperes: 0.5e-3,
    diodeVolts: 2.5,
    ohmsMost: 2e6,
    status: 'P',
    source: 'our choice inside what six meter manuals say',
  },
};

/** A meter by name. */
export function meterProfile(name: MeterProfileName): MeterProfile {
  return PROFILES[name];
}

/** Beside the constant current of the diode test, ohms: a meter's own input, so that an open circuit has a voltage. */
const DIODE_INPUT_OHMS = 10e6;

/**
 * The resistor that is held across the probes, ohms (our choice): from 5 V it takes the 5 mA that the loop is made for, so that an
 * output keeps most of its voltage and a contact with a pull-up loses most of it.
 */
const LOAD_OHMS = 1e3;

/**
 * The plain-LED tester (common practice): a red LED with a resistor, and the mean current over a fifth of a second from which an eye
 * sees it faintly in a lit room, and plainly. Worked out, not measured: a light of 0.01 mcd is just seen at half a metre by 100 cd/m2
 * (from memory of the IALA's rule), an ordinary red LED gives 10 mcd at 10 mA (Vishay TLHR5400), and thirty times that is plain. The
 * dullest of its kind needs six times as much, a bright one a tenth.
 */
export const LED_TESTER = {
  saturationAmperes: 1e-18,
  emission: 1.93,
  seriesOhms: 3,
  resistorOhms: 220,
  seenAmperes: 10e-6,
  plainAmperes: 0.3e-3,
} as const;

/** Nodes that an instrument adds. */
const CELL = 'meter cell';
const MID = 'meter middle';

/** Names of the parts that an instrument adds, by which its reading finds them in a solved circuit. */
export const METER_PARTS = { resistor: 'meter resistor', source: 'meter source', led: 'meter LED' } as const;

/**
 * The parts of an instrument whose red probe is at `red` and whose black probe is at `black`.
 * The diode test is a constant current; that it ends at a voltage is minded when the reading is taken.
 */
function instrumentParts(
  meter: MeterFunction,
  profile: MeterProfile,
  red: string,
  black: string,
): readonly Element[] {
  const resistor = (a: string, b: string, ohms: number): Element => ({
    kind: 'resistor',
    name: METER_PARTS.resistor,
    a,
    b,
    ohms,
  });
  switch (meter) {
    case 'volts':
      return [resistor(red, black, profile.voltsOhms)];
    case 'loaded':
      return [resistor(red, black, 1 / (1 / LOAD_OHMS + 1 / profile.voltsOhms))];
    case 'ohms':
    case 'continuity':
      return [
        {
          kind: 'voltage',
          name: METER_PARTS.source,
          plus: CELL,
          minus: black,
          volts: profile.ohmsVolts,
        },
        resistor(CELL, red, profile.ohmsBehind),
      ];
    case 'diode':
      return [
        {
          kind: 'current',
          name: METER_PARTS.source,
          from: black,
          to: red,
          amperes: profile.diodeAmperes,
        },
        resistor(red, black, DIODE_INPUT_OHMS),
      ];
    case 'led': {
      const { saturationAmperes, emission, seriesOhms, resistorOhms } = LED_TESTER;
      return [
        resistor(red, MID, resistorOhms),
        {
          kind: 'diode',
          name: METER_PARTS.led,
          anode: MID,
          cathode: black,
          saturationAmperes,
          emission,
          seriesOhms,
        },
      ];
    }
  }
}

/** A circuit with an instrument on two of its nodes; the black probe is 0 V. @throws when both probes share a node. */
export function attach(
  elements: readonly Element[],
  meter: MeterFunction,
  profile: MeterProfile,
  red: string,
  black: string,
): Circuit {
  if (red === black) throw new Error(`meter: the probes must be on two contacts, got both on '${red}'`);
  return { ground: black, elements: [...elements, ...instrumentParts(meter, profile, red, black)] };
}
