/** A Set from wherever it comes: fetched when one is opened, for it brings every kind of task along. */
import { readSet, readSetCode, readSetText, setFromHash } from '../../src/core/class/index.ts';
import type { Reading, WorkSet } from '../../src/core/class/index.ts';

/** Where a Set comes from: a code as it was typed, the text of a file, the end of an address, or what was kept. */
export type SetSource =
  | { readonly from: 'code'; readonly text: string }
  | { readonly from: 'file'; readonly text: string }
  | { readonly from: 'address'; readonly text: string }
  | { readonly from: 'kept'; readonly value: unknown };

/** Open a Set. */
export async function openSet(source: SetSource): Promise<Reading<WorkSet>> {
  switch (source.from) {
    case 'code':
      return readSetCode(source.text);
    case 'file':
      return readSetText(source.text);
    case 'address':
      return (
        (await setFromHash(source.text)) ?? {
          ok: false,
          problems: [{ place: 'the address', expected: 'one that ends in #set= and a Set', got: 'none' }],
        }
      );
    case 'kept':
      return readSet(source.value);
  }
}
