/** The part that a fault is in, as the end of a round says it. */
import { describe, expect, it } from 'vitest';
import { BENCH_BOARDS, benchTable, sayBoardFault } from '../../../src/core/faults/index.ts';
import type { BoardFaultKind, BoardPlace } from '../../../src/core/faults/board-faults.ts';
import { sayFaultPart } from '../../../src/core/faults/say-part.ts';

const part = (place: BoardPlace, kind: BoardFaultKind, variant: number, board: 'link' | 'chain' = 'link') =>
  sayFaultPart(board, { place, kind, variant });

describe('The part that a fault is in', () => {
  it.each(BENCH_BOARDS)('tells every two faults of a board apart: %s', (board) => {
    const said = benchTable(board).faults.map((one) => `${sayBoardFault(one)}. ${sayFaultPart(board, one)}`);
    expect(said.filter((one, at) => said.indexOf(one) < at)).toEqual([]);
    for (const one of said) expect(one).not.toMatch(/undefined|\[object/);
  });

  // By hand from the boards: lead 1 of one pedal is straight TRS, its source line on the ring; the chain's goes to pins 4 and 5.
  it('is a wire, a joint or two contacts of one plug', () => {
    expect(part('lead 1', 'open', 0)).toBe('The wire on the ring is off, in the plug at the sender.');
    expect(part('lead 1', 'open', 3)).toBe('The wire on the tip is off, in the plug at pedal 1.');
    expect(part('lead 1', 'short', 0)).toBe('The ring and the tip touch, in the plug at the sender.');
    expect(part('lead 1', 'bad-joint', 4)).toBe(
      'The joint on the ring, in the plug at the sender, has 22000 ohm.',
    );
    expect(part('lead 1', 'cold-joint', 1)).toBe('It is the joint on the tip, in the plug at the sender.');
    expect(part('lead 1', 'open', 2, 'chain')).toBe('The wire on pin 4 is off, in the plug at pedal 1.');
    expect(part('lead 1', 'short', 3, 'chain')).toBe('Pin 4 and pin 5 touch, in the plug at pedal 1.');
    expect(part('lead 2', 'half-in', 0, 'chain')).toBe('It is the plug at pedal 2.');
  });

  it('is a plug that is TS, or wires that have changed places', () => {
    expect(part('lead 1', 'ts-lead', 0)).toBe('The plug at the sender is TS.');
    expect(part('lead 1', 'ts-lead', 2)).toBe('Both of its plugs are TS.');
    expect(part('lead 1', 'swapped', 0)).toBe(
      'The wires on the tip and the ring have changed places, in the plug at pedal 1.',
    );
  });

  it('is a value or a setting of a device, and nothing where the name says all', () => {
    expect(part('sender', 'output-part', 3)).toBe('The resistor in the sink line has 22000 ohm.');
    expect(part('pedal 1', 'input-part', 2)).toBe('The diode that protects the LED is the wrong way round.');
    expect(part('sender', 'supply-low', 0)).toBe('Its output has 1.2 V.');
    expect(part('pedal 2', 'wrong-channel', 5, 'chain')).toBe(
      'It listens on channel 16; the sender uses channel 1.',
    );
    expect(part('sender', 'program-off-by-one', 1)).toBe('Its numbers are one too low.');
    expect(part('sender', 'supply-off', 0)).toBe('');
  });
});
