/** Bars of a lesson on time: edges of leads and hops of chains, each held against a bound or a receiver. */
import { STANDARD_EDGE_SECONDS } from '../signal/index.ts';
import type { AuthoredLink } from './links.ts';
import { counted, unbroken } from './say.ts';
import { atMetres, edgesOf, hopsOf, sayTime } from './time.ts';

/** A bar: an amount, and the same in words. */
interface Bar {
  readonly name: string;
  readonly amount: number;
  readonly words: string;
  readonly good: boolean;
}

/** Bars that belong together. */
export interface BarRow {
  readonly label: string;
  readonly bars: readonly Bar[];
}

/** One row of bars on the edges of a link with so many metres of lead. */
export function edgeRow(label: string, authored: AuthoredLink, metres: number): BarRow {
  const { toActiveSeconds, toIdleSeconds } = edgesOf(atMetres(authored, metres));
  const bar = (name: string, seconds: number): Bar => ({
    name,
    amount: seconds,
    words: sayTime(seconds),
    good: seconds <= STANDARD_EDGE_SECONDS,
  });
  return {
    label: `${label}, ${unbroken(`${metres} m`)}`,
    bars: [bar('to on', toActiveSeconds), bar('to off', toIdleSeconds)],
  };
}

/** One row with a bar of the hops of a link. */
export function hopRow(label: string, authored: AuthoredLink): BarRow {
  const hops = hopsOf(authored);
  return {
    label,
    bars: [{ name: '', amount: hops, words: counted(hops, 'link'), good: true }],
  };
}
