/** The second solver on conductors, on longer leads and on choices to defend: lines followed by hand, ohms compared, boxes counted. */
import { describe, expect, it } from 'vitest';
import type { Task } from '../../../../src/core/learn/index.ts';
import type { Style } from '../../../../src/core/wiring/index.ts';
import {
  expectMistake,
  expectRight,
  numberAfter,
  numberIn,
  optionOf,
  optionsOf,
  placesWhere,
  rowsOf,
  tasksOf,
} from './school.ts';

/** What carries the current: out of the sender and back into it (MMA RP-054 for DIN and Type A; the others are common practice). */
const CARRIES: Readonly<Partial<Record<Style, readonly [out: string, back: string]>>> = {
  din: ['4', '5'],
  'type-a': ['ring', 'tip'],
  'type-b': ['tip', 'ring'],
  // A sender against ground pulls its signal down: the current comes in there and goes home through the ground.
  'tip-signal': ['sleeve', 'tip'],
  'ring-signal': ['sleeve', 'ring'],
};

const leadOf = (task: Task) => {
  if (task.shows?.shows !== 'lead') throw new Error('task: needs a lead');
  const { output, conductors } = task.shows;
  const [out, back] = CARRIES[output.style] ?? ['', ''];
  return { out, back, conductors };
};

/** A contact as a task calls it: 'pin 4', 'tip'. */
const called = (contact: string): string => (/\d/.test(contact) ? `pin ${contact}` : contact);

describe('the conductors of a lead', () => {
  it('may be cut where they carry no current', () => {
    for (const task of tasksOf('cut-conductors')) {
      const { out, back, conductors } = leadOf(task);
      const free = conductors.filter(({ from }) => from !== out && from !== back).map(({ from }) => from);
      const answer = placesWhere(task, (option) =>
        free.some((from) => option.startsWith(`${called(from)} to `)),
      );
      expectRight(task, answer);
      expect(answer === '-').toBe(free.length === 0);
    }
  });

  it('carry it away from the sender on one line, home on the other, and nowhere on the rest', () => {
    const ways = new Set<string>();
    for (const task of tasksOf('loop-direction')) {
      const { out, back } = leadOf(task);
      const from = (/conductor from (?:pin )?(\S+) to/.exec(task.ask)?.[1] ?? '').trim();
      const says = from === out ? 'From the sender' : from === back ? 'From the listener' : 'Neither way';
      expectRight(task, optionOf(task, says));
      ways.add(says);
    }
    expect(ways.size).toBe(3);
  });

  it('are told well enough for a way that is wrong to be named by what was said', () => {
    for (const task of tasksOf('loop-direction'))
      for (const [says, name] of [
        ['From the sender', 'says out'],
        ['From the listener', 'says back'],
        ['Neither way', 'says none'],
      ] as const) {
        const place = optionOf(task, says);
        if (place !== task.right) expectMistake(task, place, name);
      }
  });
});

describe('a longer lead', () => {
  /** Ohms that an LED adds where it is at some 5 mA: its curve, 1.44 times 25.9 mV over the current (6N138 as fitted). */
  const LED_OHMS = (1.44 * 0.0259) / 5.4e-3;
  /** Least shares of the four answers. */
  const BOUNDS = [0, 0.005, 0.02, 0.06];
  /** How near to a bound a share may come that is worked out without the curve. */
  const NEAR = 0.04;

  /** The share by which the current falls: what the copper adds, out and back, of all that resists. */
  const fallOf = (task: Task): number => {
    const each = numberAfter(rowsOf(task).get('conductors') ?? '', /AWG,/);
    const [was, is] = [1, numberAfter(task.ask, /one of/)].map((metres) => 2 * metres * each) as [
      number,
      number,
    ];
    return (is - was) / (3 * 220 + LED_OHMS + is);
  };

  it('takes the share of the current that its copper has of all ohms', () => {
    let clear = 0;
    for (const task of tasksOf('current-with-length')) {
      const fall = fallOf(task);
      if (BOUNDS.some((bound) => Math.abs(fall - bound) < NEAR * bound)) continue;
      clear += 1;
      const at = BOUNDS.findLastIndex((bound) => fall >= bound);
      expectRight(task, optionOf(task, ['Less than', 'From 0.5', 'From 2', 'More than'][at] ?? ''));
    }
    expect(clear).toBeGreaterThan(100);
  });

  it('is met at every other answer by the ohms that were not compared', () => {
    for (const task of tasksOf('current-with-length', [2]))
      optionsOf(task).forEach((option, at) => {
        if (String(at) !== task.right) expectMistake(task, String(at), `says ${option.toLowerCase()}`);
      });
  });
});

