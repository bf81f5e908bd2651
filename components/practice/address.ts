/** A task in an address: '#task=lay-lead.2.7F3K', on the practice page and on the page of each tool. */
import { withBase } from '../parts/with-base.ts';

/** The task that an address names, or null. */
export function taskInHash(hash: string): string | null {
  return new URLSearchParams(hash.slice(1)).get('task');
}

/** The address of a task on a page. */
export function taskAddress(page: `/${string}`, task: string): string {
  return withBase(`${page}#task=${task}`);
}
