/** Logs that people published, told here in full, against the simulation and the way back from it. */
import { describe, expect, test } from 'vitest';
import { lineCandidates } from '../../../src/core/arrived/line-causes.ts';
import { readerCandidates } from '../../../src/core/arrived/reader-causes.ts';
import { saySeen } from '../../../src/core/arrived/say-seen.ts';
import { upsideDown } from '../../../src/core/arrived/line-changes.ts';
import { ONE_LOOK } from '../../../src/core/signal/bit-budget.ts';
import { sendBytes } from '../../../src/core/signal/frames.ts';
import { delayEdges } from '../../../src/core/signal/hop.ts';
import { throughTransistor } from '../../../src/core/signal/opto-output.ts';
import { readLine } from '../../../src/core/signal/quick-reader.ts';
import { makeJack } from '../../../src/core/wiring/link.ts';
import { outputStage } from '../../../src/core/wiring/output-stage.ts';
import { ask } from './ask.ts';

const US = 1e-6;

describe('a line that is upside down (a public question: 90 88 00 was sent back to back)', () => {
  test('gives F3 FE 00, the first and the last without a stop bit', () => {
    // By hand: the bits of 90 88 00 turned over; the first start bit found is 5 bits into 90, the last 0 lasts.
    const { wave } = sendBytes([0x90, 0x88, 0x00]);
    expect(readLine(upsideDown(wave)).map(({ value, kind }) => [value, kind])).toEqual([
      [0xf3, 'framing error'],
      [0xfe, 'byte'],
      [0x00, 'break'],
    ]);
  });

  test('is found from F3 FE 00, whether or not the monitor marks the broken ones', () => {
    for (const seen of ['F3* FE 00*', 'F3 FE 00']) {
      const { state, causes, apart } = ask('90 88 00', seen);
      expect(state).toBe('causes');
      expect(causes.map(({ cause }) => cause)).toEqual(['upside down', 'swapped and lit']);
      expect(causes[0]?.spacing).toBe('all bytes without a pause');
      expect(causes.map(({ gives = [] }) => saySeen(gives))).toEqual([seen, seen]);
      expect(apart).toContain('the very same bytes');
    }
  });
});

describe('an optocoupler that is slow to release (public questions)', () => {
  const late = (bytes: readonly number[], micro: number, gapSeconds = 0) =>
    readLine(delayEdges(sendBytes(bytes, { gapSeconds }).wave, { toOnSeconds: 0, toOffSeconds: micro * US }));

  test('49 to 79 µs turn 90 3C 40, with pauses of two bits, into 00 30 00', () => {
    for (let micro = 49; micro <= 79; micro += 1)
      expect(
        late([0x90, 0x3c, 0x40], micro, 64 * US).map(({ value }) => value),
        `${micro} µs`,
      ).toEqual([0x00, 0x30, 0x00]);
  });

  test('are found from 00 30 00, and the range holds 50 to 78 µs', () => {
    const { causes } = ask('90 3C 40', '00 30 00');
    expect(causes[0]?.cause).toBe('slow to release');
    const [, least = NaN, most = NaN] = (
      /late by ([\d.]+) µs to ([\d.]+) µs/.exec(causes[0]?.strength ?? '') ?? []
    ).map(Number);
    expect(least).toBeLessThanOrEqual(50);
    expect(most).toBeGreaterThanOrEqual(78);
    expect(saySeen(causes[0]?.gives ?? [])).toBe('00 30 00');
  });

  test('16 µs lose a 1 that stands alone, and keep the last of two', () => {
    // By hand: a receiver that looks once, 14 to 16 µs into a bit, sees no 1 that begins 16 µs late; the bit after it is whole.
    const { wave } = sendBytes([0x10, 0x30]);
    const seen = readLine(delayEdges(wave, { toOnSeconds: 0, toOffSeconds: 16 * US }), {
      ...ONE_LOOK,
      phase: 0.5,
    });
    expect(seen.map(({ value }) => value)).toEqual([0x00, 0x20]);
  });

  test('a plain transistor on 2.7 kohm turns 25 into 05 for a receiver that looks once: only the 1 after two 0s is lost', () => {
    const stage = outputStage(
      makeJack('in', 'din5', 'din', { part: 'CNY17-2', values: { loadOhms: 2700, baseOhms: 0 } }),
    );
    if (!('model' in stage)) throw new Error('CNY17-2: needs a transistor');
    const line = throughTransistor(sendBytes([0x25]).wave, { stage, lit: { dark: 0, bright: 5.7e-3 } });
    expect(readLine(line, ONE_LOOK).map(({ value }) => value)).toEqual([0x05]);
    // In a message, for a receiver that votes, it is found from what it gives there.
    expect(ask('90 25 40', '00 05* 00*').causes[0]?.cause).toBe('slow to release');
  });
});

describe('running status', () => {
  test('90 37 40 35 00 39 40 leaves a reader that does not know it with one message (a public question)', () => {
    const [candidate] = readerCandidates().filter(({ cause }) => cause === 'running status');
    expect(candidate?.understood([0x90, 0x37, 0x40, 0x35, 0x00, 0x39, 0x40])).toEqual([0x90, 0x37, 0x40]);
    expect(ask('90 37 40 35 00 39 40', '90 37 40').causes[0]?.cause).toBe('running status');
  });

  test('the three note ons of the standard in 7 bytes become one (MIDI 1.0 4.2.1, appendix A-1)', () => {
    expect(ask('90 3C 27 40 2B 43 25', '90 3C 27').causes[0]?.cause).toBe('running status');
  });

  test('a clock between running messages ends nothing: the standard leaves running status alone', () => {
    const [candidate] = readerCandidates().filter(({ cause }) => cause === 'real-time inside');
    expect(candidate?.understood([0x90, 0x37, 0xf8, 0x40, 0x35, 0x00])).toEqual([0x90, 0x37, 0xf8]);
    expect(ask('90 37 F8 40', '90 37 F8').causes[0]?.cause).toBe('real-time inside');
  });
});

test('a reader whose clock is within 3.5 % reads well, and the widest mismatch tried loses bytes', () => {
  // 16 samples a bit bear 3.9 % one way and 4.5 % the other (KL27 reference manual rev 5, chapter 38).
  const clocks = lineCandidates().filter(({ cause }) => cause === 'clock off');
  const { wave } = sendBytes([0x00, 0x7f, 0x55]);
  const reads = (amount: number): readonly number[] =>
    readLine(wave, clocks.find((one) => one.amount === amount)?.receiver).map(({ value }) => value);
  expect(reads(0.035)).toEqual([0x00, 0x7f, 0x55]);
  expect(reads(-0.035)).toEqual([0x00, 0x7f, 0x55]);
  expect(reads(0.14)).not.toEqual([0x00, 0x7f, 0x55]);
  expect(reads(-0.14)).not.toEqual([0x00, 0x7f, 0x55]);
});
