/** The second solver on presses: bytes counted by hand, orders tried one by one, messages written out in hex. */
import { describe, expect, it } from 'vitest';
import { gradeAnswer } from '../../../../src/core/learn/index.ts';
import type { Task } from '../../../../src/core/learn/index.ts';
import { expectRight, numberAfter, numberIn, optionOf, rowsOf, tasksOf } from './school.ts';

/** Bytes of a message in words: two for a program, three for a controller, twice three for a bank. */
const bytesOf = (words: string): number => (/bank/.test(words) ? 6 : /controller/.test(words) ? 3 : 2);

const hex = (byte: number): string => byte.toString(16).padStart(2, '0').toUpperCase();

describe('the time of a press', () => {
  it('is 0.32 ms for each byte, and no more for what loads later', () => {
    for (const task of tasksOf('press-time')) {
      const sent = [...rowsOf(task)]
        .filter(([what]) => what !== 'a bank' && !what.startsWith('each pedal'))
        .flatMap(([, told]) => told.split(', '));
      const bytes = sent.reduce((sum, one) => sum + bytesOf(one), 0);
      expectRight(task, `${(bytes * 0.32).toFixed(2)} ms`);
    }
  });
});

describe('running status', () => {
  it('saves a byte wherever kind and channel are those of the message before', () => {
    for (const task of tasksOf('running-saves')) {
      const status = [...rowsOf(task)].flatMap(([what, told]) => {
        const channel = numberAfter(what, /channel/);
        const kind = /program/.test(told) ? 'C' : 'B';
        return Array.from({ length: /bank/.test(told) ? 2 : 1 }, () => `${kind}${channel}`);
      });
      const saved = status.filter((one, at) => at > 0 && one === status[at - 1]).length;
      expectRight(task, `${saved} bytes`);
    }
  });
});

/** Every order of some places. */
function orders(left: readonly number[]): readonly (readonly number[])[] {
  return left.length === 0
    ? [[]]
    : left.flatMap((one) => orders(left.filter((other) => other !== one)).map((rest) => [one, ...rest]));
}

/** Whether an order serves each pedal: a model of its own, in which a bank waits and a program sets the knobs back. */
function serves(task: Task, order: readonly string[]): boolean {
  const loadsSlowly = /'(\w+)' loads slowly/.exec(task.ask)?.[1];
  const pedals = order.map((item) => /'(\w+)'/.exec(item)?.[1] ?? '');
  const groups = pedals.filter((one, at) => at === 0 || pedals[at - 1] !== one);
  if (groups.length !== new Set(pedals).size) return false;
  if (loadsSlowly !== undefined && groups[0] !== loadsSlowly) return false;
  return groups.every((pedal) => {
    let [waiting, bankAt, knob] = [false, false, false];
    for (const item of order.filter((_, at) => pedals[at] === pedal)) {
      if (item.startsWith('bank')) waiting = true;
      else if (item.startsWith('program')) [bankAt, waiting, knob] = [waiting, false, false];
      else knob = true;
    }
    const own = order.filter((_, at) => pedals[at] === pedal).join();
    return bankAt === own.includes('bank') && knob === own.includes('controller');
  });
}

describe('the order of a press', () => {
  it('of all orders exactly one serves the pedals, and no other is right', () => {
    for (const task of tasksOf('press-order').filter((_, at) => at % 5 === 0)) {
      if (task.form.form !== 'order') throw new Error('task: needs an order');
      const { items } = task.form;
      const all = orders(items.map((_, at) => at));
      const serving = all.filter((order) =>
        serves(
          task,
          order.map((at) => items[at] ?? ''),
        ),
      );
      expect(serving, task.ask).toHaveLength(1);
      for (const order of all) expect(gradeAnswer(task, order.join(' ')).right).toBe(order === serving[0]);
    }
  });

  it('of who is sent to first is that of the longest way and loading, added up pedal by pedal', () => {
    for (const task of tasksOf('far-or-near')) {
      const rows = rowsOf(task);
      const [where = '', list = ''] = (rows.get('pedals') ?? '').split(': ');
      const names = list.split(', ');
      const step = /software/.test(rows.get('each THRU') ?? '') ? 1.32 : 0;
      const loads = new Map(
        names.map((name) => [name, numberIn(rows.get(`'${name}' loads its sound in`)) || 0] as const),
      );
      const ready = (order: readonly string[]): number =>
        Math.max(
          ...order.map((name, at) => {
            const way = where === 'behind a hub' ? 0 : names.indexOf(name) * step;
            return 0.64 * (at + 1) + way + (loads.get(name) ?? 0);
          }),
        );
      const [near, far] = [ready(names), ready(names.toReversed())];
      const says =
        Math.abs(near - far) < 0.1 ? 'Either' : near < far ? `From '${names[0]}'` : `From '${names.at(-1)}'`;
      expectRight(task, optionOf(task, says));
    }
  });
});

describe('bytes', () => {
  it('of a sound are those of its bank as the table wants it, and its place in the bank', () => {
    for (const task of tasksOf('bytes-from-table')) {
      const channel = numberAfter(task.ask, /channel/) - 1;
      const sound = numberAfter(task.ask, /sound/) - 1;
      const bank = Math.floor(sound / 128);
      const wants = rowsOf(task).get('bank select') ?? '';
      const select = /then controller 32/.test(wants)
        ? [0xb0 + channel, 0, 0, 0xb0 + channel, 32, bank]
        : [0xb0 + channel, numberAfter(wants, /controller/), bank];
      expectRight(task, [...select, 0xc0 + channel, sound % 128].map(hex).join(' '));
    }
  });

  it('that no message of the press has are extra', () => {
    for (const task of tasksOf('extra-in-log')) {
      if (task.form.form !== 'several') throw new Error('task: needs several');
      const programs = [...task.ask.matchAll(/program (\d+) on channel (\d+)/g)].map(
        ([, number, channel]) => `${hex(0xc0 + Number(channel) - 1)} ${hex(Number(number) - 1)}`,
      );
      const controls = [...task.ask.matchAll(/controller (\d+) to (\d+) on channel (\d+)/g)].map(
        ([, controller, value, channel]) =>
          `${hex(0xb0 + Number(channel) - 1)} ${hex(Number(controller))} ${hex(Number(value))}`,
      );
      const asked = [...programs, ...controls];
      expect(asked.length).toBeGreaterThan(1);
      expectRight(
        task,
        task.form.options.flatMap((line, at) => (asked.includes(line) ? [] : [String(at)])).join(' '),
      );
    }
  });
});
