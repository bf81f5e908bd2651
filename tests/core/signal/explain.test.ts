import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { explainBytes } from '../../../src/core/signal/explain.ts';
import { anyByte } from './arbitrary.ts';

const words = (bytes: readonly number[]): readonly string[] => explainBytes(bytes).map((row) => row.words);

describe('explaining bytes', () => {
  it('shows channel and program from 0 and from 1', () => {
    expect(words([0xc9, 0x04])).toEqual([
      'Program change, channel 10 counted from 1, 9 on the wire',
      'Program change to program 4 counted from 0, 5 counted from 1',
    ]);
  });

  it('shows the byte in hexadecimal and in bits, highest bit first', () => {
    expect(explainBytes([0xc9, 0x04])[0]).toMatchObject({ hex: 'C9', bits: '11001001', role: 'status' });
    expect(explainBytes([0xc9, 0x04])[1]).toMatchObject({ hex: '04', bits: '00000100', role: 'data' });
  });

  it('says that a note on with velocity 0 is a note off', () => {
    // MIDI 1.0 Detailed Specification 4.2.1, p. 10.
    expect(words([0x90, 60, 0])).toEqual([
      'Note on, channel 1 counted from 1, 0 on the wire',
      'Note 60 (middle C)',
      'Velocity 0: a note on with velocity 0 counts as a note off',
    ]);
  });

  it('says when a status byte was left out', () => {
    expect(words([0x90, 60, 39, 0xf8, 64, 43]).slice(3)).toEqual([
      'Clock tick: 24 make a quarter note; may stand inside any message',
      'Note 64 (E); no status byte sent, the last one (90) still holds',
      'Velocity 43',
    ]);
  });

  it('joins the two halves of a pitch bend, low half first', () => {
    expect(words([0xe0, 0x00, 0x40]).slice(1)).toEqual([
      'Pitch bend, low seven bits 0',
      'Pitch bend, high seven bits 64: together 8192, the centre',
    ]);
  });

  it('explains controllers, modes and exclusives', () => {
    expect(words([0xb0, 7, 100, 123, 0])).toMatchObject([
      expect.anything(),
      'Controller 7 (volume)',
      'Value 100',
      'Channel mode 123: all notes off; no status byte sent, the last one (B0) still holds',
      'Value 0',
    ]);
    expect(explainBytes([0xf0, 0x7d, 0x01, 0xf7]).map(({ role }) => role)).toEqual([
      'status',
      'data',
      'data',
      'end',
    ]);
  });

  it('explains nonsense as nonsense', () => {
    expect(words([0x05, 0xf4, 0xf7, 0x90, 0xc0])).toEqual([
      'Data byte 5 without a status byte to belong to: ignored',
      'Status F4 has no meaning in the standard: ignored',
      'End of exclusive, but none was open: ignored',
      'Note on, channel 1 counted from 1, 0 on the wire; cut short by status C0',
      'Program change, channel 1 counted from 1, 0 on the wire; its data never came',
    ]);
  });

  it('has words for every one of any random bytes', () => {
    fc.assert(
      fc.property(fc.array(anyByte), (bytes) => {
        const rows = explainBytes(bytes);
        expect(rows.map(({ value }) => value)).toEqual(bytes);
        for (const row of rows) expect(row.words).not.toMatch(/undefined|NaN|^$/);
      }),
      { numRuns: 500 },
    );
  });
});
