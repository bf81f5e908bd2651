/** Mistakes in bytes: written out by hand from what the question tells, each is met by its own name. */
import { describe, expect, it } from 'vitest';
import { gradeAnswer } from '../../../../src/core/learn/index.ts';
import type { Task } from '../../../../src/core/learn/index.ts';
import { expectMistakes, numberAfter, optionsOf, rowsOf, tasksOf } from './school.ts';

const hex = (...bytes: readonly number[]): string =>
  bytes.map((byte) => byte.toString(16).padStart(2, '0')).join(' ');

/** Bits as they are shown, a 1 where the line is dark. */
const bitsOf = (task: Task): readonly number[] => {
  if (task.shows?.shows !== 'bits') throw new Error('task: needs bits');
  return task.shows.levels.map(Number);
};

/** Bits in the order of their weight, the lowest first, as a byte. */
const byteOf = (bits: readonly number[]): number => bits.reduce((sum, bit, at) => sum + bit * 2 ** at, 0);

/** How a byte on the wire is read by who makes a mistake; `data` are its eight bits as they are sent. */
const READ_WRONG: Readonly<Record<string, (data: readonly number[]) => number>> = {
  'lowest bit last': (data) => byteOf(data.toReversed()),
  'current means 1': (data) => byteOf(data.map((bit) => 1 - bit)),
  both: (data) => byteOf(data.map((bit) => 1 - bit).toReversed()),
  'start bit counted': (data) => byteOf([0, ...data.slice(0, 7)]),
};

describe('who reads or draws a byte', () => {
  it('and takes the wrong end first, the wrong level, both, or the start bit, hears it', () => {
    expectMistakes(
      tasksOf('trace-to-hex'),
      Object.fromEntries(
        Object.entries(READ_WRONG).map(([name, read]) => [
          name,
          (task: Task) => hex(read(bitsOf(task).slice(1, 9))),
        ]),
      ),
    );
  });

  it('is offered the bits of each mistake, and hears of the one that was made', () => {
    const offered = new Set<string>();
    for (const task of tasksOf('byte-to-bits')) {
      const byte = parseInt(/The byte ([0-9A-F]{2})/.exec(task.ask)?.[1] ?? '', 16);
      const data = Array.from({ length: 8 }, (_, at) => Math.floor(byte / 2 ** at) % 2);
      optionsOf(task).forEach((option, at) => {
        const bits = option.split(' ').map(Number);
        expect([bits.length, bits[0], bits[9]]).toEqual([10, 0, 1]);
        const { right, mistake = '' } = gradeAnswer(task, String(at));
        if (right) return;
        offered.add(mistake);
        expect(byteOf(bits.slice(1, 9)), `${task.ask} ${option}`).toBe(READ_WRONG[mistake]?.(data));
      });
    }
    expect([...offered].sort()).toEqual(Object.keys(READ_WRONG).sort());
  });

  it('behind a late input, and loses too little or too much, hears it', () => {
    const data = (task: Task): readonly number[] => bitsOf(task).slice(1, 9);
    /** The byte with each 1 kept that a test of its neighbours in time lets through. */
    const kept = (task: Task, keeps: (before: number, after: number) => boolean): string =>
      hex(
        byteOf(
          data(task).map((bit, at, all) => (bit === 1 && keeps(all[at - 1] ?? 0, all[at + 1] ?? 0) ? 1 : 0)),
        ),
      );
    expectMistakes(tasksOf('late-byte'), {
      'nothing lost': (task) => hex(byteOf(data(task))),
      'first 1 of each row lost': (task) => kept(task, (before) => before === 1),
      // The highest bit is taken for the first one in time.
      'counted from the other end': (task) => kept(task, (_, after) => after === 1),
      'every 1 lost': () => '0',
      'ones grow': (task) =>
        hex(byteOf(data(task).map((bit, at, all) => (bit === 1 || all[at - 1] === 1 ? 1 : 0)))),
    });
  });
});

