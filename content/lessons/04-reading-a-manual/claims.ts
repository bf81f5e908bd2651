import { readManual } from '../../../src/core/answer/index.ts';
import { above, say, type Claims } from '../../../src/core/learn/index.ts';
import { links, phrases } from './data.ts';

const told = (words: string) => {
  const { state, type } = readManual(words, 'in');
  return [state, type];
};
const could = (words: string) => readManual(words, 'in').could;

export const claims: Claims = {
  'the size of a plug tells no type, a name and a standard do, and an input may take both': () => [
    [
      phrases.names.slice(0, 3).map(told),
      [
        ['cannot-be-told', undefined],
        ['said', 'type-a'],
        ['said', 'type-a'],
      ],
    ],
    [told('Accepts both types'), ['said', 'both-ways']],
  ],
  'a mono cable leaves three types, and none of them has a ring': () => [
    [could('Connect with a mono instrument cable'), ['two-contact', 'two-contact-turned', 'tip-signal']],
  ],
  'four on the tip is Type B, five volts name the source, and a table may contradict its own title': () => [
    [
      phrases.tables.map(told),
      [
        ['said', 'type-a'],
        ['said', 'type-b'],
        ['said', 'type-a'],
        ['contradicts', undefined],
      ],
    ],
  ],
  'half a phrase leaves several types and one question, and the whole one leaves none': () => [
    ...phrases.open.slice(0, 3).map((words) => [could(words).length, above(1)] as const),
    [readManual('MIDI signal on the tip', 'in').questions, ['What is on the ring: DIN pin 4, or nothing?']],
    [told('data on ring, tip not connected'), ['said', 'ring-signal']],
    [told('tip = pin 5, ring = pin 4'), ['said', 'type-a']],
  ],
  'the adapter of another maker turns the current round, and nothing else changes': () => [
    [say(links.otherAdapter, 'active'), '0 mA'],
  ],
};
