import { readManual } from '../../../src/core/answer/index.ts';
import {
  saySent,
  whoActs,
  type Claims,
  type SentKind,
  type SetPedal,
} from '../../../src/core/learn/index.ts';
import { bytesOf } from '../../../src/core/signal/index.ts';
import { inTempo, knob, newcomer, phrases, sound, twoOnOne } from './data.ts';

const acting = (pedals: readonly SetPedal[], kind: SentKind, channel: number): readonly string[] =>
  whoActs(pedals, kind, channel)
    .filter(({ acts }) => acts)
    .map(({ name }) => name);

export const claims: Claims = {
  'two pedals on one channel both change, and a channel of its own parts them': () => [
    [acting(twoOnOne, 'program change', 1), ['echo', 'drive']],
    [
      acting(
        twoOnOne.map((one, at) => ({ ...one, channel: at + 1 })),
        'program change',
        1,
      ),
      ['echo'],
    ],
  ],
  'a pedal in omni mode acts on every channel': () => [
    [acting(newcomer, 'program change', 1), ['echo', 'chorus']],
    [acting(newcomer, 'program change', 9), ['chorus']],
  ],
  'a program change has two bytes and a control change three; both name the channel in the first': () => [
    [[sound, knob].map((items) => bytesOf(items, false).length), [2, 3]],
    [
      [saySent('program change', 1), saySent('control change', 1)],
      ['C0 04', 'B0 14 7F'],
    ],
  ],
  'three jacks whose words leave the setting open': () => [
    [phrases.map((words) => readManual(words, 'in').state), ['cannot-be-told', 'cannot-be-told', 'half']],
  ],
  'the clock reaches every pedal that follows it, and a program none of them on channel 1': () => [
    [acting(inTempo, 'clock', 1), ['echo', 'chorus']],
    [acting(inTempo, 'program change', 1), []],
    [acting(inTempo, 'program change', 3), []],
  ],
};
