/** The second solver on silent boards: a learner's reasoning about each suspect, and every choice of checks tried. */
import { describe, expect, it } from 'vitest';
import type { Task } from '../../../../src/core/learn/index.ts';
import { expectRight, numberAfter, optionOf, optionsOf, placesWhere, rowsOf, tasksOf } from './school.ts';
import { asTold, seenAtPedal, shownBy } from './silent-board.ts';

const suspectsOf = (task: Task): readonly string[] => [...rowsOf(task).values()];

/** The largest number of suspects that show the same at some checks. */
function leftAtWorst(suspects: readonly string[], checks: readonly string[]): number {
  const shown = suspects.map((one) => checks.map((check) => shownBy(check, one)).join('|'));
  return Math.max(...shown.map((one) => shown.filter((other) => other === one).length));
}

describe('a board where nothing answers', () => {
  it('what a player says leaves every suspect that shows just that at each pedal', () => {
    const SAID = [
      [/what it should|just what I want/, 'right'],
      [/does not react|stays as it is/, 'nothing'],
      [/treads on a lead|for a while/, 'comes and goes'],
      [/beside the right one|one number off/, 'beside'],
      [/bank/, 'bank'],
    ] as const;
    for (const task of tasksOf('find-suspects')) {
      const said = /The player says: '(.+)' Which/.exec(task.ask)?.[1] ?? '';
      const told = said.split(/, and (?=pedal \d)/).map((part) =>
        SAID.filter(([words]) => words.test(part))
          .map(([, seen]) => seen)
          .join(),
      );
      expectRight(
        task,
        placesWhere(task, (words) => told.every((one, at) => seenAtPedal(words, at + 1) === one)),
      );
    }
  });

  it('the best check is the one whose largest group is smallest', () => {
    for (const task of tasksOf('next-check')) {
      const worst = optionsOf(task).map((check) => leftAtWorst(suspectsOf(task), [check]));
      const best = Math.min(...worst);
      expect(worst.filter((one) => one === best)).toHaveLength(1);
      expectRight(task, String(worst.indexOf(best)));
    }
  });

  it('a hunt leaves the one suspect that would have shown all that was seen', () => {
    for (const task of tasksOf('finish-hunt')) {
      const fits = (words: string): boolean =>
        [...rowsOf(task)].every(([check, seen]) => shownBy(check, words) === asTold(seen));
      expectRight(task, placesWhere(task, fits));
    }
  });

  it('of all choices of checks one alone tells every suspect apart in the minutes there are', () => {
    for (const task of tasksOf('hunt-budget')) {
      const checks = optionsOf(task);
      const most = numberAfter(task.ask, /You have/);
      const minutes = checks.map(minutesIn);
      const sure = Array.from({ length: 2 ** checks.length }, (_, bits) =>
        checks.flatMap((_, at) => (Math.floor(bits / 2 ** at) % 2 === 1 ? [at] : [])),
      ).filter(
        (chosen) =>
          chosen.reduce((sum, at) => sum + (minutes[at] ?? 0), 0) <= most &&
          leftAtWorst(
            suspectsOf(task),
            chosen.map((at) => checks[at] ?? ''),
          ) === 1,
      );
      expect(sure).toHaveLength(1);
      expectRight(task, sure[0]?.join(' ') ?? '');
    }
  });

  it('a result clears every suspect that would have shown something else', () => {
    for (const task of tasksOf('what-is-cleared')) {
      const [, check = '', seen = ''] = /Then one check\. (.+?)\.? It shows ‘(.+?)’/.exec(task.ask) ?? [];
      expectRight(
        task,
        placesWhere(task, (words) => shownBy(check, words) !== asTold(seen)),
      );
    }
  });

  it('a joint that comes and goes is in the lead that feeds all that comes and goes, on the line that flickers', () => {
    for (const task of tasksOf('comes-and-goes', [1, 2])) {
      const rows = rowsOf(task);
      const lead = /comes and goes/.test(rows.get('pedal 1') ?? '') ? 'lead 1' : 'lead 2';
      const [check = '', seen] = [...rows].at(-1) ?? [];
      const read = /(?:ring|pin 4) to (?:ring|pin 4)/.test(check) ? 'source' : 'sink';
      const line = (seen === 'flickers') === (read === 'source') ? 'source' : 'sink';
      expectRight(task, optionOf(task, `The ${line} line of ${lead}`));
    }
  });

  it('two leads changed at once say nothing of either, but what was seen before may', () => {
    for (const task of tasksOf('comes-and-goes', [3])) {
      const rows = rowsOf(task);
      const left = ['lead 1', 'lead 2'].filter((lead) => {
        const words = `${lead}: a joint is cold`;
        const fits = [1, 2].every((pedal) => {
          const told = rows.get(`pedal ${pedal}`) ?? '';
          const seen = seenAtPedal(words, pedal);
          return /nobody/.test(told) || (seen === 'right') === /what it should/.test(told);
        });
        return fits && ![...rows.keys()].some((check) => check.startsWith(`Unplug ${lead}`));
      });
      expectRight(
        task,
        optionOf(task, left.length === 1 ? `Lead ${left[0]?.slice(-1) ?? ''}` : 'It cannot be told'),
      );
    }
  });
});

/** Minutes in brackets at the end of a check. */
function minutesIn(check: string): number {
  return Number(/\((\d+) minutes?\)$/.exec(check)?.[1]);
}
