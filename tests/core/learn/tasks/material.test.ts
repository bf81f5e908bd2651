/** What lies on a tool for a task is what the task itself tells. */
import { describe, expect, it } from 'vitest';
import { answerFaults } from '../../../../src/core/faults/index.ts';
import { madeLead, proveLead, sayPlace, tableOf } from '../../../../src/core/making/index.ts';
import { sayReading } from '../../../../src/core/readings/index.ts';
import { contactsOf } from '../../../../src/core/wiring/index.ts';
import { rowsOf, tasksOf } from './school.ts';

describe('a lead on the test', () => {
  it('reads in each place as the rows of the task say', () => {
    for (const task of tasksOf('four-beeps')) {
      if (task.material?.on !== 'lead test') throw new Error('task: needs a lead to test');
      const { lead, faults } = task.material;
      const says = tableOf(madeLead(lead, faults));
      const contact = (words: string) =>
        contactsOf(lead.from.connector)
          .concat(contactsOf(lead.to.connector))
          .find((one) => words === one || words === `pin ${one}`) ?? 'shell';
      for (const [what, heard] of rowsOf(task)) {
        const [, from = '', to = ''] = /^(.+), first plug, to (.+), second plug$/.exec(what) ?? [];
        const place = {
          a: { side: 'from', contact: contact(from) },
          b: { side: 'to', contact: contact(to) },
          hold: 'still',
        } as const;
        expect(says(place), `${task.ask} ${sayPlace(place)}`).toBe(heard === 'beeps' ? 'beep' : 'silent');
      }
    }
  });

  it('is made as planned where nothing is the matter, and otherwise not', () => {
    for (const task of tasksOf('four-beeps')) {
      if (task.material?.on !== 'lead test' || task.form.form !== 'choice')
        throw new Error('task: needs a lead');
      const { lead, faults } = task.material;
      const says = tableOf(madeLead(lead, faults));
      const readings = lead.conductors.map(({ from, to }) => {
        const place = {
          a: { side: 'from', contact: from },
          b: { side: 'to', contact: to },
          hold: 'still',
        } as const;
        return { ...place, says: says(place) };
      });
      const planned = task.form.options[Number(task.right)]?.startsWith('Nothing');
      if (planned) expect(proveLead(lead, readings).state).toBe('as-planned');
      expect(faults.length === 0).toBe(planned);
    }
  });
});

describe('a board on the fault page', () => {
  it('shows at each check what the task tells, and hides the fault that is right', () => {
    for (const task of tasksOf('finish-hunt', [2, 3])) {
      if (task.material?.on !== 'fault page' || task.form.form !== 'choice')
        throw new Error('task: needs a board');
      const { board, fault, made } = task.material;
      const round = answerFaults({ kind: 'round', board, hidden: fault, made, end: 'shown' });
      if (round.kind !== 'round') throw new Error('faults: needs a round');
      const seen = round.choices.flatMap((one) =>
        one.seen === undefined ? [] : [[one.words, one.seen] as const],
      );
      expect(new Map(seen)).toEqual(rowsOf(task));
      expect(round.end?.truth).toBe(task.form.options[Number(task.right)]);
    }
  });
});

describe('a board to be bought', () => {
  it('is bare at first, and with the leads of the answer afterwards: every pedal hears, for the coins that are right', () => {
    for (const task of tasksOf('cheapest-board')) {
      if (task.material?.on !== 'board' || !task.material.solved) throw new Error('task: needs a board');
      const { plan, solved } = task.material;
      expect(plan.links).toEqual([]);
      expect(plan.devices.map(({ kind }) => kind)).not.toContain('hub');
      const leads = solved.links.flatMap(({ inputs }) => inputs);
      const rows = rowsOf(task);
      const coins = (row: string): number => Number.parseInt(rows.get(row) ?? '0', 10);
      const hubs = solved.devices.length - plan.devices.length;
      const bought = leads.length - (coins('leads that you have already') || 0);
      expect(String(bought * coins('a lead') + hubs * coins('a hub with six outputs'))).toBe(task.right);
      const pedals = plan.devices.slice(1).map(({ name }) => name);
      expect(leads.map(({ device }) => device)).toEqual(expect.arrayContaining(pedals));
      const passes = solved.devices.map(({ name, jacks }) => [name, jacks.map((jack) => jack.name)] as const);
      for (const { output } of solved.links)
        expect(new Map(passes).get(output.device), task.ask).toContain(output.jack);
    }
  });
});

describe('a jack in the finder', () => {
  it('is read as the rows of the task say, by the meter that the task tells of', () => {
    for (const task of tasksOf('source-contact')) {
      if (task.material?.on !== 'finder') throw new Error('task: needs readings');
      const { evidence, taken } = task.material;
      expect(taken.map(({ reading }) => sayReading(reading))).toEqual([...rowsOf(task).values()]);
      expect(evidence.meter === 'low-diode').toBe(/ends at 1\.5 V/.test(task.ask));
      expect(evidence.marked).toBe(/known as an IN/.test(task.ask) ? 'in' : 'out');
    }
  });
});
