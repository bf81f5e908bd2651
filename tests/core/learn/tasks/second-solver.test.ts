/** A second solver for tasks: it reads the question as a learner does, works it out by school sums, and shares no code with the kinds. */
import { describe, expect, it, test } from 'vitest';
import { gradeAnswer } from '../../../../src/core/learn/index.ts';
import { expectRight, numberAfter, numberIn, optionOf, rowsOf, tasksOf } from './school.ts';

describe('sums on the loop', () => {
  const LED = 1.4;

  it('the current is what the LED leaves of the supply, over all resistors', () => {
    for (const task of tasksOf('loop-current')) {
      const rows = rowsOf(task);
      const ohms = [
        'resistor in the source line',
        'resistor in the sink line',
        'resistor in the receiver',
      ].map((name) => numberIn(rows.get(name)));
      const amperes =
        (numberIn(rows.get('supply of the sender')) - LED) / ohms.reduce((sum, one) => sum + one, 0);
      expectRight(task, `${(amperes * 1e3).toFixed(2)} mA`);
      expectRight(task, `${amperes.toFixed(6)} A`);
    }
  });

  it('the missing resistor is what is left of the ohms of the whole loop', () => {
    for (const task of tasksOf('missing-resistor')) {
      const rows = rowsOf(task);
      const whole =
        (numberIn(rows.get('supply of the sender')) - LED) / (numberAfter(task.ask, /carry/) * 1e-3);
      const there =
        numberIn(rows.get('resistor in the source line')) + numberIn(rows.get('resistor in the sink line'));
      expectRight(task, String(whole - there));
      expectRight(task, `${(whole - there) / 1e3} kohm`);
    }
  });

  it('loops are in the order of (volts - 1.4) over ohms', () => {
    for (const task of tasksOf('rank-loops')) {
      if (task.form.form !== 'order') throw new Error('task: needs an order');
      const { items } = task.form;
      const current = (item: string): number => {
        const [volts = 0, ...ohms] = [...item.matchAll(/\d+(?:\.\d+)?/g)].map(([number]) => Number(number));
        return (volts - LED) / ohms.reduce((sum, one) => sum + one, 0);
      };
      const order = items
        .map((_, at) => at)
        .sort((a, b) => current(items[a] ?? '') - current(items[b] ?? ''));
      expectRight(task, order.join(' '));
    }
  });

  it('two readings alike are rest or no supply, two that differ are a current', () => {
    for (const task of tasksOf('idle-or-active')) {
      // A meter that reads nothing shows no sign.
      expect([...rowsOf(task).values()].join()).not.toContain('-0.00');
      const rows = rowsOf(task);
      const [four, five] = ['pin 4 against pin 2', 'pin 5 against pin 2'].map((name) =>
        numberIn(rows.get(name)),
      ) as [number, number];
      const says = Math.abs(four - five) > 0.5 ? 'It sends' : four > 1 ? 'It rests' : 'It has no supply';
      expectRight(task, optionOf(task, says));
    }
  });
});

