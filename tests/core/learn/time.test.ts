import { describe, expect, test } from 'vitest';
import {
  atMetres,
  edgesOf,
  hopsOf,
  sayBinary,
  sayBit,
  sayBits,
  sayBytes,
  sayClockBound,
  sayDelay,
  sayHex,
  sayLag,
  sayLongest,
  sayMetres,
  sayShift,
  sayTime,
  sendOver,
} from '../../../src/core/learn/index.ts';
import type { Item } from '../../../src/core/signal/index.ts';
import { dinLink, spaced } from './authored.ts';

const program: Item = { kind: 'program change', channel: 0, program: 4 };
const noteOn = (note: number, velocity: number): Item => ({ kind: 'note on', channel: 0, note, velocity });

describe('Times in words', () => {
  test('have two decimals below a microsecond, one below ten, and none above', () => {
    for (const [seconds, words] of [
      [0, '0 µs'],
      [0.004e-6, '0 µs'],
      [0.534e-6, '0.53 µs'],
      [1.549e-6, '1.5 µs'],
      [9.94e-6, '9.9 µs'],
      [31.6e-6, '32 µs'],
      [320e-6, '320 µs'],
    ] as const)
      expect(spaced(sayTime(seconds))).toBe(words);
  });

  test('turn to milliseconds of three digits from a thousand microseconds', () => {
    expect(spaced(sayTime(1e-3))).toBe('1 ms');
    expect(spaced(sayTime(2.2449e-3))).toBe('2.24 ms');
    expect(spaced(sayTime(0.1234))).toBe('123 ms');
  });

  test('keep number and unit on one line', () => {
    for (const seconds of [1e-7, 1e-6, 1e-5, 1e-2]) expect(sayTime(seconds)).not.toContain(' ');
    expect(sayTime(1e-5)).toBe('10\u00a0µs');
  });

  test('of bits and bytes are those of the standard: 32 µs and 320 µs', () => {
    // MIDI 1.0, hardware: 31.25 kbaud, ten bits a byte. Its appendix: seven bytes with running status against nine without.
    expect([1, 9.5, 10].map((count) => spaced(sayBits(count)))).toEqual(['32 µs', '304 µs', '320 µs']);
    expect([1, 2, 3, 7, 9].map((count) => spaced(sayBytes(count)))).toEqual([
      '320 µs',
      '640 µs',
      '960 µs',
      '2.24 ms',
      '2.88 ms',
    ]);
    expect(spaced(sayClockBound())).toBe('1 %');
  });
});

describe('Bytes in words', () => {
  test('are hex with the running status of the published example', () => {
    // MIDI 1.0, appendix: 90 3C 27 40 2B 43 25 are three note ons.
    const chord = [noteOn(0x3c, 0x27), noteOn(0x40, 0x2b), noteOn(0x43, 0x25)];
    expect(spaced(sayHex(chord, true))).toBe('90 3C 27 40 2B 43 25');
    expect(spaced(sayHex(chord))).toBe('90 3C 27 90 40 2B 90 43 25');
    expect(spaced(sayHex([program]))).toBe('C0 04');
    expect(sayHex([])).toBe('');
  });

  test('are binary with the highest bit first, for every byte there is', () => {
    expect(spaced(sayBinary(0b0000_0100))).toBe('0000 0100');
    for (let byte = 0; byte < 256; byte++) {
      const words = spaced(sayBinary(byte));
      expect(words).toMatch(/^[01]{4} [01]{4}$/);
      expect(parseInt(words.replace(' ', ''), 2)).toBe(byte);
    }
  });
});

describe('The input of a lesson in time', () => {
  test('takes its delays from its part, and shifts edges by their difference', () => {
    // H11L1 1.0 and 1.2 µs, PC900V 1 and 2 µs (facts sheet, section 3): 0.2 and 1 µs a hop.
    const logic = dinLink('H11L1');
    expect([sayDelay(logic, 'on'), sayDelay(logic, 'off')].map(spaced)).toEqual(['1 µs', '1.2 µs']);
    expect(spaced(sayShift(logic))).toBe('0.2 µs');
    expect(spaced(sayShift(dinLink('PC900V')))).toBe('1 µs');
  });

  test('lengthens a 0 and shortens a 1 by the same amount, hop by hop', () => {
    // Facts sheet, section 7: current-on pulses stretch. 32 ± 5 x 1 µs.
    const slow = dinLink('PC900V');
    expect([0, 1, 5].map((hops) => spaced(sayBit(0, slow, hops)))).toEqual(['32 µs', '33 µs', '37 µs']);
    expect([0, 1, 5].map((hops) => spaced(sayBit(1, slow, hops)))).toEqual(['32 µs', '31 µs', '27 µs']);
  });

  test('bears the hops that the facts sheet works out for its shift, give or take the search', () => {
    // Section 7: until 7.9 µs is used, 2 µs a hop make 3 hops, 1 µs 7, 0.2 µs 39. Leads add a little; the edges decide by 8.1 µs.
    for (const [toOffSeconds, hops] of [
      [3e-6, 3],
      [2e-6, 7],
    ] as const) {
      const found = hopsOf(dinLink('H11L1', { values: { toOnSeconds: 1e-6, toOffSeconds } }));
      expect(Math.abs(found - hops)).toBeLessThanOrEqual(1);
    }
    const logic = hopsOf(dinLink('H11L1'));
    expect(logic).toBeGreaterThan(7 * 3);
    expect(logic).toBeLessThanOrEqual(41);
  });
});

