import { describe, expect, test } from 'vitest';
import { readTyped } from '../../../src/core/arrived/read-typed.ts';
import { saySeen } from '../../../src/core/arrived/say-seen.ts';
import { seededRandom } from '../../support/random.ts';
import type { Writing } from '../../../src/core/arrived/read-typed.ts';

function read(text: string, writing?: Writing): string {
  const { bytes, left } = readTyped(text, writing);
  return [...left, ...(bytes.length > 0 || left.length === 0 ? [saySeen(bytes)] : [])].join('; ');
}

describe('bytes as people type them', () => {
  test('in hex, with or without a prefix, parted by blanks, commas or lines', () => {
    expect(read('90 3C 40')).toBe('90 3C 40');
    expect(read('0x90, 0x3c, 0x40')).toBe('90 3C 40');
    expect(read('$90 $3C 40h')).toBe('90 3C 40');
    expect(read('90 3c 40\n80 3c 40\n')).toBe('90 3C 40 80 3C 40');
  });

  test('in decimal, found out by a number above 99 or of one digit', () => {
    expect(read('144 60 64')).toBe('90 3C 40');
    expect(read('192, 5')).toBe('C0 05');
    // Two digits throughout can be both: hex unless somebody says decimal.
    expect(read('10 20')).toBe('10 20');
    expect(read('10 20', 'decimal')).toBe('0A 14');
  });

  test('with bad ones marked by a star, or by words behind them', () => {
    expect(read('F3* FE 00*')).toBe('F3* FE 00*');
    expect(read('F3 (framing error) FE 00 (break)')).toBe('F3* FE 00*');
    expect(read('F3 framing FE')).toBe('F3* FE');
  });

  test('what is no byte is told with its line, what was expected and what came', () => {
    const hex = 'expected bytes in hex, each of two digits from 00 to FF';
    expect(read('90 3C 4')).toBe(`line 1: ${hex}, got '4'`);
    expect(read('144 60 300', 'decimal')).toBe(
      "line 1: expected bytes in decimal, each a number from 0 to 255, got '300'",
    );
    expect(read('90 zz')).toBe(`line 1: ${hex}, got 'zz'`);
    expect(read('')).toBe('nothing');
  });

  test('a log that is partly nonsense keeps the lines that can be read', () => {
    const { bytes, left } = readTyped('90 3C 40\nzz qq\n80 3C 300\n\n---\nC0 05');
    expect(saySeen(bytes)).toBe('90 3C 40 C0 05');
    expect(left.map((one) => one.replace(/:.*got/, ':'))).toEqual(["line 2: 'zz qq'", "line 3: '300'"]);
    const long = readTyped('00 '.repeat(2001));
    expect([long.bytes.length, long.left]).toEqual([
      2000,
      ['expected at most 2000 bytes, got 2001: the rest is left out'],
    ]);
  });
});

