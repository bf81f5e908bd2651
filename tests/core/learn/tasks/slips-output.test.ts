/** Mistakes on one output with several inputs, worked out by school sums and by leads counted with a finger. */
import { describe, expect, it } from 'vitest';
import { gradeAnswer } from '../../../../src/core/learn/index.ts';
import type { Task } from '../../../../src/core/learn/index.ts';
import {
  expectMistake,
  numberAfter,
  numberIn,
  optionsOf,
  placesWhere,
  rowsOf,
  tally,
  tasksOf,
  wrongOptions,
} from './school.ts';

const LED = 1.4;
const inputsIn = ({ ask }: Task): number => (ask.startsWith('Two') ? 2 : 3);
const partOf = (inputs: number): string => (inputs === 2 ? 'exact half' : 'exact third');

describe('mistakes in a plain split', () => {
  it('are numbers of their own: an exact part, the whole, the sum, the LED left out, inputs in a row', () => {
    const { met, names } = tally();
    /** Two numbers that a reader could not tell apart by hand: nearer than an eighth. */
    const isNear = (one: number, other: number): boolean => Math.abs(one - other) < 0.16 * other;
    for (const task of tasksOf('share-current')) {
      const rows = rowsOf(task);
      const ohms = (name: string): number => numberIn(rows.get(name));
      const output = ohms('resistor in the source line') + ohms('resistor in the sink line');
      const series = ohms('resistor in each receiver');
      const volts = numberIn(rows.get('supply of the sender'));
      const inputs = inputsIn(task);
      const flows = (across: number, resistance: number): number => (across / resistance) * 1e3;
      const alone = flows(volts - LED, output + series);
      const right = flows(volts - LED, inputs * output + series);
      const given = [
        [partOf(inputs), alone / inputs],
        ['as before', alone],
        ['not shared', right * inputs],
        ['LED forgotten', flows(volts, inputs * output + series)],
        ['one after the other', flows(volts - LED, output + inputs * series)],
      ] as const;
      for (const [at, [name, value]] of given.entries()) {
        const others = [right, ...given.filter((_, other) => other !== at).map((one) => one[1])];
        if (!others.some((one) => isNear(value, one))) expectMistake(task, value.toFixed(3), met(name));
      }
    }
    expect(names()).toEqual(expect.arrayContaining(['as before', 'not shared']));
    expect(names().length).toBeGreaterThanOrEqual(3);
  });

  it('tick parts by what one input alone gets, by an exact part of that, or none', () => {
    const { met, names } = tally();
    for (const task of tasksOf('lit-parts')) {
      const alone = numberAfter(rowsOf(task).get('one input alone gets') ?? '', /about/);
      const upTo = (most: number): string => placesWhere(task, (part) => numberAfter(part, /needs/) <= most);
      const ticks = [
        ['as before', upTo(alone)],
        [partOf(inputsIn(task)), upTo(alone / inputsIn(task))],
        ['a split never works', '-'],
      ] as const;
      for (const [at, [name, places]] of ticks.entries()) {
        const before = ticks.slice(0, at).some((one) => one[1] === places);
        if (places !== task.right && !before) expectMistake(task, places, met(name));
      }
      // What one input alone gets is enough for every part: to tick all is to give each what one gets.
      expect(upTo(alone)).toBe(placesWhere(task, () => true));
    }
    expect(names()).toEqual(expect.arrayContaining(['a split never works', 'as before', 'exact half']));
  });

  it('years that prove nothing, a split that never works, and a doubt where all is told', () => {
    const NAMES = [
      [/^Yes/, 'it has worked for years'],
      [/^No/, 'a split never works'],
      [/^It depends/, 'says nobody can tell'],
    ] as const;
    const { met, names } = tally();
    for (const task of tasksOf('worked-for-years'))
      for (const [place, said] of wrongOptions(task))
        expectMistake(task, place, met(NAMES.find(([words]) => words.test(said))?.[1] ?? said));
    expect(names()).toHaveLength(3);
  });

  it('a line on which two outputs do not fight is told to compare that pin, and quiet is told not to be gone', () => {
    const SAYS = [
      ['Pin 4', 'says source', 'pin 4 of the one with pin 4'],
      ['Pin 5', 'says sink', 'pin 5 of the one with pin 5'],
      ['Both', 'says both', 'One of them, at least, is left in peace'],
      ['Neither', 'joins by wire if one is quiet', 'still holds its lines'],
    ] as const;
    for (const task of tasksOf('who-fights'))
      for (const [place, said] of wrongOptions(task)) {
        const [, name = '', words = ''] = SAYS.find(([start]) => said.startsWith(start)) ?? [];
        expectMistake(task, place, name);
        expect(gradeAnswer(task, place).sentence).toContain(words);
      }
  });
});

describe('mistakes in what belongs between', () => {
  it('wire, a THRU that is not there or off, a hub for a merger, and a box too many', () => {
    const { met, names } = tally();
    for (const task of tasksOf('which-box')) {
      const two = /and a keyboard/.test(task.ask);
      const nameOf = (said: string): string => {
        if (said.startsWith('A plain Y')) return two ? 'joins by wire if one is quiet' : 'splits by wire';
        if (said === 'A merger') return 'merger for hub';
        if (two) return said === 'A hub' ? 'hub for merger' : 'THRU joins senders';
        if (said === 'A hub') return 'a box too many';
        return /None of them has a THRU/.test(task.ask)
          ? 'THRU that is not there'
          : 'THRU of a box that is off';
      };
      for (const [place, said] of wrongOptions(task)) expectMistake(task, place, met(nameOf(said)));
      // A hub is a box too many only where a THRU would do.
      if (task.slips.some(({ name }) => name === 'a box too many'))
        expect(optionsOf(task)[Number(task.right)]).toBe('A lead from THRU to IN');
    }
    expect(names()).toHaveLength(8);
  });

  it('an output that begins one lead: a THRU, the first of all, or one of a hub; and a split not seen', () => {
    const { met, names } = tally();
    for (const task of tasksOf('find-split')) {
      const begins = [...rowsOf(task).values()].map((lead) => lead.split(' to ')[0] ?? '');
      for (const [place, said] of wrongOptions(task)) {
        const name =
          said === 'none of them'
            ? 'takes a split for none'
            : said.endsWith('THRU')
              ? 'THRU passes current'
              : said.startsWith('foot controller')
                ? 'all hang on the first output'
                : 'takes a hub for a split';
        expectMistake(task, place, met(name));
        if (said !== 'none of them') expect(begins.filter((one) => one === said)).toHaveLength(1);
      }
    }
    expect(names()).toHaveLength(4);
  });
});
