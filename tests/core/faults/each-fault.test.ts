/** Every fault of the bench: what it does to the circuit, what the player sees of it, what shows it, and what is said of it. */
import { describe, expect, it } from 'vitest';
import {
  BENCH_BOARDS,
  BOARD_FAULTS,
  benchTable,
  faultName,
  remedyFor,
  sayBoardFault,
  sayFaultKind,
  saySymptoms,
} from '../../../src/core/faults/index.ts';
import { boardFaults } from '../../../src/core/faults/board-faults.ts';
import type { BoardFaultKind, BoardPlace } from '../../../src/core/faults/board-faults.ts';
import { withBoardFault } from '../../../src/core/faults/board-changes.ts';
import { workingBoard } from '../../../src/core/faults/board-state.ts';
import { arrivals, symptomsOf } from '../../../src/core/faults/board-symptoms.ts';
import { checkLink } from '../../../src/core/verdict/index.ts';

const outcomes = (board: 'link' | 'chain', kind: BoardFaultKind, place: BoardPlace, variant = 0) =>
  withBoardFault(board, { kind, place, variant }).links.map((link) => checkLink(link).outcome);
const seen = (board: 'link' | 'chain', kind: BoardFaultKind, place: BoardPlace) =>
  symptomsOf(withBoardFault(board, { kind, place, variant: 0 }));

describe('a fault in the circuit', () => {
  it('lets no current through an open conductor, the source line’s or the sink line’s', () => {
    for (const variant of [0, 1]) expect(outcomes('link', 'open', 'lead 1', variant)).toEqual(['no-path']);
    expect(outcomes('chain', 'open', 'lead 2')).toEqual(['flows', 'no-path']);
  });

  it('turns the current round where two wires are swapped or a jack is of the other type', () => {
    // Facts sheet, section 2: A into B, the LED is reversed and the protection diode conducts.
    expect(outcomes('link', 'swapped', 'lead 1')).toEqual(['backwards']);
    expect(outcomes('link', 'wrong-style', 'pedal 1')).toEqual(['backwards']);
    expect(outcomes('link', 'outlet-set-wrong', 'sender')).toEqual(['backwards']);
    expect(outcomes('chain', 'mirrored', 'lead 1')).toEqual(['backwards', 'flows']);
    expect(outcomes('chain', 'wrong-style', 'pedal 2')).toEqual(['flows', 'backwards']);
  });

  it('is the same circuit for a mirrored DIN plug as for swapped wires: pins 4 and 5 stand either side of pin 2', () => {
    for (const place of ['lead 1', 'lead 2'] as const)
      expect(withBoardFault('chain', { kind: 'mirrored', place, variant: 0 })).toEqual(
        withBoardFault('chain', { kind: 'swapped', place, variant: 0 }),
      );
  });

  it('leaves the LED without current where source and sink touch, or where the ring has no wire', () => {
    for (const kind of ['short', 'ts-lead'] as const) {
      const [outcome] = outcomes('link', kind, 'lead 1');
      expect(outcome).not.toBe('flows');
      expect(arrivals(withBoardFault('link', { kind, place: 'lead 1', variant: 0 }))).toEqual(['nothing']);
    }
  });

  it('is none where what is wrong is no wire: the links flow as on a working board', () => {
    const wired: readonly BoardFaultKind[] = [
      'open',
      'short',
      'swapped',
      'mirrored',
      'ts-lead',
      'wrong-style',
      'outlet-set-wrong',
      'bad-joint',
      'half-in',
      'odd-jack',
      'output-part',
      'input-part',
      'supply-low',
    ];
    for (const board of BENCH_BOARDS)
      for (const fault of boardFaults(board)) {
        const { links } = withBoardFault(board, fault);
        expect(JSON.stringify(links) === JSON.stringify(workingBoard(board).links), faultName(fault)).toBe(
          !wired.includes(fault.kind),
        );
      }
    for (const board of BENCH_BOARDS)
      for (const link of workingBoard(board).links) expect(checkLink(link).outcome).toBe('flows');
  });
});

