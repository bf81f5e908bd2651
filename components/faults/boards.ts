/** The boards of the fault bench in words. */
import type { BenchBoard } from '../../src/core/faults/index.ts';

/** Names of the boards, for a choice. */
export const BOARD_NAMES: Readonly<Record<BenchBoard, string>> = {
  link: 'one pedal',
  chain: 'two pedals in a chain',
};

type Face = 'din' | 'phone';

/** A part of a board as it is drawn: a device with the faces of its jacks, or a lead with those of its plugs. */
export interface BoardPart {
  /** 'sender', 'lead 1', 'pedal 1': the place of a fault and of what is checked. */
  readonly name: string;
  readonly detail: string;
  /** Towards the sender, then away from it; a device may have none on one side. */
  readonly faces: readonly [Face | undefined, Face | undefined];
}

/** What stands on a board, from the sender on. */
export const BOARD_PARTS: Readonly<Record<BenchBoard, readonly BoardPart[]>> = {
  link: [
    { name: 'sender', detail: '3.5 mm TRS OUT, to be set to Type A', faces: [undefined, 'phone'] },
    { name: 'lead 1', detail: 'TRS to TRS, straight', faces: ['phone', 'phone'] },
    { name: 'pedal 1', detail: '3.5 mm TRS IN, Type A', faces: ['phone', undefined] },
  ],
  chain: [
    { name: 'sender', detail: '3.5 mm TRS OUT, to be set to Type A', faces: [undefined, 'phone'] },
    { name: 'lead 1', detail: 'TRS to DIN', faces: ['phone', 'din'] },
    { name: 'pedal 1', detail: 'DIN IN, DIN THRU', faces: ['din', 'din'] },
    { name: 'lead 2', detail: 'DIN to TRS', faces: ['din', 'phone'] },
    { name: 'pedal 2', detail: '3.5 mm TRS IN, Type A', faces: ['phone', undefined] },
  ],
};

/** A probability as a percentage: '21 %', 'under 1 %'. */
export function sayChance(probability: number): string {
  return probability < 0.01 ? 'under 1 %' : `${Math.round(probability * 100)} %`;
}
