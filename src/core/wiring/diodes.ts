/** Diodes and lamps round the loop. */
import type { DiodeModel } from '../circuit/index.ts';

/** 1N4148 and 1N914: a widely used simulator card (status c). */
export const PROTECTION_DIODE: DiodeModel = {
  saturationAmperes: 2.52e-9,
  emission: 1.752,
  seriesOhms: 0.568,
  junctionFarads: 4e-12,
  grading: 0.4,
  transitSeconds: 20e-9,
};

/** A rectifier such as the 1N4007: 0.63 V at 5 mA, and takes about 2 us to let go (a widely used card, from memory). */
export const RECTIFIER_DIODE: DiodeModel = {
  saturationAmperes: 7.03e-9,
  emission: 1.81,
  seriesOhms: 0.034,
  junctionFarads: 10e-12,
  transitSeconds: 2e-6,
};

/** A small Schottky diode such as the BAT85: fitted to 0.24 V at 0.1 mA and 0.4 V at 10 mA, the most of its sheet (from memory). */
export const SCHOTTKY_DIODE: DiodeModel = {
  saturationAmperes: 3.87e-8,
  emission: 1.18,
  seriesOhms: 2,
  junctionFarads: 10e-12,
};

/** A red LED: 1.8 V at 5 mA (common practice, no source); its charge is that of the LED in an optocoupler. */
export const ACTIVITY_LED: DiodeModel = {
  saturationAmperes: 1e-18,
  emission: 1.93,
  seriesOhms: 3,
  junctionFarads: 60e-12,
  transitSeconds: 50e-9,
};

/** What such an LED takes for long, amperes: 20 to 30 mA are usual (from memory). */
export const ACTIVITY_LED_AMPERES = 25e-3;