describe('what the player sees of a fault', () => {
  it('is silence from there on down the chain', () => {
    for (const kind of ['open', 'short', 'swapped', 'mirrored', 'ts-lead'] as const) {
      expect(seen('chain', kind, 'lead 1'), kind).toEqual(['nothing', 'nothing']);
      expect(seen('chain', kind, 'lead 2'), kind).toEqual(['the right preset', 'nothing']);
    }
    for (const kind of ['dead-thru', 'soft-thru-off'] as const)
      expect(seen('chain', kind, 'pedal 1'), kind).toEqual(['the right preset', 'nothing']);
    for (const kind of ['supply-off', 'message-filtered', 'outlet-set-wrong'] as const)
      expect(seen('chain', kind, 'sender'), kind).toEqual(['nothing', 'nothing']);
    expect(seen('chain', 'supply-off', 'pedal 2')).toEqual(['the right preset', 'nothing']);
    expect(seen('chain', 'out-into-out', 'pedal 1')).toEqual(['nothing', 'nothing']);
    expect(seen('chain', 'wrong-style', 'pedal 2')).toEqual(['the right preset', 'nothing']);
  });

  it('is silence of one pedal alone where only its settings are wrong: bytes pass on through it', () => {
    for (const kind of ['wrong-channel', 'not-listening'] as const) {
      expect(seen('chain', kind, 'pedal 1'), kind).toEqual(['nothing', 'the right preset']);
      expect(seen('chain', kind, 'pedal 2'), kind).toEqual(['the right preset', 'nothing']);
    }
  });

  it('is the wrong preset everywhere where the sender counts or banks in another way', () => {
    for (const [kind, symptom] of [
      ['program-off-by-one', 'the preset next to it'],
      ['bank-missing', 'the right number in the wrong bank'],
    ] as const) {
      expect(seen('link', kind, 'sender')).toEqual([symptom]);
      expect(seen('chain', kind, 'sender')).toEqual([symptom, symptom]);
    }
  });

  it('comes and goes behind a cold joint, at every pedal behind it', () => {
    const flicker = 'comes and goes when leads are moved';
    expect(seen('chain', 'cold-joint', 'lead 1')).toEqual([flicker, flicker]);
    expect(seen('chain', 'cold-joint', 'lead 2')).toEqual(['the right preset', flicker]);
  });

  it('is told pedal by pedal', () => {
    expect(saySymptoms(['nothing'])).toBe('pedal 1 does nothing');
    expect(saySymptoms(['the right preset', 'nothing'])).toBe(
      'pedal 1 calls up the right preset; pedal 2 does nothing',
    );
    expect(saySymptoms(['the preset next to it', 'the right number in the wrong bank'])).toBe(
      'pedal 1 calls up the preset next to the right one; pedal 2 calls up the right number in the wrong bank',
    );
    expect(saySymptoms(['comes and goes when leads are moved'])).toBe(
      'pedal 1 comes and goes when leads are moved',
    );
    expect(saySymptoms([])).toBe('');
  });
});

