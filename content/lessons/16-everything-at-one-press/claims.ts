import { above, between, boardFrom, type AuthoredBoard, type Claims } from '../../../src/core/learn/index.ts';
import { timePress } from '../../../src/core/board/index.ts';
import type { PressItem } from '../../../src/core/plan/index.ts';
import { four, turn } from './data.ts';

const bytes = (press: readonly PressItem[]): readonly number[] =>
  [false, true].map(
    (runningStatus) => timePress(boardFrom({ layout: 'chain', pedals: 4, press }), { runningStatus }).bytes,
  );

/** Seconds until the last message of a press is there. */
const seconds = (board: Omit<AuthoredBoard, 'pedals'>): number =>
  timePress(boardFrom({ ...board, pedals: 4 })).seconds ?? NaN;

export const claims: Claims = {
  'running status saves nothing on four channels, and a quarter on four knobs of one pedal': () => [
    [bytes(four), [8, 8]],
    [bytes([20, 21, 22, 23].map(turn)), [12, 9]],
  ],
  'with software on the way the far pedal first saves nearly a third, and hardware or a hub more': () => {
    const first = seconds({ layout: 'chain', thru: 'software', press: four });
    const saved = 1 - seconds({ layout: 'chain', thru: 'software', press: four.toReversed() }) / first;
    return [
      [saved, between(0.28, 1 / 3)],
      ...(['chain', 'hub'] as const).map(
        (layout) => [1 - seconds({ layout, press: four }) / first, above(saved)] as const,
      ),
    ];
  },
};
