/** The second solver on testing leads: leads drawn on paper, every answer and every set of readings tried. */
import { describe, expect, it } from 'vitest';
import type { Task } from '../../../../src/core/learn/index.ts';
import { fewestByTrying, faultsIn, heard, paperLead } from './hand-lead.ts';
import { expectRight, numberAfter, optionOf, optionsOf, placesWhere, rowsOf, tasksOf } from './school.ts';

const planOf = ({ ask }: Task): string => /to the input end: (.+?)\. /.exec(ask)?.[1] ?? '';

describe('testing a lead', () => {
  it('takes as few readings as any set of readings that no other lead would answer', () => {
    const tried = new Map<string, number>();
    for (const task of tasksOf('fewest-readings', [1])) {
      const plan = planOf(task).split(', ');
      const sizes = [...task.ask.matchAll(/with (\d) contacts/g)].map(([, count]) => Number(count));
      const [first = 0, second = 0] = sizes;
      // Each wire joins the next contact of one end with the next of the other; the rest stand alone.
      const planned = [
        ...Array.from({ length: first }, (_, at) => at),
        ...Array.from({ length: second }, (_, at) => (at < plan.length ? at : first + at)),
      ];
      const key = planned.join();
      const fewest = tried.get(key) ?? fewestByTrying(planned);
      tried.set(key, fewest);
      expectRight(task, String(fewest));
    }
    expect(tried.size).toBe(5);
  });

  it('takes a beep for each wire, or two where joints count, and silence between every two that must not touch', () => {
    for (const task of tasksOf('fewest-readings')) {
      const wires = planOf(task).split(', ').length;
      const contacts = [...task.ask.matchAll(/with (\d) contacts/g)].reduce(
        (sum, [, one]) => sum + Number(one),
        0,
      );
      let silent = 0;
      for (let group = 1; group < contacts - wires; group += 1) silent += group;
      expectRight(task, String(silent + wires * (task.ask.includes('plug moved') ? 2 : 1)));
    }
  });

  it('of four faults one alone explains every reading', () => {
    for (const task of tasksOf('fault-from-beeps'))
      expectRight(
        task,
        placesWhere(task, (answer) => {
          const lead = paperLead(planOf(task), faultsIn(answer));
          return [...rowsOf(task)].every(([place, says]) => heard(lead, place) === says);
        }),
      );
  });

  it('the best reading leaves the smallest group at worst', () => {
    for (const task of tasksOf('best-reading')) {
      const leads = [...rowsOf(task).values()].map((fault) => paperLead(planOf(task), [fault]));
      const [, taken = ''] = /One reading is taken: (.+) is silent/.exec(task.ask) ?? [];
      expect(leads.map((lead) => heard(lead, taken))).toEqual(leads.map(() => 'silent'));
      const worst = optionsOf(task).map((place) => {
        const says = leads.map((lead) => heard(lead, place));
        return Math.max(...says.map((one) => says.filter((other) => other === one).length));
      });
      const best = Math.min(...worst);
      expect(worst.filter((one) => one === best)).toHaveLength(1);
      expectRight(task, String(worst.indexOf(best)));
    }
  });

  it('the bad joint is on the wire that flickers, in the plug that is moved', () => {
    for (const task of tasksOf('still-and-moved')) {
      const joints = [...rowsOf(task)].flatMap(([wire, says]) => {
        const [, end] = /flickers when the plug at the (output|input) end/.exec(says) ?? [];
        const [from = '', to = ''] = wire.split(' to ');
        return end ? [`${end === 'output' ? from : to} at the ${end} end`] : [];
      });
      const wanted = joints.toSorted().join(' and ');
      const said = (answer: string): string =>
        (answer.charAt(0).toLowerCase() + answer.slice(1)).split(' and ').sort().join(' and ');
      expectRight(
        task,
        placesWhere(task, (answer) => said(answer) === wanted),
      );
    }
  });

  it('a meter beeps below its ohms, and notes get through while the loop keeps 1.6 mA', () => {
    for (const task of tasksOf('beep-at-ohms')) {
      const [, number = '', unit = ''] = /reads ([\d.]+) (k?)ohm/.exec(task.ask) ?? [];
      const ohms = Number(number) * (unit === 'k' ? 1e3 : 1);
      const volts = numberAfter(task.ask, /output with/);
      // The LED keeps 1.4 V; resistors of the loop at 5 V and at 3.3 V (MMA CA-033). 1.6 mA: CTR test current of the 6N138.
      const milliamperes = ((volts - 1.4) / ((volts > 4 ? 660 : 263) + ohms)) * 1e3;
      const beeps = ohms < numberAfter(task.ask, /beeps below/);
      expectRight(
        task,
        optionOf(
          task,
          beeps
            ? `It beeps, notes get through, and the joint is ${ohms < 1 ? 'good' : 'bad'}`
            : milliamperes > 1.6
              ? 'It stays silent, and yet'
              : 'It stays silent, and no note',
        ),
      );
    }
  });

  it('a lead without a label serves the jacks whose source and sink it joins, each to its like and to nothing else', () => {
    const LINES: Readonly<Record<string, readonly [source: string, sink: string]>> = {
      DIN: ['pin 4', 'pin 5'],
      'Type A': ['ring', 'tip'],
      'Type B': ['tip', 'ring'],
    };
    for (const task of tasksOf('strangers-lead')) {
      const beeps = [...rowsOf(task).keys()].map((row) => row.split(' to '));
      const joins = (a: string, b: string): boolean =>
        beeps.some((ends) => ends.includes(a) && ends.includes(b) && a !== b);
      const serves = (answer: string): boolean => {
        const [, out = '', into = ''] = /From a (.+) output to a (.+) input/.exec(answer) ?? [];
        const [lines, linesIn] = [LINES[out], LINES[into]];
        if (!lines || !linesIn) return false;
        const at = (side: string, names: readonly string[]): readonly string[] =>
          names.map((name) => `${name} at the ${side} end`);
        const [source = '', sink = ''] = at('output', lines);
        const [sourceIn = '', sinkIn = ''] = at('input', linesIn);
        const shields = [...at('output', ['pin 2', 'sleeve']), ...at('input', ['pin 2', 'sleeve'])];
        const apart = ![source, sink].some((one) => shields.some((shield) => joins(one, shield)));
        return joins(source, sourceIn) && joins(sink, sinkIn) && !joins(source, sink) && apart;
      };
      const [served] = optionsOf(task).flatMap((answer, at) => (serves(answer) ? [String(at)] : []));
      expectRight(task, served ?? optionOf(task, 'Neither'));
    }
  });
});
