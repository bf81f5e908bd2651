import { describe, expect, test } from 'vitest';
import {
  shownCheck,
  shownDepth,
  shownFacts,
  shownPress,
  shownSilence,
  shownSplit,
} from '../../../src/core/learn/index.ts';
import type { AuthoredBoard, Shown } from '../../../src/core/learn/index.ts';
import type { PressItem } from '../../../src/core/plan/index.ts';
import { spaced } from './authored.ts';

const chain = (pedals: number, more: Partial<AuthoredBoard> = {}): AuthoredBoard => ({
  layout: 'chain',
  pedals,
  ...more,
});
const program = (device: string): PressItem => ({ device, send: 'program', program: 5 });
const FOUR = ['echo', 'drive', 'chorus', 'looper'].map(program);
const rows = ({ rows: all }: Shown): readonly string[] =>
  all.map(({ name, words }) => `${spaced(name)}: ${spaced(words)}`);

describe('What is wrong with a board', () => {
  test('is nothing on a chain, and the label is the author’s', () => {
    expect(shownCheck('one after another', chain(3))).toEqual({
      label: 'one after another',
      grade: 'good',
      headline: 'Nothing stands in the way',
      rows: [],
      sentence: 'Each output feeds one input, and every device is reached.',
    });
  });

  test('is said with its reason and its mending where there is something', () => {
    const shown = shownCheck('two', chain(2, { layout: 'two senders' }));
    expect(shown.grade).toBe('bad');
    expect(shown.headline).toContain('is fed by two outputs');
    expect(shown.sentence).toBe(
      'Messages of two senders cannot be joined by wire: their bytes would fall into each other. Put a merger in front of the input.',
    );
  });
});

describe('What goes silent', () => {
  test('in a chain is everything behind the box that is off', () => {
    const shown = shownSilence('chain', chain(4));
    expect(rows(shown)).toEqual([
      'echo off: drive, chorus, looper',
      'drive off: chorus, looper',
      'chorus off: looper',
      'looper off: no other',
    ]);
    expect(shown.rows.map(({ amount }) => amount)).toEqual([3, 2, 1, 0]);
    expect(shown.rows.map(({ good }) => good)).toEqual([false, false, false, true]);
    expect(shown.headline).toBe('At worst 3 of 4 go silent with one box');
    expect(shown.grade).toBe('doubtful');
  });

  test('behind a hub is all with the hub and none with a pedal', () => {
    const shown = shownSilence('hub', chain(3, { layout: 'hub' }));
    expect(rows(shown)).toEqual([
      'hub off: echo, drive, chorus',
      'echo off: no other',
      'drive off: no other',
      'chorus off: no other',
    ]);
  });

  test('is no worry where one box takes one pedal with it at most', () => {
    expect(shownSilence('two', chain(2)).grade).toBe('good');
    expect(shownSilence('one', chain(1)).headline).toBe('At worst 0 of 1 go silent with one box');
  });
});

describe('How far edges have shifted', () => {
  test('is the shift of the part, once a link', () => {
    // H11L1: to off 1.2 µs less to on 1.0 µs, five links: 0.2 to 1 µs. The bound: 16 samples a bit, one look at the eighth, clocks
    // 1 % apart each way: (9 x 16 + 8 - 1) x 2 / 1.01 - 9 x 32 / 0.99 = 299.0 - 290.9 = 8.1 µs.
    const shown = shownDepth('chain', chain(5));
    expect(rows(shown)).toEqual([
      'echo, 1 link from the controller: 0.2 µs',
      'drive, 2 links from the controller: 0.4 µs',
      'chorus, 3 links from the controller: 0.6 µs',
      'looper, 4 links from the controller: 0.8 µs',
      'tremolo, 5 links from the controller: 1 µs',
    ]);
    expect(shown).toMatchObject({ grade: 'good', headline: 'Every pedal is within the limit' });
    expect((shown.bound?.amount ?? NaN) * 1e6).toBeCloseTo((151 * 2) / 1.01 - (9 * 32) / 0.99, 6);
    expect(spaced(shown.bound?.words ?? '')).toBe('8.1 µs is all that a receiver has left');
    expect(spaced(shown.sentence)).toBe('Edges shift by 1 µs on the way to the last pedal.');
  });

  test('is too much from some pedal of a long chain on, and then for all behind it', () => {
    const shown = shownDepth('chain', chain(6, { part: 'unknown' }));
    const good = shown.rows.map((row) => row.good);
    expect(good).toEqual([...good].sort((one, other) => Number(other) - Number(one)));
    expect(shown.grade).toBe('bad');
    expect(shown.headline).toBe(`${good.filter((one) => !one).length} of 6 are too deep`);
  });

  test('starts afresh at every software THRU', () => {
    const shown = shownDepth('chain', chain(4, { thru: 'software', part: 'PC900V' }));
    expect(shown.rows.map(({ words }) => spaced(words))).toEqual(['1 µs', '1 µs', '1 µs', '1 µs']);
    expect(shown.grade).toBe('good');
  });
});

