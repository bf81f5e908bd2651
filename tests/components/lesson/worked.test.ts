/** What is worked out before a reader's eyes, as a lesson brings it. */
import { describe, expect, test } from 'vitest';
import LoopSum from '../../../components/lesson/LoopSum.svelte';
import WorkedHunt from '../../../components/lesson/WorkedHunt.svelte';
import { LED_KEEPS, loopSum, pileFrom } from '../../../src/core/learn/index.ts';
import { sayAmperesFinely, sayVolts } from '../../../src/core/verdict/index.ts';
import { allOf, htmlOf, wordsOf } from '../../support/rendered.ts';

test('the sum of the loop is written out for the 5 V sender and the usual LED, with the solver beside it', () => {
  const html = htmlOf(LoopSum, {});
  const words = wordsOf(html);
  const sum = loopSum('driver-5v', LED_KEEPS[1]);
  expect(words).toContain('(5 V − 1.4 V) ÷ (220 + 220 + 220 ohm) = 3.60 V ÷ 660 ohm');
  expect(words).toContain(`= ${sayAmperesFinely(sum.amperes)}`);
  expect(words).toContain(`solved with the LED as it is: ${sayAmperesFinely(sum.solvedAmperes)}.`);
  expect(allOf(html, 'dt')).toEqual(
    sum.shares.map(({ name, ohms }) => (ohms === undefined ? name : `${name}, ${ohms} ohm`)),
  );
  expect(allOf(html, 'dd')).toEqual(sum.shares.map(({ volts }) => sayVolts(volts)));
});

describe('A hunt that is shown', () => {
  const pile = pileFrom({
    board: 'link',
    suspects: ['lead 1: swapped', 'lead 1: ts-lead', 'pedal 1: wrong-channel'],
    looks: ['channel pedal 1', 'plugs lead 1'],
  });

  test('begins with every suspect and no check, and gives the end away nowhere', () => {
    const html = htmlOf(WorkedHunt, { pile, hidden: 1 });
    expect(allOf(html, 'li')).toEqual(pile.suspects.map(({ words }) => words));
    expect(allOf(html, 'button')).toEqual(['First check']);
    expect(wordsOf(html)).toContain('3 suspects.');
    expect(wordsOf(html)).not.toMatch(/Found|cleared|Seen/);
  });
});
