import type { LessonPiles } from '../../../src/core/learn/index.ts';

/** The suspects of this lesson. */
export const piles = {
  six: {
    board: 'link',
    suspects: [
      'lead 1: swapped',
      'lead 1: ts-lead',
      'pedal 1: out-into-out',
      'pedal 1: wrong-channel',
      'pedal 1: not-listening',
      'sender: message-filtered',
    ],
    looks: ['channel pedal 1', 'jack pedal 1', 'light pedal 1', 'plugs lead 1'],
  },
  watched: {
    board: 'link',
    suspects: [
      'lead 1: open',
      'lead 1: swapped',
      'lead 1: ts-lead',
      'sender: supply-off',
      'pedal 1: supply-off',
      'pedal 1: out-into-out',
      'pedal 1: wrong-channel',
      'sender: message-filtered',
    ],
    looks: [
      'light pedal 1',
      'lamp pedal 1',
      'lamp sender',
      'jack pedal 1',
      'plugs lead 1',
      'swap lead 1',
      'channel pedal 1',
    ],
  },
  silent: {
    board: 'link',
    suspects: [
      'lead 1: swapped',
      'lead 1: short',
      'sender: outlet-set-wrong',
      'sender: supply-off',
      'pedal 1: out-into-out',
      'pedal 1: wrong-channel',
      'pedal 1: not-listening',
      'sender: message-filtered',
    ],
    looks: [
      'light pedal 1',
      'swap lead 1',
      'lamp sender',
      'outlet',
      'jack pedal 1',
      'channel pedal 1',
      'listen pedal 1',
      'continuity across lead 1',
      'volts clock lead 1',
    ],
  },
  chain: {
    board: 'chain',
    suspects: [
      'pedal 1: soft-thru-off',
      'pedal 1: dead-thru',
      'lead 2: mirrored',
      'pedal 2: wrong-style',
      'pedal 2: out-into-out',
      'pedal 2: wrong-channel',
    ],
    looks: [
      'light pedal 2',
      'volts clock lead 2',
      'swap lead 2',
      'thru menu',
      'jack pedal 2',
      'diode pedal 2',
      'channel pedal 2',
    ],
  },
} satisfies LessonPiles;
