/** Mistakes in orders and ticks: sorted and ticked by hand as who makes them would, each is met by its own name. */
import { describe, it } from 'vitest';
import type { Task } from '../../../../src/core/learn/index.ts';
import { expectMistakes, numberAfter, numberIn, orderBy, placesWhere, rowsOf, tasksOf } from './school.ts';

describe('who sorts', () => {
  it('loops by volts, without the LED, or from the wrong end, hears it', () => {
    const numbers = (item: string): readonly number[] =>
      [...item.matchAll(/\d+(?:\.\d+)?/g)].map(([number]) => Number(number));
    const volts = (item: string): number => numbers(item)[0] ?? NaN;
    const ohms = (item: string): number =>
      numbers(item)
        .slice(1)
        .reduce((sum, one) => sum + one, 0);
    expectMistakes(tasksOf('rank-loops'), {
      'most first': (task) => orderBy(task, (item) => -(volts(item) - 1.4) / ohms(item)),
      // Of two with the same volts, the one with more ohms first.
      'by volts': (task) => orderBy(task, (item) => volts(item) - ohms(item) / 1e5),
      'LED forgotten': (task) => orderBy(task, (item) => volts(item) / ohms(item)),
    });
  });

  it('leads by length or gauge alone, or from the wrong end, hears it', () => {
    const gauge = (item: string): number => numberAfter(item, /m of/);
    const eachMetre = (task: Task, item: string): number => numberIn(rowsOf(task).get(`${gauge(item)} AWG`));
    // Two of one length have no order by length alone.
    const apart = tasksOf('rank-leads').filter(
      ({ form }) => form.form === 'order' && new Set(form.items.map(numberIn)).size === form.items.length,
    );
    expectMistakes(apart, {
      'most first': (task) => orderBy(task, (item) => -numberIn(item) * eachMetre(task, item)),
      'by length alone': (task) => orderBy(task, numberIn),
      'by gauge alone': (task) => orderBy(task, (item) => 1e3 * gauge(item) + numberIn(item)),
    });
  });

  it('a press, and sends what waits too late or what is undone too early, hears it', () => {
    /** Weights of the messages to the slow pedal, or to the only one; whatever goes to another comes after them. */
    const order = (task: Task, weights: Readonly<Record<string, number>>, quickFirst = false): string => {
      const slow = /'(\w+)' loads slowly/.exec(task.ask)?.[1];
      const plain = { bank: 1, program: 2, controller: 3 };
      return orderBy(task, (item) => {
        const isSlow = slow === undefined || item.includes(`'${slow}'`);
        const kind = (item.split(' ')[0] ?? '') as keyof typeof plain;
        return isSlow ? (weights[kind] ?? plain[kind]) : plain[kind] + (quickFirst ? -10 : 10);
      });
    };
    expectMistakes(tasksOf('press-order'), {
      'bank after program': (task) => order(task, { bank: 9 }),
      'program first': (task) => order(task, { program: 0 }),
      'control before program': (task) => order(task, { controller: 0 }),
      'quick one first': (task) => order(task, {}, true),
      'back and forth': (task) => {
        const slow = /'(\w+)' loads slowly/.exec(task.ask)?.[1] ?? '';
        // One to the slow pedal, one to the quick one: each second message comes half a place after the first.
        const kinds = task.form.form === 'order' ? task.form.items : [];
        const rank = (item: string): number =>
          kinds.filter((other) => isTo(other) === isTo(item) && place(other) < place(item)).length;
        const isTo = (item: string): boolean => item.includes(`'${slow}'`);
        const place = (item: string): number =>
          ['bank', 'program', 'controller'].indexOf(item.split(' ')[0] ?? '');
        return orderBy(task, (item) => rank(item) + (isTo(item) ? 0 : 0.5));
      },
    });
  });
});

describe('who ticks', () => {
  it('what may be cut, and looks at the shield alone, or at nothing, hears it', () => {
    const isShield = (option: string): boolean => /2|sleeve/.test(option);
    const right = (task: Task): readonly string[] => task.right.split(' ');
    expectMistakes(tasksOf('cut-conductors'), {
      'shield as return': (task) =>
        task.form.form === 'several'
          ? right(task)
              .filter(
                (place) =>
                  !isShield(task.form.form === 'several' ? (task.form.options[Number(place)] ?? '') : ''),
              )
              .join(' ') || '-'
          : '',
      'none may go': () => '-',
      'all may go': (task) => placesWhere(task, () => true),
      'shield always free': (task) => placesWhere(task, isShield),
    });
  });

  it('who is meant, and forgets omni, what is shut out, or that a clock has no channel, hears it', () => {
    const menus = (task: Task, name: string): string => rowsOf(task).get(name) ?? '';
    const channel = (task: Task): number => numberAfter(task.ask, /on channel/);
    const own = (task: Task, name: string): boolean =>
      numberAfter(menus(task, name), /channel/) === channel(task);
    const omni = (task: Task, name: string): boolean => menus(task, name).includes('omni on');
    const shut = (task: Task, name: string): boolean =>
      task.ask.includes('program change') && menus(task, name).includes('program changes off');
    const tasks = tasksOf('who-is-meant');
    expectMistakes(
      tasks.filter(({ ask }) => !ask.includes('a clock')),
      {
        'omni forgotten': (task) => placesWhere(task, (name) => own(task, name) && !shut(task, name)),
        'shut out forgotten': (task) => placesWhere(task, (name) => own(task, name) || omni(task, name)),
        'all hear, so all act': (task) => placesWhere(task, () => true),
        'none is meant': () => '-',
      },
    );
    // A clock names no channel: who looks for one finds it with those alone that listen to all.
    expectMistakes(
      tasks.filter(({ ask }) => ask.includes('a clock')),
      {
        'a clock has a channel': (task) => placesWhere(task, (name) => omni(task, name)),
        'all hear, so all act': (task) => placesWhere(task, () => true),
        'none is meant': () => '-',
      },
    );
  });

  it('lines of a log, and looks at their length or counts channels from 1, hears it', () => {
    const upper = (byte: number): string => byte.toString(16).padStart(2, '0').toUpperCase();
    /** The lines of the press; `first` is the channel that C0 and B0 are taken for. */
    const lines = (task: Task, first: number): readonly string[] => [
      ...[...task.ask.matchAll(/program (\d+) on channel (\d+)/g)].map(
        ([, number, channel]) => `${upper(0xc0 + Number(channel) - first)} ${upper(Number(number) - 1)}`,
      ),
      ...[...task.ask.matchAll(/controller (\d+) to (\d+) on channel (\d+)/g)].map(
        ([, number, value, channel]) =>
          `${upper(0xb0 + Number(channel) - first)} ${upper(Number(number))} ${upper(Number(value))}`,
      ),
    ];
    const isShort = (line: string): boolean => !line.includes(' ');
    expectMistakes(tasksOf('extra-in-log'), {
      'only single bytes': (task) => placesWhere(task, isShort),
      'single bytes belong to it': (task) =>
        placesWhere(task, (line) => !isShort(line) && !lines(task, 1).includes(line)),
      'channels from 1 on the wire': (task) => placesWhere(task, (line) => !lines(task, 0).includes(line)),
      'all is part of it': () => '-',
    });
  });
});
