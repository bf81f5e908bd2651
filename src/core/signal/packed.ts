/** A sending as plain data, to go from a worker to its page. */
import { transientOf } from '../circuit/index.ts';
import type { LegRun, Sending } from './send.ts';
import type { TimeLink } from './time-link.ts';

/** A sending without what reads it, which is made anew from the stretches. */
export type PackedSending = Omit<Sending, 'legs'> & { readonly legs: readonly Omit<LegRun, 'transient'>[] };

/** Take out what only this thread can run. */
export function packSending(sending: Sending): PackedSending {
  return { ...sending, legs: sending.legs.map(({ transient: _, ...leg }) => leg) };
}

/** Make a packed sending readable again; `time` is made from the same link, with the same parts at their worst. */
export function unpackSending({ compiled }: Pick<TimeLink, 'compiled'>, packed: PackedSending): Sending {
  const legs = packed.legs.map((leg) => ({ ...leg, transient: transientOf(compiled, leg.stretches) }));
  return { ...packed, legs };
}
