/** Mistakes in counting boards: leads, links, and who goes silent. Each is made by hand and met by its own name. */
import { describe, it } from 'vitest';
import type { Task } from '../../../../src/core/learn/index.ts';
import { expectMistakes, placesWhere, rowsOf, tasksOf } from './school.ts';

/** The leads of a told board, each from a box to a box. */
const leadsOf = (task: Task): readonly (readonly [from: string, to: string])[] =>
  [...rowsOf(task).values()].map((told) => {
    const [, from = '', to = ''] = /^(.+) (?:OUT|OUT \d|THRU) to (.+) IN$/.exec(told) ?? [];
    return [from, to];
  });

/** The box that a question is about. */
const named = (task: Task): string => /'(.+?)'/.exec(task.ask)?.[1] ?? '';

/** The boxes from which one hears, the nearest first, up to the foot controller. */
function wayTo(task: Task, box: string): readonly string[] {
  const from = leadsOf(task).find(([, to]) => to === box)?.[0];
  return from === undefined ? [] : [from, ...wayTo(task, from)];
}

describe('who counts leads', () => {
  it('and forgets one, counts a box that hears nobody, or counts twice, hears it', () => {
    const pedals = (task: Task): number =>
      [...task.ask.replace(' one pedal,', ' 1 pedal,').matchAll(/(\d+) (?:pedal|more)/g)].reduce(
        (sum, [, one]) => sum + Number(one),
        0,
      );
    const hubs = (task: Task): number => (/two hubs/.test(task.ask) ? 2 : /hub/.test(task.ask) ? 1 : 0);
    const all = (task: Task): number => pedals(task) + hubs(task);
    expectMistakes(tasksOf('count-leads'), {
      "hub's own lead forgotten": (task) => all(task) - 1,
      'first lead forgotten': (task) => all(task) - 1,
      'no hub counted': pedals,
      'foot controller counted': (task) => `${all(task) + 1} leads`,
      // A lead from the hub to each pedal, and the chains besides: two of the pedals begin a chain.
      'chains counted twice': (task) => all(task) + pedals(task) - 2,
    });
  });

  it('of the way to a box, and counts boxes, skips one, or counts all, hears it', () => {
    const way = (task: Task): readonly string[] => wayTo(task, named(task));
    expectMistakes(tasksOf('how-deep'), {
      'a hub is no link': (task) => way(task).filter((box) => !box.includes('hub')).length,
      'first link forgotten': (task) => way(task).length - 1,
      'boxes counted': (task) => `${way(task).length + 1} links`,
      'all leads counted': (task) => leadsOf(task).length,
    });
  });
});

describe('who says which boxes go silent', () => {
  it('and stops too early, looks the wrong way, or takes bypass for off, hears it', () => {
    const behind = (task: Task) => placesWhere(task, (box) => wayTo(task, box).includes(named(task)));
    expectMistakes(tasksOf('who-falls-silent'), {
      'bypass is off': behind,
      'a hub is safe': () => '-',
      'a box that is off still copies': () => '-',
      'only the next one': (task) => placesWhere(task, (box) => wayTo(task, box)[0] === named(task)),
      'those before it': (task) => placesWhere(task, (box) => wayTo(task, named(task)).includes(box)),
      'the whole board': (task) => placesWhere(task, () => true),
    });
  });
});
