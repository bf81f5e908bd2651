import { describe, expect, test } from 'vitest';
import { SOCKETS, letterToMaker, saySocket } from '../../../src/core/answer/index.ts';
import type { ToldJack } from '../../../src/core/answer/index.ts';

const unknown = (direction: ToldJack['direction'], socket: ToldJack['socket']): ToldJack => ({
  direction,
  socket,
  type: undefined,
});
const numbered = (letter: string): readonly string[] =>
  letter.split('\n').filter((line) => /^\d+\. /.test(line));

describe('A letter to the maker', () => {
  test('asks for an input what is on its contacts, which type it is, and whether it is isolated', () => {
    expect(letterToMaker(unknown('in', 'trs-3.5'))).toBe(
      [
        'Hello,',
        '',
        'I own your [name of the device]. Its MIDI input is a small jack, 3.5 mm, and the manual does not say how it is wired. Could you tell me:',
        '',
        '1. Which DIN pin is on the tip, which on the ring, and which on the sleeve (4, 5, 2, or none)?',
        '2. Is it Type A, Type B, or neither? Can a menu or a switch change it?',
        '3. Is the input isolated from the device’s ground, as the MIDI standard asks?',
        '4. Does the jack carry anything else, such as an expression pedal, a footswitch or a supply?',
        '5. Which adapter or lead do you sell or recommend for it?',
        '',
        'Thank you.',
      ].join('\n'),
    );
  });

  test('asks for an output about its supply and a plug with two contacts', () => {
    const questions = numbered(letterToMaker(unknown('out', 'trs-6.35')));
    expect(questions[2]).toBe(
      '3. Does the output run from 5 V or from 3.3 V, and may a plug with two contacts go into it without harm?',
    );
    expect(questions.join(' ')).not.toContain('isolated');
  });

  test('does not ask for a type that the words have settled', () => {
    const could = letterToMaker({ ...unknown('in', 'trs-3.5'), could: ['type-a', 'tip-signal'] });
    expect(could).not.toContain('Type B, or neither');
    const told = letterToMaker({ ...unknown('in', 'trs-3.5'), type: 'type-b' });
    expect(told).not.toContain('Type B, or neither');
    expect(letterToMaker({ ...unknown('in', 'trs-3.5'), could: ['type-b', 'type-a'] })).toContain(
      'Is it Type A, Type B, or neither?',
    );
  });

  test('asks of a jack that does both which contact receives', () => {
    const letter = letterToMaker({ ...unknown('in', 'trs-3.5'), inAndOut: true });
    expect(letter).toContain('Which contact receives, and which one sends?');
    expect(letterToMaker(unknown('in', 'trs-3.5'))).not.toContain('which one sends');
  });

  test('puts the questions that the manual leaves open last, in their order, and numbers on', () => {
    const questions = numbered(letterToMaker(unknown('in', 'trs-3.5'), ['First?', 'Second?']));
    expect(questions.slice(-2)).toEqual(['6. First?', '7. Second?']);
  });

  test('names the jack as a player sees it, whichever it is', () => {
    for (const socket of SOCKETS)
      for (const direction of ['out', 'in'] as const) {
        const letter = letterToMaker(unknown(direction, socket));
        expect(letter).toContain(`Its MIDI ${direction}put is a ${saySocket(socket)}, and the manual`);
        const questions = numbered(letter);
        expect(questions.map((one) => one.split('.')[0])).toEqual(questions.map((_, at) => `${at + 1}`));
        expect(questions.every((one) => one.endsWith('?'))).toBe(true);
      }
  });
});
