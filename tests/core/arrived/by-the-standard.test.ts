/** Bytes worked out by hand from the tables of the MIDI 1.0 detailed specification (4.2.1): what a monitor shows of them, and how a line in words is read. */
import { describe, expect, test } from 'vitest';
import { codeOf, seenOf, shownAs, viewsOf } from '../../../src/core/arrived/log.ts';
import { barePart, tokensOf } from '../../../src/core/arrived/log-line.ts';
import { countsFromZero, readMessageLine } from '../../../src/core/arrived/read-messages.ts';
import { readTyped } from '../../../src/core/arrived/read-typed.ts';
import { saySeen } from '../../../src/core/arrived/say-seen.ts';
import { layOut } from '../../../src/core/arrived/spacing.ts';
import type { Spacing } from '../../../src/core/arrived/spacing.ts';
import type { ReceivedByte } from '../../../src/core/signal/index.ts';
import { hex } from './ask.ts';

const bytesIn = (text: string): readonly number[] => hex(text).map(({ value }) => value);
/** Bytes as they come from a line; a star marks one that ended in a framing error. */
const received = (text: string): readonly ReceivedByte[] =>
  hex(text).map(({ value, bad }, at) => ({
    value,
    kind: bad ? 'framing error' : 'byte',
    seconds: at * 320e-6,
  }));
const shown = (view: Parameters<typeof shownAs>[0], text: string): string =>
  saySeen(shownAs(view, received(text)).map(seenOf));

describe('a monitor of whole messages', () => {
  test.each([
    // Table I: 8n, 9n, An, Bn and En have two data bytes, Cn and Dn have one.
    [
      'every kind of channel message',
      '80 3C 40 91 3C 40 A2 3C 01 B3 07 7F C4 05 D5 33 E6 00 40',
      '80 3C 40 91 3C 40 A2 3C 01 B3 07 7F C4 05 D5 33 E6 00 40',
    ],
    // Running status: the status byte before still holds, and is written out again.
    ['running status', '90 3C 40 3E 40 40 00', '90 3C 40 90 3E 40 90 40 00'],
    ['running status of one data byte', 'C0 05 06 07', 'C0 05 C0 06 C0 07'],
    // Table V: real-time bytes may stand anywhere, and end nothing.
    ['a clock between the bytes of a message', '90 3C F8 40', 'F8 90 3C 40'],
    ['a clock between running messages', '90 3C 40 F8 3E 40', '90 3C 40 F8 90 3E 40'],
    ['start, continue, stop, sensing and reset', 'FA FB FC FE FF', 'FA FB FC FE FF'],
    // Table IV: F1 and F3 have one data byte, F2 has two, F6 none; they end running status.
    ['system common messages', 'F1 25 F2 00 08 F3 04 F6', 'F1 25 F2 00 08 F3 04 F6'],
    ['data after a system common message, which ends running status', '90 3C 40 F6 3E 40', '90 3C 40 F6'],
    // Undefined: F4, F5, F9 and FD have no meaning and are ignored.
    ['bytes without a meaning', 'F9 90 3C 40 FD', '90 3C 40'],
    ['data without a status', '3C 40 90 3C 40', '90 3C 40'],
    ['a message cut short by the next', '90 3C 80 3C 40', '80 3C 40'],
    ['a message cut short at the end', '90 3C 40 B0 07', '90 3C 40'],
  ])('shows %s', (_, sent, want) => {
    expect(shown('whole messages', sent)).toBe(want);
  });

  test('shows a system exclusive message whole, with its end, and none that is cut short', () => {
    expect(shown('whole messages', 'F0 7E 7F 06 01 F7')).toBe('F0 7E 7F 06 01 F7');
    // By the standard any status byte but a real-time one ends it; what was begun is no message.
    const cut = shown('whole messages', 'F0 7E 7F 06 90 3C 40');
    expect(cut.endsWith('90 3C 40')).toBe(true);
    expect(shown('whole messages', 'F0 7E 7F 06 01')).not.toContain('F7');
    expect(shown('whole messages', 'F0 7E F8 7F 06 01 F7')).toBe('F8 F0 7E 7F 06 01 F7');
  });

  test('leaves out what is bad before it looks for messages', () => {
    expect(shown('whole messages', '90 3C* 40 3E')).toBe('90 40 3E');
    expect(shown('whole messages', '90* 3C 40')).toBe('nothing');
  });
});

