/** The worst corner of the tolerances, found by moving one tolerance at a time as far as it makes things worse. */
import { setValue } from '../circuit/index.ts';
import { spreadName } from '../wiring/index.ts';
import type { Spread, State } from '../wiring/index.ts';
import { readInput, setState, settleState } from './prepare.ts';
import type { PreparedLink } from './prepare.ts';

/** Which end of its range each tolerance sits at. */
export type Corner = Readonly<Record<string, 'low' | 'high' | 'nominal'>>;

/** The worst value of an input in one state, and the corner at which it comes about. */
export interface WorstCase {
  readonly value: number;
  readonly corner: Corner;
}

/** Rounds over all tolerances; two are enough when each acts one way, more are a guard. */
const MOST_ROUNDS = 6;

/**
 * The least (`sign` 1) or greatest (`sign` -1) value that an input takes in a state over all corners.
 * In loops of resistors and diodes each tolerance acts one way whatever the others do, so the corner found is the worst of
 * all; a test holds it against every corner of the default links.
 * @returns the value in amperes or volts; the circuit is left at nominal.
 */
export function worstCase(prepared: PreparedLink, state: State, input: number, sign: 1 | -1): WorstCase {
  const { spreads } = prepared.model;
  const places = new Map<Spread, 'low' | 'high' | 'nominal'>();
  setState(prepared, state);
  let best = measure(prepared, state, input, sign);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    let moved = false;
    for (const spread of spreads) {
      for (const place of ['low', 'high'] as const) {
        const before = places.get(spread) ?? 'nominal';
        if (place === before) continue;
        moveTo(prepared, spread, place);
        const value = measure(prepared, state, input, sign);
        if (value < best - Math.abs(best) * 1e-12) {
          best = value;
          places.set(spread, place);
          moved = true;
        } else moveTo(prepared, spread, before);
      }
    }
    if (!moved) break;
  }
  for (const spread of spreads) moveTo(prepared, spread, 'nominal');
  const corner: Record<string, 'low' | 'high' | 'nominal'> = {};
  for (const spread of spreads) corner[spreadName(spreads, spread)] = places.get(spread) ?? 'nominal';
  return { value: sign * best, corner };
}

/** Set the parts of one tolerance to one of its places. */
function moveTo(prepared: PreparedLink, spread: Spread, place: 'low' | 'high' | 'nominal'): void {
  spread.parts.forEach((part, at) => setValue(prepared.compiled, part, spread[place][at] as number));
}

function measure(prepared: PreparedLink, state: State, input: number, sign: 1 | -1): number {
  return settleState(prepared, state) ? Infinity : sign * readInput(prepared, input).value;
}
