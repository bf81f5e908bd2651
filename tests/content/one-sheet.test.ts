/** One style sheet a page: what is left of a built folder. */
import { mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { leaveOneSheet } from '../../src/styles/integration.mjs';

const made: string[] = [];
afterEach(() => made.splice(0).forEach((folder) => rmSync(folder, { recursive: true })));

/** A built folder with one page that links both sheets. */
function folderOf(pages: string, widgets: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'one-sheet-'));
  made.push(folder);
  mkdirSync(join(folder, '_astro'));
  writeFileSync(join(folder, '_astro', 'style.a.css'), pages);
  writeFileSync(join(folder, '_astro', 'style.b.css'), widgets);
  const links = ['b', 'a'].map((name) => `<link rel="stylesheet" href="/at/_astro/style.${name}.css">`);
  writeFileSync(join(folder, 'index.html'), `<head>${links.join('')}</head>`);
  return folder;
}

/** The one sheet that a page of a folder links, as text. Throws where it links none or several. */
function sheetOf(folder: string): string {
  const links = [
    ...readFileSync(join(folder, 'index.html'), 'utf8').matchAll(/href="\/at\/(_astro\/[^"]+)"/g),
  ];
  expect(links).toHaveLength(1);
  return readFileSync(join(folder, links[0]?.[1] ?? ''), 'utf8');
}

test('the sheet of the pages stays alone where it holds the rules of every widget', () => {
  const folder = folderOf('p{margin:0}.x.svelte-1a{top:0}', '.x.svelte-1a{top:0}');
  leaveOneSheet(folder);
  expect(sheetOf(folder)).toBe('p{margin:0}.x.svelte-1a{top:0}');
  expect(readdirSync(join(folder, '_astro'))).toHaveLength(1);
});

test('what only the sheet of the widgets holds comes after it, whole', () => {
  const folder = folderOf(
    'p{margin:0}a{margin:0}b{margin:0}i{margin:0}.x.svelte-1a{top:0}',
    '.x.svelte-1a{top:0}@media print{.z.svelte-3c{top:0}}',
  );
  leaveOneSheet(folder);
  expect(sheetOf(folder)).toBe(
    'p{margin:0}a{margin:0}b{margin:0}i{margin:0}.x.svelte-1a{top:0}@media print{.z.svelte-3c{top:0}}',
  );
});

test('another text gets another name, since a name is kept for good', () => {
  const names = ['1', '2'].map((top) => {
    const folder = folderOf('p{margin:0}a{margin:0}', `.z.svelte-3c{top:${top}}`);
    leaveOneSheet(folder);
    return readdirSync(join(folder, '_astro'))[0];
  });
  expect(names[0]).not.toBe(names[1]);
});
