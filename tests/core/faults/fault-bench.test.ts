/** The fault bench: symptoms and observations follow from the faulty board; the fewest observations are held to a plain search. */
import { describe, expect, it } from 'vitest';
import { USUAL_FREQUENCIES, benchTable, suspectsLeft, weigh } from '../../../src/core/faults/bench-table.ts';
import type { Seen } from '../../../src/core/faults/bench-table.ts';
import { BOARD_FAULTS, boardFaults, faultName } from '../../../src/core/faults/board-faults.ts';
import type { BoardFault, BoardFaultKind, BoardPlace } from '../../../src/core/faults/board-faults.ts';
import { withBoardFault } from '../../../src/core/faults/board-changes.ts';
import { workingBoard } from '../../../src/core/faults/board-state.ts';
import { symptomsOf } from '../../../src/core/faults/board-symptoms.ts';
import { bitsOfObservation, fewestExpected } from '../../../src/core/faults/decision.ts';
import type { Suspects } from '../../../src/core/faults/decision.ts';
import { guide } from '../../../src/core/faults/guide.ts';
import { gradeFault, hideFault, hideNumberedFault, observe } from '../../../src/core/faults/hidden-fault.ts';
import { seededRandom } from '../../support/random.ts';

const symptoms = (
  kind: BoardFaultKind,
  place: BoardPlace,
  board: 'link' | 'chain' = 'chain',
): readonly string[] => symptomsOf(withBoardFault(board, { kind, place, variant: 0 }));

describe('symptoms', () => {
  it('are none on a board with nothing wrong', () => {
    for (const board of ['link', 'chain'] as const)
      expect(new Set(symptomsOf(workingBoard(board)))).toEqual(new Set(['the right preset']));
  });

  it('show on every board for every fault that it may have', () => {
    for (const board of ['link', 'chain'] as const)
      for (const fault of boardFaults(board))
        expect(
          symptomsOf(withBoardFault(board, fault)).every((one) => one === 'the right preset'),
          faultName(fault),
        ).toBe(false);
  });

  it('reach down the chain from where the fault is, and not up', () => {
    expect(symptoms('open', 'lead 1')).toEqual(['nothing', 'nothing']);
    expect(symptoms('open', 'lead 2')).toEqual(['the right preset', 'nothing']);
    expect(symptoms('dead-thru', 'pedal 1')).toEqual(['the right preset', 'nothing']);
    expect(symptoms('wrong-channel', 'pedal 1')).toEqual(['nothing', 'the right preset']);
    expect(symptoms('supply-off', 'pedal 1')).toEqual(['nothing', 'nothing']);
    expect(symptoms('cold-joint', 'lead 1')[1]).toBe('comes and goes when leads are moved');
  });

  it('cover every fault of the list on one board or the other', () => {
    const kinds = new Set([...boardFaults('link'), ...boardFaults('chain')].map(({ kind }) => kind));
    expect(kinds).toEqual(new Set(BOARD_FAULTS));
    expect(Object.keys(USUAL_FREQUENCIES).sort()).toEqual([...BOARD_FAULTS].sort());
  });
});

describe('observations', () => {
  const see = (fault: BoardFault, id: string, board: 'link' | 'chain' = 'link'): string =>
    observe({ board, fault, symptoms: [] }, id).seen;
  const fault = (kind: BoardFaultKind, place: BoardPlace = 'lead 1', variant = 0): BoardFault => ({
    kind,
    place,
    variant,
  });

  it('are readings of the faulty circuit: 31 mV with clock on a good lead, turned round by swapped wires, none through an open one', () => {
    expect(see(fault('wrong-channel', 'pedal 1'), 'volts clock lead 1')).toBe('31 mV');
    expect(see(fault('swapped'), 'volts clock lead 1')).toBe('−31 mV');
    expect(see(fault('open'), 'volts clock lead 1')).toBe('0 mV');
    expect(see(fault('supply-off', 'sender'), 'volts idle lead 1')).toBe('0 mV');
    expect(see(fault('wrong-channel', 'pedal 1'), 'volts idle lead 1')).toBe('5.00 V');
  });

  it('tell a jack of the other type by its diodes: 1.60 V forward, 0.81 V when it is turned round', () => {
    expect(see(fault('open'), 'diode pedal 1')).toBe('1.60 V');
    expect(see(fault('wrong-style', 'pedal 1'), 'diode pedal 1')).toBe('0.81 V');
  });

  it('find a cold joint in the line that has it', () => {
    expect(see(fault('cold-joint', 'lead 1', 0), 'continuity source lead 1')).toBe('flickers');
    expect(see(fault('cold-joint', 'lead 1', 0), 'continuity sink lead 1')).toBe('beeps');
    expect(see(fault('cold-joint', 'lead 1', 1), 'continuity sink lead 1')).toBe('flickers');
  });

  it('refuse what the board does not have', () => {
    expect(() => see(fault('open'), 'thru menu')).toThrow(
      "hidden fault: a 'link' has no observation 'thru menu'",
    );
    expect(see(fault('soft-thru-off', 'pedal 1'), 'thru menu', 'chain')).toBe('off');
  });
});

