/** The names of optocouplers. */

/** Optocouplers to choose; `unknown` is judged by each of the usual parts, the least of them told. Links count on the order. */
export const PARTS = [
  '6N138',
  'H11L1',
  'PC900V',
  'unknown',
  '6N136',
  '6N137',
  '4N35',
  '4N25',
  'CNY17-1',
  'CNY17-2',
  'CNY17-3',
  'PC817',
] as const;
/** What stands in most inputs: parts that the 2014 update names, and the usual logic part (common practice, no source). */
export const USUAL_PARTS = ['6N138', 'H11L1', 'PC900V'] as const satisfies readonly Part[];

/** An optocoupler, or that it is not known. */
export type Part = (typeof PARTS)[number];
