/** Results out of whatever was handed in: files of one or of several, links, and what was taken in before. */
import { readJson } from './reading.ts';
import { readResult, readResultLink } from './result.ts';
import { takenIn } from './taken.ts';
import type { HandedIn, Taken } from './taken.ts';

/** What was taken in, read; the work in it is read as if it had just come. */
export function handedInOf(taken: Taken): HandedIn {
  const { source } = taken;
  return {
    source,
    reading: 'result' in taken ? readResult(taken.result) : { ok: false, problems: taken.problems },
  };
}

/** Results in a text: a file of one or of several, or any text with links in it, each of them one. Never throws. */
export async function resultsIn(source: string, text: string): Promise<readonly HandedIn[]> {
  const links = [...text.matchAll(/#result=([\w-]*)/g)];
  if (links.length === 0 || /^\s*\uFEFF?\{/.test(text)) return severalIn(source, text);
  return Promise.all(
    links.map(async ([, packed = ''], at) => ({
      source: links.length === 1 ? source : `${source}, link ${at + 1}`,
      reading: await readResultLink(packed),
    })),
  );
}

/** Results in the text of a file: several, or one. */
function severalIn(source: string, text: string): readonly HandedIn[] {
  const file = readJson(text);
  const several = file.ok ? takenIn(file.value) : undefined;
  if (!file.ok) return [{ source, reading: file }];
  if (!several) return [{ source, reading: readResult(file.value) }];
  const problem = {
    place: 'results',
    expected: 'work that was handed in',
    got: `${several.spoiled} that are none`,
  };
  const lost: readonly Taken[] = several.spoiled > 0 ? [{ source, problems: [problem] }] : [];
  return [...several.taken, ...lost].map(handedInOf);
}
