/** Widgets of lessons as a page brings them, before anything is pressed: what a reader without scripts sees is true as well. */
import { describe, expect, test } from 'vitest';
import PathSteps from '../../../components/bench/PathSteps.svelte';
import SplitSuspects from '../../../components/lesson/SplitSuspects.svelte';
import Symptoms from '../../../components/lesson/Symptoms.svelte';
import TestLead from '../../../components/lesson/TestLead.svelte';
import TickReadings from '../../../components/lesson/TickReadings.svelte';
import { huntFor, pileFrom, symptomGroups } from '../../../src/core/learn/index.ts';
import { proofRows, proveLead, sayPlace } from '../../../src/core/making/index.ts';
import type { LeadFault } from '../../../src/core/making/index.ts';
import { checkLink } from '../../../src/core/verdict/index.ts';
import { makeJack, makeLead, wires } from '../../../src/core/wiring/index.ts';
import { allOf, htmlOf, wordsOf } from '../../support/rendered.ts';

const LEAD = makeLead('din5', 'trs-3.5', wires('4-ring', '5-tip', '2-sleeve'));
const pile = pileFrom({
  board: 'link',
  suspects: ['lead 1: swapped', 'lead 1: ts-lead', 'pedal 1: wrong-channel'],
  looks: ['channel pedal 1', 'plugs lead 1'],
});

describe('A pile of suspects', () => {
  test('to be split lists every look and every suspect, none cleared', () => {
    const html = htmlOf(SplitSuspects, { pile, hidden: [] });
    expect(allOf(html, 'button')).toEqual(pile.looks.map(({ words }) => words));
    expect(allOf(html, 'li').slice(pile.looks.length)).toEqual(pile.suspects.map(({ words }) => words));
    expect(wordsOf(html)).toMatch(/Press a \w+, and see how it would split the suspects\.$/);
  });

  test('to be hunted says what the core says of a hunt that has not begun', () => {
    expect(wordsOf(htmlOf(SplitSuspects, { pile, hidden: [1] }))).toContain(huntFor(pile, 1, []).sentence);
  });
});

describe('Symptoms', () => {
  test('offer every symptom of the board, and the suspects of the first', () => {
    const groups = symptomGroups('link');
    const html = htmlOf(Symptoms, { groups });
    expect(allOf(html, 'label')).toEqual(groups.map(({ symptom }) => symptom));
    expect(allOf(html, 'li')).toEqual(groups[0]?.suspects.map(({ words }) => words));
  });
});

describe('A lead to be tested', () => {
  const open: readonly LeadFault[] = [{ kind: 'open', conductor: 0 }];

  test('starts with its conductors read, lying still, and gives no other reading away', () => {
    const html = htmlOf(TestLead, { lead: LEAD, faults: open, shows: 'every row' });
    const rows = proofRows(LEAD);
    const words = wordsOf(html);
    expect(words).toContain(`${LEAD.conductors.length} of ${rows.length} rows read.`);
    expect(words.split('not read')).toHaveLength(rows.length - LEAD.conductors.length + 1);
    // The open conductor is silent where it should beep, and the core explains that much.
    const taken = rows
      .filter(({ expects }) => expects === 'beep')
      .flatMap(({ places }) => places.filter(({ hold }) => hold === 'still'))
      .map((place, at) => ({ ...place, says: at === 0 ? ('silent' as const) : ('beep' as const) }));
    expect(words).toContain(proveLead(LEAD, taken).sentence);
  });

  test('shows the conductors alone where plugs are to be moved', () => {
    const html = htmlOf(TestLead, { lead: LEAD, faults: [], shows: 'moving' });
    expect(allOf(html, 'button').filter((one) => one.includes(' to '))).toHaveLength(LEAD.conductors.length);
  });
});

describe('Readings to tick', () => {
  test('stand as the author left them, and say what they leave possible', () => {
    const [first, second] = proofRows(LEAD).map(({ places }) => places[0]);
    if (!first || !second) throw new Error('needs two places');
    const html = htmlOf(TickReadings, {
      lead: LEAD,
      readings: [{ place: first, says: 'silent' }, { place: second }],
    });
    expect(allOf(html, 'legend')).toEqual([sayPlace(first), sayPlace(second)]);
    const found = proveLead(LEAD, [{ ...first, says: 'silent' }]);
    const count = found.sets.length;
    expect(wordsOf(html)).toMatch(
      count === 1 ? /One single mistake explains this/ : new RegExp(`${count} single mistakes explain this`),
    );
  });

  test('say nothing before one was read', () => {
    const place = proofRows(LEAD)[0]?.places[0];
    if (!place) throw new Error('needs a place');
    expect(wordsOf(htmlOf(TickReadings, { lead: LEAD, readings: [{ place }] }))).toContain(
      'Nothing read yet',
    );
  });
});

describe('The path of the current', () => {
  const output = makeJack('out', 'din5', 'din');
  const input = makeJack('in', 'trs-3.5', 'type-a');
  const { steps } = checkLink({ output, branches: [{ input, leads: [LEAD] }] });

  test('is a list of all steps; the one shown is marked and read aloud', () => {
    const html = htmlOf(PathSteps, { steps, at: 1, onstep: () => undefined });
    expect(allOf(html, 'li')).toEqual(steps.map(({ text }) => text.replace(/\s+/g, ' ')));
    expect(html.match(/aria-current="step"/g)).toHaveLength(1);
    expect(wordsOf(html)).toContain(`Step 2 of ${steps.length}: ${steps[1]?.text ?? ''}`);
  });

  test('has no step back before the first and none on after the last', () => {
    const barred = (at: number): readonly boolean[] =>
      (htmlOf(PathSteps, { steps, at, onstep: () => undefined }).match(/<button[^>]*>/g) ?? []).map((one) =>
        / disabled/.test(one),
      );
    expect(barred(-1)).toEqual([true, false]);
    expect(barred(steps.length - 1)).toEqual([false, true]);
  });
});
