/** What can be searched: the sections of a page as they are read from its HTML, and what is found in them. */
import { describe, expect, test } from 'vitest';
import { makeFinder, type Section } from '../../components/search/finder.ts';
import { sectionsOf } from '../../src/search/integration.mjs';

const PAGE = `<!doctype html><html><body><header><p>Menu</p></header><main>
  <h1>Build sheet</h1><p>Make the <a href="/x/">lead</a>, then test it.</p>
  <section id="caution"><h2>What can <em>hurt</em></h2><p>A hot iron &amp; its fume.</p><svg><text>drawn</text></svg></section>
  <dl><div id="tip"><dt>tip</dt><dd>The end of a phone plug.</dd></div><div><dt>count</dt><dd>4</dd></div></dl>
</main></body></html>`;

describe('Sections of a page', () => {
  const sections = sectionsOf(PAGE, '/cable-sheet/');

  test('go from heading to heading, each with the nearest place that has an address', () => {
    expect(sections.map(({ address, heading }) => [address, heading])).toEqual([
      ['/cable-sheet/', 'Build sheet'],
      ['/cable-sheet/#caution', 'What can hurt'],
      ['/cable-sheet/#tip', 'tip'],
    ]);
    expect(new Set(sections.map(({ page }) => page))).toEqual(new Set(['Build sheet']));
  });

  test('hold text as it is read, without menu or drawing', () => {
    expect(sections.map(({ text }) => text)).toEqual([
      'Make the lead, then test it.',
      'A hot iron & its fume.',
      'The end of a phone plug. count 4',
    ]);
  });

  test('cannot be read from a page without a main part', () => {
    expect(() => sectionsOf('<p>No main</p>', '/odd/')).toThrow('/odd/: expected a page with a main part');
  });
});

describe('A finder', () => {
  const section = (heading: string, text: string): Section => ({ address: '/a/', page: 'A', heading, text });
  const sections = [
    section('Shield', 'It keeps noise out of the lead.'),
    section('Noise', 'A hum in the loudspeaker.'),
    section(
      'Optocoupler',
      `${'Light crosses a gap. '.repeat(20)}A phototransistor sees it. ${'Then more. '.repeat(40)}`,
    ),
  ];
  const headings = async (query: string): Promise<readonly string[]> =>
    (await makeFinder(sections))(query).map(({ heading }) => heading);

  test('finds words, beginnings of words and words with a letter wrong, headings first', async () => {
    expect(await headings('noise')).toEqual(['Noise', 'Shield']);
    expect(await headings('opto')).toEqual(['Optocoupler']);
    expect(await headings('optocuopler')).toEqual(['Optocoupler']);
    expect(await headings('noise lead')).toEqual(['Shield']);
    expect(await headings('banana')).toEqual([]);
  });

  test('shows the words around what was found, cut at spaces', async () => {
    const [found] = (await makeFinder(sections))('phototransistor');
    expect(found?.excerpt).toMatch(/^… .*A phototransistor sees it\..* …$/);
    expect(found?.excerpt.length).toBeLessThan(200);
  });
});
