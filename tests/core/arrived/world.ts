/**
 * Hidden causes with their logs, drawn by a world of its own: bits are written and read here in whole microseconds, so that the
 * search is not judged by the engine it searches with. What is drawn is invented.
 */
import type { Cause } from '../../../src/core/arrived/causes.ts';
import { CAUSES } from '../../../src/core/arrived/causes.ts';
import type { Log, SeenByte } from '../../../src/core/arrived/log.ts';
import type { Random } from '../../support/random.ts';
import { seededRandom } from '../../support/random.ts';

/** A log and what made it: a cause, or undefined for one that no cause made. */
export interface Drawn {
  readonly cause: Cause | undefined;
  readonly amount: number;
  readonly log: Log & { readonly sent: readonly number[] };
}

const BIT = 32;

/** A line, one entry a microsecond: 1 at rest. */
type Line = Uint8Array;

/** Write bytes on a line; `gaps` holds the idle microseconds after each. */
function write(bytes: readonly number[], gaps: readonly number[]): Line {
  const length = bytes.length * 10 * BIT + gaps.reduce((sum, gap) => sum + gap, 0) + 1000;
  const line = new Uint8Array(length).fill(1);
  let at = 200;
  bytes.forEach((byte, index) => {
    const frame = (byte << 1) | 0x200;
    for (let bit = 0; bit < 10; bit += 1) {
      line.fill((frame >> bit) & 1, at + bit * BIT, at + (bit + 1) * BIT);
    }
    at += 10 * BIT + (gaps[index] ?? 0);
  });
  return line;
}

/** Read a line at a bit length in microseconds, in the middle of each bit by three looks; phase is where its clock stands. */
function read(line: Line, bit: number, phase: number): SeenByte[] {
  const tick = bit / 16;
  const level = (time: number): number => line[Math.min(line.length - 1, Math.max(0, Math.floor(time)))] ?? 1;
  const seen: SeenByte[] = [];
  let time = phase * tick;
  let before = 1;
  while (time < line.length) {
    const now = level(time);
    if (!(before === 1 && now === 0)) {
      before = now;
      time += tick;
      continue;
    }
    const vote = (number: number): number => {
      const votes = [7, 8, 9].map((sample) => level(time + (number * 16 + sample) * tick));
      return votes.reduce((sum, one) => sum + one, 0) >= 2 ? 1 : 0;
    };
    if (vote(0) === 1) {
      time += 10 * tick;
      before = level(time - tick);
      continue;
    }
    let value = 0;
    for (let number = 1; number <= 8; number += 1) value += vote(number) * 2 ** (number - 1);
    seen.push({ value, bad: vote(9) === 0 });
    time += (9 * 16 + 10) * tick;
    before = level(time - tick);
  }
  return seen;
}

/** Each 0 of a line begins or ends later by what `late` gives; a stretch that would end before it begins is gone. */
function shift(line: Line, late: (falling: boolean, wasFor: number) => number): Line {
  const edges: [number, number][] = [];
  let since = 0;
  for (let at = 1; at < line.length; at += 1) {
    if (line[at] === line[at - 1]) continue;
    const to = at + Math.round(late(line[at] === 0, at - since));
    since = at;
    if (edges.length > 0 && (edges.at(-1)?.[0] ?? 0) >= to) edges.pop();
    else edges.push([to, line[at] ?? 1]);
  }
  const out = new Uint8Array(line.length).fill(line[0] ?? 1);
  for (const [at, level] of edges) out.fill(level, at);
  return out;
}

/** One message as a player or a clock sends it. */
function message(random: Random, channel: number): number[] {
  const seven = (): number => random.integer(0, 127);
  switch (random.integer(0, 7)) {
    case 0:
    case 1:
    case 2:
      return [0x90 + channel, random.integer(36, 84), random.integer(1, 127)];
    case 3:
      return [0x80 + channel, random.integer(36, 84), random.pick([0, 64, seven()])];
    case 4:
      return [0xb0 + channel, random.pick([1, 7, 11, 64]), seven()];
    case 5:
      return [0xc0 + channel, seven()];
    case 6:
      return [0xe0 + channel, seven(), seven()];
    default:
      return [0xb0 + channel, 0, random.integer(0, 8), 0xc0 + channel, seven()];
  }
}