describe('the fewest observations in expectation', () => {
  /** The definition, tried out without any cleverness. */
  function plain(suspects: Suspects, left: readonly number[]): number {
    const weight = (set: readonly number[]): number =>
      set.reduce((sum, at) => sum + (suspects.weights[at] as number), 0);
    if (new Set(left.map((at) => suspects.names[at])).size <= 1) return 0;
    let best = Infinity;
    for (const row of suspects.answers) {
      const branches = new Map<number, number[]>();
      for (const at of left)
        branches.set(row[at] as number, [...(branches.get(row[at] as number) ?? []), at]);
      if (branches.size < 2) continue;
      let sum = 1;
      for (const branch of branches.values())
        sum += (weight(branch) / weight(left)) * plain(suspects, branch);
      best = Math.min(best, sum);
    }
    return best === Infinity ? 0 : best;
  }

  it('equal those of a plain search over all ways, on 60 small cases drawn by seed', () => {
    const random = seededRandom(41);
    for (let round = 0; round < 60; round++) {
      const count = random.integer(2, 6);
      const suspects: Suspects = {
        names: Array.from({ length: count }, (_, at) => `fault ${at}`),
        weights: Array.from({ length: count }, () => random.integer(1, 9)),
        answers: Array.from({ length: random.integer(1, 6) }, () =>
          Array.from({ length: count }, () => random.integer(0, 2)),
        ),
      };
      const left = [...suspects.names.keys()];
      expect(fewestExpected(suspects, left)).toBeCloseTo(plain(suspects, left), 9);
    }
  });

  it('are two for four equal suspects and two observations that halve them, which tell one bit each', () => {
    const suspects: Suspects = {
      names: ['a', 'b', 'c', 'd'],
      weights: [1, 1, 1, 1],
      answers: [
        [0, 0, 1, 1],
        [0, 1, 0, 1],
      ],
    };
    expect(fewestExpected(suspects, [0, 1, 2, 3])).toBe(2);
    expect(bitsOfObservation(suspects, [0, 1, 2, 3], 0)).toBeCloseTo(1, 12);
    expect(fewestExpected(suspects, [2])).toBe(0);
  });

  it('are never more than the guide takes, on average over the faults that the symptoms leave', () => {
    for (const board of ['link', 'chain'] as const) {
      const table = benchTable(board);
      const suspects = weigh(table, USUAL_FREQUENCIES);
      for (const shown of new Set(table.symptoms.map((one) => one.join('/')))) {
        const left = [...table.faults.keys()].filter((at) => table.symptoms[at]?.join('/') === shown);
        const total = left.reduce((sum, at) => sum + (suspects.weights[at] as number), 0);
        let mean = 0;
        for (const at of left) mean += ((suspects.weights[at] as number) / total) * follow(board, at).length;
        expect(fewestExpected(suspects, left)).toBeLessThanOrEqual(mean + 1e-9);
      }
    }
  });
});

/** Follow the guide to the end on one fault. */
function follow(board: 'link' | 'chain', at: number): readonly Seen[] {
  const table = benchTable(board);
  const hidden = { board, fault: table.faults[at] as BoardFault, symptoms: table.symptoms[at] ?? [] };
  const made: Seen[] = [];
  for (
    let step = guide(board, hidden.symptoms, made);
    step.observation;
    step = guide(board, hidden.symptoms, made)
  ) {
    if (
      new Set(
        suspectsLeft(table, hidden.symptoms, made).map((one) => faultName(table.faults[one] as BoardFault)),
      ).size === 1
    )
      break;
    made.push(observe(hidden, step.observation.id));
  }
  return made;
}

