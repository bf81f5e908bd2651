/** The second solver on unmarked jacks: rules and a table of what each jack can show, written down from the lesson; and the finder with all its devices. */
import { describe, expect, it } from 'vitest';
import type { Task } from '../../../../src/core/learn/index.ts';
import { findJack } from '../../../../src/core/readings/index.ts';
import type { JackReading, TakenReading } from '../../../../src/core/readings/index.ts';
import { jackEvidence } from '../../../support/evidence.ts';
import { expectRight, optionOf, rowsOf, tasksOf } from './school.ts';

/** A reading as a learner sees it: 'Diode test, power off, ring to tip' and '1.60 V'. Volts, or ohms; no end for overload. */
interface Seen {
  readonly dial: string;
  readonly power: string;
  readonly contacts: string;
  readonly shows: number;
}

const SIZES: Readonly<Record<string, number>> = { V: 1, mV: 1e-3, ohm: 1, kohm: 1e3, Mohm: 1e6 };

function seenIn(task: Task): readonly Seen[] {
  return [...rowsOf(task)].map(([what, value]) => {
    const parts = what.split(', ');
    const [, digits = '', unit = ''] = /^(−?[\d.]+) (\w+)$/.exec(value) ?? [];
    const number = Number(digits.replace('−', '-')) * (SIZES[unit] ?? NaN);
    return {
      dial: parts[0] ?? '',
      power: parts.slice(1, -1).join(', '),
      contacts: parts.at(-1) ?? '',
      shows: value.startsWith('overload') ? Infinity : number,
    };
  });
}

/** The places of the options that are so; '-' for none. */
function ticked({ form }: Task, isSo: (text: string) => boolean): string {
  if (form.form !== 'several') throw new Error('task: needs several');
  return form.options.flatMap((text, at) => (isSo(text) ? [String(at)] : [])).join(' ') || '-';
}

describe('what is safe', () => {
  it('with the power on volts, with the power off resistance and diode test, a resistor after some volts; and what was read is not new', () => {
    for (const task of tasksOf('next-safe')) {
      if (task.form.form !== 'choice') throw new Error('task: needs choices');
      const seen = seenIn(task);
      const right = task.form.options.flatMap((text, at) => {
        const live = !text.includes('power off');
        const dial = text.split(', ')[0] ?? '';
        const contacts = text.split(', ').at(-1);
        const loadable = seen.some(
          (one) => one.dial === 'DC volts' && one.contacts === contacts && one.shows > 0.2 && one.shows <= 6,
        );
        const safe = live
          ? dial === 'DC volts' || (dial.includes('1 kohm') && loadable)
          : dial === 'Resistance' || dial === 'Diode test';
        return safe && !rowsOf(task).has(text) ? [String(at)] : [];
      });
      expect(right, task.ask).toHaveLength(1);
      expectRight(task, right[0] ?? '');
    }
  });

  it('of the dials, by whether any power is left', () => {
    for (const task of tasksOf('allowed-now')) {
      const dead = /supply plug is out|battery is out/.test(task.ask);
      const before = task.shows === undefined ? undefined : seenIn(task)[0]?.shows;
      const loadable = before !== undefined && before > 0.2 && before <= 6;
      const safe = dead
        ? ['Resistance', 'Diode test']
        : ['DC volts', ...(loadable ? ['DC volts, with 1 kohm across the probes'] : [])];
      expectRight(
        task,
        ticked(task, (text) => safe.includes(text)),
      );
    }
  });
});

describe('the source', () => {
  it('is under the red probe at the plus of a running clock, at the higher diode reading, or where alone there are volts', () => {
    for (const task of tasksOf('source-contact')) {
      const seen = seenIn(task);
      const red = (one: Seen | undefined): string => one?.contacts.split(' ')[0] ?? '';
      const clock = seen.find(({ power }) => power.includes('clock'));
      const diode = seen.filter(({ dial }) => dial === 'Diode test').toSorted((a, b) => b.shows - a.shows);
      const fed = seen.filter(({ power, shows }) => power.includes('rest') && shows > 1);
      const found = clock
        ? clock.shows > 0
          ? red(clock)
          : clock.contacts.split(' ').at(-1)
        : diode.length === 2
          ? red(diode[0])
          : fed.length === 1
            ? red(fed[0])
            : undefined;
      expectRight(task, optionOf(task, found === undefined ? 'These readings' : `The ${found}`));
    }
  });
});

/** Whether a jack can show a reading, by the lesson: lines of an output stand at its supply, an LED needs 1 to 2.2 V, and so on. */
type Can = (seen: Seen, all: readonly Seen[]) => boolean;
const isVolts = ({ dial, power }: Seen): boolean => dial === 'DC volts' && power.includes('rest');
const fed = (volts: number): boolean => volts > 3 && volts < 5.5;
const none = (volts: number): boolean => Math.abs(volts) < 0.01;
const restOf = (all: readonly Seen[], contact: string): number | undefined =>
  all.find((one) => isVolts(one) && one.contacts === `${contact} to sleeve`)?.shows;

