/** How many ways a board of the bench can fail, and that each is one of its own: circuits are held to hand reasoning. */
import { describe, expect, it } from 'vitest';
import { benchTable, taughtTable } from '../../../src/core/faults/bench-table.ts';
import { withBoardFault } from '../../../src/core/faults/board-changes.ts';
import { BENCH_BOARDS, boardFaults, faultName } from '../../../src/core/faults/board-faults.ts';
import type {
  BenchBoard,
  BoardFault,
  BoardFaultKind,
  BoardPlace,
} from '../../../src/core/faults/board-faults.ts';
import { workingBoard } from '../../../src/core/faults/board-state.ts';
import { checkLink } from '../../../src/core/verdict/index.ts';

const label = ({ kind, place, variant }: BoardFault): string => `${place}: ${kind} ${variant}`;

/** What a board with a fault shows at an observation. */
function seen(
  id: string,
  kind: BoardFaultKind,
  place: BoardPlace,
  variant: number,
  board: BenchBoard = 'link',
): string | undefined {
  const table = benchTable(board);
  const at = table.faults.findIndex((one) => label(one) === label({ kind, place, variant }));
  return table.seen[table.observations.findIndex((one) => one.id === id)]?.[at];
}

const outcome = (kind: BoardFaultKind, place: BoardPlace, variant: number): string | undefined =>
  withBoardFault('link', { kind, place, variant }).links.map((link) => checkLink(link).outcome)[0];

describe('the faults of a board', () => {
  it('are at least sixty, and no two change the board in the same way but for one with two names', () => {
    for (const board of BENCH_BOARDS) {
      const states = boardFaults(board)
        // A mirrored DIN plug is the same circuit as swapped wires, under a name of its own.
        .filter(({ kind }) => kind !== 'mirrored')
        .map((fault) => JSON.stringify(withBoardFault(board, fault)));
      expect(new Set(states).size).toBe(states.length);
      expect(states.length).toBeGreaterThanOrEqual(60);
      expect(states).not.toContain(JSON.stringify(workingBoard(board)));
    }
  });

  it('each show a player something wrong, and something at a check that a sound board does not', () => {
    for (const board of BENCH_BOARDS) {
      const table = benchTable(board);
      table.faults.forEach((fault, at) => {
        const odd = table.observations.filter((_, look) => table.seen[look]?.[at] !== table.good[look]);
        expect(odd.length, label(fault)).toBeGreaterThan(0);
        expect(new Set(table.symptoms[at]), label(fault)).not.toEqual(new Set(['the right preset']));
      });
    }
  });

  it('are known to lessons in their plain way alone, with the same symptoms and looks', () => {
    for (const board of BENCH_BOARDS) {
      const [whole, taught] = [benchTable(board), taughtTable(board)];
      const kept = whole.faults.flatMap((fault, at) => (taught.faults.includes(fault) ? [at] : []));
      expect(kept.map((at) => whole.symptoms[at])).toEqual(taught.symptoms);
      const looks = taught.observations.map((one) => whole.observations.indexOf(one));
      expect(looks.map((look) => kept.map((at) => whole.seen[look]?.[at]))).toEqual(taught.seen);
      expect(looks.map((look) => whole.good[look])).toEqual(taught.good);
      expect(taught.observations.map(({ id }) => id)).not.toContain('home lead 1');
      expect(taught.faults.map(faultName)).not.toContain('lead 1: half-in');
      expect(taught.faults.filter(({ kind }) => kind === 'open')).toHaveLength(board === 'link' ? 2 : 4);
      expect(taught.faults.filter(({ kind }) => kind === 'short')).toHaveLength(board === 'link' ? 1 : 2);
    }
  });
});

describe('the ways of one fault', () => {
  it('are each pair of contacts that can touch: the LED goes without, or stays lit where the sink line lies on ground', () => {
    for (const side of [0, 3])
      expect([0, 1, 2].map((pair) => outcome('short', 'lead 1', side + pair))).toEqual([
        'no-path',
        'no-path',
        'always-on',
      ]);
  });

  it('are each pair of wires that can be swapped, told by the sign and size of the volts', () => {
    const volts = [0, 1, 2].map((pair) => seen('volts clock lead 1', 'swapped', 'lead 1', pair));
    // Source and sink turn the reading round; with the shield, at 0 V, in the place of either the other line stands alone.
    expect(volts).toEqual(['−31 mV', '−4.97 V', '5.00 V']);
  });

  it('starve the loop through a bad joint, and the ohms of the line say how bad it is', () => {
    for (const variant of Array.from({ length: 8 }, (_, at) => at)) {
      expect(outcome('bad-joint', 'lead 1', variant)).toBe('starved');
      const line = variant % 2 === 0 ? 'source' : 'sink';
      expect(seen(`ohms ${line} lead 1`, 'bad-joint', 'lead 1', variant)).toBe(
        variant < 4 ? '4.7 kohm' : '22 kohm',
      );
    }
  });

  it('part a cold joint by the line that flickers and the plug that is moved', () => {
    const ways = [0, 1, 2, 3].map((variant) =>
      ['continuity source lead 1', 'moved lead 1'].map((id) => seen(id, 'cold-joint', 'lead 1', variant)),
    );
    expect(ways).toEqual([
      ['flickers', 'it comes and goes at its sending end'],
      ['beeps', 'it comes and goes at its sending end'],
      ['flickers', 'it comes and goes at its receiving end'],
      ['beeps', 'it comes and goes at its receiving end'],
    ]);
  });

  it('leave a lead sound that is not pushed home: it tests well on its own, and another one in its place works', () => {
    for (const [variant, end] of ['sending', 'receiving'].entries()) {
      expect(seen('home lead 1', 'half-in', 'lead 1', variant)).toBe(`not at its ${end} end`);
      expect(seen('continuity source lead 1', 'half-in', 'lead 1', variant)).toBe('beeps');
      expect(seen('swap lead 1', 'half-in', 'lead 1', variant)).toBe('it changes');
    }
    expect(seen('home lead 2', 'half-in', 'lead 2', 0, 'chain')).toBe('not at its receiving end');
  });

  it('are told by the meter or the menu where they are in the sender', () => {
    expect([0, 1].map((one) => seen('volts idle lead 1', 'supply-low', 'sender', one))).toEqual([
      '1.20 V',
      '1.60 V',
    ]);
    expect(
      new Set([0, 1, 2, 3, 4].map((one) => seen('outlet', 'outlet-set-wrong', 'sender', one))).size,
    ).toBe(5);
    expect([0, 1].map((one) => seen('numbers', 'program-off-by-one', 'sender', one))).toEqual([
      'one too high',
      'one too low',
    ]);
    for (const variant of [0, 1, 2, 3]) expect(outcome('output-part', 'sender', variant)).toBe('starved');
  });

  it('are the channel that a pedal answers on instead', () => {
    const channels = [0, 1, 2, 3, 4, 5].map((one) =>
      seen('answers pedal 1', 'wrong-channel', 'pedal 1', one),
    );
    expect(channels).toEqual([2, 3, 4, 9, 10, 16].map((channel) => `on channel ${channel}`));
    expect(seen('answers pedal 1', 'not-listening', 'pedal 1', 0)).toBe('on none');
  });
});
