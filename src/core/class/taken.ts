/** What was taken in to be marked, as JSON holds it: several pieces of work in one file. It is as light as a page that only keeps it. */
import { fieldsOf } from '../plan/index.ts';
import type { Problem } from '../plan/index.ts';
import type { Result } from './result.ts';
import type { Reading } from './reading.ts';

/** One thing that was handed in: where it came from, in words, and what could be read. */
export interface HandedIn {
  readonly source: string;
  readonly reading: Reading<Result>;
}

/** The same as it is kept: work as JSON holds it, to be read again by who marks it, or why there was none. */
export type Taken =
  | { readonly source: string; readonly result: unknown }
  | { readonly source: string; readonly problems: readonly Problem[] };

/** The format of a file of several pieces of work, and its version. */
const FORMAT = 'five-milliamps-results';
const VERSION = 1;

/** One thing that was handed in, as it is kept. */
export function takenOf({ source, reading }: HandedIn): Taken {
  return reading.ok ? { source, result: reading.value } : { source, problems: reading.problems };
}

/** Several pieces of work as JSON holds them, for a file or a store. */
export function takenFile(results: readonly Taken[]): object {
  return { format: FORMAT, version: VERSION, results };
}

/** What a parsed file of several pieces of work holds, and how much of it is not whole; undefined where it is no such file. */
export function takenIn(
  file: unknown,
): { readonly taken: readonly Taken[]; readonly spoiled: number } | undefined {
  const fields = fieldsOf(file);
  const results = fields?.['results'];
  if (fields?.['format'] !== FORMAT || fields['version'] !== VERSION || !Array.isArray(results))
    return undefined;
  const taken = results.flatMap((one: unknown): Taken[] => {
    const { source, result, problems } = fieldsOf(one) ?? {};
    if (typeof source !== 'string') return [];
    if (result !== undefined) return [{ source, result }];
    return Array.isArray(problems) && problems.every(isProblem) ? [{ source, problems }] : [];
  });
  return { taken, spoiled: results.length - taken.length };
}

function isProblem(value: unknown): value is Problem {
  const fields = fieldsOf(value);
  return ['place', 'expected', 'got'].every((name) => typeof fields?.[name] === 'string');
}
