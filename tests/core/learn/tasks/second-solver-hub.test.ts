/** The second solver on chains and hubs: it walks the leads as they are told, and adds up prices by itself. */
import { describe, expect, it } from 'vitest';
import type { Task } from '../../../../src/core/learn/index.ts';
import { expectMistakes, expectRight, numberAfter, numberIn, numbersOf, rowsOf, tasksOf } from './school.ts';

interface Lead {
  readonly from: string;
  readonly to: string;
}

/** The leads of a told board, without the names of the jacks. */
const leadsIn = (task: Task): readonly Lead[] =>
  [...rowsOf(task).values()].map((told) => {
    const [, from = '', to = ''] = /^(.+) (?:OUT|OUT \d|THRU) to (.+) IN$/.exec(told) ?? [];
    return { from, to };
  });

/** Boxes that are reached from the foot controller when one of them copies nothing. */
function reached(leads: readonly Lead[], dead: string): ReadonlySet<string> {
  const found = new Set(['foot controller']);
  for (let before = 0; before !== found.size;) {
    before = found.size;
    for (const { from, to } of leads) if (found.has(from) && from !== dead) found.add(to);
  }
  return found;
}

describe('boards told lead by lead', () => {
  it('whoever is no longer reached hears nothing, and a box in bypass still copies', () => {
    let bypassed = 0;
    for (const task of tasksOf('who-falls-silent')) {
      if (task.form.form !== 'several') throw new Error('task: needs several');
      const bypass = /bypass/.test(task.ask);
      bypassed += bypass ? 1 : 0;
      const off = /'(.+?)'/.exec(task.ask)?.[1] ?? '';
      const hearing = reached(leadsIn(task), bypass ? '' : off);
      expectRight(
        task,
        task.form.options.flatMap((one, at) => (hearing.has(one) ? [] : [String(at)])).join(' ') || '-',
      );
    }
    expect(bypassed).toBeGreaterThan(0);
  });

  it('the depth of a box is the number of leads back to the foot controller', () => {
    for (const task of tasksOf('how-deep')) {
      const leads = leadsIn(task);
      let [box, links] = [/'(.+?)'/.exec(task.ask)?.[1] ?? '', 0];
      while (box !== 'foot controller') {
        box = leads.find(({ to }) => to === box)?.from ?? 'foot controller';
        links += 1;
      }
      expectRight(task, `${links} links`);
    }
  });

  it('one lead leads to each pedal and each hub', () => {
    for (const task of tasksOf('count-leads')) {
      const words = task.ask.replace(/ one pedal,/, ' 1 pedal,');
      const pedals = [...words.matchAll(/(\d+) (?:pedal|more)/g)].reduce(
        (sum, [, one]) => sum + Number(one),
        0,
      );
      const hubs = /two hubs/.test(words) ? 2 : /hub/.test(words) ? 1 : 0;
      expectRight(task, `${pedals + hubs} leads`);
    }
  });
});

describe('what a board costs', () => {
  it('is its leads, and a hub where no chain can be made, less the leads that are there', () => {
    for (const task of tasksOf('cheapest-board')) {
      const rows = rowsOf(task);
      const kinds = [...rows.values()];
      const pedals = kinds.filter((one) => /THRU/.test(one)).length;
      const without = kinds.filter((one) => one === 'has no THRU').length;
      const most = numberAfter(task.ask, /more than/) || Infinity;
      const hub = without > 1 || pedals > most;
      const leads = pedals + (hub ? 1 : 0) - (numberIn(rows.get('leads that you have already')) || 0);
      const coins =
        leads * numberIn(rows.get('a lead')) + (hub ? numberIn(rows.get('a hub with six outputs')) : 0);
      expectRight(task, String(coins));
      expectRight(task, `${coins} coins`);
    }
  });
});

describe('who adds up prices', () => {
  it('and takes the chain that cannot be, forgets a lead or the hub, or pays twice, hears it', () => {
    const pedals = (task: Task): number =>
      [...rowsOf(task).values()].filter((told) => told.endsWith('THRU')).length;
    const [lead, hub, there] = [
      (task: Task): number => numbersOf(task, 'a lead')[0] ?? NaN,
      (task: Task): number => numbersOf(task, 'a hub with six outputs')[0] ?? NaN,
      (task: Task): number => numbersOf(task, 'leads that you have already')[0] || 0,
    ];
    const needsHub = (task: Task): boolean =>
      [...rowsOf(task).values()].filter((told) => told === 'has no THRU').length > 1 ||
      pedals(task) > (numberAfter(task.ask, /more than/) || Infinity);
    const chain = (task: Task): number => (pedals(task) - there(task)) * lead(task);
    const star = (task: Task): number => chain(task) + lead(task) + hub(task);
    const right = (task: Task): number => (needsHub(task) ? star(task) : chain(task));
    expectMistakes(tasksOf('cheapest-board'), {
      'price only': chain,
      "hub's own lead forgotten": (task) => star(task) - lead(task),
      'hub not paid': (task) => `${star(task) - hub(task)} coins`,
      'a hub that is not needed': star,
      'first lead forgotten': (task) => chain(task) - lead(task),
      'own leads paid again': (task) => right(task) + there(task) * lead(task),
    });
  });
});

describe('hardware and software in one chain', () => {
  it('edges shift once for each input behind the last software THRU', () => {
    for (const task of tasksOf('mixed-thru')) {
      const rows = [...rowsOf(task)];
      const each = numberIn(rows[0]?.[1]);
      const boxes = rows.slice(1).map(([, kind]) => kind);
      const inputs = boxes.length - 1 - boxes.lastIndexOf('software THRU');
      expectRight(task, `${inputs * each} us`);
    }
  });
});
