/** Current that an output gives and no input gets: a short in the lead or in a plug draws it. */
import { CURRENT_TO_SPEAK_OF } from '../wiring/index.ts';
import type { State } from '../wiring/index.ts';
import type { LinkVerdict } from './check.ts';

/**
 * Amperes out of the output's supply that pass through no input, 0 where there are none to speak of. Where an input reads a
 * level the current is not what it listens to, and 0 comes back.
 */
export function strayAmperes({ inputs, readings }: LinkVerdict, state: State): number {
  if (inputs.some(({ kind }) => kind === 'level')) return 0;
  const taken = inputs.reduce((sum, one) => sum + Math.abs(one[state]) + one.reverseAmperes[state], 0);
  const stray = readings[state].supplyAmperes - taken;
  return stray > CURRENT_TO_SPEAK_OF ? stray : 0;
}
