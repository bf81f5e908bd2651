/** The boards of the fault bench in words. */
import type { BenchBoard } from '../../src/core/faults/index.ts';

/** Names of the boards, for a choice. */
export const BOARD_NAMES: Readonly<Record<BenchBoard, string>> = {
  link: 'one pedal',
  chain: 'two pedals in a chain',
};

/** What stands on a board, from the sender on, each with the jacks or plugs that it has. */
export const BOARD_ROWS: Readonly<Record<BenchBoard, readonly { name: string; detail: string }[]>> = {
  link: [
    { name: 'sender', detail: '3.5 mm TRS outlet, to be set to Type A' },
    { name: 'lead 1', detail: 'TRS to TRS, straight' },
    { name: 'pedal 1', detail: '3.5 mm TRS IN, Type A' },
  ],
  chain: [
    { name: 'sender', detail: '3.5 mm TRS outlet, to be set to Type A' },
    { name: 'lead 1', detail: 'TRS to DIN' },
    { name: 'pedal 1', detail: 'DIN IN, DIN THRU' },
    { name: 'lead 2', detail: 'DIN to TRS' },
    { name: 'pedal 2', detail: '3.5 mm TRS IN, Type A' },
  ],
};

/** A probability as a percentage: '21 %', 'under 1 %'. */
export function sayChance(probability: number): string {
  return probability < 0.01 ? 'under 1 %' : `${Math.round(probability * 100)} %`;
}
