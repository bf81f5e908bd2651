import { describe, expect, test } from 'vitest';
import { pileFrom, symptomGroups } from '../../../src/core/learn/index.ts';
import {
  BENCH_BOARDS,
  BOARD_FAULTS,
  taughtTable,
  faultName,
  remedyFor,
} from '../../../src/core/faults/index.ts';

describe('A pile of suspects', () => {
  test('names each suspect in words with what to do about it, in the order of the author', () => {
    const { suspects } = pileFrom({
      board: 'link',
      suspects: ['sender: supply-off', 'lead 1: swapped'],
      looks: [],
    });
    expect(suspects.map(({ name, words }) => [name, words])).toEqual([
      ['sender: supply-off', 'sender: its supply is off'],
      ['lead 1: swapped', 'lead 1: two wires are swapped'],
    ]);
    expect(suspects.map(({ remedy }) => remedy)).toEqual([remedyFor('supply-off'), remedyFor('swapped')]);
  });

  test('shows at each look what each suspect would show', () => {
    const { looks } = pileFrom({
      board: 'link',
      suspects: ['sender: supply-off', 'pedal 1: supply-off', 'pedal 1: wrong-channel'],
      looks: ['lamp sender', 'lamp pedal 1', 'light pedal 1', 'channel pedal 1'],
    });
    expect(looks.map(({ id, seen }) => [id, seen])).toEqual([
      ['lamp sender', ['dark', 'lit', 'lit']],
      ['lamp pedal 1', ['lit', 'dark', 'lit']],
      ['light pedal 1', ['stays dark', 'stays dark', 'blinks']],
      ['channel pedal 1', ['the same', 'the same', 'different']],
    ]);
    expect(looks[0]?.words).toBe('Look at the lamp of the sender.');
  });

  test('of no suspects and no looks is empty', () => {
    expect(pileFrom({ board: 'chain', suspects: [], looks: [] })).toEqual({ suspects: [], looks: [] });
  });
});

describe('Symptoms with all that may be behind them', () => {
  test('hold every fault of the board once under each symptom that it shows, the largest group first', () => {
    for (const board of BENCH_BOARDS) {
      const groups = symptomGroups(board);
      const sizes = groups.map(({ suspects }) => suspects.length);
      expect(sizes).toEqual([...sizes].sort((one, other) => other - one));
      const named = new Set(groups.flatMap(({ suspects }) => suspects.map(({ name }) => name)));
      expect(named).toEqual(new Set(taughtTable(board).faults.map(faultName)));
      for (const { suspects } of groups)
        expect(new Set(suspects.map(({ name }) => name)).size).toBe(suspects.length);
    }
  });

  test('put a silent pedal down to most of what can go wrong, and a flicker to a cold joint alone', () => {
    const groups = symptomGroups('link');
    expect(groups[0]?.symptom).toBe('pedal 1 does nothing');
    const flicker = groups.find(({ symptom }) => symptom.includes('comes and goes'));
    expect(flicker?.suspects.map(({ name }) => name)).toEqual(['lead 1: cold-joint']);
    expect(groups[0]?.suspects.length).toBeLessThan(BOARD_FAULTS.length);
  });
});