describe('who writes a message', () => {
  it('and counts from the wrong number, or takes another kind, hears it', () => {
    const isProgram = (task: Task): boolean => task.ask.startsWith('Program');
    const channel = (task: Task): number => numberAfter(task.ask, /channel/);
    const program = (task: Task): number => numberAfter(task.ask, /Program/);
    const control = (task: Task): readonly [number, number] => [
      numberAfter(task.ask, /Controller/),
      numberAfter(task.ask, /to/),
    ];
    const data = (task: Task): readonly number[] => (isProgram(task) ? [program(task) - 1] : control(task));
    const kind = (task: Task): number => (isProgram(task) ? 0xc0 : 0xb0);
    /** A status byte with the channel as a player counts it; channel 16 has no place and is taken for 0. */
    const asCounted = (task: Task): number => kind(task) + (channel(task) % 16);
    expectMistakes(tasksOf('message-bytes'), {
      'channel from 0': (task) => hex(asCounted(task), ...data(task)),
      'program from 0': (task) => hex(0xc0 + channel(task) - 1, program(task)),
      'both from 0': (task) => hex(asCounted(task), program(task)),
      'value first': (task) => hex(0xb0 + channel(task) - 1, ...control(task).toReversed()),
      'takes a data byte too many': (task) => hex(kind(task) + channel(task) - 1, ...data(task), 0),
      'another kind': (task) => hex((isProgram(task) ? 0xb0 : 0xc0) + channel(task) - 1, ...data(task)),
    });
  });

  it('from a manual that counts its own way, and takes the neighbour, hears it', () => {
    const wire = (task: Task): number => numberAfter(task.ask, /on channel/) - 1;
    const preset = (task: Task): number => numberAfter(task.ask, /preset/);
    const first = (task: Task): number => numberAfter(task.ask, /presets from/);
    const program = (task: Task): number => preset(task) - first(task);
    expectMistakes(tasksOf('next-door'), {
      // One taken off where none was to be, or none where one was.
      'the preset next door': (task) => hex(0xc0 + wire(task), preset(task) - (1 - first(task))),
      'channel from 0': (task) => hex(0xc0 + wire(task) + 1, program(task)),
      'decimal as hex': (task) => `${hex(0xc0 + wire(task))} ${String(program(task)).padStart(2, '0')}`,
      'control change sent': (task) => hex(0xb0 + wire(task), program(task)),
    });
  });

  it('out in full, and drops a status byte or keeps a clock, hears it', () => {
    const sent = (task: Task): readonly string[] =>
      (/status: ([0-9A-F ]+)\./.exec(task.ask)?.[1] ?? '').split(' ');
    /** The status byte before each pair; clocks stay where they are. */
    const full = (task: Task): string => {
      const [status = '', ...rest] = sent(task);
      let inPair = 0;
      return rest
        .flatMap((byte) => (byte === 'F8' ? [byte] : inPair++ % 2 === 0 ? [status, byte] : [byte]))
        .join(' ');
    };
    expectMistakes(tasksOf('expand-running'), {
      'real-time ends running status': (task) => full(task).split(' F8')[0] ?? '',
      'left as it is': (task) =>
        sent(task)
          .filter((byte) => byte !== 'F8')
          .join(' '),
      'only the first': (task) => sent(task).slice(0, 3).join(' '),
      'clock kept': full,
    });
  });

  it('for a bank by a table, and sends other controllers or another order, hears it', () => {
    const wire = (task: Task): number => numberAfter(task.ask, /channel/) - 1;
    const sound = (task: Task): number => numberAfter(task.ask, /sound/);
    const bank = (task: Task): number => Math.floor((sound(task) - 1) / 128);
    const wants = (task: Task): string => rowsOf(task).get('bank select') ?? '';
    const single = (task: Task): number => numberAfter(wants(task), /controller/);
    const call = (task: Task, channel: number, add = 0): readonly number[] => [
      0xc0 + channel,
      ((sound(task) - 1) % 128) + add,
    ];
    const high = (task: Task): readonly number[] => [0xb0 + wire(task), 0, bank(task)];
    const both = (task: Task, channel: number): readonly number[] => [
      ...[0xb0 + channel, 0, 0],
      ...[0xb0 + channel, 32, bank(task)],
    ];
    const select = (task: Task, channel = wire(task)): readonly number[] =>
      wants(task).includes('then') ? both(task, channel) : [0xb0 + channel, single(task), bank(task)];
    expectMistakes(tasksOf('bytes-from-table'), {
      'one bank byte only': (task) => hex(...high(task), ...call(task, wire(task))),
      'both bank bytes always': (task) => hex(...both(task, wire(task)), ...call(task, wire(task))),
      'the other controller': (task) =>
        hex(0xb0 + wire(task), 32 - single(task), bank(task), ...call(task, wire(task))),
      'bank after program': (task) => hex(...call(task, wire(task)), ...select(task)),
      'program from 1': (task) => hex(...select(task), ...call(task, wire(task), 1)),
      'channel from 1': (task) => hex(...select(task, wire(task) + 1), ...call(task, wire(task) + 1)),
      'no bank': (task) => hex(...call(task, wire(task))),
    });
  });
});
