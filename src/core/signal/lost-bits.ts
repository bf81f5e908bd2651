/** Whether bits get past what follows the LED of an input, where current alone says that the link works. */
import { hasOwnOutputSide } from '../wiring/index.ts';
import type { OutputJack } from '../wiring/index.ts';
import { WORST_CLOCKS, WORST_CLOCKS_EARLY } from './bit-budget.ts';
import { STANDARD_CLOCK_ERROR } from './frames.ts';
import { follow } from './hop.ts';
import { followerOf } from './jack-delays.ts';
import { gaveWayAt, trialLine } from './limits.ts';
import type { LedAmperes } from './opto-output.ts';

/**
 * What is lost behind the LED of an input, in words; undefined where every byte arrives, and where nobody changed what follows the
 * LED. Trial bytes follow it by the same simulation that sends bytes, clocks at the standard's bounds either way round, with a receiver
 * that looks once a bit: that it does is our reading. `lit` is the current of the LED at rest and while a 0 is sent, amperes.
 */
export function sayLostBits(input: OutputJack, lit: LedAmperes): string | undefined {
  if (!hasOwnOutputSide(input)) return undefined;
  const follower = followerOf(input, lit);
  for (const clocks of [WORST_CLOCKS, WORST_CLOCKS_EARLY]) {
    const line = trialLine(clocks);
    const gaveWay = gaveWayAt({ ...line, arrived: follow(line.arrived, follower) });
    if (gaveWay)
      return `The LED of the input gets its current, but with both clocks ${STANDARD_CLOCK_ERROR * 100} % off the part behind it loses bits: ${gaveWay.why}. The receiver looks once a bit here, by our reading. Another pull-up or base resistor behind the LED, or another part, may cure it.`;
  }
  return undefined;
}