describe('The facts of a board', () => {
  test('are counted from its links: a chain of four', () => {
    // Four links of 1.2 µs, the slower delay of an H11L1.
    const shown = shownFacts('a chain', chain(4));
    expect(shown.headline).toBe('4 leads, 0 hubs');
    expect(rows(shown)).toEqual(['longest way: 4 links', 'worst delay: 4.8 µs', 'silent at worst: 3']);
    expect(spaced(shown.sentence)).toBe(
      'With a chain, the last pedal hears 4.8 µs late, and at worst 3 go silent with one box.',
    );
  });

  test('are counted from its links: a hub of four', () => {
    const shown = shownFacts('a hub', chain(4, { layout: 'hub' }));
    expect(shown.headline).toBe('5 leads, 1 hub');
    expect(rows(shown)).toEqual(['longest way: 2 links', 'worst delay: 2.4 µs', 'silent at worst: 4']);
  });

  test('have one link where there is one', () => {
    expect(rows(shownFacts('one', chain(1)))[0]).toBe('longest way: 1 link');
  });

  test('count the byte that each software THRU must read before it copies it', () => {
    // Two links: 2 x 1.2 µs, and once 320 µs and the 1 ms that a THRU takes where nothing is given.
    expect(rows(shownFacts('software', chain(2, { thru: 'software' })))[1]).toBe('worst delay: 1.32 ms');
  });

  test('are bad where the board does not pass', () => {
    expect(shownFacts('two', chain(2, { layout: 'two senders' })).grade).toBe('bad');
    expect(shownFacts('one', chain(2)).grade).toBe('good');
  });
});

describe('One press of a board', () => {
  test('takes two bytes a program change, and each pedal has its own when they have passed', () => {
    // 640 µs a message; pedal k has it after k messages and k links of 1.2 µs.
    const shown = shownPress('chain', chain(4, { press: FOUR }));
    const expected = [1, 2, 3, 4].map((place) => place * (640e-6 + 1.2e-6));
    shown.rows.forEach(({ amount }, at) => expect(amount).toBeCloseTo(expected[at] ?? NaN, 9));
    expect(shown.rows.map(({ name }) => name)).toEqual(['echo', 'drive', 'chorus', 'looper']);
    expect(spaced(shown.headline)).toBe('8 bytes; the last is there after 2.56 ms');
    expect(shown.sentence).toBe(
      'Sent: program to echo in 2 bytes; program to drive in 2 bytes; program to chorus in 2 bytes; program to looper in 2 bytes.',
    );
    expect(shown.grade).toBe('good');
  });

  test('saves the repeated status of one pedal with running status', () => {
    const knobs = [20, 21].map((controller): PressItem => ({
      device: 'echo',
      send: 'control',
      controller,
      value: 1,
    }));
    const sent = (runningStatus: boolean) =>
      shownPress('', chain(1, { press: knobs, runningStatus })).sentence;
    expect(sent(false)).toBe('Sent: control to echo in 3 bytes; control to echo in 3 bytes.');
    expect(sent(true)).toBe('Sent: control to echo in 3 bytes; control to echo in 2 bytes.');
  });

  test('warns of a bank that no program change follows', () => {
    const shown = shownPress('', chain(1, { press: [{ device: 'echo', send: 'bank', bank: 1 }] }));
    expect(shown.grade).toBe('doubtful');
    expect(shown.sentence).toBe(
      "Sent: bank to echo in 6 bytes. The bank for 'echo' waits for a program change that does not come.",
    );
  });
});

describe('A split by wire', () => {
  test('shares the current of the loop between its inputs', () => {
    // Facts sheet, section 7: two of 6N138 at 5 V get 3.25 mA each; turn-on 1.6 mA.
    const shown = shownSplit('two', { parts: ['6N138', '6N138'] });
    for (const { amount, good } of shown.rows) {
      expect((amount ?? NaN) * 1e3).toBeCloseTo(3.25, 1.7);
      expect(good).toBe(true);
    }
    expect(shown.rows.map(({ name }) => name)).toEqual(['6N138 number 1', '6N138 number 2']);
    expect(shown.bound).toEqual({ amount: 1.6e-3, words: '1.60 mA turns it on' });
    expect(shown.sentence).toMatch(/More than one input on an output: outside the standard\.$/);
    expect(shown.grade).toBe('good');
  });

  test('leaves parts that need 4 mA too little, and says so of each', () => {
    const shown = shownSplit('two', { parts: ['PC900V', 'PC900V'] });
    expect(shown.rows.every(({ good }) => !good)).toBe(true);
    expect(shown.headline).toBe('Too little current');
    expect(shown.grade).toBe('bad');
    expect(shown.bound?.words).toBe('4.00 mA turns it on');
  });

  test('has enough for two such parts at 3.3 V', () => {
    // Facts sheet, section 7: 7.11 mA each.
    const shown = shownSplit('two', { parts: ['PC900V', 'PC900V'], circuit: 'driver-3v3' });
    for (const { amount } of shown.rows) expect((amount ?? NaN) * 1e3).toBeCloseTo(7.1, 1);
  });

  test('of one input is no split, and is not told to be outside the standard', () => {
    expect(shownSplit('one', { parts: ['6N138'] }).sentence).not.toContain('outside the standard');
  });
});
