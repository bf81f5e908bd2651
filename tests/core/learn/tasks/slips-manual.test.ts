/** Mistakes on manuals and wirings, each found by what a hasty reader does: goes by the size, by another pedal, by one half of the words. */
import { describe, expect, it } from 'vitest';
import { gradeAnswer } from '../../../../src/core/learn/index.ts';
import type { Task } from '../../../../src/core/learn/index.ts';
import {
  expectMistake,
  expectRight,
  optionOf,
  optionsOf,
  placesWhere,
  rightOf,
  rowsOf,
  tally,
  tasksOf,
  wrongOptions,
} from './school.ts';

const quoted = ({ ask }: Task): string => /[‘'](.+)[’']/.exec(ask)?.[1] ?? '';
/** The type of another pedal of the same maker, where a task tells one. */
const otherOf = (task: Task): string | undefined =>
  task.shows && rowsOf(task).get('another pedal of the same maker');

describe('words of a manual taken wrongly', () => {
  it('by the size, by TRS, by a no, by another pedal, or by half of what is said', () => {
    const { met, names } = tally();
    for (const task of tasksOf('manual-words')) {
      const [words, right] = [quoted(task), rightOf(task)];
      for (const [place, said] of wrongOptions(task)) {
        const name = right.startsWith('It goes against')
          ? 'trusts half of it'
          : said.startsWith('It is not told')
            ? 'doubts what is said'
            : said.startsWith('It goes against')
              ? 'sees two in one'
              : said.startsWith('It takes either')
                ? 'takes silence for either'
                : !right.startsWith('It is not told')
                  ? 'takes one type for the other'
                  : said === otherOf(task)
                    ? 'type from another product'
                    : words.startsWith('Not')
                      ? 'takes a no for a yes'
                      : "type from the plug's size";
        if (name === "type from the plug's size") expect(words).toContain(' mm');
        expectMistake(task, place, met(name));
      }
    }
    expect(names()).toEqual(
      [
        'doubts what is said',
        'sees two in one',
        'takes a no for a yes',
        'takes one type for the other',
        'takes silence for either',
        'trusts half of it',
        "type from the plug's size",
        'type from another product',
      ].sort(),
    );
  });

  it('labels of a drawing: the pair swapped, a line left out or put in, or the other pedal', () => {
    const { met, names } = tally();
    const isLoop = (type: string): boolean => type.startsWith('Type');
    for (const task of tasksOf('drawing-style')) {
      const right = rightOf(task);
      for (const [place, said] of wrongOptions(task)) {
        const fromOther = !isLoop(right) && said.slice(0, 6) === otherOf(task);
        const name = fromOther
          ? 'type from another product'
          : isLoop(said) === isLoop(right)
            ? `${isLoop(right) ? 'source and sink' : 'tip and ring'} swapped`
            : isLoop(right)
              ? 'a line left out'
              : 'a line that is not there';
        expectMistake(task, place, met(name));
      }
    }
    expect(names()).toHaveLength(5);
  });

  it('what is left open: another pedal only where one is told of, and nothing or all where neither is so', () => {
    const { met, names } = tally();
    for (const task of tasksOf('still-open')) {
      const other = otherOf(task);
      const ticks: readonly (readonly [name: string, places: string | undefined])[] = [
        ['type from another product', other && placesWhere(task, (one) => one.startsWith(other))],
        ['the loop alone thought of', placesWhere(task, (one) => one.startsWith('Type'))],
        ['nothing is ruled out', placesWhere(task, () => true)],
        ['all is ruled out', '-'],
      ];
      for (const [name, places] of ticks) {
        if (places === undefined || places === task.right) continue;
        const grading = gradeAnswer(task, places);
        // The likeliest type may be the one of the other pedal as well: then it is the other pedal that is named first.
        expect(grading, `${task.ask} ${places}`).toMatchObject({ right: false, mistake: name });
        met(name);
      }
    }
    expect(names()).toHaveLength(4);
  });
});

describe('steps after a manual taken wrongly', () => {
  it('an adapter for the other pedal, for the other type, with a line left out, or with data on another contact', () => {
    const { met, names } = tally();
    for (const task of tasksOf('adapter-in-box')) {
      const told = quoted(task);
      const loop = !told.includes('not connected');
      for (const [place, said] of wrongOptions(task)) {
        const ofType = /^pin 5 to the tip, pin 4/.test(said)
          ? 'Type A'
          : /^pin 4/.test(said)
            ? 'Type B'
            : 'neither';
        const name =
          ofType === otherOf(task)
            ? 'type from another product'
            : !loop
              ? 'data on another contact'
              : said.includes('nothing')
                ? 'a line left out'
                : 'made for the other type';
        expectMistake(task, place, met(name));
      }
    }
    expect(names()).toHaveLength(4);
  });

  it('a question about size, another pedal, three contacts, or a promise settles nothing', () => {
    const ASKS = [
      [/size of the jack/, "type from the plug's size"],
      [/other pedals of this series/, 'type from another product'],
      [/Is it a TRS jack/, 'TRS taken as a type'],
      [/any good lead/, 'asks for a promise'],
    ] as const;
    for (const task of tasksOf('ask-maker'))
      for (const [place, said] of wrongOptions(task))
        expectMistake(task, place, ASKS.find(([words]) => words.test(said))?.[1] ?? said);
  });

  it('a first step that looks for a menu, takes any words for a type, asks what is told, or tries it out', () => {
    const STEPS = [
      [/^See what the menu/, 'a menu that is not there'],
      [/^Take the lead/, 'takes any words for a type'],
      [/^Ask the maker/, 'asks what is told'],
      [/^Plug in a lead that fits/, 'tries it out'],
    ] as const;
    for (const task of tasksOf('menu-first'))
      for (const [place, said] of wrongOptions(task))
        expectMistake(task, place, STEPS.find(([words]) => words.test(said))?.[1] ?? said);
  });
});

