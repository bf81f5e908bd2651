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

/** A jack as a task tells it: 'a DIN jack', 'a Type A phone jack'. */
function sayJack({ connector, style }: Jack): string {
  const { label, family } = styleEntry(style);
  if (familyOf(connector) === 'din') return 'a DIN jack';
  if (style === 'both-ways') return `a phone jack that ${label}`;
  return family === 'loop' ? `a ${label} phone jack` : `a phone jack with ${label}`;
}

/** Both jacks, in two sentences. */
export const sayPair = ({ output, input }: Pair): string =>
  `The output is ${sayJack(output)}. The input is ${sayJack(input)}.`;

/** Whether any plain lead can serve two jacks. */
export const canServe = remembered(({ output, input }: Pair): boolean => someMapWorks(output, input));
