/** Causes that strike now and then: what each does to a byte, and one run of it. */
import { BAUD, BITS_PER_FRAME, readLine, sendBytes } from '../signal/index.ts';
import type { ReceivedByte, Waveform } from '../signal/index.ts';
import type { Cause, ChanceCandidate } from './causes.ts';
import type { Code } from './log.ts';
import type { Odds } from './compare.ts';
import { hum, joined, withoutPulses } from './line-changes.ts';
import { weakOdds } from './weak.ts';

const BYTE_SECONDS = BITS_PER_FRAME / BAUD;
const CODES = 256;
/** What a cause cannot do by itself, as a logarithm: a slip of whoever wrote the log. */
const SLIP = -14;
/** Bytes that come of themselves from a second sender: clock and active sensing. */
const OWN_ACCORD: readonly number[] = [0xf8, 0xfe];
const EMPTY = 0xff;
const FIRST_STATUS = 0x80;
/** Bytes that the smallest buffer holds: it is empty at first, so that these are never lost (our choice). */
const LEAST_ROOM = 2;

const good = (value: number, seconds: number): ReceivedByte => ({ value, kind: 'byte', seconds });

/** Odds of a cause that only loses or adds bytes. */
function sparing(sent: readonly Code[], lost: number, more: (code: Code) => number): Odds {
  const same = Math.log(1 - lost);
  return {
    pair: (at, code) => (sent[at] === code ? same : SLIP),
    lost: () => Math.log(lost),
    extra: more,
  };
}

const bitsIn = (byte: number): number => {
  let count = 0;
  for (let rest = byte; rest > 0; rest &= rest - 1) count += 1;
  return count;
};

/** The byte after one that met a byte of the other meets the next of it, as a logarithm: messages meet, not bytes (our choice). */
const MEETS_AGAIN = Math.log(0.4);

/** Two outputs at once: where their bytes meet 1s turn into 0s, and bytes of the other stand between. Shares are our choice. */
function collisionOdds(sent: readonly Code[], meets: number): Odds {
  const between = Math.min(0.4, 2 * meets + 0.1);
  const [whole, broken] = [Math.log((1 - meets) * (1 - between)), Math.log(meets * 0.4)];
  const anything = Math.log((meets * 0.2) / CODES);
  const ownAccord = Math.log(between * 0.2);
  const data = Math.log((between * 0.5) / FIRST_STATUS);
  const status = Math.log((between * 0.3) / FIRST_STATUS);
  return {
    pair: (at, code) => {
      const byte = sent[at] ?? 0;
      if (code === byte) return whole;
      const cleared = (code & 0xff & ~byte) === 0;
      return cleared ? Math.max(anything, broken - bitsIn(byte) * Math.LN2) : anything;
    },
    lost: () => Math.log(meets * 0.3),
    lostAgain: MEETS_AGAIN,
    extra: (code) => (OWN_ACCORD.includes(code) ? ownAccord : code < FIRST_STATUS ? data : status),
  };
}

/** Hum: stretches of bytes that are right, stretches of breaks, and a broken byte where one begins or ends. Shares are our choice. */
function humOdds(sent: readonly Code[], gone: number): Odds {
  const broken = Math.log(0.06 / (2 * CODES));
  return {
    pair: (at, code) => (sent[at] === code ? Math.log(0.8) : broken),
    lost: () => Math.log(0.08),
    lostAgain: Math.log(gone),
    extra: (code) => ((code & 0xff) === 0 ? Math.log(0.1) : broken),
  };
}

function endOf({ edges }: Waveform): number {
  return (edges.at(-1)?.seconds ?? 0) + BYTE_SECONDS;
}

/** What a second sender has on the line meanwhile: clock, sensing, or notes of its own. */
function otherSender(endSeconds: number, chance: () => number): Waveform {
  const kind = Math.floor(chance() * 3);
  const bytes: number[] = [];
  const gaps: number[] = [];
  const [shortest, spread] = kind === 2 ? [1e-3, 10e-3] : [4e-3, 20e-3];
  const add = (byte: number, gap: number): void => void (bytes.push(byte), gaps.push(gap));
  const pause = shortest + spread * chance();
  for (let at = 0; at < endSeconds; at += pause + 3 * BYTE_SECONDS) {
    if (kind === 0) add(0xf8, pause);
    else if (kind === 1) add(0xfe, pause);
    else {
      add(0x90, 0);
      add(Math.floor(chance() * 128), 0);
      add(Math.floor(chance() * 128), pause);
    }
  }
  return sendBytes(bytes, { gapSeconds: gaps, startSeconds: chance() * pause }).wave;
}