describe('the guide and the grade', () => {
  it('lead to every fault of both boards, and the name is right and proved', () => {
    for (const board of ['link', 'chain'] as const)
      benchTable(board).faults.forEach((fault, at) => {
        const made = follow(board, at);
        const grade = gradeFault(
          { board, fault, symptoms: benchTable(board).symptoms[at] ?? [] },
          fault,
          made,
        );
        expect([faultName(fault), grade.right, grade.proved]).toEqual([faultName(fault), true, true]);
      });
  });

  it('take a mirrored DIN and swapped wires for one another, since they read alike', () => {
    const fault: BoardFault = { kind: 'mirrored', place: 'lead 2', variant: 0 };
    const hidden = { board: 'chain', fault, symptoms: symptomsOf(withBoardFault('chain', fault)) } as const;
    expect(gradeFault(hidden, { kind: 'swapped', place: 'lead 2' }, []).right).toBe(true);
    expect(gradeFault(hidden, { kind: 'open', place: 'lead 2' }, []).sentence).toBe(
      'Not this one. It was: lead 2: the DIN plug is wired mirrored.',
    );
  });

  it('say when a right name was a guess', () => {
    const fault: BoardFault = { kind: 'wrong-channel', place: 'pedal 1', variant: 0 };
    const hidden = { board: 'link', fault, symptoms: symptomsOf(withBoardFault('link', fault)) } as const;
    const grade = gradeFault(hidden, fault, []);
    expect([grade.right, grade.proved, grade.taken]).toEqual([true, false, 0]);
    expect(grade.sentence).toMatch(
      /^Right, but not settled: \d+ faults still fitted\. You took 0; the best way takes [\d.]+ on average/,
    );
  });

  it('follow the frequencies that a teacher sets', () => {
    const often = { ...USUAL_FREQUENCIES, 'wrong-channel': 1000 };
    expect(guide('link', ['nothing'], [], often).suspects[0]?.name).toBe('pedal 1: wrong-channel');
    expect(guide('link', ['nothing'], [], often).observation?.id).toBe('channel pedal 1');
  });

  it('hide faults as often as the frequencies say, and by seed', () => {
    const random = seededRandom(42);
    const draws = Array.from({ length: 4000 }, () => hideFault('link', random.next()).fault.kind);
    const names = new Map(
      boardFaults('link').map((fault) => [faultName(fault), USUAL_FREQUENCIES[fault.kind]]),
    );
    const total = [...names.values()].reduce((sum, one) => sum + one, 0);
    const share = draws.filter((kind) => kind === 'wrong-channel').length / draws.length;
    expect(Math.abs(share - USUAL_FREQUENCIES['wrong-channel'] / total)).toBeLessThan(0.02);
    expect(hideFault('link', 0.5)).toEqual(hideFault('link', 0.5));
  });

  it('say so when no single fault shows what was seen', () => {
    expect(
      guide('link', ['the right number in the wrong bank'], [{ id: 'bank', seen: 'bank sent' }]).words,
    ).toMatch(/^No single fault/);
  });
});

describe('numbered faults', () => {
  it('come as often as the frequencies say, and never the same one twice running', () => {
    const names = Array.from({ length: 500 }, (_, at) => faultName(hideNumberedFault('link', at + 1).fault));
    const share = names.filter((name) => name === 'pedal 1: wrong-channel').length / names.length;
    // By hand, one place each on this board: 8 of 6+2+4+5+5+5+5+4+6+4+8+4+6+4+3+2+4+1+1+1+1 = 81.
    expect(share).toBeCloseTo(8 / 81, 2);
    expect(names.filter((name, at) => name === names[at + 1])).toEqual([]);
  });

  it('refuses a number that is out of bounds', () => {
    expect(() => hideNumberedFault('link', 0)).toThrow(
      'hidden fault: number must be whole, from 1 to 9999, got 0',
    );
  });
});

describe('what cannot be looked at', () => {
  it('is not asked for again', () => {
    const first = guide('link', ['nothing'], []).observation?.id ?? '';
    const next = guide('link', ['nothing'], [], undefined, [first]);
    expect(next.observation?.id).not.toBe(first);
    expect(next.suspects).toHaveLength(guide('link', ['nothing'], []).suspects.length);
  });
});
