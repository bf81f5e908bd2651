/** Pairs of jacks in tasks, and how they are told. */
import { someMapWorks } from '../../verdict/index.ts';
import { familyOf, styleEntry } from '../../wiring/index.ts';
import type { Jack } from '../../wiring/index.ts';
import { remembered } from './chance.ts';

/** A sender's jack and a listener's. */
export interface Pair {
  readonly output: Jack;
  readonly input: Jack;
}

/** A jack as a task tells it. */
export const sayJack = ({ connector, style }: Jack): string =>
  familyOf(connector) === 'din' ? 'DIN' : `${styleEntry(style).label} on a phone jack`;

/** Whether any plain lead can serve two jacks. */
export const canServe = remembered(({ output, input }: Pair): boolean => someMapWorks(output, input));
