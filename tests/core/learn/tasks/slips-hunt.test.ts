/** Mistakes on a silent board, each made as a learner makes it: leads blamed first, all or nothing cleared, two changes at once. */
import { describe, expect, it } from 'vitest';
import { gradeAnswer } from '../../../../src/core/learn/index.ts';
import type { Task } from '../../../../src/core/learn/index.ts';
import {
  expectMistake,
  numberAfter,
  optionsOf,
  placesWhere,
  rowsOf,
  tally,
  tasksOf,
  wrongOptions,
} from './school.ts';
import { asTold, shownBy } from './silent-board.ts';

const isLead = (words: string): boolean => words.startsWith('lead ');
const suspectsOf = (task: Task): readonly string[] => [...rowsOf(task).values()];

/** Hand in what each mistake ticks; of two that tick the same the first is meant, and what is right is no mistake. */
function expectTicks(
  task: Task,
  ticks: readonly (readonly [name: string, places: string])[],
  met: (name: string) => string,
): void {
  for (const [at, [name, places]] of ticks.entries()) {
    const before = ticks.slice(0, at).some((one) => one[1] === places);
    if (places !== task.right && !before) expectMistake(task, places, met(name));
  }
}

/** The suspects that would show the same as most others at a check, counted. */
function largestGroup(suspects: readonly string[], check: string): number {
  const shown = suspects.map((one) => shownBy(check, one));
  return Math.max(...shown.map((one) => shown.filter((other) => other === one).length));
}