describe('what lines meet', () => {
  /** Contacts of source and sink by type (MMA RP-054 for Type A; Type B is common practice). */
  const LINES: Readonly<Record<string, Readonly<Record<string, string>>>> = {
    din: { source: '4', sink: '5', shield: '2' },
    'type-a': { source: 'ring', sink: 'tip', shield: 'sleeve' },
    'type-b': { source: 'tip', sink: 'ring', shield: 'sleeve' },
  };
  const jackIn = (text: string, side: 'out' | 'in'): string =>
    new RegExp(`The ${side}put is ([^.]+)\\.`).exec(text)?.[1] ?? '';

  it('between two types of the loop a straight lead joins like types, a crossed one unlike', () => {
    for (const task of tasksOf('straight-or-crossed', [1, 2])) {
      const [out, into] = [jackIn(task.ask, 'out'), jackIn(task.ask, 'in')];
      const either = into.includes('takes either');
      expectRight(task, optionOf(task, either ? 'Either' : out === into ? 'A straight' : 'A lead with'));
    }
  });

  it('an even number of crossings is straight, an odd one crossed', () => {
    for (const task of tasksOf('count-crossings')) {
      const [out, into] = [jackIn(task.ask, 'out'), jackIn(task.ask, 'in')];
      const crossings = [...rowsOf(task).values()].filter((one) => one !== 'straight').length;
      expectRight(task, optionOf(task, (crossings % 2 === 0) === (out === into) ? 'Yes' : 'No'));
    }
  });

  it('the line that is missing is the one whose contact at the sender has no conductor', () => {
    for (const task of tasksOf('missing-line')) {
      if (task.shows?.shows !== 'lead') throw new Error('task: needs a lead');
      const { output, conductors } = task.shows;
      const missing = Object.entries(LINES[output.style] ?? {}).find(
        ([, contact]) => !conductors.some(({ from }) => from === contact),
      )?.[0];
      const says = { source: 'The source', sink: 'The sink', shield: 'The shield' }[missing ?? ''] ?? 'None';
      expectRight(task, optionOf(task, says));
    }
  });

  it('of all leads between two phone jacks of the loop, those that join source to source and sink to sink are right, and no other', () => {
    const pairs = new Map(
      tasksOf('lay-lead', [2]).flatMap((task) =>
        task.form.form === 'lead' &&
        task.form.output.connector === 'trs-3.5' &&
        task.form.input.connector === 'trs-3.5'
          ? [[task.ask, task] as const]
          : [],
      ),
    );
    expect(pairs.size).toBe(4);
    const contacts = ['tip', 'ring', 'sleeve'];
    // Every way to lay at most one conductor on each contact: each contact of the sender goes to one of the listener or to none.
    const maps = contacts.reduce<readonly (readonly string[])[]>(
      (all, from) =>
        all.flatMap((laid) => [
          laid,
          ...contacts
            .filter((to) => !laid.some((one) => one.endsWith(`-${to}`)))
            .map((to) => [...laid, `${from}-${to}`]),
        ]),
      [[]],
    );
    expect(maps).toHaveLength(34);
    for (const task of pairs.values()) {
      if (task.form.form !== 'lead') continue;
      const [out, into] = [LINES[task.form.output.style], LINES[task.form.input.style]];
      for (const map of maps.filter(({ length }) => length > 0)) {
        const right = ['source', 'sink'].every((line) =>
          map.includes(`${out?.[line] ?? ''}-${into?.[line] ?? ''}`),
        );
        expect(gradeAnswer(task, map.join(' ')).right, `${task.ask} ${map.join(' ')}`).toBe(right);
      }
    }
  });

  test('a sender against ground and an isolated input have no plain lead', () => {
    const impossible = tasksOf('lay-lead', [3]).filter(
      ({ ask }) => jackIn(ask, 'out').includes('to ground') && /Type|DIN/.test(jackIn(ask, 'in')),
    );
    expect(impossible.length).toBeGreaterThan(0);
    for (const task of impossible) expectRight(task, 'none');
  });
});

