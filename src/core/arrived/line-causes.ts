/** Causes on the line: levels exchanged, edges late, clocks that do not agree. */
import { BAUD, delayEdges, delaysOf, throughTransistor } from '../signal/index.ts';
import { makeJack, outputStage } from '../wiring/index.ts';
import type { Waveform } from '../signal/index.ts';
import { steps } from './causes.ts';
import type { Cause, LineCandidate } from './causes.ts';
import { upsideDown } from './line-changes.ts';

const MICRO = 1e-6;

/** A candidate of the line. */
function candidate(
  cause: Cause,
  amount: number,
  change: (line: Waveform) => Waveform,
  receiver?: LineCandidate['receiver'],
): LineCandidate {
  return { kind: 'line', cause, amount, change, ...(receiver ? { receiver } : {}) };
}

const same = (line: Waveform): Waveform => line;
const releaseLate = (seconds: number) => (line: Waveform) =>
  delayEdges(line, { toOnSeconds: 0, toOffSeconds: seconds });
const turnOnLate = (seconds: number) => (line: Waveform) =>
  delayEdges(line, { toOnSeconds: seconds, toOffSeconds: 0 });

/** A receiver that listens before the first byte takes a line that rests at 0 for a break. */
const EARLY = { listensFromSeconds: -1e-3 };

/** Late edges that are tried, seconds: from the first that can cost a bit to nearly four bits. */
const LATE = steps(16, 124, 2).map((one) => one * MICRO);
/** How late an optocoupler that rests lit may release, seconds. */
const LIT_LATE = steps(4, 40, 4).map((one) => one * MICRO);
/** How far clocks may be apart, as fractions: from below the least that any usual receiver bears to beyond all of them. */
const APART = steps(3.5, 14, 0.5).flatMap((percent) => [percent / 100, -percent / 100]);
/** Speeds that a serial port is set to by mistake, bits a second (common practice, no source). */
const SPEEDS = [9600, 14400, 15625, 19200, 28800, 38400, 57600, 62500, 76800, 115200];

/** Pull-ups of a plain transistor part that is too slow, ohms, and the LED current of a 5 V loop that lights it, amperes. */
const LOADS = steps(0, 35, 1).map((at) => 1500 * 1.1 ** at);
const LIT_AMPERES = 5.7e-3;

/** A transistor output whose pull-up is too great: it releases the later, the longer it was lit. */
function transistor(loadOhms: number): LineCandidate {
  const jack = makeJack('in', 'din5', 'din', { part: 'CNY17-2', values: { loadOhms, baseOhms: 0 } });
  const stage = outputStage(jack);
  if (!('model' in stage)) throw new Error(`slow to release: needs a transistor, got '${jack.part}'`);
  const { toOnSeconds, toOffSeconds } = delaysOf(jack);
  const lit = { stage, lit: { dark: 0, bright: LIT_AMPERES } };
  return candidate('slow to release', toOffSeconds - toOnSeconds, (line) => throughTransistor(line, lit));
}

/** Every candidate of the line. */
export function lineCandidates(): readonly LineCandidate[] {
  return [
    candidate('upside down', 0, upsideDown),
    candidate('upside down', 0, upsideDown, EARLY),
    ...LIT_LATE.flatMap((late) => {
      const change = (line: Waveform): Waveform => releaseLate(late)(upsideDown(line));
      return [candidate('swapped and lit', late, change), candidate('swapped and lit', late, change, EARLY)];
    }),
    ...LATE.map((late) => candidate('slow to release', late, releaseLate(late))),
    // One that is later still loses nearly everything, and would only widen what is said of the others.
    ...LOADS.map(transistor).filter(({ amount }) => amount <= Math.max(...LATE)),
    ...LATE.map((late) => candidate('slow to turn on', late, turnOnLate(late))),
    ...APART.map((clockError) => candidate('clock off', clockError, same, { clockError })),
    // A sender at the wrong speed is to the receiver what a receiver at the inverse of it is to the sender.
    ...SPEEDS.flatMap((baud) => [
      candidate('wrong speed', baud, same, { baud }),
      candidate('wrong speed', -baud, same, { baud: (BAUD * BAUD) / baud }),
    ]),
  ];
}