describe('logs as monitors write them', () => {
  test('times and labels before the bytes of a line are passed over', () => {
    expect(read('12:30:05.123  90 3C 40\n12:30:05.456  80 3C 40')).toBe('90 3C 40 80 3C 40');
    expect(read('[0.120] In: 90 3C 40\n[0.480] In: 80 3C 40')).toBe('90 3C 40 80 3C 40');
    expect(read('1. 90 3C 40\n2. 80 3C 40')).toBe('90 3C 40 80 3C 40');
  });

  test('messages in words are read, channels counted from 1', () => {
    // MIDI 1.0 4.2.1, table I: 9n note on, 8n note off, Bn control, Cn program, En pitch bend, low seven bits first.
    expect(read('Note On, channel 1, note 60, velocity 64')).toBe('90 3C 40');
    expect(read('note_off ch=2 60 0')).toBe('81 3C 00');
    expect(read('0.5 s Control Change chan 16 7 100')).toBe('BF 07 64');
    expect(read('Program Change: Ch 10, 4')).toBe('C9 04');
    expect(read('Pitch bend ch 1 8192')).toBe('E0 00 40');
    expect(read('Channel pressure ch 3 90\nClock\nActive sensing')).toBe('D2 5A F8 FE');
  });

  test('a message in words that cannot be one says what it needs', () => {
    expect(read('note on ch 1 60')).toBe(
      "line 1: expected note and velocity as numbers, got 'note on ch 1 60'",
    );
    expect(read('90 3C 40\nnote on ch 17 60 64')).toBe(
      "line 2: expected a channel from 1 to 16, got '17'; 90 3C 40",
    );
  });

  // Invented logs; each is the same note on and off, worked out by hand from table I of MIDI 1.0 4.2.1.
  test.each([
    ['in the brackets of a program', '{0x90, 0x3c, 0x40},\n{0x80, 0x3c, 0x00}'],
    ['as lists of numbers', '[144, 60, 64],\n[128, 60, 0]'],
    ['in columns with commas, with a head', 'time,status,data,data\n0.001,144,60,64\n0.251,128,60,0'],
    ['in hex with commas', '90,3C,40\n80,3C,00'],
    ['behind a date', '2031-05-01T12:30:05.123Z 90 3C 40\n2031-05-01T12:30:05.373Z 80 3C 00'],
    ['behind a moment with a comma', '0,125 90 3C 40\n0,375 80 3C 00'],
    [
      'between a port and a remark',
      '00:01.250 | IN 2 | 90 3C 40 | note C3\n00:01.500 | IN 2 | 80 3C 00 | note C3',
    ],
    ['behind a port with a number', 'Port 2: 90 3C 40\nUSB-1: 80 3C 00'],
    ['with a remark that looks like a byte', '90 3C 40 C4 velocity 64\n80 3C 00 C4 velocity 0'],
    ['behind a count and the time since the last', '#12  +15 ms  90 3C 40\n#13 +250 ms 80 3C 00'],
    ['behind a count alone', '1 90 3C 40\n2 80 3C 00'],
    ['behind milliseconds', '15 90 3C 40\n1250 80 3C 00'],
    ['before the time since the last', '90 3C 40 +0 ms\n80 3C 00 +250 ms'],
    ['as a dump', '0000: 90 3C 40 |.<@|\n0003: 80 3C 00 |.<.|'],
    ['joined by strokes, or by nothing', '90-3C-40\n803C00'],
    ['as fields with names', '{"time": 1.25, "bytes": [144, 60, 64]}\n{"time": 1.5, "bytes": [128, 60, 0]}'],
    ['in words', 'Note On ch 1 60 64\nNote Off ch 1 60 0'],
    ['in words with the channel first', 'Note On 1 60 64\nNoteOff(1, 60, 0)'],
    [
      'in words with fields in any order',
      'note_on channel=0 velocity=64 note=60 time=0\nnote_off channel=0 note=60 velocity=0 time=0.5',
    ],
    ['in words beside bytes', '0.25  90 3C 40  Note On  1  C4  64\n0.50  Note Off 1 C4 0 [80 3C 00]'],
  ])('%s', (_, text) => {
    expect(read(text).replace(/^line 1: .*time,status.*; /, '')).toBe('90 3C 40 80 3C 00');
  });

  test('CC is a byte among bytes, and a controller before numbers that are none', () => {
    expect(read('CC 07 36')).toBe('CC 07 36');
    expect(read('CC 7 100')).toBe('B0 07 64');
  });

  test('more messages in words', () => {
    expect(read('CC7 100 ch.3\nPC5 ch 3\nCC#7=100 Ch 1')).toBe('B2 07 64 C2 05 B0 07 64');
    expect(read('Poly pressure ch 1 60 33\nAftertouch ch 1 33')).toBe('A0 3C 21 D0 21');
    expect(read('SysEx: F0 7E 7F 06 01 F7')).toBe('F0 7E 7F 06 01 F7');
  });

  test('names of notes are counted from the octave that middle C is said to be in', () => {
    // By hand: C4 is 60 where middle C is C4, and 72 where it is C3; the half tones of an octave are 12.
    const notes = (text: string, octave: number) => saySeen(readTyped(text, 'either', octave).bytes);
    expect(notes('note on ch 1 C4 64', 4)).toBe('90 3C 40');
    expect(notes('note on ch 1 C4 64', 3)).toBe('90 48 40');
    expect(notes('note on ch 1 C#3 64\nnote on ch 1 Bb2 64', 3)).toBe('90 3D 40 90 3A 40');
    expect([readTyped('note on ch 1 C4 64').named, readTyped('90 3C 40').named]).toEqual([true, false]);
  });

  test('what is written from bytes is read as the same bytes, whichever way', () => {
    const random = seededRandom(11);
    for (let round = 0; round < 60; round += 1) {
      // A status byte first, as every message has one, and a number above 99 in it.
      const bytes = [random.integer(0x90, 0xef), random.integer(0, 127), random.integer(0, 127)];
      const hex = bytes.map((one) => one.toString(16).padStart(2, '0'));
      const want = hex.join(' ').toUpperCase();
      expect(
        [hex.join(' '), hex.join('-'), bytes.join(' '), bytes.join(','), `0x${hex.join(', 0x')}`].map(
          (text) => read(text),
        ),
      ).toEqual([want, want, want, want, want]);
      expect(read(hex.map((one) => `${one}*`).join(' '))).toBe(want.replaceAll(/(?= |$)/g, '*'));
    }
  });
});
