/** Mistakes on contacts, each made by a learner who makes it: rows read from the wrong side, numbers that run in order. */
import { describe, expect, it } from 'vitest';
import type { ShownFace, Task } from '../../../../src/core/learn/index.ts';
import { ROWS, contactsIn, facesOf, rowIn, turned } from './hand-faces.ts';
import { expectMistake, optionOf, optionsOf, rowsOf, tally, tasksOf, wrongOptions } from './school.ts';

describe('a face read wrongly', () => {
  it('gives the pin of the other side, or the number of its place', () => {
    const { met, names } = tally();
    for (const task of tasksOf('hidden-pin')) {
      const row = rowIn(task.ask);
      const at = facesOf(task)[0]?.labels.indexOf('?') ?? -1;
      for (const [place, option] of wrongOptions(task)) {
        const said = option.slice(-1);
        const name =
          said === turned(row)[at]
            ? 'mirrored'
            : said === String(at + 1)
              ? 'counted in order'
              : 'another pin';
        expectMistake(task, place, met(name));
      }
    }
    expect(names()).toEqual(['another pin', 'counted in order', 'mirrored']);
  });

  it('is told the row of the mating face where one side is taken for the other', () => {
    for (const task of tasksOf('which-view')) {
      const form = / (plug|jack) with/.exec(task.ask)?.[1] ?? '';
      const neither = optionsOf(task)[Number(task.right)] === 'Neither side';
      for (const { name, answer, sentence } of task.slips) {
        const option = optionsOf(task)[Number(answer)] ?? '';
        expect(name).toBe(
          option === 'Neither side'
            ? 'says neither'
            : `takes it for the ${option === 'Its mating face' ? 'mating' : 'solder'} side`,
        );
        const mating = [...(ROWS[`mating face of a ${form}`] ?? '')].join(' ');
        if (name !== 'says neither')
          expect(sentence).toContain(neither ? '3 5 2 4 1' : `of a ${form} reads ${mating}`);
      }
    }
  });
});

/** Letters of a plug as who counts its pins from left to right takes them. */
function countedIn(face: ShownFace): ReadonlyMap<string, string> {
  if (face.connector !== 'din5') return contactsIn(face);
  return new Map(face.labels.flatMap((label, at) => (label === '' ? [] : [[label, `pin ${at + 1}`]])));
}

/** Letters of a plug as who takes it for its other side. */
const mirroredIn = (face: ShownFace): ReadonlyMap<string, string> =>
  contactsIn({ ...face, labels: face.labels.toReversed() });

/** A list by the letters of two plugs; `to` says which letter at the second plug goes with one at the first. */
function listOf(
  one: ReadonlyMap<string, string>,
  other: ReadonlyMap<string, string>,
  to = (letter: string): string => letter,
): string {
  return [...one]
    .map(([letter, contact]) => `${contact} to ${other.get(to(letter)) ?? ''}`)
    .sort()
    .join(', ');
}

