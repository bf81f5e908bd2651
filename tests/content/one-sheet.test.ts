/** One style sheet a page: what is left of a built folder, and what is refused. */
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
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

test('the sheet that holds the rules of every widget stays, alone', () => {
  const folder = folderOf('p{margin:0}.x.svelte-1a{top:0}.y.svelte-2b{top:0}', '.x.svelte-1a{top:0}');
  leaveOneSheet(folder);
  expect(readFileSync(join(folder, 'index.html'), 'utf8')).toBe(
    '<head><link rel="stylesheet" href="/at/_astro/style.a.css"></head>',
  );
  expect(existsSync(join(folder, '_astro', 'style.b.css'))).toBe(false);
});

test('of two sheets with the same widgets the one with the rules of the pages stays', () => {
  const folder = folderOf('p{margin:0}.x.svelte-1a{top:0}', '.x.svelte-1a{top:0}');
  leaveOneSheet(folder);
  expect(readFileSync(join(folder, 'index.html'), 'utf8')).toContain('style.a.css');
});

test('a widget whose rules only the other sheet holds is refused by name', () => {
  const folder = folderOf('.x.svelte-1a{top:0}.y.svelte-2b{top:0}', '.z.svelte-3c{top:0}');
  expect(() => leaveOneSheet(folder)).toThrow(
    'styles: expected the rules of every widget in /at/_astro/style.a.css, got .svelte-3c in /at/_astro/style.b.css alone',
  );
});