describe('bits and bytes', () => {
  it('a byte on the wire is its data bits, the lowest first', () => {
    for (const task of tasksOf('trace-to-hex')) {
      if (task.shows?.shows !== 'bits') throw new Error('task: needs bits');
      const [start, ...rest] = task.shows.levels;
      expect([start, rest.at(-1)]).toEqual([false, true]);
      const byte = rest.slice(0, 8).reduce((sum, level, at) => sum + (level ? 2 ** at : 0), 0);
      expectRight(task, `0x${byte.toString(16)}`);
    }
  });

  it('a byte goes out as a 0, its bits from the lowest on, and a 1', () => {
    for (const task of tasksOf('byte-to-bits')) {
      const byte = parseInt(/The byte ([0-9A-F]{2})/.exec(task.ask)?.[1] ?? '', 16);
      const bits = [0, ...Array.from({ length: 8 }, (_, at) => Math.floor(byte / 2 ** at) % 2), 1].join(' ');
      expectRight(task, optionOf(task, bits));
    }
  });

  it('a message is its status byte and its numbers, all counted from 0', () => {
    const hex = (byte: number): string => byte.toString(16).padStart(2, '0');
    for (const task of tasksOf('message-bytes')) {
      const channel = numberAfter(task.ask, /channel/) - 1;
      const bytes = task.ask.startsWith('Program')
        ? [0xc0 + channel, numberAfter(task.ask, /Program/) - 1]
        : [0xb0 + channel, numberAfter(task.ask, /Controller/), numberAfter(task.ask, /to/)];
      expectRight(task, bytes.map(hex).join(' '));
    }
  });

  it('a list takes ten bits of 32 µs for each byte', () => {
    for (const task of tasksOf('list-time')) {
      const count = (words: RegExp): number =>
        Number(new RegExp(`(\\d+) ${words.source}`).exec(task.ask)?.[1] ?? 0);
      const bytes = 3 * count(/note-on/) + 2 * count(/program change/) + 3 * count(/control change/);
      expectRight(task, `${bytes * 10 * 0.032} ms`);
      expectRight(task, `${bytes * 10 * 32} us`);
    }
  });

  it('running status is undone by a status byte before each pair, clocks left out', () => {
    for (const task of tasksOf('expand-running')) {
      const [status = '', ...rest] = (/status: ([0-9A-F ]+)\./.exec(task.ask)?.[1] ?? '').split(' ');
      const data = rest.filter((byte) => byte !== 'F8');
      const notes = Array.from({ length: data.length / 2 }, (_, at) => [
        status,
        data[2 * at],
        data[2 * at + 1],
      ]);
      expectRight(task, notes.flat().join(' '));
    }
  });

  it('a lost byte takes with it what cannot be told without it', () => {
    for (const task of tasksOf('byte-lost')) {
      const sent = (/are sent: ([0-9A-F ]+)\./.exec(task.ask)?.[1] ?? '').split(' ');
      const at = numberAfter(task.ask, /number/) - 1;
      const left = sent.filter((_, place) => place !== at);
      // A text of the bytes that are left: each status byte begins a group, and a group is cut into pairs.
      const groups = left
        .join(' ')
        .split(/(?=\b[89A-F][0-9A-F]\b)/)
        .filter((group) => /^[89A-F]/.test(group));
      const pairs = groups.flatMap(
        (group) =>
          group
            .trim()
            .split(' ')
            .slice(1)
            .join(' ')
            .match(/\S+ \S+/g) ?? [],
      );
      const wanted = sent.filter((byte) => !/^[89A-F]/.test(byte));
      const [first, second] = [wanted.slice(0, 2), wanted.slice(2)].map((pair) =>
        pairs.includes(pair.join(' ')),
      );
      expectRight(
        task,
        optionOf(task, first ? (second ? 'Both' : 'The first') : second ? 'The second' : 'Neither'),
      );
    }
  });
});

describe('copper', () => {
  const ohmsAMetre = (text: string | undefined): number =>
    Number(/([\d.]+) ohm a metre/.exec(text ?? '')?.[1]);

  it('ohms of a lead are twice its length times the ohms of a metre', () => {
    for (const task of tasksOf('ohms-of-lead')) {
      const rows = rowsOf(task);
      expectRight(task, String(2 * numberIn(rows.get('length')) * ohmsAMetre(rows.get('conductors'))));
    }
  });

  it('a reel is as long as its ohms over those of a metre', () => {
    for (const task of tasksOf('metres-from-ohms')) {
      const metres = numberAfter(task.ask, /shows/) / ohmsAMetre(rowsOf(task).get('conductors'));
      expectRight(task, `${metres} m`);
      expectRight(task, `${metres * 100} cm`);
    }
  });

  it('volts in the copper are the current times its ohms', () => {
    for (const task of tasksOf('volts-in-lead')) {
      const rows = rowsOf(task);
      const milliamperes = numberAfter(task.ask, /carries/);
      expectRight(
        task,
        String(milliamperes * 2 * numberIn(rows.get('length')) * ohmsAMetre(rows.get('conductors'))),
      );
    }
  });

  it('leads are in the order of length times ohms a metre', () => {
    for (const task of tasksOf('rank-leads')) {
      if (task.form.form !== 'order') throw new Error('task: needs an order');
      const { items } = task.form;
      const rows = rowsOf(task);
      const ohms = (item: string): number =>
        numberIn(item) * ohmsAMetre(rows.get(/\d+ AWG/.exec(item)?.[0] ?? ''));
      const order = items.map((_, at) => at).sort((a, b) => ohms(items[a] ?? '') - ohms(items[b] ?? ''));
      expectRight(task, order.join(' '));
    }
  });

  it('works and allowed parts at 15 m', () => {
    for (const task of tasksOf('works-and-allowed'))
      expectRight(
        task,
        optionOf(
          task,
          numberAfter(task.ask, /lead of/) > 15 ? 'It works, and is longer' : 'It works, and the standard',
        ),
      );
  });
});
