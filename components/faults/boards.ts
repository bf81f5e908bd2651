/** The boards of the fault bench in words. */
import type { BenchBoard, PartSpot } from '../../src/core/faults/index.ts';
import { contactWords } from '../../src/core/wiring/index.ts';
import type { Contact, Side } from '../../src/core/wiring/index.ts';

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

/** The plugs of a lead, as seen along the board. */
export const PLUG_NAMES: Readonly<Record<Side, string>> = { from: 'sending plug', to: 'receiving plug' };

/** A jack of a device, by its side of it: 'OUT of the sender', 'THRU of pedal 1'. */
export function jackName({ name }: BoardPart, side: number): string {
  const mark = side === 0 ? 'IN' : name === 'sender' ? 'OUT' : 'THRU';
  return `${mark} of ${sayPart(name)}`;
}

/** A part in a sentence: 'the sender', 'pedal 1'. */
export function sayPart(name: string): string {
  return name === 'sender' ? 'the sender' : name;
}

/** What is touched of a part: 'the display', 'the ring of the sending plug', 'the wire from pin 4 to the ring'. */
export function saySpots(spots: readonly PartSpot[]): string {
  const names = spots.map((spot): readonly [side: Side | undefined, what: string] => {
    const [side, what] = spot.split(' ') as [string, string | undefined];
    return what === undefined ? [undefined, side] : [side as Side, what];
  });
  const contact = (what: string): string => contactWords(what as Contact);
  const [first, second] = names;
  if (!first) return 'all of it';
  const [side, what] = first;
  if (side === undefined) return `the ${what}`;
  if (second) return `the wire from ${contact(what)} to ${contact(second[1])}`;
  return what === 'plug' ? `the ${PLUG_NAMES[side]}` : `${contact(what)} of the ${PLUG_NAMES[side]}`;
}

/** A probability as a percentage: '21 %', 'under 1 %'. */
export function sayChance(probability: number): string {
  return probability < 0.01 ? 'under 1 %' : `${Math.round(probability * 100)} %`;
}
