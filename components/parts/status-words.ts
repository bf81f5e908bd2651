/** How far a value can be trusted, in the words of the page of sources instead of a mark. */
import type { Status } from '../../src/core/wiring/index.ts';

/** One for each mark; content/reference/statuses.json holds the same words with their meaning. */
export const STATUS_WORDS: Readonly<Record<Status, string>> = {
  C: 'read in the document itself',
  c: 'read second-hand',
  D: 'worked out here',
  M: 'from memory',
  P: 'common practice, no source',
};

/** A status and where the value comes from, as one phrase; said once where both say the same. */
export function statusAndSource(status: Status, source: string): string {
  const words = STATUS_WORDS[status];
  return source === words ? words : `${source} (${words})`;
}