describe('the other monitors', () => {
  test('mark what is bad, show all alike, or leave it out', () => {
    expect(shown('marked', 'F3* FE 00*')).toBe('F3* FE 00*');
    expect(shown('plain', 'F3* FE 00*')).toBe('F3 FE 00');
    expect(shown('good bytes only', 'F3* FE 00*')).toBe('FE');
    expect(shown('good bytes only', '')).toBe('nothing');
  });

  test('are the marking one where a byte is marked, and the three others where none is', () => {
    expect(viewsOf(hex('F3* FE'))).toEqual(['marked']);
    expect(viewsOf(hex('F3 FE'))).toEqual(['plain', 'good bytes only', 'whole messages']);
    expect(viewsOf([])).toHaveLength(3);
  });

  test('keep every byte and its mark in one code, and give both back', () => {
    for (const bad of [false, true])
      for (let value = 0; value < 256; value += 1) {
        expect(seenOf(codeOf({ value, bad }))).toEqual({ value, bad });
        expect(codeOf({ value, bad }) >= 256).toBe(bad);
      }
  });
});

describe('bytes laid out in time', () => {
  const SPACING: Spacing = { insideSeconds: 100e-6, betweenSeconds: 1e-3, words: '' };
  /** Idle time after each byte but the last, microseconds: from its end to the start of the next. */
  const gaps = (text: string): readonly number[] => {
    const { bytes } = layOut(bytesIn(text), SPACING);
    return bytes
      .slice(1)
      .map(({ startSeconds }, at) => Math.round((startSeconds - (bytes[at]?.endSeconds ?? 0)) * 1e6));
  };

  test.each([
    ['three bytes of one message, then the next', '90 3C 40 80 3C', [100, 100, 1000, 100]],
    ['running status: a message ends after each pair', '90 3C 40 3E 40', [100, 100, 1000, 100]],
    ['a clock inside a message ends nothing', '90 F8 3C 40 C0', [100, 100, 100, 1000]],
    ['a clock between messages is one itself', '90 3C 40 F8 C0', [100, 100, 1000, 1000]],
    ['a program change ends after one data byte', 'C0 05 C0', [100, 1000]],
    ['a system exclusive message ends with F7', 'F0 7E 06 F7 F8', [100, 100, 100, 1000]],
  ] as const)('%s', (_, text, want) => {
    expect(gaps(text)).toEqual(want);
  });

  test('takes 320 µs a byte: ten bits at 31 250 a second', () => {
    const { bytes } = layOut(bytesIn('90 3C 40'), { insideSeconds: 0, betweenSeconds: 0, words: '' });
    for (const { startSeconds, endSeconds } of bytes)
      expect((endSeconds - startSeconds) * 1e6).toBeCloseTo(320, 6);
    expect((bytes.at(-1)?.endSeconds ?? 0) * 1e6).toBeCloseTo(960, 6);
  });
});

describe('a message in words', () => {
  const bytes = (line: string, firstChannel: 0 | 1 = 1, middleOctave = 4): string => {
    const read = readMessageLine(line, 'line 7', { firstChannel, middleOctave });
    return read === undefined ? 'no message' : 'problem' in read ? read.problem : saySeen(read.bytes);
  };

  test.each([
    // Channel n is sent as n - 1 in the low half of the status byte.
    ['Note On channel 1 note 60 velocity 64', '90 3C 40'],
    ['note-off, ch 16, 127, 0', '8F 7F 00'],
    ['velocity=64 note=60 channel=3 note_on', '92 3C 40'],
    ['Poly Key Pressure ch 5 60 33', 'A4 3C 21'],
    ['key pressure ch 5 note 60 pressure 33', 'A4 3C 21'],
    ['controller ch 2 number 7 value 100', 'B1 07 64'],
    ['control change 2 7 100', 'B1 07 64'],
    ['programme change ch 10 number 4', 'C9 04'],
    ['PC 12', 'C0 0C'],
    ['Channel Aftertouch ch 4 90', 'D3 5A'],
    // A pitch bend is sent in 14 bits, the low seven first: 8192 is 2000 in hex, 00 40; 0 is 00 00; 16383 is 7F 7F.
    ['pitch bend ch 1 8192', 'E0 00 40'],
    ['pitch wheel ch 1 0', 'E0 00 00'],
    ['Pitch ch 1 bend 16383', 'E0 7F 7F'],
    ['pitch bend ch 1 8191', 'E0 7F 3F'],
    ['Timing Clock', 'F8'],
    ['active sense', 'FE'],
    ['START', 'FA'],
    ['- stop -', 'FC'],
    ['continue', 'FB'],
  ])('%s is %s', (line, want) => {
    expect(bytes(line)).toBe(want);
  });

  test('is none where no message is named, and start and stop are none inside other words', () => {
    for (const line of ['hello', '1 2 3', 'started at noon', 'stop bit', 'song position'])
      expect(bytes(line)).toBe('no message');
  });

  test('says where and what it needs where a number is missing, too large, or no channel', () => {
    expect(bytes('note on ch 1 60')).toBe(
      "line 7: expected note and velocity as numbers, got 'note on ch 1 60'",
    );
    expect(bytes('control change ch 1')).toContain('expected controller and value as numbers');
    expect(bytes('note on ch 0 60 64')).toBe("line 7: expected a channel from 1 to 16, got '0'");
    expect(bytes('note on ch 16 60 64', 0)).toBe("line 7: expected a channel from 0 to 15, got '16'");
    for (const line of ['note on ch 1 128 64', 'pc ch 1 128', 'pitch bend ch 1 16384'])
      expect(bytes(line)).toMatch(/^line 7: /);
  });

  test('counts channels from 0 where one of its lines has a channel 0', () => {
    expect([
      countsFromZero('note on ch 0 60 64'),
      countsFromZero('note on ch 1 60 64'),
      countsFromZero('note on'),
    ]).toEqual([true, false, false]);
    expect(bytes('note on ch 0 60 64', 0)).toBe('90 3C 40');
    expect(saySeen(readTyped('note on ch 0 60 64\nnote on ch 15 60 64').bytes)).toBe('90 3C 40 9F 3C 40');
  });

  test('names notes by letter, sign and octave: twelve half tones an octave, middle C is 60', () => {
    const note = (name: string, octave: number): string =>
      bytes(`note on ch 1 ${name} 64`, 1, octave).slice(3, 5);
    // Half tones above C: D 2, E 4, F 5, G 7, A 9, B 11; 60 is 3C in hex.
    expect(['C4', 'D4', 'E4', 'F4', 'G4', 'A4', 'B4'].map((name) => note(name, 4))).toEqual([
      '3C',
      '3E',
      '40',
      '41',
      '43',
      '45',
      '47',
    ]);
    expect([note('C#4', 4), note('Db4', 4), note('Bb3', 4), note('C-1', 4), note('G9', 4)]).toEqual([
      '3D',
      '3D',
      '3A',
      '00',
      '7F',
    ]);
    expect([note('C3', 3), note('C5', 5), note('C4', 5)]).toEqual(['3C', '3C', '30']);
  });
});