describe('a choice to defend', () => {
  /** Leads, links to the last pedal, and boxes that go silent with one, counted for so many pedals. */
  const counts = (choice: string, pedals: number): readonly number[] =>
    choice === 'a chain'
      ? [pedals, pedals, pedals - 1]
      : choice === 'a hub'
        ? [pedals + 1, 2, pedals]
        : [pedals + 1, 1 + Math.ceil(pedals / 2), pedals];

  it('has a model that counts right', () => {
    const told = new Set<string>();
    for (const task of tasksOf('defend-choice', [0, 1, 2, 3])) {
      const [, choice = ''] = /You choose (.+?)\. Defend/.exec(task.ask) ?? [];
      const pedals = numberIn(task.ask);
      const model = task.right.split(' | ')[1] ?? '';
      const [leads, links, silent] = counts(choice, pedals);
      const said = (words: RegExp): readonly number[] =>
        [...model.matchAll(words)].map(([, one]) => Number(one));
      for (const one of [...said(/(\d+) leads/g), ...said(/(\d+) in all/g)]) expect(one, model).toBe(leads);
      for (const one of said(/(\d+) links away/g)) expect(one, model).toBe(links);
      for (const one of [
        ...said(/all (\d+)\./g),
        ...said(/silences up to (\d+)/g),
        ...said(/silence all (\d+)/g),
      ])
        expect(one, model).toBe(silent);
      expect([...model.matchAll(/\d+/g)].length, model).toBeGreaterThan(1);
      told.add(choice);
    }
    expect([...told].sort()).toEqual(['a chain', 'a hub', 'a hub with two chains behind it']);
  });

  it('is spoiled by the price as the only reason, whatever else is ticked', () => {
    for (const task of tasksOf('defend-choice', [3])) {
      if (task.form.form !== 'rubric') throw new Error('task: needs a rubric');
      const price = task.form.points.findIndex((point) => point.includes('only reason'));
      const text = 'A hub keeps each pedal apart. It takes one lead more than a chain.';
      for (const others of [[], [0], [1, 2], [0, 1, 2, 3]])
        expectMistake(task, `${[...new Set([...others, price])].sort().join(' ')} | ${text}`, 'price only');
    }
  });
});

describe('other choices', () => {
  /** What each wrong answer is called, by how it begins. */
  const NAMES: Readonly<Record<string, Readonly<Record<string, string>>>> = {
    'what-grows': { Zeros: 'says zeros', Ones: 'says ones', Neither: 'says none' },
    'idle-or-active': { 'It rests': 'says idle', 'It sends': 'says active', 'It has no': 'says off' },
    'kind-of-thru': {
      'The shift': 'takes it for hardware',
      'Edges come': 'takes it for software',
      'Both hear': 'takes it for split',
    },
    'works-and-allowed': {
      'It works, and the standard': 'says allowed',
      'It works, and is longer': 'says too long',
      'It does not': 'says too much copper',
    },
    'judge-pull-up': { 'Too small': 'says too small', 'Too large': 'says too large', Good: 'says good' },
    'diode-beside': {
      'It lights': 'says lit',
      'It stays dark: the diode takes': 'says past',
      'It stays dark: the diode carries': 'says small',
      'It stays dark, with': 'says whole',
    },
    'byte-lost': {
      Both: 'says both notes',
      'The first': 'says the first note only',
      'The second': 'says the second note only',
      Neither: 'says neither as it was sent',
    },
    'wrong-setting': {
      'Its channel': 'says channel',
      'Program changes': 'says programs',
      'It does not follow': 'says clock',
      Omni: 'says omni',
      'Its lead': 'lead blamed first',
    },
    'program-or-control': {
      'A program': 'a whole sound for one knob',
      'A control': 'one knob for a whole sound',
      'A clock': 'clock for a message',
    },
    'free-channel': { 'None yet': 'sees a hindrance' },
  };

  it.each(Object.keys(NAMES))('of %s are named by what was said, and each is wrong in some task', (kind) => {
    const names = NAMES[kind] ?? {};
    const wrong = new Set<string>();
    for (const task of tasksOf(kind))
      optionsOf(task).forEach((option, at) => {
        const start = Object.keys(names).find((one) => option.startsWith(one));
        if (start === undefined || String(at) === task.right) return;
        expectMistake(task, String(at), names[start] ?? '');
        wrong.add(start);
      });
    expect([...wrong].sort()).toEqual(Object.keys(names).sort());
  });
});
