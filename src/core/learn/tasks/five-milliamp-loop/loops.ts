/** Loops in numbers, for tasks that work them out. The current is solved. */
import { checkLink, linkFor } from '../../../verdict/index.ts';
import { makeJack, wires } from '../../../wiring/index.ts';
import type { Jack } from '../../../wiring/index.ts';

/** What an LED keeps in these tasks, volts: the typical forward voltage of a 6N138 at 5 mA (twin data sheet 83669). */
export const LED_VOLTS = 1.4;

/** A loop in numbers: supply in volts, source, sink and receiver resistor in ohms. */
export interface Loop {
  readonly volts: number;
  readonly source: number;
  readonly sink: number;
  readonly series: number;
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

/** A whole lead from DIN to DIN. */
export const WHOLE = wires('4-4', '5-5', '2-2');

/** The two jacks of a loop. */
export function jacksOf({ volts, source, sink, series }: Loop): readonly [Jack, Jack] {
  return [
    makeJack('out', 'din5', 'din', { values: { supplyVolts: volts, sourceOhms: source, sinkOhms: sink } }),
    makeJack('in', 'din5', 'din', { values: { seriesOhms: series } }),
  ];
}

/** Current of the LED while a 0 is sent, milliamperes, solved once for each loop. */
export function milliamperes(loop: Loop): number {
  const known =
    solved.get(loop) ?? (checkLink(linkFor(...jacksOf(loop), WHOLE), 'outcome').inputs[0]?.active ?? 0) * 1e3;
  solved.set(loop, known);
  return known;
}
const solved = new Map<Loop, number>();

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
