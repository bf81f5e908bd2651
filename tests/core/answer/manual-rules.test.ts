/** What is told of words that name no contact: reason and questions, word for word. */
import { describe, expect, test } from 'vitest';
import { readManual } from '../../../src/core/answer/index.ts';

const ASK_CONTACTS = 'Which DIN pin is on the tip, and which on the ring: 4, 5, or neither?';

describe('Words that name a type', () => {
  test('say what stands where', () => {
    expect(readManual('TRS Type A', 'in')).toEqual({
      state: 'said',
      type: 'type-a',
      could: ['type-a'],
      reason: '‘Type A’ is named: pin 5 on the tip, pin 4 on the ring, pin 2 on the sleeve',
      questions: [],
    });
    expect(readManual('TRS-B', 'out').reason).toBe(
      '‘Type B’ is named: pin 4 on the tip, pin 5 on the ring, pin 2 on the sleeve',
    );
  });

  test('may name the standard instead', () => {
    expect(readManual('wired to RP-054', 'in')).toMatchObject({
      state: 'said',
      type: 'type-a',
      reason:
        'the standard for phone jacks (MMA RP-054, 2018) is Type A: pin 5 on the tip, pin 4 on the ring',
    });
  });

  test('of two that a menu chooses between ask which it is set to', () => {
    for (const words of ['Type A or Type B', 'type a / b in the menu', 'Typ A oder B'])
      expect(readManual(words, 'in')).toEqual({
        state: 'half',
        type: undefined,
        could: ['type-a', 'type-b'],
        reason: 'it can be Type A or Type B',
        questions: [
          'Which of the two is the jack set to now? Look in the menu, or for a switch beside the jack.',
        ],
      });
  });

  test('that it is not leave every other open, the other of the two first', () => {
    const reading = readManual('This is not Type B', 'in');
    expect(reading).toMatchObject({
      state: 'half',
      type: 'type-a',
      reason: 'it says what it is not; most such jacks are Type A',
      questions: [ASK_CONTACTS],
    });
    expect(reading.could).not.toContain('type-b');
    expect(readManual('nicht Typ A', 'in').type).toBe('type-b');
    expect(readManual('pas de type A', 'in').type).toBe('type-b');
  });

  test('are words of their own: letters inside other words name nothing', () => {
    for (const words of ['see appendix type about', 'prototype area', 'typographic basics', 'MIDI and audio'])
      expect(readManual(words, 'in').state, words).toBe('cannot-be-told');
  });
});

describe('Words about the jack', () => {
  test('that take either direction are an input’s own type, and leave an output open', () => {
    const reason = 'it takes Type A and Type B alike';
    expect(readManual('auto-sensing input', 'in')).toMatchObject({
      state: 'said',
      type: 'both-ways',
      reason,
    });
    expect(readManual('auto-sensing', 'out')).toEqual({
      state: 'half',
      type: undefined,
      could: ['type-a', 'type-b'],
      reason,
      questions: [ASK_CONTACTS],
    });
  });

  test('about an adapter in the box send one to look for it', () => {
    expect(readManual('adapter included', 'in')).toEqual({
      state: 'cannot-be-told',
      type: undefined,
      could: [],
      reason:
        'the adapter in the box fits the jack, whatever its type is: with it the jack is a 5-pin DIN jack',
      questions: [
        'Is the adapter still there? Then choose DIN. If not: which DIN pin does it put on the tip?',
      ],
    });
  });

  test('about pedals and sound do not pass for MIDI', () => {
    for (const words of ['expression pedal', 'footswitch', 'headphones', 'Fußschalter', 'pédale', 'cv in'])
      expect(readManual(words, 'in')).toMatchObject({
        state: 'cannot-be-told',
        reason:
          'these words are about a pedal, switch or sound jack, and such a jack looks just like one for MIDI',
        questions: [
          'Does the manual name this very jack as MIDI? If a menu shares the jack, what is it set to?',
        ],
      });
  });

  test('about a lead of two contacts leave the three types that have no ring', () => {
    for (const words of [
      'use a mono cable',
      'TS lead',
      'câble mono',
      'Instrumentenkabel',
      'cable de guitarra',
    ])
      expect(readManual(words, 'in'), words).toMatchObject({
        state: 'half',
        type: 'two-contact',
        could: ['two-contact', 'two-contact-turned', 'tip-signal'],
        reason: 'a lead with two contacts has no ring, so both wires are tip and sleeve',
      });
  });

  test('that only count contacts say that they do', () => {
    for (const words of ['a TRS cable', 'stereo plug', 'balanced lead', 'estéreo'])
      expect(readManual(words, 'in'), words).toMatchObject({
        state: 'cannot-be-told',
        type: undefined,
        reason: '‘TRS’ or ‘stereo’ only says that the plug has three contacts, not what is on them',
        questions: [ASK_CONTACTS],
      });
  });

  test('about a DIN jack are sure, unless they speak of a phone jack as well', () => {
    expect(readManual('5-pin DIN', 'out')).toMatchObject({
      state: 'said',
      type: 'din',
      reason: 'a 5-pin DIN jack always has pin 4, 5 and 2 in use',
    });
    expect(readManual('3.5 mm TRS to 5-pin DIN adapter included', 'in').state).toBe('cannot-be-told');
  });

  test('about USB alone say what that is, and what stands between', () => {
    expect(readManual('MIDI over USB', 'in')).toMatchObject({
      state: 'cannot-be-told',
      reason: 'USB is another way of carrying MIDI: no lead joins it to a MIDI jack',
      questions: ['Has the device a MIDI jack besides USB? If not, a USB host box has to stand between.'],
    });
  });

  test('that share one jack for both directions put each on its contact', () => {
    const words = 'tip: MIDI out, ring: MIDI in';
    expect(readManual(words, 'in')).toMatchObject({
      state: 'said',
      type: 'ring-signal',
      reason: 'one jack receives and sends: this direction is on the ring',
    });
    expect(readManual(words, 'out')).toMatchObject({ type: 'tip-signal' });
    expect(readManual('Spitze = Eingang, Ring = Ausgang', 'in').type).toBe('tip-signal');
    expect(readManual('pointe = sortie, anneau = entrée', 'out').type).toBe('tip-signal');
  });
});

describe('No words to go by', () => {
  test('are said to be none, and the question that settles every type is asked', () => {
    for (const words of ['', '   ', '\n\t'])
      expect(readManual(words, 'in')).toEqual({
        state: 'cannot-be-told',
        type: undefined,
        could: [],
        reason: 'there are no words to read',
        questions: [ASK_CONTACTS],
      });
    expect(readManual('see page 12', 'in')).toMatchObject({
      state: 'cannot-be-told',
      reason: 'these words name no type and no contact',
      questions: [ASK_CONTACTS],
    });
  });
});