interface Wants {
  readonly running?: boolean;
  readonly clock?: 'between' | 'inside';
}

/** Messages of one sender, each with its bytes. */
function messages(random: Random, count: number, { running, clock }: Wants = {}): number[][] {
  const channel = random.integer(0, 15);
  const out: number[][] = [];
  for (let at = 0; at < count; at += 1) {
    if (clock && (at === 0 || random.chance(0.4))) {
      if (clock === 'between') out.push([random.pick([0xf8, 0xf8, 0xfe])]);
    }
    const one = message(random, channel);
    if (clock === 'inside' && (at === 0 || random.chance(0.4)))
      one.splice(random.integer(1, one.length - 1), 0, 0xf8);
    out.push(one);
  }
  if (!running) return out;
  // At least one message follows another with its status byte left out.
  const first = [0x90 + channel, random.integer(36, 84), random.integer(1, 127)];
  const more = Array.from({ length: random.integer(1, Math.max(1, Math.min(6, count))) }, () => [
    random.integer(36, 84),
    random.integer(0, 127),
  ]);
  return [first, ...more, ...out.slice(0, Math.max(0, count - more.length - 1))];
}

/** Idle microseconds after each byte: bytes of a message follow at once or after a while, messages at once or apart. */
function gapsOf(random: Random, list: readonly (readonly number[])[]): number[] {
  const inside = random.pick([0, 0, 0, random.integer(40, 90), 320]);
  const apart = inside > 0 || random.chance(0.75) ? () => random.integer(1200, 9000) : () => 0;
  return list.flatMap((one) => one.map((_, at) => (at === one.length - 1 ? apart() : inside)));
}

/** Two lines on one wire. */
const both = (one: Line, other: Line): Line =>
  one.map((level, at) => (level === 1 && (other[at] ?? 1) === 1 ? 1 : 0));

const good = (bytes: readonly number[]): SeenByte[] => bytes.map((value) => ({ value, bad: false }));

/** What a cause makes of messages. */
type Make = (random: Random, count: number) => { sent: number[]; seen: SeenByte[]; amount: number };

/** A cause that changes the line. */
function onLine(change: (random: Random, line: Line) => { line: Line; bit?: number; amount: number }): Make {
  return (random, count) => {
    const list = messages(random, count, random.chance(0.2) ? { running: true } : {});
    const sent = list.flat();
    const { line, bit = BIT, amount } = change(random, write(sent, gapsOf(random, list)));
    return { sent, seen: read(line, bit, random.next()), amount };
  };
}

const turned = (line: Line): Line => line.map((level) => 1 - level);

/** A reader of whole messages, by the letter of the standard but for what a cause gets wrong. */
function onMessages(
  wants: Wants,
  change: (random: Random, list: readonly number[][]) => { seen: number[]; amount: number },
): Make {
  return (random, count) => {
    const list = messages(random, count, wants);
    const { seen, amount } = change(random, list);
    return { sent: list.flat(), seen: good(seen), amount };
  };
}

