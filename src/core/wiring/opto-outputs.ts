/** The output side of each optocoupler: how its transistor follows the light, or how long its logic takes. */
import type { Part } from './parts.ts';
import type { Status } from './styles.ts';

/**
 * A phototransistor as a charge that the light fills and the load drains. Fitted to data sheets with a factor of about 2 (fits and
 * outside checks: tests/core/signal/output-side.test.ts); the times of one sample may be off by as much.
 */
export interface TransistorModel {
  /** Current transfer ratio at `gainAmperes` of LED current, typical. */
  readonly gain: number;
  readonly gainAmperes: number;
  /** The ratio changes with the LED's current to this power; a falling one holds still below `gainAmperes`. */
  readonly gainPower: number;
  /** Least and greatest ratio that a part of this type may have, as shares of the typical one. */
  readonly gainRange: readonly [least: number, greatest: number];
  /** Time constant without a load. */
  readonly bareSeconds: number;
  /** What the load resistor adds to it: the collector's capacitance times the transistor's own gain. */
  readonly loadFarads: number;
  /** That gain falls with the current at which the load saturates, to this power (0: not at all). */
  readonly loadPower: number;
  /** Time constant of the charge beyond saturation, and the charge that takes the longer the less is left. */
  readonly storageSeconds: number;
  readonly tailCoulombs: number;
  /** Gain of the transistor whose base a resistor drains; undefined where the base has no pin. */
  readonly baseGain: number | undefined;
  /** Charge of the LED's light before anything happens, without and with a base resistor. */
  readonly wakeCoulombs: readonly [bare: number, drained: number];
  readonly saturationVolts: number;
}

/** An output with logic behind it: thresholds with hysteresis, and fixed delays. */
interface LogicModel {
  readonly toOnSeconds: number;
  readonly toOffSeconds: number;
  /** Surely off below this LED current, amperes. */
  readonly offAmperes: number;
  readonly offSource: string;
}

/** The output side of a part with the load it usually has. */
interface OutputModel {
  readonly kind: TransistorModel | LogicModel;
  readonly loadOhms: number;
  readonly loadStatus: Status;
  readonly loadSource: string;
  /** 0 for none. */
  readonly baseOhms: number;
  readonly status: Status;
  readonly source: string;
}

const FITTED = 'fitted to data sheets, typical; one part may be half or twice as quick';
const WORKS_AT_5_MA = 'worked out: pulls low and lets go in time at the 5 mA of the loop';

const DARLINGTON: TransistorModel = {
  gain: 13,
  gainAmperes: 1.6e-3,
  gainPower: -0.3,
  // 300 % at least (data sheet 83605, C), 2600 % at most (from memory).
  gainRange: [3 / 13, 2],
  bareSeconds: 0.3e-6,
  loadFarads: 0.9e-9,
  loadPower: 0,
  storageSeconds: 0.3e-6,
  tailCoulombs: 17.5e-9,
  baseGain: 120,
  wakeCoulombs: [2.2e-9, 15e-9],
  saturationVolts: 0.1,
};

const TRANSISTOR: TransistorModel = {
  gain: 0.9,
  gainAmperes: 10e-3,
  gainPower: 0.3,
  gainRange: [0.7, 1.4],
  bareSeconds: 0.6e-6,
  loadFarads: 5.8e-9,
  loadPower: 0.15,
  storageSeconds: 13e-6,
  tailCoulombs: 0,
  baseGain: 600,
  wakeCoulombs: [10e-9, 20e-9],
  saturationVolts: 0.25,
};

const transistor = (
  loadOhms: number,
  more: Partial<TransistorModel>,
  loadSource = WORKS_AT_5_MA,
): OutputModel => ({
  kind: { ...TRANSISTOR, ...more },
  loadOhms,
  loadStatus: 'D',
  loadSource,
  baseOhms: 0,
  status: 'D',
  source: FITTED,
});

