import type { SetPedal } from '../../../src/core/learn/index.ts';
import type { Item } from '../../../src/core/signal/index.ts';

const pedal = (name: string, channel: number, more: Partial<SetPedal> = {}): SetPedal => ({
  name,
  channel,
  omni: false,
  programs: true,
  clock: true,
  ...more,
});

/** Three pedals, two of them on one channel. */
export const twoOnOne: readonly SetPedal[] = [pedal('echo', 1), pedal('drive', 1), pedal('chorus', 3)];

/** The same with channels of their own, one of them in omni mode. */
export const newcomer: readonly SetPedal[] = [
  pedal('echo', 1),
  pedal('drive', 2),
  pedal('chorus', 3, { omni: true }),
];

/** In time with the drummer, and yet on the wrong channel. */
export const inTempo: readonly SetPedal[] = [
  pedal('echo', 7),
  pedal('drive', 2, { clock: false }),
  pedal('chorus', 3, { programs: false }),
];

/** A sound called up, and one thing in it changed. */
export const sound: readonly Item[] = [{ kind: 'program change', channel: 0, program: 4 }];
export const knob: readonly Item[] = [{ kind: 'control change', channel: 0, controller: 20, value: 127 }];

/** Words of manuals, all invented. */
export const phrases = [
  'MIDI over USB only',
  '1/4" jack marked EXP / MIDI: expression pedal or MIDI',
  'Switchable between Type A and Type B',
];
