/** Finding sections of the workbook by words. */
import MiniSearch from 'minisearch';

/** A part of a page, from one heading to the next, as the build wrote it. `address` begins at the root of the site. */
export interface Section {
  readonly address: `/${string}`;
  readonly page: string;
  readonly heading: string;
  readonly text: string;
}

/** A section that was found, with the words around the first of those that were looked for. */
interface Found extends Section {
  readonly excerpt: string;
}

/** Finds sections: every word of a query must stand there, or one that begins so, or for longer ones nearly so. */
export type Finder = (query: string) => readonly Found[];

/** Results that are shown at most: more is no answer (our choice). */
const MOST_FOUND = 20;

/** Share of a word's letters that may be wrong: one in five (our choice). */
const FUZZY = 0.2;

/** How much more a word counts in a heading, and in a page's title, than in the text (our choice). */
const BOOST = { heading: 4, page: 2 };

/** Characters of an excerpt before the word that was found, and in all. */
const BEFORE = 60;
const EXCERPT = 180;

/** Sections that are taken in before the page gets a breath. */
const AT_ONCE = 40;

/** Take in all sections, in slices that leave the page awake. */
export async function makeFinder(sections: readonly Section[]): Promise<Finder> {
  const engine = new MiniSearch<Section & { readonly id: number }>({ fields: ['page', 'heading', 'text'] });
  await engine.addAllAsync(
    sections.map((section, id) => ({ ...section, id })),
    { chunkSize: AT_ONCE },
  );
  return (query) =>
    engine
      .search(query, {
        prefix: true,
        fuzzy: (term) => (term.length > 4 ? FUZZY : false),
        combineWith: 'AND',
        boost: BOOST,
      })
      .slice(0, MOST_FOUND)
      .flatMap(({ id, terms }) => {
        const section = sections[Number(id)];
        return section === undefined ? [] : [{ ...section, excerpt: excerptOf(section.text, terms) }];
      });
}

/** The text around the first of these words. */
function excerptOf(text: string, terms: readonly string[]): string {
  const lower = text.toLowerCase();
  const places = terms.map((term) => lower.indexOf(term)).filter((place) => place >= 0);
  const from = Math.max(0, Math.min(...places, text.length) - BEFORE);
  const start = places.length === 0 || from === 0 ? 0 : text.indexOf(' ', from) + 1;
  const part = text.slice(start, start + EXCERPT);
  const end = start + EXCERPT < text.length ? `${part.slice(0, part.lastIndexOf(' '))} …` : part;
  return start === 0 ? end : `… ${end}`;
}