/** A buffer that is emptied more slowly than it fills: what comes while it is full is lost. */
function throughBuffer(sent: readonly number[], room: number, readSeconds: number): readonly ReceivedByte[] {
  const out: ReceivedByte[] = [];
  const leaves: number[] = [];
  sent.forEach((value, at) => {
    const now = at * BYTE_SECONDS;
    while (leaves.length > 0 && leaves[0]! <= now) leaves.shift();
    if (leaves.length >= room) return;
    leaves.push(Math.max(now, leaves.at(-1) ?? 0) + readSeconds);
    out.push(good(value, now));
  });
  return out;
}

/** A program that reads its port whether or not there is anything to read. */
function readTooOften(sent: readonly number[], pollSeconds: number): readonly ReceivedByte[] {
  const out: ReceivedByte[] = [];
  let next = 0;
  for (let now = 0; next < sent.length; now += pollSeconds) {
    const ready = now >= (next + 1) * BYTE_SECONDS;
    out.push(good(ready ? sent[next]! : EMPTY, now));
    if (ready) next += 1;
  }
  return out;
}

const MAINS = [50, 60] as const;
/** Shares of bytes or pulses that are struck, from now and then to nearly always. */
const SHARES = [0.03, 0.08, 0.15, 0.25, 0.4, 0.6] as const;
/** Shares of bytes that meet a byte of the other sender. */
const MEETING = [0.03, 0.08, 0.15, 0.25, 0.4] as const;
const OFTEN = [0.3, 0.5, 0.7, 0.85] as const;
/** Chances that a byte after one lost to hum is lost as well: hum lasts for milliseconds. */
const LASTING = [0.6, 0.75, 0.85, 0.93] as const;

const each = (
  cause: Cause,
  shares: readonly number[],
  odds: (sent: readonly Code[], share: number, marked: boolean) => Odds,
  run: (share: number, ...of: Parameters<ChanceCandidate['run']>) => readonly ReceivedByte[],
): readonly ChanceCandidate[] =>
  shares.map((amount) => ({
    kind: 'chance',
    cause,
    amount,
    odds: (sent, marked) => odds(sent, amount, marked),
    run: (line, sent, chance) => run(amount, line, sent, chance),
  }));

/** Every candidate that strikes now and then. */
export function chanceCandidates(): readonly ChanceCandidate[] {
  return [
    ...each('weak', SHARES, weakOdds, (share, line, _, chance) =>
      readLine(withoutPulses(line, () => chance() >= share)),
    ),
    ...each('ground missing', LASTING, humOdds, (share, line, _, chance) => {
      const hertz = MAINS[chance() < 0.5 ? 0 : 1];
      const start = -chance() / hertz;
      return readLine(joined(line, hum(hertz, share, start, endOf(line))), { listensFromSeconds: start });
    }),
    ...each('two senders', MEETING, collisionOdds, (_, line, __, chance) =>
      readLine(joined(line, otherSender(endOf(line), chance))),
    ),
    ...each(
      'full buffer',
      SHARES,
      (sent, share) => {
        const odds = sparing(sent, share, () => SLIP);
        return { ...odds, lost: (at) => (at < LEAST_ROOM ? SLIP : odds.lost(at)) };
      },
      (_, __, sent, chance) =>
        throughBuffer(sent, 2 ** Math.floor(chance() * 7), BYTE_SECONDS * (1.02 + 3 * chance())),
    ),
    ...each(
      'empty as FF',
      OFTEN,
      (sent, share) => {
        const empty = Math.log(share);
        const odds = sparing(sent, 0.003, (code) => (code === EMPTY ? empty : SLIP));
        return { ...odds, pair: (at, code) => odds.pair(at, code) + Math.log(1 - share) };
      },
      (_, __, sent, chance) => readTooOften(sent, BYTE_SECONDS * (0.1 + chance())),
    ),
  ];
}
