/**
 * What meter, eye and swap show of each fault, worked out by hand from Ohm's law and from where the contacts lie: 5 V and 220 ohm at the
 * output, 1 m of 26 AWG, clock for 0.6144 % of the time.
 */
import { describe, expect, it } from 'vitest';
import { benchTable } from '../../../src/core/faults/bench-table.ts';
import { withBoardFault } from '../../../src/core/faults/board-changes.ts';
import { BENCH_BOARDS, boardFaults, faultName } from '../../../src/core/faults/board-faults.ts';
import type { BenchBoard, BoardFault, BoardFaultKind } from '../../../src/core/faults/board-faults.ts';
import { checkLink } from '../../../src/core/verdict/index.ts';

/** Every fault of a board with what each observation shows of it. */
const rows = (board: BenchBoard) => {
  const table = benchTable(board);
  return table.faults.map((fault, at) => ({
    fault,
    symptoms: table.symptoms[at],
    see: (id: string): string =>
      table.seen[table.observations.findIndex((one) => one.id === id)]?.[at] ?? `no ${id}`,
    good: (id: string): string => table.good[table.observations.findIndex((one) => one.id === id)] ?? '',
  }));
};
const ROWS = { link: rows('link'), chain: rows('chain') };

/** What an observation shows of each variant of a kind on the board of one lead, in order. */
const each = (kind: BoardFaultKind, id: string): readonly string[] =>
  ROWS.link.filter(({ fault }) => fault.kind === kind).map(({ see }) => see(id));

/** Milliamperes through the LED of the first pedal while a 0 is sent. */
const milliamperes = (fault: BoardFault, board: BenchBoard = 'link'): number => {
  const [link] = withBoardFault(board, fault).links;
  return link ? (checkLink(link).inputs[0]?.active ?? NaN) * 1e3 : NaN;
};
const OVER = 'overload: more than the meter can show';

describe('with nothing wrong', () => {
  it('each line of a lead has 0.134 ohm of wire, beeps, and the two lines do not', () => {
    const good = ROWS.link[0]?.good ?? (() => '');
    expect(['source', 'sink'].map((line) => good(`ohms ${line} lead 1`))).toEqual(['0.1 ohm', '0.1 ohm']);
    expect(['source', 'sink', 'across'].map((what) => good(`continuity ${what} lead 1`))).toEqual([
      ...['beeps', 'beeps', 'silent'],
    ]);
  });

  it('the free plug has 5 V at rest and 0.6144 % of it with clock, and the jack 1.38 V of LED behind 220 ohm', () => {
    const good = ROWS.link[0]?.good ?? (() => '');
    expect(good('volts idle lead 1')).toBe('5.00 V');
    expect(good('volts clock lead 1')).toBe(`${Math.round(5e3 * 48 * 4 * 32e-6)} mV`);
    expect(good('diode pedal 1')).toBe('1.60 V');
  });
});

describe('an open conductor', () => {
  it('is silent along its own line alone, whichever plug it is off in', () => {
    expect(each('open', 'continuity source lead 1')).toEqual(['silent', 'beeps', 'silent', 'beeps']);
    expect(each('open', 'continuity sink lead 1')).toEqual(['beeps', 'silent', 'beeps', 'silent']);
    expect(each('open', 'ohms source lead 1')).toEqual([OVER, '0.1 ohm', OVER, '0.1 ohm']);
  });

  it('takes the voltage at rest away only where it is the source line', () => {
    expect(each('open', 'volts idle lead 1')).toEqual(['0 mV', '5.00 V', '0 mV', '5.00 V']);
    expect(each('open', 'volts clock lead 1')).toEqual(['0 mV', '0 mV', '0 mV', '0 mV']);
  });
});

describe('contacts that touch', () => {
  it('beep across where they are source and sink, in either plug, and leave no clock between them', () => {
    expect(each('short', 'continuity across lead 1')).toEqual([
      ...['beeps', 'silent', 'silent'],
      ...['beeps', 'silent', 'silent'],
    ]);
    expect(each('short', 'volts clock lead 1')[0]).toBe('0 mV');
  });

  it('hold the touched line at the shield: no source at rest, or the sink at 0 V with 5 V across the loop', () => {
    // Source on the shield: 0 V less a sink that is at 5 V but for 0.6 % of the time. Sink on the shield: the other way round.
    expect(each('short', 'volts idle lead 1').slice(0, 3)).toEqual(['5.00 V', '0 mV', '5.00 V']);
    expect(each('short', 'volts clock lead 1').slice(0, 3)).toEqual(['0 mV', '−4.97 V', '5.00 V']);
    expect(5 * (1 - 48 * 4 * 32e-6)).toBeCloseTo(4.97, 2);
  });
});

describe('wires that changed places', () => {
  it('turn the sign of the clock where they are source and sink, and move the shield where it is one of them', () => {
    expect(each('swapped', 'volts clock lead 1')).toEqual(['−31 mV', '−4.97 V', '5.00 V']);
    expect(each('swapped', 'volts idle lead 1')).toEqual(['5.00 V', '−5.00 V', '0 mV']);
    expect(each('swapped', 'continuity across lead 1')).toEqual(['silent', 'silent', 'silent']);
  });
});