/** An output with its source on one contact: the sink stands as high, or is let go. */
const output =
  (source: string): Can =>
  ({ dial, power, contacts, shows }, all) => {
    const sink = source === 'ring' ? 'tip' : 'ring';
    if (dial === 'Diode test') return false;
    if (dial === 'Resistance') return shows > 100 && shows < 1e5;
    if (dial.includes('1 kohm')) return shows > 0.6 * (restOf(all, 'ring') ?? 5);
    if (power.includes('clock')) return source === 'ring' ? shows > 0.005 && shows < 0.1 : shows < -0.005;
    return contacts.startsWith(sink) ? fed(shows) || none(shows) : fed(shows);
  };
const input =
  (source: string): Can =>
  ({ dial, contacts, shows }) => {
    if (dial !== 'Diode test') return dial === 'Resistance' ? shows > 1e6 : none(shows);
    return contacts.startsWith(source) ? shows > 1 && shows < 2.2 : shows > 0.4 && shows < 0.95;
  };
const CAN: Readonly<Record<string, Can>> = {
  'Type A out': output('ring'),
  'Type B out': output('tip'),
  'Type A in': input('ring'),
  'Type B in': input('tip'),
  'footswitch input for two switches': ({ dial, power, shows }, all) => {
    if (dial === 'Diode test') return false;
    if (dial === 'Resistance') return shows > 500 && shows < 1e6;
    if (dial.includes('1 kohm')) return shows < 0.4 * (restOf(all, 'ring') ?? 5);
    return power.includes('clock') ? none(shows) : fed(shows);
  },
  'expression input, supply on the ring': ({ dial, power, contacts, shows }, all) => {
    if (dial === 'Diode test') return false;
    if (dial === 'Resistance') return shows > 100 && shows < 1e6;
    // It gives way to the resistor as an output does, or more.
    if (dial.includes('1 kohm'))
      return fed(restOf(all, 'ring') ?? 0) && shows > 0.4 * (restOf(all, 'ring') ?? 5);
    if (power.includes('clock')) return Math.abs(shows - (restOf(all, 'ring') ?? 0)) < 0.3 && shows > 1;
    return contacts.startsWith('ring') ? fed(shows) : none(shows);
  },
  'headphone output': ({ dial, shows }) =>
    dial === 'Resistance' ? shows < 3e3 : dial === 'Diode test' ? shows < 0.3 : none(shows),
};
const canShow = (name: string, seen: readonly Seen[]): boolean =>
  seen.every((one) => CAN[name]?.(one, seen) === true);

describe('names', () => {
  it('are ruled out where the table has no such reading', () => {
    for (const task of tasksOf('cross-out')) {
      const seen = seenIn(task);
      expectRight(
        task,
        ticked(task, (text) => !canShow(text, seen)),
      );
    }
  });

  it('that are left say whether it is surely one sort of jack', () => {
    const kindOf = (name: string): string =>
      name.endsWith(' out') ? 'Surely an OUT' : name.endsWith(' in') ? 'Surely an IN' : 'Surely neither';
    for (const task of tasksOf('may-be')) {
      const left = new Set(
        Object.keys(CAN)
          .filter((name) => canShow(name, seenIn(task)))
          .map(kindOf),
      );
      expectRight(task, optionOf(task, left.size === 1 ? ([...left][0] ?? '') : 'Not sure yet'));
    }
  });
});

/** A reading for the finder, from what a learner sees. */
function takenFrom({ dial, power, contacts, shows }: Seen): TakenReading {
  const [red, black] = contacts.split(' to ') as [JackReading['red'], JackReading['black']];
  const meter = dial.includes('1 kohm')
    ? 'loaded'
    : dial === 'DC volts'
      ? 'volts'
      : dial === 'Resistance'
        ? 'ohms'
        : 'diode';
  const at: JackReading = {
    meter,
    power: power === 'power off' ? 'off' : power.includes('clock') ? 'clock' : 'idle',
    red,
    black,
  };
  if (shows !== Infinity) return { at, reading: { meter, shows: 'value', value: shows } };
  return { at, reading: { meter: meter === 'ohms' ? 'ohms' : 'diode', shows: 'overload' } };
}

describe('the finder with all its devices', () => {
  it('stops and goes on as the tasks say', () => {
    const asked = new Map(tasksOf('stop-or-go').map((task) => [JSON.stringify(task.shows), task]));
    expect(asked.size).toBeGreaterThan(10);
    for (const task of asked.values()) {
      const { state, doubtful } = findJack(jackEvidence(), seenIn(task).map(takenFrom));
      const says =
        state === 'fits-nothing'
          ? 'Stop: no jack'
          : doubtful.length > 0
            ? 'Take one'
            : state === 'sure'
              ? 'Stop: one name'
              : 'Go on';
      expectRight(task, optionOf(task, says));
    }
  });
});
