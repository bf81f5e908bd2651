/** The pages of the workbook by what a reader comes with: one list for the header, the front page and whatever else leads on. */

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
      { address: '/', name: 'Will they talk?' },
      { address: '/bench/', name: 'Bench', main: true },
      { address: '/jack-finder/', name: 'Jack finder', main: true },
      { address: '/meter/', name: 'Meter' },
    ],
  },
  {
    need: 'Make it, mend it',
    pages: [
      { address: '/cable-sheet/', name: 'Build sheet' },
      { address: '/fault-bench/', name: 'Find the fault', main: true },
      { address: '/in-time/', name: 'Bytes on the wire' },
    ],
  },
  {
    need: 'Plan the board',
    pages: [{ address: '/board/', name: 'Board plan', main: true }],
  },
  {
    need: 'Learn, teach, look up',
    pages: [
      { address: '/lessons/', name: 'Lessons', main: true },
      { address: '/practice/', name: 'Practice', main: true },
      { address: '/quick-reference/', name: 'Quick reference', main: true },
      { address: '/glossary/', name: 'Glossary' },
      { address: '/sources/', name: 'Sources' },
      { address: '/safety/', name: 'Safety' },
    ],
  },
];
