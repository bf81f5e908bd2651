/** The second solver on manuals: pins looked up in a table of its own, words told apart by what they name. */
import { describe, expect, it } from 'vitest';
import type { Task } from '../../../../src/core/learn/index.ts';
import { expectRight, optionOf, rowsOf, tasksOf } from './school.ts';

/** Pins of tip and ring by type: MMA RP-054 for Type A, the others common practice. */
const PINS: Readonly<Record<string, readonly [tip: string, ring: string]>> = {
  'Type A': ['5', '4'],
  'Type B': ['4', '5'],
  'Data on the ring': ['', '5'],
  'Data on the tip': ['5', ''],
};

/** A label as a pin: the source is pin 4, the sink and what is sent pin 5. */
const pinOf = (label: string): string =>
  /4|source|\+5 V/.test(label) ? '4' : /5|sink|data|signal/.test(label) ? '5' : '';

const quoted = ({ ask }: Task): string => /‘(.+)’/.exec(ask)?.[1] ?? '';

/** What words say of a contact, or undefined where they say nothing of it. */
const labelIn = (words: string, contact: string): string | undefined =>
  new RegExp(`${contact} = ([^,)]+)`).exec(words)?.[1];

describe('what a manual tells', () => {
  it('is a type only where a letter, the standard or ‘either’ is named, and nothing else goes against it', () => {
    for (const task of tasksOf('manual-words')) {
      const words = quoted(task);
      const letter = /Type ([AB])|TRS-([AB])/.exec(words);
      const named = letter?.[1] ?? letter?.[2];
      const tip = labelIn(words, 'tip');
      const against = named !== undefined && tip !== undefined && pinOf(tip) !== PINS[`Type ${named}`]?.[0];
      const says = against
        ? 'It goes against'
        : /either|both/i.test(words)
          ? 'It takes either'
          : /RP-054/.test(words)
            ? 'Type A'
            : named !== undefined && !/^Not/.test(words)
              ? `Type ${named}`
              : 'It is not told';
      expectRight(task, optionOf(task, says));
    }
  });

  it('is the type whose pins the labels of a drawing give', () => {
    for (const task of tasksOf('drawing-style')) {
      const rows = rowsOf(task);
      const [tip, ring] = ['tip', 'ring'].map((contact) => pinOf(rows.get(contact) ?? ''));
      const type = Object.entries(PINS).find(([, [one, other]]) => one === tip && other === ring)?.[0];
      expectRight(task, optionOf(task, type ?? 'none'));
    }
  });

  it('leaves open each type that puts what is named where it is named', () => {
    /** What each phrase demands of the pins of tip and ring. */
    const demands = (words: string): ((type: string, tip: string, ring: string) => boolean) => {
      if (/^Switchable/.test(words)) return (type) => /^Type/.test(type);
      const not = /^Not.*Type ([AB])/.exec(words)?.[1];
      if (not !== undefined) return (type) => type !== `Type ${not}`;
      const on = /(?:signal|data) on the (tip|ring)/.exec(words)?.[1];
      if (on !== undefined) return (_, tip, ring) => (on === 'tip' ? tip : ring) === '5';
      const told = labelIn(words, 'tip');
      return (_, tip) => told === undefined || tip === pinOf(told);
    };
    for (const task of tasksOf('still-open')) {
      if (task.form.form !== 'several') throw new Error('task: needs several');
      const fits = demands(quoted(task));
      const open = Object.entries(PINS).flatMap(([type, [tip, ring]]) =>
        fits(type, tip, ring) ? [type] : [],
      );
      expectRight(
        task,
        task.form.options
          .flatMap((option, at) => (open.some((type) => option.startsWith(type)) ? [String(at)] : []))
          .join(' '),
      );
    }
  });
});

describe('what to do after a manual', () => {
  it('an adapter takes pins 4 and 5 to the contacts that the words give them', () => {
    for (const task of tasksOf('adapter-in-box')) {
      if (task.form.form !== 'choice') throw new Error('task: needs choices');
      const words = quoted(task);
      const [tip, ring] = ['tip', 'ring'].map((contact) => pinOf(labelIn(words, contact) ?? ''));
      const fitting = task.form.options.filter((option) =>
        [
          ['tip', tip],
          ['ring', ring],
        ].every(([contact, pin]) =>
          pin === ''
            ? option.includes(`nothing to the ${contact}`)
            : option.includes(`pin ${pin} to the ${contact}`),
        ),
      );
      expect(fitting, task.ask).toHaveLength(1);
      expectRight(task, optionOf(task, fitting[0] ?? ''));
    }
  });

  it('a menu comes first where it shares the jack or chooses the type, a lead where one type is told', () => {
    for (const task of tasksOf('menu-first')) {
      const words = quoted(task);
      const says = /menu|Switchable|EXP/.test(words)
        ? 'See what the menu'
        : /RP-054|Type [AB]$|tip = pin 5, ring = pin 4, sleeve/.test(words)
          ? 'Take the lead'
          : 'Ask the maker';
      expectRight(task, optionOf(task, says));
    }
  });

  it('the question that settles it names contacts and pins, or what is set or there, and no size or other product', () => {
    for (const task of tasksOf('ask-maker')) {
      if (task.form.form !== 'choice') throw new Error('task: needs choices');
      const asks = task.form.options.filter((option) => /on the (tip|ring)|set to|still there/.test(option));
      expect(asks, task.ask).toHaveLength(1);
      expectRight(task, optionOf(task, asks[0] ?? ''));
    }
  });
});
