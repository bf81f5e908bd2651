import { describe, expect, test } from 'vitest';
import { readTyped } from '../../../src/core/arrived/read-typed.ts';
import { saySeen } from '../../../src/core/arrived/say-seen.ts';
import type { Writing } from '../../../src/core/arrived/read-typed.ts';

function read(text: string, writing?: Writing): string {
  const found = readTyped(text, writing);
  return 'problem' in found ? found.problem : saySeen(found.bytes);
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

  test('what is no byte is told with its line', () => {
    expect(read('90 3C 4')).toBe("line 1: expected two hex digits, as in 3C, got '4'");
    expect(read('144 60 300', 'decimal')).toBe("line 1: expected a number from 0 to 255, got '300'");
    expect(read('90 zz')).toBe("line 1: expected two hex digits, as in 3C, got 'zz'");
    expect(read('')).toBe('nothing');
    expect(read('00 '.repeat(2001))).toBe('expected at most 2000 bytes, got 2001');
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
    expect(read('note on ch 1 C#3 100')).toBe(
      "line 1: expected the note as a number, for octaves are counted in several ways, got 'c#3'",
    );
    expect(read('90 3C 40\nnote on ch 17 60 64')).toContain(
      'line 2: note on: channel must be a whole number',
    );
  });
});