describe('what stands around bytes in a line', () => {
  test.each([
    ['[12:30:05.123] 90 3C 40', '90 3C 40'],
    ['2031-05-01T12:30:05.123Z 90 3C 40', '90 3C 40'],
    ['+15 ms: 90 3C 40', '90 3C 40'],
    ['#12. 90 3C 40', '90 3C 40'],
    ['3) 90 3C 40', '90 3C 40'],
    ['"90 3C 40" @ 1.5 s', '90 3C 40'],
    ['0000: 90 3C 40 |.<@|', '90 3C 40'],
    ['timestamp=12.5 90 3C 40', '90 3C 40'],
  ])('%s', (line, want) => {
    expect(barePart(line).replace(/["|]/g, ' ').trim()).toBe(want);
  });

  test('is parted at every sign that parts lists, a mark kept with its byte', () => {
    expect(tokensOf('[0x90, 0x3C; {40}]')).toEqual(['0x90', '0x3C', '40']);
    expect(tokensOf('F3 framing error, FE, 00 (break)')).toEqual(['F3*', 'FE', '00*']);
    expect(tokensOf('903C40')).toEqual(['90', '3C', '40']);
    expect(tokensOf('90-3c-40')).toEqual(['90', '3c', '40']);
    // Four digits without a letter may be a count.
    expect(tokensOf('1250 90')).toEqual(['1250', '90']);
    expect(tokensOf('--- ||| ,,,')).toEqual([]);
  });
});

describe('a log that is spoiled', () => {
  test('loses the line that cannot be read, and says which and why', () => {
    const { bytes, left } = readTyped('90 3C 40\n90 zz 40\n80 3C 00', 'hex');
    expect(saySeen(bytes)).toBe('90 3C 40 80 3C 00');
    expect(left).toHaveLength(1);
    expect(left[0]).toMatch(/^line 2: expected bytes in hex/);
  });

  test('of numbers that are no bytes is not read', () => {
    expect(readTyped('256 300', 'decimal').bytes).toEqual([]);
    expect(readTyped('256 300', 'decimal').left[0]).toContain('each a number from 0 to 255');
    expect(readTyped('', 'hex')).toMatchObject({ bytes: [], left: [] });
  });

  test('of too many bytes keeps the first 2000, and says so', () => {
    const { bytes, left } = readTyped(Array.from({ length: 700 }, () => '90 3C 40').join('\n'));
    expect(bytes).toHaveLength(2000);
    expect(left).toEqual(['expected at most 2000 bytes, got 2100: the rest is left out']);
  });

  test('in two writings is read in the one that leaves fewer lines', () => {
    // 144 60 64 is 90 3C 40; as hex three digits are no byte.
    expect(readTyped('144 60 64\n128 60 0')).toMatchObject({ writing: 'decimal', left: [] });
    expect(readTyped('90 3C 40\n80 3C 00')).toMatchObject({ writing: 'hex', left: [] });
    // Two digits each can be either: hex, as bytes mostly are.
    expect(readTyped('90 60 64').writing).toBe('hex');
  });
});