describe('a part or a joint of another value', () => {
  it('shows its ohms on its own line, and starves the LED: about 3.6 V over 660 ohm and the joint', () => {
    expect(each('bad-joint', 'ohms source lead 1')).toEqual([
      ...['4.7 kohm', '0.1 ohm', '4.7 kohm', '0.1 ohm'],
      ...['22 kohm', '0.1 ohm', '22 kohm', '0.1 ohm'],
    ]);
    expect(each('bad-joint', 'ohms sink lead 1')).toEqual([
      ...['0.1 ohm', '4.7 kohm', '0.1 ohm', '4.7 kohm'],
      ...['0.1 ohm', '22 kohm', '0.1 ohm', '22 kohm'],
    ]);
    // The LED's 1.4 V at 1.6 mA falls by 37 mV for each e times less: 1.36 V at 0.68 mA, 1.29 V at 0.16 mA.
    for (const [variant, ohms, volts] of [
      [0, 4700, 1.36],
      [4, 22000, 1.31],
    ] as const)
      expect(milliamperes({ kind: 'bad-joint', place: 'lead 1', variant })).toBeCloseTo(
        (1e3 * (5 - volts)) / (660 + ohms),
        2,
      );
  });

  it('is no beep: more than 50 ohm', () => {
    expect(each('bad-joint', 'continuity source lead 1').slice(0, 2)).toEqual(['silent', 'beeps']);
  });

  it('in an output shows nothing to a meter of 10 Mohm, and leaves 1.6 mA out of reach', () => {
    expect(new Set(each('output-part', 'volts idle lead 1'))).toEqual(new Set(['5.00 V']));
    expect(new Set(each('output-part', 'volts clock lead 1'))).toEqual(new Set(['31 mV']));
    for (const { fault } of ROWS.link.filter((one) => one.fault.kind === 'output-part')) {
      const [most, least] = fault.variant % 2 === 0 ? [1.39, 1.35] : [0.17, 0.16];
      expect(milliamperes(fault)).toBeLessThan(most);
      expect(milliamperes(fault)).toBeGreaterThan(least);
    }
  });

  it('in an input is seen by the diode test: 2.2 V over its resistor are too many for 3 V, a turned diode takes 0.81 V', () => {
    expect(each('input-part', 'diode pedal 1')).toEqual([OVER, OVER, '0.81 V']);
  });

  it('is a supply that a meter tells: the volts it has, none of which gets past the LED', () => {
    expect(each('supply-low', 'volts idle lead 1')).toEqual(['1.20 V', '1.60 V']);
    for (const variant of [0, 1])
      expect(milliamperes({ kind: 'supply-low', place: 'sender', variant })).toBeLessThan(0.5);
  });
});

describe('a plug that is not pushed home', () => {
  it('is seen by eye, while its lead is sound on every test', () => {
    expect(each('half-in', 'home lead 1')).toEqual(['not at its sending end', 'not at its receiving end']);
    for (const test of [
      'continuity source',
      'continuity sink',
      'continuity across',
      'ohms source',
      'ohms sink',
    ])
      for (const { see, good } of ROWS.link.filter(({ fault }) => fault.kind === 'half-in'))
        expect(see(`${test} lead 1`)).toBe(good(`${test} lead 1`));
  });

  it('one step out puts the ring of the plug on the sleeve of the jack: no volts at the sending end', () => {
    expect(each('half-in', 'volts idle lead 1')).toEqual(['0 mV', '5.00 V']);
  });
});

describe('every fault of both boards', () => {
  it('is helped by a sound lead only where it is in that lead, or in its plugs', () => {
    for (const board of BENCH_BOARDS)
      for (const { fault, see } of ROWS[board])
        for (const lead of board === 'link' ? ['lead 1'] : ['lead 1', 'lead 2'])
          expect(see(`swap ${lead}`), `${board}, ${faultName(fault)} ${fault.variant}`).toBe(
            fault.place === lead ? 'it changes' : 'no change',
          );
  });

  it('leaves lamps lit but that of the box whose supply is off', () => {
    for (const board of BENCH_BOARDS)
      for (const { fault, see, good } of ROWS[board])
        for (const box of board === 'link' ? ['sender', 'pedal 1'] : ['sender', 'pedal 1', 'pedal 2']) {
          const off = fault.kind === 'supply-off' && fault.place === box;
          expect(see(`lamp ${box}`), faultName(fault)).toBe(off ? 'dark' : good(`lamp ${box}`));
        }
  });

  it('has the symptoms of its kind whichever variant it is, so that no number gives a variant away', () => {
    for (const board of BENCH_BOARDS)
      for (const [name, alike] of Map.groupBy(ROWS[board], ({ fault }) => faultName(fault)))
        expect(new Set(alike.map(({ symptoms }) => symptoms?.join())).size, name).toBe(1);
  });

  it('stands once in the table, and the table has no other', () => {
    for (const board of BENCH_BOARDS) {
      const listed = boardFaults(board).map((fault) => JSON.stringify(fault));
      expect(new Set(listed).size).toBe(listed.length);
      expect(ROWS[board].map(({ fault }) => JSON.stringify(fault))).toEqual(listed);
    }
  });
});
