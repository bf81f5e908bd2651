/** The pages of the workbook by what a reader comes with: one list for the header, the front page and whatever else leads on. */
import { withBase } from '../parts/with-base.ts';

/** A page, or a group of pages. `main` pages stand in the header where there is room. */
interface PageLink {
  readonly address: string;
  readonly name: string;
  readonly main?: true;
}

/** Groups of pages, the four needs first. */
export const PAGE_GROUPS: readonly { readonly need: string; readonly pages: readonly PageLink[] }[] = [
  {
    need: 'Find the lead',
    pages: [
      { address: withBase('/'), name: 'Will they talk?' },
      { address: withBase('/bench/'), name: 'Bench', main: true },
      { address: withBase('/jack-finder/'), name: 'Jack finder', main: true },
      { address: withBase('/meter/'), name: 'Meter' },
    ],
  },
  {
    need: 'Make it, mend it',
    pages: [
      { address: withBase('/cable-sheet/'), name: 'Build sheet' },
      { address: withBase('/fault-bench/'), name: 'Find the fault', main: true },
      { address: withBase('/what-arrived/'), name: 'What arrived?' },
      { address: withBase('/in-time/'), name: 'Bytes on the wire' },
    ],
  },
  {
    need: 'Plan the board',
    pages: [{ address: withBase('/board/'), name: 'Board plan', main: true }],
  },
  {
    need: 'Learn, teach, look up',
    pages: [
      { address: withBase('/lessons/'), name: 'Lessons', main: true },
      { address: withBase('/practice/'), name: 'Practice', main: true },
      { address: withBase('/class/'), name: 'Class' },
      { address: withBase('/hand-in/'), name: 'Do class work' },
      { address: withBase('/mark/'), name: 'Mark class work' },
      { address: withBase('/teach/'), name: 'Teach' },
      { address: withBase('/quick-reference/'), name: 'Quick reference', main: true },
      { address: withBase('/search/'), name: 'Search' },
      { address: withBase('/glossary/'), name: 'Glossary' },
      { address: withBase('/sources/'), name: 'Sources' },
      { address: withBase('/safety/'), name: 'Safety' },
      { address: withBase('/kept/'), name: 'What is kept' },
    ],
  },
];
