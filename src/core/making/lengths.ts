/** Lengths to cut and to strip. */
import type { Status } from '../wiring/index.ts';

/** A length with what it is for, how far it can be trusted, and why. */
export interface SheetLength {
  readonly what: string;
  readonly metres: readonly [least: number, most: number];
  readonly status: Status;
}

/** Slack on the cut length: a share, and at least this at each plug for a second try (common practice). */
const SLACK_SHARE = 0.02;
const SLACK_METRES_A_PLUG = 0.05;

/** Depth of a DIN solder cup, metres: a core is stripped for as much (common practice). */
export const CUP_METRES = 0.003;

/** Strip lengths, all common practice. */
export const STRIP_LENGTHS: readonly SheetLength[] = [
  { what: 'jacket', metres: [0.012, 0.02], status: 'P' },
  { what: 'core, tinned', metres: [0.003, 0.005], status: 'P' },
  { what: 'core into a DIN solder bucket', metres: [CUP_METRES, CUP_METRES], status: 'P' },
];

/** Length to cut, metres: the planned length, two in a hundred more, and 5 cm a plug; rounded up to a centimetre. */
export function cutLength(lengthMetres: number): number {
  return Math.ceil((lengthMetres * (1 + SLACK_SHARE) + 2 * SLACK_METRES_A_PLUG) * 100 - 1e-9) / 100;
}

/** A small length in words: '3 mm', '2.5 mm'. */
export function sayMillimetres(metres: number): string {
  return `${Number((metres * 1e3).toFixed(1))} mm`;
}

/** A strip length in words: '12 to 20 mm', '3 mm'. */
export function sayStrip({ metres: [least, most] }: SheetLength): string {
  const words = sayMillimetres(most);
  return least === most ? words : `${sayMillimetres(least).replace(' mm', '')} to ${words}`;
}
