/** All that the workbook keeps in this browser, as a reader may want to see, save and wipe it. */

/** How every name in the browser's store begins that is the workbook's. */
const OURS = /^five-milliamps[ .]/;

/** What stands under a name, in words, by the beginning of the name after the workbook's own. */
const WORDS: readonly (readonly [start: string, words: string])[] = [
  ['bench', 'The lead in hand: two jacks and the lead between them'],
  ['board', 'Your board plan'],
  ['jack finder', 'Readings of the jack finder'],
  ['record', 'What you practised: each answer, and the day'],
  ['class-set', 'For whoever teaches: the tasks that you chose for a class'],
  ['handed-in', 'For whoever teaches: what a class handed in, with names, to be marked'],
  ['what arrived', 'What was sent and seen, on the page What arrived?'],
  ['class-work', 'Class work that was done here: numbers, names and answers'],
  ['sheet', 'Choices of the build sheet'],
  ['proofs', 'Which leads were tested'],
  ['proof', 'The test of a lead'],
  ['told', 'What you told the front page'],
  ['site', 'The address that sheets are printed with'],
  ['paper', 'Light or dark'],
];

/** One thing that is kept: its name in the store, what it is, and how many characters it takes. */
export interface KeptThing {
  readonly name: string;
  readonly words: string;
  readonly characters: number;
}

/** Each thing that is kept, by name. Throws where the browser does not let its store be read. */
export function keptThings(): readonly KeptThing[] {
  return Object.keys(localStorage)
    .filter((name) => OURS.test(name))
    .sort()
    .map((name) => ({ name, words: sayThing(name), characters: localStorage.getItem(name)?.length ?? 0 }));
}

function sayThing(name: string): string {
  const own = name.replace(OURS, '');
  const words = WORDS.find(([start]) => own.startsWith(start))?.[1] ?? own;
  if (own.endsWith(' versions')) return `${words}: earlier versions`;
  return own.endsWith(' put aside') ? `${words}: what could not be read` : words;
}

/** All of it as the text of one file, JSON: what stands under each name. */
export function keptAsText(): string {
  const all = keptThings().map(({ name }) => [name, localStorage.getItem(name)] as const);
  return `${JSON.stringify({ format: 'five-milliamps-kept', version: 1, kept: Object.fromEntries(all) }, undefined, 2)}\n`;
}

/** Wipe what is kept, and the pages that are stored for use without a network. The site fetches these again when it is next opened. */
export async function wipeKept(): Promise<void> {
  for (const { name } of keptThings()) localStorage.removeItem(name);
  for (const name of await caches.keys()) if (OURS.test(name)) await caches.delete(name);
  for (const one of (await navigator.serviceWorker?.getRegistrations()) ?? [])
    if (location.href.startsWith(one.scope)) await one.unregister();
}
