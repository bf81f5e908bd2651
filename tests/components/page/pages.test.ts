/** The list of pages, held to the pages that there are. */
import { existsSync, readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { PAGE_GROUPS } from '../../../components/page/pages.ts';

const listed = PAGE_GROUPS.flatMap(({ pages }) => pages);

test('Every page of the list is there, each once and with a name of its own', () => {
  for (const { address } of listed) {
    const name = address.replace(/^\/|\/$/g, '') || 'index';
    const files = [`src/pages/${name}.astro`, `src/pages/${name}/index.astro`];
    expect(files.some(existsSync), address).toBe(true);
  }
  for (const key of ['address', 'name'] as const)
    expect(new Set(listed.map((page) => page[key])).size).toBe(listed.length);
});

test('Every page that is no lesson and no part of another can be reached from the list', () => {
  const pages = readdirSync('src/pages')
    .filter((file) => file.endsWith('.astro') && file !== '404.astro')
    .map((file) => `/${file.replace(/\.astro$/, '/')}`.replace('/index/', '/'));
  // The pocket card is a sheet of the quick reference.
  const missing = pages.filter((page) => !listed.some(({ address }) => address === page));
  expect(missing).toEqual(['/pocket-card/']);
});
