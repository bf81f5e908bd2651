/** The second solver on chains: school sums on what the question tells. */
import { describe, it } from 'vitest';
import type { Task } from '../../../../src/core/learn/index.ts';
import { expectRight, numberAfter, numberIn, optionOf, rowsOf, tasksOf } from './school.ts';

/** How much longer light lasts after one input, microseconds. */
function lightGrows(task: Task): number {
  const rows = rowsOf(task);
  return numberIn(rows.get('and off')) - numberIn(rows.get('each input is on'));
}

describe('chains', () => {
  it('edges shift by the difference of the delays, once a link', () => {
    for (const task of tasksOf('shift-after'))
      expectRight(task, `${Math.abs(lightGrows(task)) * numberAfter(task.ask, /through/)} us`);
  });

  it('a lone 0 is light and grows with it, a lone 1 is dark and shrinks', () => {
    for (const task of tasksOf('lone-bit')) {
      const change = lightGrows(task) * numberAfter(task.ask, /after/);
      expectRight(task, String(32 + (task.ask.startsWith('A lone 0') ? change : -change)));
    }
  });

  it('slow to off makes zeros grow, slow to on ones', () => {
    for (const task of tasksOf('what-grows')) {
      const grows = lightGrows(task);
      expectRight(task, optionOf(task, grows > 0 ? 'Zeros grow' : grows < 0 ? 'Ones grow' : 'Neither'));
    }
  });

  it('the longest chain is what the receiver bears over the shift of a link, rounded down', () => {
    for (const task of tasksOf('longest-chain')) {
      const rows = rowsOf(task);
      const room = numberIn(rows.get('a receiver bears at most')) / numberIn(rows.get('shift of one link'));
      expectRight(task, String(Math.floor(room)));
    }
  });

  it('a software THRU takes a byte and its wait, box by box', () => {
    for (const task of tasksOf('later-by')) {
      const rows = rowsOf(task);
      const each = numberIn(rows.get('each reads the whole byte')) + numberIn(rows.get('and then waits'));
      expectRight(task, `${numberAfter(task.ask, /through/) * each} ms`);
    }
  });

  it('a box that sends again gives fresh edges, one that repeats adds its shift, and wire shares', () => {
    for (const task of tasksOf('kind-of-thru')) {
      const says = /sends it again|processor/.test(task.ask)
        ? 'Edges come'
        : /gate|repeats/.test(task.ask)
          ? 'The shift'
          : 'Both hear';
      expectRight(task, optionOf(task, says));
    }
  });
});
