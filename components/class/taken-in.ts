/** What stands in files and texts that were handed in: fetched when something has come, for it brings every kind of task along. */
import { CLASS_LIMITS, resultsIn } from '../../src/core/class/index.ts';
import type { HandedIn } from '../../src/core/class/index.ts';
import { textOf } from '../../src/core/plan/index.ts';
import type { Named } from './files.ts';
import { sayError } from '../parts/say-error.ts';

/** What stands in a file: a result, several links, or the reason why there is nothing. */
export async function readNamed({ name, file }: Named): Promise<readonly HandedIn[]> {
  const refused = (expected: string, got: string): readonly HandedIn[] => [
    { source: name, reading: { ok: false, problems: [{ place: 'the file', expected, got }] } },
  ];
  if (file.size > CLASS_LIMITS.file)
    return refused(`at most ${CLASS_LIMITS.file} bytes`, `${file.size} bytes`);
  try {
    return await resultsIn(name, textOf(new Uint8Array(await file.arrayBuffer())));
  } catch (error) {
    return refused('a file that can be read', sayError(error));
  }
}

/** Characters of a strange text that its refusal repeats. */
const MOST_REPEATED = 30;

/** What stands in a text that was pasted, scanned or opened: links to work, or the whole text of its file. */
export async function readText(source: string, text: string): Promise<readonly HandedIn[]> {
  if (text.includes('#result=') || text.includes('{')) return resultsIn(source, text);
  const repeated = text.trim().slice(0, MOST_REPEATED);
  const got = repeated.length < text.trim().length ? `'${repeated} …'` : `'${repeated}'`;
  const expected = 'a link to work that was handed in';
  return [{ source, reading: { ok: false, problems: [{ place: 'the text', expected, got }] } }];
}