/** Contacts of source and sink by type (MMA RP-054 for Type A; the others common practice); no source where a type sends against ground. */
const LINES: Readonly<Record<string, readonly [source: string | undefined, sink: string]>> = {
  'Type A': ['ring', 'tip'],
  'Type B': ['tip', 'ring'],
  'signal on ring, to ground': [undefined, 'ring'],
  'signal on tip, to ground': [undefined, 'tip'],
};

describe('a type by its contacts', () => {
  /** The type of some words: where pin 4 or the current that leaves stands, and where pin 5 or the data. */
  function typeIn(words: string): string | undefined {
    const on = (pattern: RegExp): string | undefined => {
      const [, one, other] = pattern.exec(words) ?? [];
      return one ?? other;
    };
    const source = on(/(tip|ring)\b[:=\s]+pin 4|leaves on the (tip|ring)/);
    const sink = on(/(tip|ring)\b[:=\s]+pin 5|(?:returns|data is) on the (tip|ring)/);
    return Object.entries(LINES).find(([, lines]) => lines[0] === source && lines[1] === sink)?.[0];
  }

  it('is the one that has the lines where the words have them', () => {
    const types = new Set<string>();
    for (const task of tasksOf('phrase-type')) {
      const type = typeIn(quoted(task)) ?? '';
      types.add(type);
      expectRight(task, optionOf(task, type));
      for (const [place, said] of wrongOptions(task)) {
        const name = Object.keys(LINES).find((one) => said.startsWith(one)) ?? '';
        expectMistake(task, place, `takes it for ${name}`);
        const { sentence } = gradeAnswer(task, place);
        const pair = [name, type].every((one) => one.startsWith('Type'));
        expect(sentence).toContain(
          pair ? 'which of the pair' : LINES[type]?.[0] ? 'it is a loop' : 'against ground',
        );
      }
    }
    expect(types.size).toBe(4);
  });
});

describe('what a lead does', () => {
  const CONTACTS: Readonly<Record<string, Readonly<Record<string, string>>>> = {
    din: { source: '4', sink: '5' },
    'type-a': { source: 'ring', sink: 'tip' },
    'type-b': { source: 'tip', sink: 'ring' },
  };

  it('between two jacks of the loop follows from which line meets which', () => {
    const seen = new Set<string>();
    for (const task of tasksOf('say-outcome', [1, 2])) {
      if (task.shows?.shows !== 'lead') throw new Error('task: needs a lead');
      const { output, input, conductors } = task.shows;
      const [out, into] = [CONTACTS[output.style], CONTACTS[input.style]];
      if (!out || !into) continue;
      const joins = (line: string, to: string): boolean =>
        conductors.some((one) => one.from === out[line] && one.to === into[to]);
      // Source to source and sink to sink: it works. Each to the other: the LED stands the wrong way round. Else no current.
      const says =
        joins('source', 'source') && joins('sink', 'sink')
          ? /^Works:/
          : joins('source', 'sink') && joins('sink', 'source')
            ? /^Reversed:/
            : /^No path:/;
      const [place, ...more] = optionsOf(task).flatMap((option, at) =>
        says.test(option) ? [String(at)] : [],
      );
      expect(more).toEqual([]);
      seen.add(String(says));
      expectRight(task, place ?? '');
    }
    expect(seen.size).toBe(3);
  });

  it('laid by a known mistake is called by it: the pair swapped, a line left out, like to like, or given up', () => {
    const { met, names } = tally();
    for (const task of tasksOf('lay-lead', [1, 2])) {
      if (task.form.form !== 'lead') throw new Error('task: needs a lead');
      const [out, into] = [CONTACTS[task.form.output.style], CONTACTS[task.form.input.style]];
      if (!out || !into) throw new Error('task: needs two jacks of the loop');
      const joined = (...pairs: readonly (readonly [string, string])[]): string =>
        pairs.map(([from, to]) => `${out[from] ?? ''}-${into[to] ?? ''}`).join(' ');
      const nameOf = (answer: string): string => {
        const grading = gradeAnswer(task, answer);
        expect(grading.right, answer).toBe(false);
        return met(grading.mistake ?? 'unknown');
      };
      expect(nameOf(joined(['source', 'sink'], ['sink', 'source']))).toBe('pair swapped');
      expect(nameOf(joined(['source', 'source']))).toBe('no way back');
      expect(nameOf(joined(['sink', 'sink']))).toBe('no way out');
      expect(nameOf('none')).toBe('gave up');
    }
    expect(names()).not.toContain('unknown');
  });

  it('crossed or not, and a line that is missing: a wrong choice is called by what was said', () => {
    const SAYS = [
      [/^A straight/, 'says straight'],
      [/^A lead with/, 'says crossed'],
      [/^Either/, 'says either'],
      [/^Neither/, 'says neither'],
      [/^Yes/, 'says yes'],
      [/^No: /, 'says no'],
      [/^The source/, 'says source'],
      [/^The sink/, 'says sink'],
      [/^The shield/, 'says shield'],
      [/^None/, 'says none'],
    ] as const;
    for (const kind of ['straight-or-crossed', 'count-crossings', 'missing-line'])
      for (const task of tasksOf(kind))
        for (const [place, said] of wrongOptions(task))
          expectMistake(task, place, SAYS.find(([words]) => words.test(said))?.[1] ?? said);
  });
});
