/** What stands in files and texts that were handed in: fetched when something has come, for it brings every kind of task along. */
import { resultsIn } from '../../src/core/class/index.ts';
import type { HandedIn } from '../../src/core/class/index.ts';
import { textOf } from '../../src/core/plan/index.ts';
import type { Named } from './files.ts';

/** Largest file that is read, bytes: a result takes some thousands. */
const MOST_BYTES = 2_000_000;

/** What stands in a file: a result, several links, or the reason why there is nothing. */
export async function readNamed({ name, file }: Named): Promise<readonly HandedIn[]> {
  const refused = (expected: string, got: string): readonly HandedIn[] => [
    { source: name, reading: { ok: false, problems: [{ place: 'the file', expected, got }] } },
  ];
  if (file.size > MOST_BYTES) return refused(`at most ${MOST_BYTES} bytes`, `${file.size} bytes`);
  try {
    return await resultsIn(name, textOf(new Uint8Array(await file.arrayBuffer())));
  } catch (error) {
    return refused('a file that can be read', error instanceof Error ? error.message : String(error));
  }
}

/** What stands in a text that was pasted, scanned or opened. */
export const readText = (source: string, text: string): Promise<readonly HandedIn[]> =>
  resultsIn(source, text);
