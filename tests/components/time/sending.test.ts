/** What the timing figure shows of a sending, held to the sending itself. */
import { describe, expect, test } from 'vitest';
import {
  askedAt,
  drawSending,
  nextMoment,
  opticalWords,
  readingAt,
  stretchOf,
} from '../../../components/time/sending.ts';
import { stationLink } from '../../../components/time/station.ts';
import { PLAIN_JOURNEY, delaysOf, sayMicroseconds, sendOnJourney } from '../../../src/core/signal/index.ts';
import { makeJack } from '../../../src/core/wiring/index.ts';

const link = stationLink({ circuit: 'driver-5v', part: 'H11L1', lengthMetres: 2, wiring: 'line to line' });
const sent = sendOnJourney(link, undefined, [0x55, 0x0f], { ...PLAIN_JOURNEY, hops: 2 });
const { sending } = sent;
/** One bit by the standard's clock: 1 / 31 250 s. */
const BIT = 32e-6;

describe('The stretch that is shown', () => {
  test('of one byte is the byte with half a bit before and one bit after', () => {
    const second = sending.sent.bytes[1];
    const [from, to] = stretchOf(sent, 1);
    expect(from).toBeCloseTo((second?.startSeconds ?? 0) - BIT / 2, 9);
    expect(to).toBeCloseTo((second?.endSeconds ?? 0) + BIT, 9);
  });

  test('of everything holds all bytes sent and all that were heard', () => {
    const [from, to] = stretchOf(sent, -1);
    for (const { startSeconds, endSeconds } of sending.sent.bytes) {
      expect(startSeconds).toBeGreaterThan(from);
      expect(endSeconds).toBeLessThan(to);
    }
    for (const { readySeconds } of sending.reception.heard) expect(readySeconds).toBeLessThan(to);
  });
});

describe('The reading at a moment', () => {
  test('names the bit that is on the wire, and the line at rest before and after', () => {
    const [first] = sending.sent.bytes;
    const start = first?.startSeconds ?? 0;
    const at = (bits: number): string => readingAt(sent, 0, start + bits * BIT);
    expect(at(-0.4)).toContain('line at rest');
    expect(at(0.5)).toContain('byte 1, start bit');
    // 55 in hex is 01010101: its lowest bit, sent first, is 1, the next 0.
    expect(at(1.5)).toContain('byte 1, data bit 0: 1');
    expect(at(2.5)).toContain('byte 1, data bit 1: 0');
    expect(at(9.5)).toContain('byte 1, stop bit');
    expect(readingAt(sent, 0, 1)).toContain('line at rest');
  });

  test('tells a current while a 0 is sent and almost none at rest, and nothing of a link that is not there', () => {
    const [first] = sending.sent.bytes;
    const amount = (seconds: number): number =>
      Number(/; ([\d.]+) mA at the input/.exec(readingAt(sent, 0, seconds))?.[1]);
    expect(amount((first?.startSeconds ?? 0) + BIT / 2)).toBeGreaterThan(3);
    expect(amount((first?.startSeconds ?? 0) - BIT)).toBeLessThan(0.1);
    expect(readingAt(sent, 9, 0)).toBe('');
  });
});

test('what is read where the bytes are asked is the moment and the current, and no bit', () => {
  const start = sending.sent.bytes[0]?.startSeconds ?? 0;
  expect(askedAt(sent, 0, start + BIT / 2)).toMatch(/^[\d.]+ µs: [\d.]+ mA at the input$/);
  expect(askedAt(sent, 9, 0)).toBe('');
});

describe('Going from moment to moment', () => {
  test('by bits reaches the middle of each in turn, there and back', () => {
    const [start, end] = stretchOf(sent, 0);
    const there: number[] = [];
    for (let at = start; at < end;) {
      at = nextMoment(sent, 1, 0, at, 'bit', 1);
      if (at < end) there.push(at);
    }
    // Ten bits of the byte, and the start bit of the next half a bit into the space after it.
    expect(there.length).toBeGreaterThanOrEqual(10);
    for (const [place, at] of there.entries())
      if (place > 0) expect(at - (there[place - 1] ?? 0)).toBeCloseTo(BIT, 9);
    const back = there.map((_, place) => there[there.length - 1 - place] ?? 0).slice(1);
    let at = there.at(-1) ?? 0;
    for (const before of back) {
      at = nextMoment(sent, 1, 0, at, 'bit', -1);
      expect(at).toBeCloseTo(before, 9);
    }
  });

  test('by edges stops at each edge of the output, and the ends are the ends', () => {
    const [start, end] = stretchOf(sent, -1);
    const first = sending.legs[1]?.output.edges.find(({ seconds }) => seconds > start);
    expect(nextMoment(sent, 1, -1, start, 'edge', 1)).toBe(first?.seconds);
    expect(nextMoment(sent, 1, -1, start, 'edge', -1)).toBe(start);
    expect(nextMoment(sent, 1, -1, start, 'end', 1)).toBe(end);
    expect(nextMoment(sent, 1, -1, end, 'end', -1)).toBe(start);
  });
});

describe('The drawing of a sending', () => {
  test('shows what was heard on the last link alone', () => {
    const [first, last] = [0, 1].map((leg) => drawSending(sent, leg, -1, 800));
    expect(first?.reports).toEqual([]);
    expect(last?.reports.map(({ text }) => text)).toEqual(['55', '0F']);
    expect(last?.reports.every(({ good }) => good)).toBe(true);
  });

  test('of a link that is not there is refused', () => {
    expect(() => drawSending(sent, 2, -1, 800)).toThrow('timing: has no leg 2');
  });
});

describe('The words for an optocoupler', () => {
  test('name its delays as the core has them, and say so where there is none', () => {
    const jack = link.branches[0]?.input ?? makeJack('in', 'din5', 'din');
    const { toOnSeconds, toOffSeconds } = delaysOf(jack, true);
    const words = opticalWords(link, true);
    expect(words).toContain(`${sayMicroseconds(toOnSeconds)} to on, ${sayMicroseconds(toOffSeconds)} to off`);
    const logic = makeJack('in', 'trs-3.5', 'type-a', { circuit: 'receiver-logic' });
    const other = { ...link, branches: [{ input: logic, leads: [] }] };
    expect(opticalWords(other, true)).toBe('no optocoupler: the level is read as it is');
  });
});