describe('mistakes on a silent board', () => {
  it('all suspects, or the leads alone, where others show the same', () => {
    const { met, names } = tally();
    for (const task of tasksOf('find-suspects')) {
      expectTicks(
        task,
        [
          ['cleared boxes forgotten', placesWhere(task, () => true)],
          ['blames the lead', placesWhere(task, isLead)],
        ],
        met,
      );
      // The usual one alone is among those that are right, and not the only one.
      const usual = task.slips.find(({ name }) => name === 'favourite first');
      if (usual) expect(task.right.split(' ')).toContain(usual.answer);
      if (usual) expect(task.right.split(' ').length).toBeGreaterThan(1);
    }
    expect(names()).toEqual(['blames the lead', 'cleared boxes forgotten']);
  });

  it('a check that clears nobody, one alone, or fewer than the best, told how many it leaves', () => {
    const { met, names } = tally();
    for (const task of tasksOf('next-check')) {
      const suspects = suspectsOf(task);
      const best = largestGroup(suspects, optionsOf(task)[Number(task.right)] ?? '');
      for (const [place, check] of wrongOptions(task)) {
        const left = largestGroup(suspects, check);
        const name =
          left === suspects.length
            ? 'cleared boxes forgotten'
            : left === suspects.length - 1
              ? 'favourite first'
              : 'splits less well';
        expectMistake(task, place, met(name));
        const { sentence } = gradeAnswer(task, place);
        if (name === 'favourite first') expect(sentence).toContain(`${left} are left`);
        if (name === 'splits less well')
          expect(sentence).toMatch(new RegExp(`may leave ${left}\\..*more than ${best}\\.`));
      }
    }
    expect(names()).toHaveLength(3);
  });

  it('a suspect that is cleared is told the check that clears it, and what it would have shown', () => {
    for (const task of tasksOf('finish-hunt'))
      for (const [place, suspect] of wrongOptions(task)) {
        expectMistake(task, place, 'cleared boxes forgotten');
        const [, check = '', would = ''] =
          /the check ‘(.+?)’ would have shown ‘(.+?)’/.exec(gradeAnswer(task, place).sentence) ?? [];
        expect(shownBy(check, suspect)).toBe(asTold(would));
        const [, seen = ''] = [...rowsOf(task)].find(([made]) => made.startsWith(check)) ?? [];
        expect(asTold(seen), check).not.toBe(asTold(would));
      }
  });

  it('a hunt with a check too many, one too few, or one for a single suspect', () => {
    const { met, names } = tally();
    for (const task of tasksOf('hunt-budget')) {
      const [checks, suspects] = [optionsOf(task), suspectsOf(task)];
      const minutes = checks.map((check) => Number(/\((\d+) minutes?\)$/.exec(check)?.[1]));
      for (const { name, answer, sentence } of task.slips) {
        met(name);
        const chosen = answer.split(' ').map(Number);
        if (name === 'all of them') {
          expect(chosen).toHaveLength(checks.length);
          const sum = minutes.reduce((all, one) => all + one, 0);
          expect(sentence).toContain(`takes ${sum} minutes`);
          expect(sum).toBeGreaterThan(numberAfter(task.ask, /You have/));
          continue;
        }
        const [one = NaN, other = NaN] = [...sentence.matchAll(/\d+/g)].map(([number]) => Number(number) - 1);
        const shown = suspects.map((words) => chosen.map((at) => shownBy(checks[at] ?? '', words)).join());
        if (name === 'favourite first') {
          expect(chosen).toHaveLength(1);
          expect(shown.filter((two) => two === shown[one])).toHaveLength(1);
        } else {
          expect(task.right.split(' ')).toEqual(expect.arrayContaining(answer.split(' ')));
          expect(shown[one]).toBe(shown[other]);
        }
      }
    }
    expect(names()).toEqual(['all of them', 'favourite first', 'leaves two together']);
  });

  it('who is left in place of who is cleared, nobody, the leads alone, or all but the leads', () => {
    const { met, names } = tally();
    for (const task of tasksOf('what-is-cleared')) {
      const right = new Set(task.right.split(' ').map((place) => optionsOf(task)[Number(place)]));
      expectTicks(
        task,
        [
          ['ticks who is left', placesWhere(task, (one) => !right.has(one))],
          ['cleared boxes forgotten', '-'],
          ['light dark means lead bad', placesWhere(task, (one) => !isLead(one))],
          ['clears the leads alone', placesWhere(task, isLead)],
        ],
        met,
      );
    }
    expect(names()).toHaveLength(4);
  });

  it('the wrong line of the right lead, by what the reading did, or a lead that the pedals clear', () => {
    const { met, names } = tally();
    for (const task of tasksOf('comes-and-goes', [1, 2])) {
      const lead = /comes and goes/.test(rowsOf(task).get('pedal 1') ?? '') ? 'lead 1' : 'lead 2';
      const flickers = [...rowsOf(task).values()].at(-1) === 'flickers';
      for (const [place, said] of wrongOptions(task)) {
        const name = !said.endsWith(lead)
          ? 'cleared boxes forgotten'
          : flickers
            ? 'wrong line'
            : 'beep taken for the fault';
        expectMistake(task, place, met(name));
      }
    }
    expect(names()).toEqual(['beep taken for the fault', 'cleared boxes forgotten', 'wrong line']);
    for (const task of tasksOf('comes-and-goes', [3])) {
      const known = !optionsOf(task)[Number(task.right)]?.startsWith('It cannot');
      for (const [place, said] of wrongOptions(task)) {
        const name = said.startsWith('Both')
          ? 'two symptoms, two faults'
          : said.startsWith('It cannot')
            ? 'cleared boxes forgotten'
            : known
              ? 'wrong lead'
              : 'two swaps at once';
        expectMistake(task, place, met(name));
      }
    }
    expect(names()).toHaveLength(6);
  });
});

