import type { PressItem } from '../../../src/core/plan/index.ts';

const change = (device: string): PressItem => ({ device, send: 'program', program: 5 });

/** A program change for each of four pedals, from the switcher on. */
export const four: readonly PressItem[] = ['echo', 'drive', 'chorus', 'looper'].map(change);

/** A bank for the first of them. */
export const bank: PressItem = { device: 'echo', send: 'bank', bank: 1 };

/** A turn of one knob of the first pedal. */
export const turn = (controller: number): PressItem => ({
  device: 'echo',
  send: 'control',
  controller,
  value: 100,
});
