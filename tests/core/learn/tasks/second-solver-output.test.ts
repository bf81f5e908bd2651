/** The second solver on one output and one input: school sums, and the leads of a board counted by hand. */
import { describe, expect, it } from 'vitest';
import type { Task } from '../../../../src/core/learn/index.ts';
import { expectRight, numberAfter, numberIn, optionOf, rowsOf, tasksOf } from './school.ts';

const LED = 1.4;

/** Milliamperes of each of some inputs alike: by Ohm's law, the output's resistors carrying the current of all. */
function eachGets(task: Task, inputs: number): number {
  const rows = rowsOf(task);
  const ohms = (name: string): number => numberIn(rows.get(name));
  const output = ohms('resistor in the source line') + ohms('resistor in the sink line');
  const volts = numberIn(rows.get('supply of the sender')) - LED;
  return (volts / (inputs * output + ohms('resistor in each receiver'))) * 1e3;
}

const inputsIn = ({ ask }: Task): number => (ask.startsWith('Two') ? 2 : 3);

/** Places of several options that are so; '-' where none is. */
function placesOf({ form }: Task, isSo: (option: string) => boolean): string {
  if (form.form !== 'several') throw new Error('task: needs several');
  return form.options.flatMap((option, at) => (isSo(option) ? [String(at)] : [])).join(' ') || '-';
}

describe('plain splits', () => {
  it('each input gets what the volts leave over its own resistor and, for every input, those of the output', () => {
    for (const task of tasksOf('share-current')) {
      const milliamperes = eachGets(task, inputsIn(task));
      expectRight(task, `${milliamperes.toFixed(2)} mA`);
      expectRight(task, `${(milliamperes / 1e3).toFixed(6)} A`);
    }
  });

  it('the parts that turn on are those that need less than that', () => {
    for (const task of tasksOf('lit-parts', [2, 3])) {
      const gets = eachGets(task, inputsIn(task));
      expectRight(
        task,
        placesOf(task, (option) => numberAfter(option, /needs/) < gets),
      );
    }
  });

  it('years tell nothing: enough in every case, in none, or by what is inside', () => {
    for (const task of tasksOf('worked-for-years')) {
      const rows = rowsOf(task);
      const numbers = (name: string): readonly number[] =>
        [...(rows.get(name) ?? '').matchAll(/\d+\.\d+/g)].map(([number]) => Number(number));
      const [gets, needs] = [numbers('each input now gets'), numbers('its part needs')];
      const unknown = /by what is inside/.test([...rows.values()].join(' '));
      const enough = Math.min(...gets) >= Math.max(...needs);
      const short = Math.max(...gets) < Math.min(...needs);
      expectRight(task, optionOf(task, enough ? 'Yes' : short || !unknown ? 'No' : 'It depends'));
    }
  });
});

describe('outputs that meet', () => {
  it('work against each other on a pin that both hold, at volts that differ', () => {
    for (const task of tasksOf('who-fights')) {
      const rows = rowsOf(task);
      const [four, five] = ['pin 4', 'pin 5'].map((pin) => {
        const [one = '', other = ''] = ['first', 'second'].map((which) =>
          rows.get(`${which} output, ${pin}`),
        );
        return one !== 'open' && other !== 'open' && numberIn(one) !== numberIn(other);
      });
      expectRight(task, optionOf(task, four ? (five ? 'Both' : 'Pin 4') : five ? 'Pin 5' : 'Neither'));
    }
  });
});

describe('what belongs between', () => {
  it('is a merger for two senders, a THRU where it can be counted on, and a hub otherwise', () => {
    for (const task of tasksOf('which-box')) {
      const says = /and a keyboard/.test(task.ask)
        ? 'A merger'
        : /always on/.test(task.ask)
          ? 'A lead from'
          : 'A hub';
      expectRight(task, optionOf(task, says));
    }
  });

  it('a split is a beginning that stands twice among the leads', () => {
    let none = 0;
    for (const task of tasksOf('find-split')) {
      const begins = [...rowsOf(task).values()].map((lead) => lead.split(' to ')[0] ?? '');
      const twice = [...new Set(begins.filter((one, at) => begins.indexOf(one) !== at))];
      expect(twice.length, task.ask).toBeLessThan(2);
      none += twice.length === 0 ? 1 : 0;
      expectRight(task, optionOf(task, twice[0] ?? 'none'));
    }
    expect(none).toBeGreaterThan(0);
  });
});
