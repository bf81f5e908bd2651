/** The second solver on contacts: rows of pins typed by hand, and plugs and jacks as a reader pictures them. */
import { describe, expect, it } from 'vitest';
import { ROWS, contactsIn, facesOf, rowIn, turned } from './hand-faces.ts';
import { expectRight, optionOf, rowsOf, tasksOf } from './school.ts';

describe('faces', () => {
  it('the hidden pin is the one that stands there in the row of its side', () => {
    for (const task of tasksOf('hidden-pin')) {
      const labels = facesOf(task)[0]?.labels ?? [];
      expectRight(task, optionOf(task, `Pin ${rowIn(task.ask)[labels.indexOf('?')] ?? ''}`));
    }
  });

  it('a row belongs to the side whose row it is, or to neither', () => {
    for (const task of tasksOf('which-view')) {
      const form = / (plug|jack) with/.exec(task.ask)?.[1] ?? '';
      const shown = facesOf(task)[0]?.labels.join('') ?? '';
      const row = task.ask.includes('key up') ? turned(shown) : shown;
      const side = ['mating face', 'solder side'].find((one) => ROWS[`${one} of a ${form}`] === row);
      expectRight(task, optionOf(task, side ? `Its ${side}` : 'Neither'));
    }
  });
});

describe('lists and pictures', () => {
  it('a list joins the contacts that bear the same letter', () => {
    for (const task of tasksOf('picture-to-list')) {
      const [one, other] = facesOf(task).map(contactsIn);
      const list = [...(one ?? [])].map(([letter, contact]) => `${contact} to ${other?.get(letter) ?? ''}`);
      expectRight(task, optionOf(task, list.sort().join(', ')));
    }
  });

  it('a picture has each letter of the list on its pin', () => {
    for (const task of tasksOf('list-to-picture')) {
      const list = [...task.ask.matchAll(/([a-e]) to pin (\d)/g)].map(
        ([, letter, pin]) => [pin, letter] as const,
      );
      const wanted = [...rowIn(task.ask)].map((pin) => new Map(list).get(pin) ?? '');
      const found = facesOf(task).filter(({ labels }) => labels.join() === wanted.join());
      expect(found).toHaveLength(1);
      expectRight(task, optionOf(task, found[0]?.name ?? ''));
    }
  });
});

describe('plugs and beeps', () => {
  it('a TS plug joins what is on ring and sleeve, where it goes in at all', () => {
    for (const task of tasksOf('ts-plug')) {
      const [, size, , rest = ''] =
        /The (\S+) mm (TRS|TS) jack of an output has (.*?)\. A /.exec(task.ask) ?? [];
      const [, plugSize, kind] = /A (\S+) mm (TRS|TS) plug/.exec(task.ask) ?? [];
      const on = (contact: string): string =>
        new RegExp(`(\\w+) on the ${contact}`).exec(rest)?.[1] ?? 'nothing';
      const [ring, sleeve] = [on('ring'), on('sleeve')];
      const says =
        size !== plugSize
          ? 'It does not'
          : kind === 'TRS' || ring === 'nothing' || sleeve === 'nothing'
            ? 'No two'
            : `The ${ring} line and the ${sleeve}`;
      expectRight(task, optionOf(task, says));
    }
  });

  it('four touches tell a mirrored plug from broken and touching wires', () => {
    /** Beeps of first wire, first to second, second to first, second wire; as planned both wires beep to their own ends. */
    const SAID: Readonly<Record<string, string>> = {
      '1001': 'Nothing',
      '0110': 'One DIN',
      '0001': 'The wire at pin 4',
      '1000': 'The wire at pin 5',
      '1111': 'Pins 4',
      '0000': 'Both',
    };
    for (const task of tasksOf('four-beeps')) {
      const heard = [...rowsOf(task).values()].map((one) => Number(one === 'beeps')).join('');
      expectRight(task, optionOf(task, SAID[heard] ?? ''));
    }
  });
});
