/** Worksheets and keys: every right answer that the key names is right when it is handed in. */
import { describe, expect, it } from 'vitest';
import { papersOf, sayAnswer } from '../../../src/core/class/index.ts';
import type { WorkSet } from '../../../src/core/class/index.ts';
import { versionLetter } from '../../../src/core/class/papers.ts';
import { gradeAnswer, makeTask } from '../../../src/core/learn/index.ts';
import type { Task } from '../../../src/core/learn/index.ts';
import { CLASS_SET } from '../../support/classroom.ts';

const taskOf = (kind: string, seed: number): Task => {
  const task = makeTask({ kind, level: 2, seed });
  if (typeof task === 'string') throw new Error(task);
  return task;
};

describe('Papers', () => {
  it('are one for each student with a letter of its own, or one for all', () => {
    const papers = papersOf(CLASS_SET, 30);
    expect(papers.map(({ number, version }) => `${number} ${version}`).slice(24, 28)).toEqual([
      '25 Y',
      '26 Z',
      '27 AA',
      '28 AB',
    ]);
    expect(new Set(papers.flatMap(({ tasks }) => tasks.map(({ code }) => code))).size).toBe(150);
    expect(papersOf({ ...CLASS_SET, perStudent: false }, 30)).toMatchObject([
      { number: undefined, version: 'A' },
    ]);
    expect(versionLetter(52)).toBe('AZ');
  });

  it('name leads that work, and only these: each is solved again', () => {
    const leads: WorkSet = { ...CLASS_SET, items: [{ kind: 'lay-lead', level: 3, count: 20 }] };
    for (const { task, right } of papersOf(leads, 1)[0]?.tasks ?? []) {
      expect(right.length).toBeGreaterThan(0);
      for (const words of right.filter((one) => one.includes(' to '))) {
        const answer = words
          .split(', ')
          .map((one) => one.replaceAll('pin ', '').replace(' to ', '-'))
          .join(' ');
        expect([words, gradeAnswer(task, answer).right]).toEqual([words, true]);
      }
    }
  });

  it('name both leads between two DIN jacks, with the shield and without, and count those with spare pins', () => {
    const din = Array.from({ length: 25 }, (_, seed) => taskOf('lay-lead', seed)).find(
      ({ form }) => form.form === 'lead' && form.output.style === 'din' && form.input.style === 'din',
    );
    const { right } = papersOf(
      {
        ...CLASS_SET,
        seed: din?.id.seed ?? 0,
        perStudent: false,
        items: [{ kind: 'lay-lead', level: 2, count: 1 }],
      },
      1,
    )[0]?.tasks[0] ?? { right: [] };
    expect(right.map((words) => words.split(', ').sort().join(', '))).toEqual([
      'pin 2 to pin 2, pin 4 to pin 4, pin 5 to pin 5',
      'pin 4 to pin 4, pin 5 to pin 5',
      expect.stringMatching(/^any of these with more wires on contacts that carry nothing \(\d+ ways\)$/),
    ]);
  });
});

describe('An answer in words', () => {
  it('says a choice by its text, none of several, an order by its things, and a number with its unit', () => {
    const choice = taskOf('missing-line', 3);
    const options = choice.form.form === 'choice' ? choice.form.options : [];
    expect(sayAnswer(choice, '1')).toBe(options[1]);
    expect(sayAnswer(taskOf('cut-conductors', 3), '-')).toBe('none of them');
    const order = taskOf('rank-loops', 3);
    const items = order.form.form === 'order' ? order.form.items : [];
    expect(sayAnswer(order, '1 0 2 3')).toBe(`1. ${items[1]} 2. ${items[0]} 3. ${items[2]} 4. ${items[3]}`);
    const current = taskOf('loop-current', 3);
    expect([sayAnswer(current, '5,4'), sayAnswer(current, '0.0054 A')]).toEqual(['5,4 mA', '0.0054 A']);
    expect(sayAnswer(taskOf('trace-to-hex', 3), 'c0')).toBe('C0');
  });

  it('leaves what cannot be read as it was written', () => {
    expect(sayAnswer(taskOf('loop-current', 3), 'lots')).toBe('lots');
  });
});
