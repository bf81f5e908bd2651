/** Loops in numbers, for tasks that work them out. The current is solved. */
import { linkFor } from '../../../verdict/index.ts';
import { STRAIGHT_DIN, makeJack } from '../../../wiring/index.ts';
import type { Extra, Jack } from '../../../wiring/index.ts';
import { activeOf } from '../../links.ts';
import { remembered } from '../chance.ts';

/** What an LED keeps in these tasks, volts: the typical forward voltage of a 6N138 at 5 mA (twin data sheet 83669). */
export const LED_VOLTS = 1.4;

/** A loop in numbers: supply in volts, source, sink and receiver resistor in ohms. */
export interface Loop {
  readonly volts: number;
  readonly source: number;
  readonly sink: number;
  readonly series: number;
  /** What else stands in it. */
  readonly more?: Extract<Extra, 'activity-in-series' | 'second-in-series'>;
}

/** Loops to work out: supplies of logic, resistors of the E12 row (IEC 60063) near the standard's. The first is the standard's own. */
export const LOOPS: readonly Loop[] = [
  { volts: 5, source: 220, sink: 220, series: 220 },
  { volts: 5, source: 180, sink: 270, series: 220 },
  { volts: 5, source: 150, sink: 220, series: 220 },
  { volts: 5, source: 220, sink: 330, series: 220 },
  { volts: 5, source: 270, sink: 180, series: 330 },
  { volts: 4, source: 150, sink: 150, series: 220 },
  { volts: 5, source: 330, sink: 330, series: 220 },
];
/** Loops of level 3: a lower supply, where the resistors are lower too. The first is the standard's own. */
export const LOW_LOOPS: readonly Loop[] = [
  { volts: 3.3, source: 33, sink: 10, series: 220 },
  { volts: 3.3, source: 47, sink: 47, series: 220 },
  { volts: 3.3, source: 68, sink: 33, series: 220 },
  { volts: 3.3, source: 33, sink: 10, series: 180 },
];

/** The two jacks of a loop. */
export function jacksOf({ volts, source, sink, series, more }: Loop): readonly [Jack, Jack] {
  return [
    makeJack('out', 'din5', 'din', { values: { supplyVolts: volts, sourceOhms: source, sinkOhms: sink } }),
    makeJack('in', 'din5', 'din', { values: { seriesOhms: series }, ...(more && { extras: [more] }) }),
  ];
}

/** Current of the LED while a 0 is sent, milliamperes. */
export const milliamperes = remembered(
  (loop: Loop): number => activeOf(linkFor(...jacksOf(loop), STRAIGHT_DIN)) * 1e3,
);

/** Milliamperes of so many volts over so many ohms. */
export const inMilli = (volts: number, ohms: number): number => (volts / ohms) * 1e3;
/** All resistors of a loop, ohms. */
export const total = ({ source, sink, series }: Loop): number => source + sink + series;
/** A loop as rows of a table. */
export const rowsOf = ({ volts, source, sink, series }: Loop): readonly (readonly [string, string])[] => [
  ['supply of the sender', `${volts} V`],
  ['resistor in the source line', `${source} ohm`],
  ['resistor in the sink line', `${sink} ohm`],
  ['resistor in the receiver', `${series} ohm`],
  ['the LED keeps', `about ${LED_VOLTS} V`],
];