const WORLD: Readonly<Record<Cause, Make>> = {
  'upside down': onLine((_, line) => ({ line: turned(line), amount: 0 })),
  'swapped and lit': onLine((random, line) => {
    const late = random.integer(6, 36);
    return { line: shift(turned(line), (falling) => (falling ? 0 : late)), amount: late };
  }),
  'slow to release': onLine((random, line) => {
    const late = random.integer(17, 110);
    // Half of them are plain transistors, which come later the longer they were lit.
    const most = late * 1.15;
    const plain = random.chance(0.5);
    return {
      line: shift(line, (falling, lit) => (falling ? 0 : plain ? most * (1 - Math.exp(-lit / 25)) : late)),
      amount: late,
    };
  }),
  'slow to turn on': onLine((random, line) => {
    const late = random.integer(17, 110);
    return { line: shift(line, (falling) => (falling ? late : 0)), amount: late };
  }),
  'clock off': onLine((random, line) => {
    const off = random.pick([1, -1]) * (0.045 + 0.08 * random.next());
    return { line, bit: BIT / (1 + off), amount: off };
  }),
  'wrong speed': onLine((random, line) => {
    const baud = random.pick([9600, 19200, 28800, 38400, 57600, 115200]);
    return { line, bit: 1e6 / baud, amount: baud };
  }),
  weak: onLine((random, line) => {
    const share = random.pick([0.05, 0.1, 0.2, 0.3]);
    let gone = false;
    const out = new Uint8Array(line.length).fill(1);
    for (let at = 1; at < line.length; at += 1) {
      if (line[at] === 0 && line[at - 1] === 1) gone = random.chance(share);
      out[at] = line[at] === 0 && !gone ? 0 : 1;
    }
    return { line: out, amount: share };
  }),
  'ground missing': onLine((random, line) => {
    const period = 1e6 / random.pick([50, 60]);
    const share = 0.3 + 0.4 * random.next();
    const start = random.integer(0, period);
    return {
      line: line.map((level, at) => ((at + start) % period < share * period ? 0 : level)),
      amount: share,
    };
  }),
  'two senders': onLine((random, line) => {
    const microseconds = line.length;
    const kind = random.pick(['clock', 'sensing', 'notes'] as const);
    const pause = kind === 'notes' ? random.integer(1000, 12000) : random.integer(4000, 21000);
    const list: number[][] = [];
    for (let at = 0; at < microseconds; at += pause) {
      list.push(
        kind === 'clock' ? [0xf8] : kind === 'sensing' ? [0xfe] : message(random, random.integer(0, 15)),
      );
    }
    const gaps = list.flatMap((one) => one.map((_, at) => (at === one.length - 1 ? pause : 0)));
    const other = write(list.flat(), gaps).slice(random.integer(0, 199));
    return { line: both(line, other), amount: pause };
  }),
  'running status': onMessages({ running: true }, (_, list) => ({
    seen: list.flatMap((one) => (one[0] !== undefined && one[0] >= 0x80 ? one : [])),
    amount: 0,
  })),
  'real-time inside': onMessages({ clock: 'inside' }, (random, list) => {
    const way = random.integer(0, 2);
    const seen = list.flatMap((one) => {
      const at = one.indexOf(0xf8);
      if (at < 0 || at === one.length) return one;
      // A bank and a program stand in one list: the clock breaks only the message that it stands in.
      const next = one.findIndex((byte, place) => place > at && byte >= 0x80 && byte < 0xf0);
      const end = next < 0 ? one.length : next;
      const start = one.findLastIndex((byte, place) => place < at && byte >= 0x80);
      if (start > 0 && at - start > 2 - ((one[start] ?? 0) >= 0xc0 && (one[start] ?? 0) < 0xe0 ? 1 : 0))
        return one;
      const tail = one.slice(end);
      if (way === 0) return [...one.slice(0, at + 1), ...tail];
      if (way === 1) return [...one.slice(0, start), 0xf8, ...tail];
      return [...one.slice(0, at), 0x78, ...one.slice(at + 1)];
    });
    return { seen, amount: way };
  }),
  'full buffer': (random, count) => {
    const list = messages(random, Math.max(count, 6));
    const sent = list.flat();
    const room = random.integer(2, 24);
    const reads = random.integer(340, 900);
    const seen: number[] = [];
    const waiting: number[] = [];
    let free = 0;
    sent.forEach((byte, at) => {
      const now = at * 320;
      while (waiting.length > 0 && free <= now) {
        waiting.shift();
        free = Math.max(free, now) + reads * (0.7 + 0.6 * random.next());
      }
      if (waiting.length >= room) return;
      if (waiting.length === 0) free = Math.max(free, now + reads);
      waiting.push(byte);
      seen.push(byte);
    });
    return { sent, seen: good(seen), amount: room };
  },
  'program count': (random, count) => {
    const channel = random.integer(0, 15);
    const list = [
      ...messages(random, count - 1),
      ...(random.chance(0.5) ? [[0xb0 + channel, 0, random.integer(1, 8)]] : []),
      [0xc0 + channel, random.integer(1, 126)],
    ];
    const more = random.pick([1, -1]);
    let status = 0;
    let place = 0;
    const seen = list.flat().map((byte) => {
      if (byte >= 0x80) [status, place] = [byte, 0];
      else place += 1;
      return status >= 0xc0 && status < 0xd0 && place === 1 ? (byte + more) & 0x7f : byte;
    });
    return { sent: list.flat(), seen: good(seen), amount: more };
  },
  'channel count': onMessages({}, (random, list) => {
    const more = random.pick([1, -1]);
    return {
      seen: list.flat().map((byte) => (byte >= 0x80 ? (byte & 0xf0) + ((byte + more + 16) % 16) : byte)),
      amount: more,
    };
  }),
  'hidden real-time': onMessages({ clock: 'between' }, (_, list) => ({
    seen: list.flat().filter((byte) => byte < 0xf8),
    amount: 0,
  })),
  'empty as FF': onMessages({}, (random, list) => {
    const share = random.pick([0.3, 0.5, 0.7]);
    const seen = list.flat().flatMap((byte) => {
      const before: number[] = [];
      while (random.chance(share)) before.push(0xff);
      return [...before, byte];
    });
    return { seen, amount: share };
  }),
};

