/** The second solver at the soldering bench: rows of pins by heart, school sums, and lines followed with a finger. */
import { describe, expect, it } from 'vitest';
import type { Task } from '../../../../src/core/learn/index.ts';
import { expectRight, numberAfter, numberIn, optionOf, placesWhere, rowsOf, tasksOf } from './school.ts';

describe('making a lead', () => {
  it('is prepared, soldered, tugged at, closed and tested, in this order', () => {
    const PLACES = [/^(?:Slide|Cut|Clamp)/, /^Solder/, /cool/, /^Close/, /test the lead/];
    for (const task of tasksOf('order-steps')) {
      if (task.form.form !== 'order') throw new Error('task: needs an order');
      const { items } = task.form;
      const placeOf = (at: number): number => PLACES.findIndex((words) => words.test(items[at] ?? ''));
      const order = [...items.keys()].sort((a, b) => placeOf(a) - placeOf(b));
      expect(new Set(order.map(placeOf)).size).toBe(items.length);
      expectRight(task, order.join(' '));
    }
  });

  it('puts source, sink and shield on pins 4, 5 and 2, in the row of the side that is soldered', () => {
    // A reference page, an encyclopedia and a build guide, which agree once side and key are named.
    const ROWS: Readonly<Record<string, string>> = { plug: '1 4 2 5 3', jack: '3 5 2 4 1' };
    const PINS = [
      [/source|ring of a Type A|tip of a Type B/, '4'],
      [/sink|tip of a Type A|ring of a Type B/, '5'],
      [/shield|sleeve/, '2'],
    ] as const;
    for (const task of tasksOf('solder-cups')) {
      if (task.shows?.shows !== 'faces') throw new Error('task: needs a face');
      const [, form = '', key] = /solder side of a (plug|jack), key (up|down)/.exec(task.ask) ?? [];
      const row = (ROWS[form] ?? '').split(' ');
      if (key === 'up') row.reverse();
      const pin = PINS.find(([words]) => words.test(task.ask.split('takes')[1] ?? ''))?.[1] ?? '';
      expectRight(task, optionOf(task, `Cup ${task.shows.faces[0]?.labels[row.indexOf(pin)] ?? ''}`));
    }
  });

  it('leaves bare what is longer than the cup, and that touches where it is longer than the room to the next pin', () => {
    for (const task of tasksOf('strip-length')) {
      const rows = rowsOf(task);
      const row = (words: RegExp): number => numberIn([...rows].find(([what]) => words.test(what))?.[1]);
      const room = rows.has('room between two pins') ? row(/room/) : row(/middle/) - row(/thickness/);
      const over = numberAfter(task.ask, /stripped by/) - row(/depth/);
      const says =
        over < -0.5
          ? 'Only the rim'
          : over <= 0
            ? 'All the bare'
            : over > room
              ? 'Some stays bare, and can'
              : 'Some stays bare, and touches';
      expectRight(task, optionOf(task, says));
    }
  });

  it('has a joint made again that has not wetted, whatever its shine', () => {
    for (const task of tasksOf('judge-joints', [1, 2]))
      expectRight(
        task,
        placesWhere(task, (joint) => !/thin/.test(joint)),
      );
    const CAUSES = [
      [/thin/, 'It is a good one'],
      [/ball|rolled off/, 'It has not wetted'],
      [/crack|moved/, 'It was moved'],
      [/rim of the cup alone/, 'Too little bare wire'],
    ] as const;
    for (const task of tasksOf('judge-joints', [3]))
      expectRight(task, optionOf(task, CAUSES.find(([words]) => words.test(task.ask))?.[1] ?? ''));
  });

  it('with a strand does what the two lines that it joins do: the shield is ground', () => {
    const LINES: Readonly<Record<string, Readonly<Record<string, string>>>> = {
      DIN: { 'pin 4': 'source', 'pin 5': 'sink', 'pin 2': 'shield' },
      'Type A': { ring: 'source', tip: 'sink', sleeve: 'shield' },
      'Type B': { tip: 'source', ring: 'sink', sleeve: 'shield' },
    };
    const DOES: Readonly<Record<string, string>> = {
      'shield source': 'Nothing arrives: the source',
      'shield sink': 'The LED',
      'sink source': 'Nothing arrives: source meets',
    };
    for (const task of tasksOf('stray-strand')) {
      const [, out = '', into = '', end, a = '', b = ''] =
        /output is a (DIN|Type .).*? input is a (DIN|Type .).*?at the (output|input) end a loose strand joins (.+) and (.+)\. What/.exec(
          task.ask,
        ) ?? [];
      const lines = LINES[end === 'output' ? out : into] ?? {};
      const joined = [lines[a], lines[b]]
        .map((one) => one ?? 'none')
        .sort()
        .join(' ');
      expectRight(task, optionOf(task, DOES[joined] ?? 'Notes get through'));
    }
  });

  it('is safe with air that moves, eyes and fingers out of the way, clean hands, and a lead that was tested', () => {
    const SAFE =
      /^A fan draws|is in its stand|washed|in a clamp|Eyes are protected|is tested|cools before|another table/;
    const isSafe = (task: Task): string => placesWhere(task, (one) => !SAFE.test(one));
    for (const task of tasksOf('bench-hazards')) expectRight(task, isSafe(task));
  });
});
