/** The bench as a page brings it, before anything is pressed: an empty one, one with a lead, and one that is a task. */
import { describe, expect, test } from 'vitest';
import Bench from '../../../components/bench/Bench.svelte';
import BenchFigure from '../../../components/bench/BenchFigure.svelte';
import Headline from '../../../components/bench/Headline.svelte';
import LeadFolds from '../../../components/bench/LeadFolds.svelte';
import Verdict from '../../../components/bench/Verdict.svelte';
import { firstWork, layLead, verdictOf } from '../../../components/bench/work.ts';
import type { Work } from '../../../components/bench/work.ts';
import { History } from '../../../components/parts/history.svelte.ts';
import { wires } from '../../../src/core/wiring/index.ts';
import { allOf, htmlOf, wordsOf } from '../../support/rendered.ts';

const empty = firstWork();
const wired = layLead(empty, wires('4-ring', '5-tip', '2-sleeve'));
const nothing = (): void => undefined;
const figureOf = (work: Work, more: { readonly asked?: boolean }): string =>
  htmlOf(BenchFigure, {
    history: new History(work),
    onchange: nothing,
    ontoggle: nothing,
    ontravel: nothing,
    ...more,
  });

describe('A bench without wires', () => {
  test('is not judged: it says so, and asks for a wire', () => {
    const html = htmlOf(Bench, {});
    expect(html).toContain('No wires yet');
    expect(html).toContain('Join a contact of the output to one of the input');
    expect(wordsOf(html)).not.toMatch(/What to change|Follow the current|worst case/);
    expect(htmlOf(Headline, { verdict: undefined, state: 'active' })).not.toContain('<dl');
  });

  test('shows the line of each contact all the same', () => {
    // DIN 4 is the source, DIN 5 the sink, DIN 2 the shield (MIDI 1.0 electrical specification).
    const html = figureOf(empty, {});
    expect(html).toMatch(/pin 4, source, not joined/);
    expect(html).toMatch(/pin 5, sink, not joined/);
    expect(allOf(html, 'button')).toContain('Add a second lead');
  });

  test('offers no readings, and a wired one does', () => {
    const folds = (work: Work): readonly string[] =>
      allOf(
        htmlOf(LeadFolds, { work, verdict: work === empty ? undefined : verdictOf(work), onchange: nothing }),
        'summary',
      );
    expect(folds(empty)).toEqual(['Length, gauge, plugs and faults']);
    expect(folds(wired)).toContain('Every reading, idle and active side by side');
  });
});

test('A wired bench is judged in words', () => {
  const verdict = verdictOf(wired);
  expect(wordsOf(htmlOf(Headline, { verdict, state: 'active' }))).toMatch(
    /^Works LED idle .* LED active .* LED worst case/,
  );
  expect(wordsOf(htmlOf(Verdict, { verdict }))).toContain(
    `${verdict.sentence} What to change: ${verdict.change}`,
  );
});

test('A bench that asks what the lead does tells no line and no state, whether wired or not', () => {
  for (const work of [empty, wired]) {
    const html = figureOf(work, { asked: true });
    expect(wordsOf(html)).not.toMatch(/source|sink|State shown/);
    expect(html).not.toMatch(/aria-label="[^"]*, (source|sink)\b/);
    expect(allOf(html, 'button')).not.toContain('Add a second lead');
  }
});
