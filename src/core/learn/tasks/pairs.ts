/** Pairs of jacks in tasks, and how they are told. */
import { someMapWorks } from '../../verdict/index.ts';
import { familyOf, styleEntry } from '../../wiring/index.ts';
import type { Jack } from '../../wiring/index.ts';

/** A sender's jack and a listener's. */
export interface Pair {
  readonly output: Jack;
  readonly input: Jack;
}

/** A jack as a task tells it. */
export const sayJack = ({ connector, style }: Jack): string =>
  familyOf(connector) === 'din' ? 'DIN' : `${styleEntry(style).label} on a phone jack`;

const served = new Map<string, boolean>();
/** Whether any plain lead can serve two jacks, found once for each pair. */
export function canServe({ output, input }: Pair): boolean {
  const key = JSON.stringify([output, input]);
  const known = served.get(key) ?? someMapWorks(output, input);
  served.set(key, known);
  return known;
}