describe('what shows a fault', () => {
  /** Observations that show something else than on a board with nothing wrong. */
  const odd = (kind: BoardFaultKind, place: BoardPlace, board: 'link' | 'chain' = 'link') => {
    const table = benchTable(board);
    const at = table.faults.findIndex((fault) => fault.kind === kind && fault.place === place);
    return table.observations.flatMap(({ id }, look) =>
      table.seen[look]?.[at] === table.good[look] ? [] : [id],
    );
  };

  it('is one look in the menu for each setting, and the light that tells whether bytes arrive', () => {
    expect(odd('wrong-channel', 'pedal 1')).toEqual(['channel pedal 1', 'answers pedal 1']);
    expect(odd('not-listening', 'pedal 1')).toEqual(['listen pedal 1', 'answers pedal 1']);
    expect(odd('program-off-by-one', 'sender')).toEqual(['numbers']);
    expect(odd('bank-missing', 'sender')).toEqual(['bank']);
    expect(odd('message-filtered', 'sender')).toEqual(['filter', 'answers pedal 1']);
    expect(odd('soft-thru-off', 'pedal 1', 'chain')).toEqual([
      'thru menu',
      'light pedal 2',
      'answers pedal 2',
      'volts clock lead 2',
    ]);
  });

  it('is the lamp, the light and the meter where a supply is off', () => {
    const shown = odd('supply-off', 'sender');
    expect(shown).toContain('lamp sender');
    expect(shown).toContain('light pedal 1');
    expect(shown).toContain('volts idle lead 1');
    expect(shown).not.toContain('continuity source lead 1');
  });

  it('is continuity, volts and another lead for an open conductor, and the other line still beeps', () => {
    const shown = odd('open', 'lead 1');
    expect(shown).toContain('swap lead 1');
    expect(shown).toContain('continuity source lead 1');
    expect(shown).not.toContain('continuity sink lead 1');
    expect(shown).not.toContain('continuity across lead 1');
  });

  it('is a beep between the two lines for a short, and both lines silent for swapped wires', () => {
    expect(odd('short', 'lead 1')).toContain('continuity across lead 1');
    const swapped = odd('swapped', 'lead 1');
    expect(swapped).toContain('continuity source lead 1');
    expect(swapped).toContain('continuity sink lead 1');
    expect(swapped).not.toContain('continuity across lead 1');
  });

  it('is one ring on the plug of a TS lead, and the OUT that a lead is in', () => {
    expect(odd('ts-lead', 'lead 1')).toContain('plugs lead 1');
    expect(odd('out-into-out', 'pedal 1')).toContain('jack pedal 1');
  });

  it('is something for every fault of both boards', () => {
    for (const board of BENCH_BOARDS)
      for (const { kind, place } of boardFaults(board))
        expect(odd(kind, place, board).length, `${board} ${place} ${kind}`).toBeGreaterThan(0);
  });

  it('never stands upstream: a fault of the second lead or pedal shows nothing at the first', () => {
    for (const { kind, place } of boardFaults('chain').filter(({ place: where }) => where.endsWith('2')))
      expect(
        odd(kind, place, 'chain').filter((id) => id.endsWith('1')),
        `${place} ${kind}`,
      ).toEqual([]);
  });
});

describe('what is said of a fault', () => {
  it('is its place and what is wrong, each kind in words of its own', () => {
    expect(new Set(BOARD_FAULTS.map(sayFaultKind)).size).toBe(BOARD_FAULTS.length);
    for (const board of BENCH_BOARDS)
      for (const fault of boardFaults(board)) {
        expect(faultName(fault)).toBe(`${fault.place}: ${fault.kind}`);
        expect(sayBoardFault(fault)).toBe(`${fault.place}: ${sayFaultKind(fault.kind)}`);
      }
    expect(sayBoardFault({ kind: 'open', place: 'lead 1' })).toBe('lead 1: a conductor is open');
  });

  it('is what to do about it, in whole sentences, each its own', () => {
    const remedies = BOARD_FAULTS.map(remedyFor);
    expect(new Set(remedies).size).toBe(BOARD_FAULTS.length);
    for (const remedy of remedies) expect(remedy).toMatch(/^[A-Z].*\.$/);
  });

  it('defers to qualified people where mains or repair may be behind it, and says power off before a plug is moved', () => {
    expect(remedyFor('supply-off')).toMatch(/qualified people/);
    expect(remedyFor('dead-thru')).toMatch(/qualified people/);
    for (const kind of ['open', 'outlet-set-wrong', 'out-into-out'] as const)
      expect(remedyFor(kind)).toMatch(/Power off/);
  });
});