describe('A link of a lesson in time', () => {
  test('says the length of its first lead, 1 m where the author leaves it out', () => {
    expect(spaced(sayMetres(dinLink()))).toBe('1 m');
    expect(spaced(sayMetres(atMetres(dinLink(), 15)))).toBe('15 m');
  });

  test('changes the length of its first lead and nothing else', () => {
    const two = { ...dinLink(), leads: [...dinLink().leads, ...dinLink().leads] };
    const longer = atMetres(two, 30);
    expect(longer.leads.map(({ metres }) => metres)).toEqual([30, undefined]);
    expect({ ...longer, leads: [] }).toEqual({ ...two, leads: [] });
    expect(() => atMetres({ ...two, leads: [] }, 3)).toThrow('lesson link: needs a lead, got none');
  });

  test('has slower edges the longer its lead is, both ways', () => {
    const times = [1, 15, 50].map((metres) => edgesOf(atMetres(dinLink(), metres)));
    for (const edge of ['toActiveSeconds', 'toIdleSeconds'] as const) {
      const row = times.map((one) => one[edge]);
      expect(row).toEqual([...row].sort((one, other) => one - other));
    }
  });

  test('keeps the 2 µs of the standard with the 15 m that the standard allows, and not with any length', () => {
    // MMA CA-033: at most 15 m; facts sheet, section 4: 15 m of pair and 440 ohm make an edge of 1.45 µs.
    const { toActiveSeconds, toIdleSeconds } = edgesOf(atMetres(dinLink(), 15));
    expect(Math.max(toActiveSeconds, toIdleSeconds)).toBeLessThan(2e-6);
    const longest = Number(spaced(sayLongest(dinLink())).replace(' m', ''));
    expect(longest).toBeGreaterThanOrEqual(15);
    const beyond = edgesOf(atMetres(dinLink(), longest + 1));
    expect(Math.max(beyond.toActiveSeconds, beyond.toIdleSeconds)).toBeGreaterThan(2e-6);
  });
});

describe('Messages sent over a lesson link', () => {
  test('arrive as they were sent over one good link', () => {
    const { outcomes } = sendOver(dinLink('H11L1'), [program, noteOn(60, 1)]).sending;
    expect(outcomes.map(({ outcome }) => outcome)).toEqual(['same', 'same', 'same', 'same', 'same']);
  });

  test('arrive later by more with each hop, and by a byte and more with software between', () => {
    const lag = (hops: number, thru: 'hardware thru' | 'software thru') =>
      sendOver(dinLink('H11L1'), [program], { hops, thru }).sending.outcomes[0]?.lagSeconds ?? NaN;
    // H11L1: 1.0 µs to on a hop and a little for the edge; the receiver looks every 2 µs (16 samples a bit).
    for (const hops of [1, 4, 16]) {
      expect(lag(hops, 'hardware thru')).toBeGreaterThanOrEqual(hops * 1e-6);
      expect(lag(hops, 'hardware thru')).toBeLessThan(hops * 1.3e-6 + 2e-6);
    }
    // Each copy waits for the whole byte of 320 µs, and then for the processor's millisecond.
    for (const hops of [2, 3]) {
      expect(lag(hops, 'software thru')).toBeGreaterThan((hops - 1) * 1320e-6);
      expect(lag(hops, 'software thru')).toBeLessThan((hops - 1) * 1320e-6 + hops * 10e-6);
    }
  });

  test('say when the first byte begins to arrive, or that none does', () => {
    // 1 µs of the H11L1, seen at the next sample: samples are 2 µs apart.
    const late = sayLag(dinLink('H11L1'), [program], { hops: 1 });
    expect(spaced(late)).toBe('2 µs');
    const open = { ...dinLink(), leads: [{ ends: ['din5', 'din5'], wires: ['4-4'] }] } as const;
    expect(() => sayLag(open, [program], {})).toThrow('lesson: needs a byte that arrives');
  });
});
