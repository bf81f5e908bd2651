/** Presses of invented pedals for tasks: how they are told, and what the board makes of them. */
import { timePress } from '../../../board/index.ts';
import type { PressItem } from '../../../plan/index.ts';
import { PEDALS, boardFrom, type AuthoredBoard } from '../../boards.ts';

/** Milliseconds in a second. */
export const MILLI = 1e3;

/** A message of a press in words. */
export const sayItem = (item: PressItem): string => {
  switch (item.send) {
    case 'program':
      return `program ${item.program}`;
    case 'bank':
      return `bank ${item.bank}`;
    case 'control':
      return `controller ${item.controller} to ${item.value}`;
  }
};

/** Channel of a pedal as the board has it, 1 to 6. */
export const channelOf = (device: string): number => PEDALS.findIndex((name) => name === device) + 1;

/** A press on a board of the pedals, timed: a hardware chain where no other layout is told. */
export const timed = (press: readonly PressItem[], board: Partial<AuthoredBoard> = {}) =>
  timePress(boardFrom({ layout: 'chain', pedals: PEDALS.length, ...board, press }), {
    runningStatus: board.runningStatus ?? false,
  });

/** A program change to a pedal, programs counted from 1. */
export const program = (device: string, number: number): PressItem => ({
  device,
  send: 'program',
  program: number,
});
/** Bank 1 of a pedal. */
export const bank = (device: string): PressItem => ({ device, send: 'bank', bank: 1 });
/** A controller of a pedal, to 100. */
export const control = (device: string, controller: number): PressItem => ({
  device,
  send: 'control',
  controller,
  value: 100,
});
