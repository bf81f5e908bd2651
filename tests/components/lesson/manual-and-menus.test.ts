/** Words of manuals and menus of pedals as a lesson brings them: nothing is told before the reader has chosen or sent. */
import { describe, expect, test } from 'vitest';
import ReadManual from '../../../components/lesson/ReadManual.svelte';
import WhoActs from '../../../components/lesson/WhoActs.svelte';
import ManualSays from '../../../components/parts/ManualSays.svelte';
import { readManual, sayType } from '../../../src/core/answer/index.ts';
import type { SetPedal } from '../../../src/core/learn/index.ts';
import { allOf, htmlOf, wordsOf } from '../../support/rendered.ts';

describe('Words of manuals', () => {
  const phrases = ['MIDI IN: TRS, Type A', 'tip = pin 5'];

  test('are offered each in quotes, and none is read before one is chosen', () => {
    const html = htmlOf(ReadManual, { name: 'What it says', phrases, letter: true });
    expect(allOf(html, 'label').slice(0, 2)).toEqual(phrases.map((words) => `‘${words}’`));
    expect(html).not.toMatch(/ checked/);
    expect(wordsOf(html)).toMatch(/Choose some words, and see what they tell\.$/);
    expect(wordsOf(html)).not.toContain('Hello');
  });

  test('that name a type are answered with it and its reason', () => {
    const reading = readManual('MIDI IN: TRS, Type A', 'in');
    expect(wordsOf(htmlOf(ManualSays, { reading }))).toBe(`${sayType('type-a')}. Why: ${reading.reason}.`);
  });

  test('that say half are answered with what is likely, what else it may be, and the open question', () => {
    const reading = readManual('tip = pin 5', 'in');
    const words = wordsOf(htmlOf(ManualSays, { reading }));
    expect(words).toMatch(/^Most likely /);
    for (const type of reading.could) expect(words).toContain(sayType(type));
    for (const question of reading.questions) expect(words).toContain(`Still open: ${question}`);
  });

  test('that contradict themselves, and those that tell nothing, say so and name no type', () => {
    const odd = wordsOf(
      htmlOf(ManualSays, { reading: readManual('Type A (tip = pin 4, ring = pin 5)', 'in') }),
    );
    expect(odd).toMatch(/^The words contradict each other\./);
    const none = wordsOf(htmlOf(ManualSays, { reading: readManual('See the quick start guide', 'in') }));
    expect(none).toMatch(/^These words do not tell the type\./);
    expect(none).not.toContain('It could');
  });
});

describe('Pedals and their menus', () => {
  const pedals: readonly SetPedal[] = [
    { name: 'echo', channel: 1, omni: false, programs: true, clock: true },
    { name: 'drive', channel: 4, omni: true, programs: true, clock: false },
  ];

  test('stand as the author set them, and nobody has acted before something is sent', () => {
    const html = htmlOf(WhoActs, { pedals, kind: 'program change', channel: 1 });
    expect(allOf(html, 'legend')).toEqual(['What is sent', 'echo', 'drive']);
    expect(html.match(/type="checkbox"[^>]* checked/g)).toHaveLength(4);
    expect(wordsOf(html)).toMatch(/Nothing is sent yet\.$/);
    expect(wordsOf(html)).not.toMatch(/Acts|Stays/);
  });

  test('a clock is sent on no channel', () => {
    const html = htmlOf(WhoActs, { pedals, kind: 'clock', channel: 1 });
    expect(allOf(html, 'label')).not.toContain('on channel');
    expect(allOf(htmlOf(WhoActs, { pedals, kind: 'control change', channel: 1 }), 'label')).toContain(
      'on channel',
    );
  });
});
