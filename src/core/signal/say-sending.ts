/** What became of bytes that were sent, in words: what arrived, or what could not be solved. */
import type { Unsolved } from '../circuit/index.ts';
import { differenceInWords } from './difference.ts';
import { sayMicroseconds } from './say-time.ts';
import type { Sending } from './send.ts';

/** What has no solution, and from when on: 'Not solved: no step in time settles at node 'in0 4' from 120.0 µs on. ...'. */
export function sayUnsolved({ reason, seconds }: Unsolved): string {
  return seconds === undefined
    ? `Not solved: ${reason}. What arrives is not known.`
    : `Not solved: ${reason} from ${sayMicroseconds(seconds)} on. What arrives after that is not known.`;
}

/** What became of all bytes sent; where the circuit could not be followed to the end, that alone. */
export function sendingInWords({ outcomes, unsolved }: Pick<Sending, 'outcomes' | 'unsolved'>): string {
  return unsolved ? sayUnsolved(unsolved) : differenceInWords(outcomes);
}
