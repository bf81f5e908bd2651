/** How hard tasks are to read: what is asked, answered, hinted, worked out and said, held to the grade that lessons are held to. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { LEVELS, TASKS_BY_LESSON, makeTask } from '../../../../src/core/learn/index.ts';
import type { Task } from '../../../../src/core/learn/index.ts';
import { gradeOf, wordsOf } from '../../../support/readability.ts';

const KINDS = Object.values(TASKS_BY_LESSON).flat();
const SEEDS = Array.from({ length: 20 }, (_, at) => at * 53 + 7);
/** Grade 9 is read at fourteen. */
const GRADE = 9;
/** An answer of fewer words is a name or a number, and no text. */
const FEWEST_WORDS = 3;

const tasksOf = (kind: string): readonly Task[] =>
  LEVELS.flatMap((level) =>
    SEEDS.map((seed) => {
      const task = makeTask({ kind, level, seed });
      if (typeof task === 'string') throw new Error(task);
      return task;
    }),
  );

/** Everything that a task says, by what it is. */
function textsOf({ ask, form, hints, steps, slips }: Task): Readonly<Record<string, readonly string[]>> {
  const answers = 'options' in form ? form.options : 'items' in form ? form.items : [];
  return {
    ask: [ask],
    answers: answers.filter((one) => wordsOf(one).length >= FEWEST_WORDS),
    hints,
    steps,
    sentences: [...new Set(slips.map(({ sentence }) => sentence))],
  };
}

/** A text to be graded: bits and bytes in a row are one word, and a part of a list after a semicolon stands by itself (Flesch, 1948, counts it so, from memory). */
const toGrade = (texts: readonly string[]): string =>
  texts
    .join('\n\n')
    .replace(/\b[0-9A-F]{1,2}(?: [0-9A-F]{1,2}\b)+/g, 'bytes')
    .replaceAll('; ', '. ');

describe.each(KINDS.map(({ kind }) => kind))('the words of tasks %s', (kind) => {
  it('are read at fourteen', () => {
    const hard = tasksOf(kind).flatMap((task) =>
      Object.entries(textsOf(task)).flatMap(([what, texts]) => {
        const text = toGrade(texts);
        const grade = text === '' ? 0 : gradeOf(text);
        return grade > GRADE ? [`${what} ${grade.toFixed(1)}: ${text}`] : [];
      }),
    );
    expect([...new Set(hard)]).toEqual([]);
  });
});

describe('the trade words of tasks', () => {
  /** Words of the trade that a reader may look up, as they stand in a text. */
  const TRADE = [
    ...[
      'source',
      'sink',
      'shield',
      'tip',
      'ring',
      'sleeve',
      'isolated',
      'pull-up',
      'transistor',
      'optocoupler',
    ],
    ...['transfer ratio', 'protection diode', 'diode test', 'continuity', 'resistance', 'supply', 'receiver'],
    ...['mating face', 'solder side', 'start bit', 'stop bit', 'status byte', 'running status', 'data byte'],
    ...[
      'program change',
      'control change',
      'channel',
      'bank',
      'hub',
      'merger',
      'phantom power',
      'cold joint',
    ],
    ...['USB host', 'Y lead', 'THRU box', 'software THRU', 'conductor', 'base resistor', 'clock', 'omni'],
  ];
  /** Capitals that are no words of the trade: bytes in hex, part numbers, a standards body, and what is printed beside a jack. */
  const PLAIN = /^(?:[0-9A-F]{2}|[A-Z]*\d\S*|MMA|EXP)$/;
  const entries = JSON.parse(readFileSync('content/reference/glossary.json', 'utf8')) as {
    readonly term: string;
    readonly also?: readonly string[];
  }[];
  const terms = entries.flatMap(({ term, also = [] }) => [term, ...also]);
  const isExplained = (word: string): boolean =>
    terms.some((term) => new RegExp(`(?<![\\w-])${word}(?![\\w-])`, 'i').test(term));
  const all = KINDS.flatMap(({ kind }) =>
    tasksOf(kind).flatMap((task) => Object.values(textsOf(task)).flat()),
  );
  const text = [...new Set(all)].join('\n');

  it('are in the glossary', () => {
    const used = TRADE.filter((word) => new RegExp(`(?<![\\w-])${word}s?(?![\\w-])`).test(text));
    expect(used.length).toBeGreaterThan(TRADE.length / 2);
    expect(used.filter((word) => !isExplained(word))).toEqual([]);
  });

  it('are in the glossary where they are in capitals', () => {
    const capitals = new Set(text.match(/(?<![\w-])[A-Z][A-Z0-9]+s?(?![\w-])/g) ?? []);
    const words = [...capitals].map((word) => word.replace(/s$/, '')).filter((word) => !PLAIN.test(word));
    expect(words.length).toBeGreaterThan(3);
    expect(words.filter((word) => !isExplained(word))).toEqual([]);
  });
});