describe('a picture read wrongly', () => {
  it('gives the list of a mirrored plug, of pins that run in order, or of wires that change places', () => {
    const { met, names } = tally();
    for (const task of tasksOf('picture-to-list')) {
      const [first, second] = facesOf(task) as [ShownFace, ShownFace];
      const [one, other] = [contactsIn(first), contactsIn(second)];
      const letters = [...one.keys()];
      const next = (steps: number) => (letter: string) =>
        letters[(letters.indexOf(letter) + steps) % letters.length] ?? '';
      // To mirror the other end of a lead between two DIN plugs gives the same list, whichever lead it is.
      if (second.connector === 'din5')
        expect(listOf(one, mirroredIn(second))).toBe(listOf(mirroredIn(first), other));
      const mistakes: readonly (readonly [name: string, list: string])[] = [
        ['mirrored', listOf(mirroredIn(first), other)],
        ['counted in order', listOf(countedIn(first), countedIn(second))],
        ['wires mixed up', listOf(one, other, next(1))],
        ['wires mixed up', listOf(one, other, next(2))],
      ];
      for (const [place, option] of wrongOptions(task))
        expectMistake(task, place, met(mistakes.find(([, list]) => list === option)?.[0] ?? option));
    }
    expect(names()).toEqual(['counted in order', 'mirrored', 'wires mixed up']);
  });

  it('is a picture from behind, or one whose pins run in order from one side or the other', () => {
    const { met, names } = tally();
    for (const task of tasksOf('list-to-picture')) {
      const letterOf = new Map(
        [...task.ask.matchAll(/([a-e]) to pin (\d)/g)].map(([, one, pin]) => [pin, one]),
      );
      const drawn = (row: string): string => [...row].map((pin) => letterOf.get(pin) ?? '').join();
      const mistakes = new Map([
        [drawn('54321'), 'counted backwards'],
        [drawn('12345'), 'counted in order'],
        [drawn(turned(rowIn(task.ask))), 'mirrored'],
      ]);
      for (const [at, { labels }] of facesOf(task).entries())
        if (String(at) !== task.right)
          expectMistake(task, String(at), met(mistakes.get(labels.join()) ?? labels.join()));
    }
    expect(names()).toEqual(['counted backwards', 'counted in order', 'mirrored']);
  });
});

/** A plug and a jack as the question tells them: their sizes, and the line on each spring. */
function pluggedIn({ ask }: Task) {
  const [, size, rest = ''] = /The (\S+) mm (?:TRS|TS) jack of an output has (.*?)\. A /.exec(ask) ?? [];
  const [, plugSize, kind] = /A (\S+) mm (TRS|TS) plug/.exec(ask) ?? [];
  const on = (contact: string) => new RegExp(`(\\w+) on the ${contact}`).exec(rest)?.[1] ?? 'nothing';
  return { fits: size === plugSize, short: kind === 'TS', ring: on('ring'), sleeve: on('sleeve') };
}

describe('plugs and beeps taken wrongly', () => {
  it('a plug taken for one that fits, a ring that floats, a line too many, and the wrong two lines', () => {
    const { met, names } = tally();
    for (const task of tasksOf('ts-plug')) {
      const { fits, short, ring, sleeve } = pluggedIn(task);
      const joins = fits && short && ring !== 'nothing' && sleeve !== 'nothing';
      const nameOf = (option: string): string => {
        if (!fits) return 'sizes not compared';
        if (option.startsWith('It does not')) return 'says it does not go in';
        if (option.startsWith('No two')) return 'the ring floats';
        if (!joins) return 'joins a line too many';
        return /source.*sink/.test(option) ? 'tip and ring joined' : 'the other line';
      };
      for (const [place, option] of wrongOptions(task)) expectMistake(task, place, met(nameOf(option)));
      // The sentence to the wrong pair names the line on the ring as the question does.
      const other = task.slips.find(({ name }) => name === 'the other line');
      if (other) expect(other.sentence).toContain(`it is the ${ring} line`);
    }
    expect(names()).toHaveLength(6);
  });

  it('what is said to a wrong fault is what was not heard', () => {
    /** Beeps that each sentence promises: first wire, first to second, second to first, second wire. */
    const PROMISED = [
      [/both beeps change places/, '0110'],
      [/pin 4 beeps to nothing, and pin 5 as planned/, '0001'],
      [/pin 5 beeps to nothing, and pin 4 as planned/, '1000'],
      [/all four would beep/, '1111'],
      [/none of the four would beep/, '0000'],
      [/which two contacts should beep/, '1001'],
    ] as const;
    for (const task of tasksOf('four-beeps')) {
      const heard = [...rowsOf(task).values()].map((one) => Number(one === 'beeps')).join('');
      const promised = task.slips.map(
        ({ sentence }) => PROMISED.find(([words]) => words.test(sentence))?.[1],
      );
      expect(new Set(promised).size).toBe(task.slips.length);
      expect(promised).not.toContain(undefined);
      expect(promised).not.toContain(heard);
    }
    const [task] = tasksOf('four-beeps', [3]);
    if (task) expect(optionOf(task, 'Both wires')).toMatch(/^[0-5]$/);
  });
});
