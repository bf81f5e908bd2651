/** Every field of every message at its bounds and past them, and the words that say so. */
import { describe, expect, it } from 'vitest';
import { checkMessage } from '../../../src/core/signal/check-message.ts';
import { encode } from '../../../src/core/signal/encode.ts';
import { CHANNEL_MODES, bankSelect } from '../../../src/core/signal/messages.ts';
import type { Message } from '../../../src/core/signal/messages.ts';
import { bytesOf } from '../../../src/core/signal/items.ts';
import type { Item } from '../../../src/core/signal/items.ts';

/** A good message of each kind, and the largest number that each of its fields may hold: MIDI 1.0 Detailed Specification, tables I to VII. */
const KINDS: readonly (readonly [Message, Readonly<Record<string, number>>])[] = [
  [
    { kind: 'note off', channel: 0, note: 0, velocity: 0 },
    { channel: 15, note: 127, velocity: 127 },
  ],
  [
    { kind: 'note on', channel: 0, note: 0, velocity: 0 },
    { channel: 15, note: 127, velocity: 127 },
  ],
  [
    { kind: 'key pressure', channel: 0, note: 0, pressure: 0 },
    { channel: 15, note: 127, pressure: 127 },
  ],
  [
    { kind: 'control change', channel: 0, controller: 0, value: 0 },
    { channel: 15, controller: 119, value: 127 },
  ],
  [
    { kind: 'channel mode', channel: 0, mode: 'poly on', value: 0 },
    { channel: 15, value: 127 },
  ],
  [
    { kind: 'program change', channel: 0, program: 0 },
    { channel: 15, program: 127 },
  ],
  [
    { kind: 'channel pressure', channel: 0, pressure: 0 },
    { channel: 15, pressure: 127 },
  ],
  [
    { kind: 'pitch bend', channel: 0, bend: 0 },
    { channel: 15, bend: 16383 },
  ],
  [{ kind: 'quarter frame', value: 0 }, { value: 127 }],
  [{ kind: 'song position', sixteenths: 0 }, { sixteenths: 16383 }],
  [{ kind: 'song select', song: 0 }, { song: 127 }],
];
/** What stands behind the bounds of some fields. */
const NOTES: Readonly<Record<string, string>> = {
  channel: ' (channels 1 to 16)',
  controller: ' (120 to 127 are channel modes)',
  program: ' (programs 1 to 128)',
};
const having = (message: Message, field: string, value: number): Message =>
  ({ ...message, [field]: value }) as Message;

describe('a field of a message', () => {
  it('may be nothing or the most that its bits hold, and is then sent in data bytes alone', () => {
    for (const [message, most] of KINDS)
      for (const [field, largest] of Object.entries(most))
        for (const value of [0, largest]) {
          const full = having(message, field, value);
          expect(checkMessage(full)).toEqual([]);
          const [status = 0, ...data] = encode([full]);
          expect(status).toBeGreaterThanOrEqual(0x80);
          for (const byte of data) expect(byte).toBeLessThan(0x80);
        }
  });

  it('is refused a step past either bound, between two numbers, and where it is none, in these words', () => {
    for (const [message, most] of KINDS)
      for (const [field, largest] of Object.entries(most))
        for (const value of [-1, largest + 1, 0.5, NaN, Infinity]) {
          const need = `a whole number from 0 to ${largest}${NOTES[field] ?? ''}`;
          const bad = having(message, field, value);
          expect(checkMessage(bad)).toEqual([
            {
              field,
              need,
              value: String(value),
              words: `${message.kind}: ${field} must be ${need}, got ${value}`,
            },
          ]);
          expect(() => encode([bad])).toThrow(`${message.kind}: ${field} must be ${need}, got ${value}`);
        }
  });

  it('is told of together with every other that cannot be, in the order of the bytes', () => {
    const bad: Message = { kind: 'note on', channel: 16, note: 128, velocity: -1 };
    expect(checkMessage(bad).map(({ field }) => field)).toEqual(['channel', 'note', 'velocity']);
  });

  it('of an exclusive is one of its data bytes, counted from 1', () => {
    expect(checkMessage({ kind: 'exclusive', data: [1, 128, 3, -1] }).map(({ words }) => words)).toEqual([
      'exclusive: data byte 2 must be a whole number from 0 to 127, got 128',
      'exclusive: data byte 4 must be a whole number from 0 to 127, got -1',
    ]);
    expect(checkMessage({ kind: 'exclusive', data: [] })).toEqual([]);
  });

  it('that is a word must be one of the words there are', () => {
    expect(
      checkMessage({ kind: 'channel mode', channel: 0, mode: 'hush' as never, value: 0 })[0]?.words,
    ).toBe(`channel mode: mode must be one of ${CHANNEL_MODES.join(', ')}, got hush`);
    expect(checkMessage({ kind: 'real-time', signal: 'tick' as never })[0]?.words).toBe(
      'real-time: signal must be one of clock, start, continue, stop, active sensing, reset, got tick',
    );
  });
});

describe('a number of fourteen bits', () => {
  it('leaves low seven bits first, for every power of two and its neighbours', () => {
    for (let bit = 0; bit < 14; bit++)
      for (const value of [2 ** bit - 1, 2 ** bit, 2 ** bit + 1].filter((one) => one >= 0 && one <= 16383)) {
        expect(encode([{ kind: 'pitch bend', channel: 3, bend: value }])).toEqual([
          0xe3,
          value % 128,
          Math.floor(value / 128),
        ]);
        expect(encode([{ kind: 'song position', sixteenths: value }]).slice(1)).toEqual([
          value % 128,
          Math.floor(value / 128),
        ]);
      }
  });

  it('of a bank goes in two control changes, the high part first, and makes it up again', () => {
    for (const bank of [0, 1, 127, 128, 130, 16383]) {
      const [high, low] = bankSelect(5, bank);
      expect([high.controller, low.controller]).toEqual([0, 32]);
      expect(128 * high.value + low.value).toBe(bank);
      expect(checkMessage(high).concat(checkMessage(low))).toEqual([]);
    }
    const [high] = bankSelect(0, 16384);
    expect(checkMessage(high)).toHaveLength(1);
    expect(checkMessage(bankSelect(0, -1)[0])).toHaveLength(1);
  });
});

describe('a list as people write it', () => {
  const program: Message = { kind: 'program change', channel: 0, program: 4 };

  it('holds messages, banks and bytes by hand, each in its place', () => {
    const items: readonly Item[] = [
      { kind: 'bank select', channel: 0, bank: 130 },
      program,
      { kind: 'bytes', bytes: [0xfe, 7] },
      program,
    ];
    expect(bytesOf(items, false)).toEqual([0xb0, 0, 1, 0xb0, 32, 2, 0xc0, 4, 0xfe, 7, 0xc0, 4]);
  });

  it('lets running status reach over a bank but not over bytes by hand', () => {
    const items: readonly Item[] = [{ kind: 'bank select', channel: 0, bank: 130 }, program, program];
    expect(bytesOf(items, true)).toEqual([0xb0, 0, 1, 32, 2, 0xc0, 4, 4]);
    expect(bytesOf([program, { kind: 'bytes', bytes: [] }, program], true)).toEqual([0xc0, 4, 0xc0, 4]);
  });

  it('of nothing is no bytes', () => {
    expect(bytesOf([], true)).toEqual([]);
  });
});
