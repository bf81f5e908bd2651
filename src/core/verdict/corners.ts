/** The worst corner of the tolerances, found by moving each to the end at which it makes things worse. */
import { elementNumber, sensitivityOf, setValue } from '../circuit/index.ts';
import type { Quantity } from '../circuit/index.ts';
import { spreadName } from '../wiring/index.ts';
import type { Spread, State } from '../wiring/index.ts';
import { readInput, settleState } from './prepare.ts';
import type { PreparedLink } from './prepare.ts';

/** Which end of its range each tolerance sits at. */
export type Corner = Readonly<Record<string, 'low' | 'high' | 'nominal'>>;

/** The worst value of an input in one state, and the corner at which it comes about. */
export interface WorstCase {
  readonly value: number;
  readonly corner: Corner;
}

/** Rounds of moving every tolerance to its worse end; two are enough when each acts one way, more are a guard. */
const MOST_ROUNDS = 6;

/** A tolerance matters where it moves the value by more than this share of it: less is rounding. */
const LEAST_SHARE = 1e-9;

/**
 * The least (`sign` 1) or greatest (`sign` -1) value that an input takes in a state over all corners.
 * In loops of resistors and diodes each tolerance acts one way whatever the others do: so the way each acts where the circuit
 * stands tells its worse end, and the corner found is the worst of all; a test holds it against every corner of the default links.
 * @returns the value in amperes or volts; the circuit is left at nominal.
 */
export function worstCase(prepared: PreparedLink, state: State, input: number, sign: 1 | -1): WorstCase {
  const { spreads } = prepared.model;
  const places = new Map<Spread, Place>();
  const placeOf = (spread: Spread): Place => places.get(spread) ?? 'nominal';
  let best = measure(prepared, state, input, sign);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const worse = worsePlaces(prepared, input, sign, placeOf, best);
    for (const [spread, place] of worse) moveTo(prepared, spread, place);
    const value = worse.size === 0 ? best : measure(prepared, state, input, sign);
    if (!(value < best)) break;
    best = value;
    for (const [spread, place] of worse) places.set(spread, place);
  }
  for (const spread of spreads) moveTo(prepared, spread, 'nominal');
  const corner: Record<string, Place> = {};
  for (const spread of spreads) corner[spreadName(spreads, spread)] = placeOf(spread);
  return { value: sign * best, corner };
}

/** Where a tolerance sits in its range. */
type Place = Corner[string];

/** The tolerances that would make things worse at another place, as they act where the circuit stands settled. */
function worsePlaces(
  { model, compiled, quantities }: PreparedLink,
  input: number,
  sign: 1 | -1,
  placeOf: (spread: Spread) => Place,
  best: number,
): ReadonlyMap<Spread, Place> {
  const slope = sensitivityOf(compiled, quantities[input] as Quantity);
  const found = new Map<Spread, Place>();
  for (const spread of model.spreads) {
    const here = spread[placeOf(spread)];
    const slopes = spread.parts.map((part) => sign * slope(elementNumber(compiled, part)));
    const moves = (place: Place): number =>
      slopes.reduce((sum, one, at) => sum + one * ((spread[place][at] as number) - (here[at] as number)), 0);
    const place = moves('low') < moves('high') ? 'low' : 'high';
    if (moves(place) < -LEAST_SHARE * Math.abs(best)) found.set(spread, place);
  }
  return found;
}

/** Set the parts of one tolerance to one of its places. */
function moveTo(prepared: PreparedLink, spread: Spread, place: Place): void {
  spread.parts.forEach((part, at) => setValue(prepared.compiled, part, spread[place][at] as number));
}

function measure(prepared: PreparedLink, state: State, input: number, sign: 1 | -1): number {
  return settleState(prepared, state) ? Infinity : sign * readInput(prepared, input).value;
}