describe('mistakes on an unmarked jack', () => {
  const [LOADED, LED] = ['DC volts, with 1 kohm across the probes', 'A plain LED with its resistor'];

  it('a next reading that pushes into a live box, that was taken, or that loads what was not read', () => {
    const { met, names } = tally();
    for (const task of tasksOf('next-safe'))
      for (const [place, said] of wrongOptions(task)) {
        const name = rowsOf(task).has(said)
          ? 'taken already'
          : said.includes('1 kohm')
            ? 'resistor too early'
            : said.startsWith('Resistance')
              ? 'resistance with power on'
              : said.startsWith('Diode')
                ? 'diode test with power on'
                : said.startsWith('Continuity')
                  ? 'continuity with power on'
                  : 'LED on an unknown jack';
        expectMistake(task, place, met(name));
        if (!['taken already', 'resistor too early'].includes(name)) expect(said).not.toContain('power off');
      }
    expect(names()).toHaveLength(6);
  });

  it('what may go on it with the power mistaken, with one thing too many, or with the resistor left out', () => {
    const { met, names } = tally();
    const [off, on] = [['Resistance', 'Diode test'], ['DC volts']] as const;
    for (const task of tasksOf('allowed-now')) {
      const dead = /supply plug is out|battery is out/.test(task.ask);
      const [before] = task.shows ? [...rowsOf(task).values()] : [];
      const volts = Number(/^([\d.]+) V$/.exec(before ?? '')?.[1] ?? 0);
      const live = [...on, ...(volts > 0.2 && volts <= 6 ? [LOADED] : [])];
      const [safe, turned] = dead ? [off, live] : [live, off];
      const of = (list: readonly string[]): string => placesWhere(task, (one) => list.includes(one));
      expectTicks(
        task,
        [
          [dead ? 'takes it for on' : 'takes it for off', of(turned)],
          ['resistance with power on', of([...safe, ...off])],
          ['LED on an unknown jack', of([...safe, LED])],
          ['resistor too early', of([...safe, LOADED])],
          ['resistor forgotten', of(safe.filter((one) => one !== LOADED))],
          ['everything', placesWhere(task, () => true)],
          ['nothing', '-'],
        ],
        met,
      );
    }
    expect(names()).toHaveLength(8);
  });

  it('names ruled out by volts or by none alone, by their direction, or the wrong way round', () => {
    const { met, names } = tally();
    for (const task of tasksOf('cross-out')) {
      const shown = [...rowsOf(task)];
      const right = new Set(task.right.split(' ').map((place) => optionsOf(task)[Number(place)]));
      const zero = shown.every(([, value]) => /^−?0(?:\.0+)? m?V$/.test(value));
      const some = shown.some(
        ([what, value]) =>
          what.startsWith('DC volts,') &&
          Number.parseFloat(value.replace('−', '')) > 0.2 &&
          / V$/.test(value),
      );
      expectTicks(
        task,
        [
          ['ticks what is left', placesWhere(task, (one) => !right.has(one))],
          ...(zero ? [['0 V means IN', placesWhere(task, (one) => !one.endsWith(' in'))] as const] : []),
          ...(some ? [['volts mean OUT', placesWhere(task, (one) => !one.endsWith(' out'))] as const] : []),
          ['rules out all', placesWhere(task, () => true)],
          ['rules out nothing', '-'],
          ['rules out the outputs', placesWhere(task, (one) => / out$|output$/.test(one))],
          ['rules out the inputs of the loop', placesWhere(task, (one) => one.endsWith(' in'))],
        ],
        met,
      );
    }
    expect(names()).toHaveLength(7);
  });

  it('a source guessed where nothing tells it, turned round, or not seen where something does', () => {
    const { met, names } = tally();
    for (const task of tasksOf('source-contact')) {
      const tells = !optionsOf(task)[Number(task.right)]?.startsWith('These');
      for (const [place, said] of wrongOptions(task)) {
        const name = tells
          ? said.startsWith('These')
            ? 'says it cannot tell'
            : 'the wrong way round'
          : `guesses the ${said.slice(4)}`;
        expectMistake(task, place, met(name));
      }
    }
    expect(names()).toHaveLength(4);
  });

  it('an OUT seen in no volts, and an IN in no volts, are met each by its own reason', () => {
    const seen = new Set<string>();
    for (const task of tasksOf('may-be')) {
      const zero = [...rowsOf(task).values()].every((value) => /^−?0(?:\.0+)? m?V$/.test(value));
      for (const [place, said] of wrongOptions(task)) {
        expectMistake(task, place, `says ${said.toLowerCase()}`);
        const { sentence } = gradeAnswer(task, place);
        if (said === 'Surely an OUT')
          expect(sentence).toContain(zero ? 'would show some volts' : 'More than an OUT shows this');
        if (said === 'Surely an IN') expect(sentence).toContain(zero ? 'not alone' : 'no voltage of its own');
        seen.add(`${zero} ${said}`);
      }
    }
    expect(seen).toContain('true Surely an IN');
    expect(seen).toContain('false Surely an OUT');
  });
});