const ENTRIES: Readonly<Record<Part, OutputModel>> = {
  '6N138': {
    kind: DARLINGTON,
    loadOhms: 2200,
    loadStatus: 'C',
    loadSource: 'the load of its switching test at 1.6 mA',
    baseOhms: 10e3,
    status: 'D',
    source: FITTED,
  },
  H11L1: {
    kind: { toOnSeconds: 1e-6, toOffSeconds: 1.2e-6, offAmperes: 0.3e-3, offSource: 'from memory' },
    loadOhms: 270,
    loadStatus: 'M',
    loadSource: 'from memory: the load of its switching test',
    baseOhms: 0,
    status: 'M',
    source: 'from memory: typical at 270 ohm and 5 V',
  },
  PC900V: {
    kind: { toOnSeconds: 1e-6, toOffSeconds: 2e-6, offAmperes: 0.4e-3, offSource: 'from memory' },
    loadOhms: 280,
    loadStatus: 'C',
    loadSource: 'MMA CA-033, fig. 2',
    baseOhms: 0,
    status: 'M',
    source: 'from memory: typical at 5 V, 4 mA and 280 ohm',
  },
  unknown: {
    kind: DARLINGTON,
    loadOhms: 820,
    loadStatus: 'P',
    loadSource: '470 ohm to 1 kohm are usual',
    baseOhms: 0,
    status: 'D',
    source: 'the slowest of the usual parts: a 6N138 with no base resistor',
  },
  '6N136': transistor(4700, {
    gain: 0.26,
    gainAmperes: 16e-3,
    gainPower: 0,
    // 19 % at least, 24 to 35 % typical (data sheet 83604, C); the greatest from memory.
    gainRange: [0.19 / 0.26, 2],
    bareSeconds: 0.1e-6,
    loadFarads: 0.25e-9,
    loadPower: 0,
    storageSeconds: 0.3e-6,
    baseGain: 150,
    wakeCoulombs: [1e-9, 3e-9],
    saturationVolts: 0.1,
  }),
  '6N137': {
    kind: { toOnSeconds: 75e-9, toOffSeconds: 75e-9, offAmperes: 0.25e-3, offSource: 'from memory' },
    loadOhms: 350,
    loadStatus: 'M',
    loadSource: 'from memory: the load of its switching test',
    baseOhms: 0,
    status: 'M',
    source: 'from memory: at most, at 350 ohm and 7.5 mA',
  },
  '4N35': transistor(1000, {
    gain: 1.54,
    gainAmperes: 5e-3,
    gainPower: 0.62,
    // 100 % at least at 10 mA (C), where the typical curve of an open library has 237 % (c); the greatest is our choice.
    gainRange: [1 / 2.37, 2],
    bareSeconds: 0.9e-6,
    loadFarads: 4.6e-9,
    storageSeconds: 12e-6,
    baseGain: 400,
    saturationVolts: 0.15,
  }),
  '4N25': transistor(1500, {
    gain: 0.7,
    // 20 % at least, 70 % typical at 10 mA (Motorola 4N25, C); the greatest is our choice.
    gainRange: [0.2 / 0.7, 2],
    storageSeconds: 12e-6,
    baseGain: 500,
    saturationVolts: 0.15,
  }),
  // Groups of the CNY17 at 10 mA: 40 to 80, 63 to 125, 100 to 200 % (Infineon CNY17, C).
  'CNY17-1': transistor(2200, {
    gain: 0.6,
    gainRange: [0.4 / 0.6, 0.8 / 0.6],
    loadFarads: 4.4e-9,
    storageSeconds: 7e-6,
    baseGain: 420,
  }),
  'CNY17-2': transistor(1000, { gain: 0.9, gainRange: [0.63 / 0.9, 1.25 / 0.9] }),
  'CNY17-3': transistor(1000, { gain: 1.5, gainRange: [1 / 1.5, 2 / 1.5], storageSeconds: 7.5e-6 }),
  PC817: transistor(1000, {
    gain: 1.3,
    gainAmperes: 5e-3,
    gainPower: 0.1,
    // 50 to 600 % at 5 mA (Sharp PC817, C).
    gainRange: [0.5 / 1.3, 6 / 1.3],
    bareSeconds: 1.2e-6,
    loadFarads: 3.3e-9,
    storageSeconds: 8e-6,
    baseGain: undefined,
    wakeCoulombs: [6e-9, 12e-9],
    saturationVolts: 0.15,
  }),
};

/** What is known of a part's output side. */
export function outputModel(part: Part): OutputModel {
  return ENTRIES[part];
}
