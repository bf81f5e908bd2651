/** Readings that the reader entered, and those taken twice in the same way put together. */
import { agree } from './likelihood.ts';
import type { Reading } from './reading.ts';
import { isScaled } from './scale.ts';
import type { JackReading } from './subjects.ts';

/** A reading that the reader entered. */
export interface TakenReading {
  readonly at: JackReading;
  readonly reading: Reading;
}

/** A reading with the numbers of all that were taken in the same way and agree with it. */
export interface Told extends TakenReading {
  readonly numbers: readonly number[];
}

/** Whether two readings are taken in the same way on the same contacts. */
export function sameReading(a: JackReading, b: JackReading): boolean {
  return a.meter === b.meter && a.power === b.power && a.red === b.red && a.black === b.black;
}

/**
 * What was told, each thing once: a reading taken again that agrees says no more of the device than the first, only that it was no
 * slip. Readings of other functions than volts, ohms and diode test tell nothing here and are left out.
 */
export function told(taken: readonly TakenReading[]): readonly Told[] {
  const all: { at: JackReading; reading: Reading; numbers: number[] }[] = [];
  taken.forEach(({ at, reading }, number) => {
    if (!isScaled(at.meter)) return;
    const first = all.find((one) => sameReading(one.at, at) && agree(one.reading, reading));
    if (first) first.numbers.push(number);
    else all.push({ at, reading, numbers: [number] });
  });
  return all;
}