/** How the monitor of a world shows bytes that ended badly. */
function monitor(random: Random, seen: readonly SeenByte[]): SeenByte[] {
  const way = random.integer(0, 2);
  if (way === 0) return [...seen];
  return way === 1 ? seen.map(({ value }) => ({ value, bad: false })) : seen.filter(({ bad }) => !bad);
}

const sameAs = (sent: readonly number[], seen: readonly SeenByte[]): boolean =>
  sent.length === seen.length && seen.every(({ value, bad }, at) => !bad && value === sent[at]);

/**
 * A log of 1 to 20 messages with a hidden cause. One that shows nothing, for everything or nothing arrived, is drawn again with the
 * same cause: no log can tell of a cause that does not show.
 */
export function drawLog(seed: number): Drawn {
  const random = seededRandom(seed);
  const cause = CAUSES[((seed % CAUSES.length) + CAUSES.length) % CAUSES.length] as Cause;
  for (;;) {
    const count = random.integer(1, 20);
    const { sent, seen: read, amount } = WORLD[cause](random, count);
    const seen = monitor(random, read);
    if (seen.length === 0 || sameAs(sent, seen) || sent.length > 400) continue;
    return { cause, amount, log: { sent, seen } };
  }
}

/** A log that no cause made: bytes of another song, noise, or what was sent with its order or its bits at random. */
export function drawForeign(seed: number): Drawn {
  const random = seededRandom(seed);
  const sent = messages(random, random.integer(1, 20)).flat();
  const shuffled = (list: readonly number[]): number[] => {
    const rest = [...list];
    return list.map(() => rest.splice(random.integer(0, rest.length - 1), 1)[0] ?? 0);
  };
  const make: readonly (() => number[])[] = [
    () => messages(random, random.integer(1, 20)).flat(),
    () =>
      Array.from({ length: random.integer(Math.ceil(sent.length / 2), 2 * sent.length) }, () =>
        random.integer(0, 255),
      ),
    () => shuffled(sent),
    () => sent.map((byte) => (random.chance(0.5) ? byte ^ random.integer(1, 255) : byte)),
    () =>
      sent.map((byte) =>
        Number.parseInt(byte.toString(2).padStart(8, '0').split('').toReversed().join(''), 2),
      ),
    () => sent.map((byte) => (byte < 0x80 ? random.integer(0, 127) : byte)),
  ];
  for (;;) {
    const seen = good(random.pick(make)());
    if (!sameAs(sent, seen)) return { cause: undefined, amount: 0, log: { sent, seen } };
  }
}
