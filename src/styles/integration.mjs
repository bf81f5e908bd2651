/** After the build: one style sheet a page. The build makes one for the pages and one for the widgets, most of which the first holds too. */
import { createHash } from 'node:crypto';
import { readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const LINK = /<link rel="stylesheet" href="([^"]+)">/g;
/** The mark that a widget's own rules carry. */
const SCOPE = /\.svelte-[a-z0-9]+/g;

/** Characters of the hash in the sheet's name: it is kept for good under that name (our choice). */
const HASH_CHARACTERS = 8;

const scopesOf = (text) => new Set(text.match(SCOPE) ?? []);

/** The rules of a sheet, with an at-rule and all inside it as one. */
function rulesOf(text) {
  const rules = [];
  let [from, depth] = [0, 0];
  for (const { 0: brace, index } of text.matchAll(/[{}]/g)) {
    depth += brace === '{' ? 1 : -1;
    if (depth > 0) continue;
    rules.push(text.slice(from, index + 1));
    from = index + 1;
  }
  return rules;
}

/**
 * Leave one sheet in every page of a built site: that of the pages, and after it the rules of widgets that it lacks, those of parts that
 * the build of the pages never shows.
 * @param {string} folder
 */
export function leaveOneSheet(folder) {
  const pages = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.html'))
    .map((name) => join(folder, name));
  const linked = new Set(
    pages.flatMap((page) => [...readFileSync(page, 'utf8').matchAll(LINK)].map(([, at]) => at)),
  );
  const sheets = [...linked]
    .map((address) => {
      const file = join(folder, '_astro', basename(address));
      return { address, file, text: readFileSync(file, 'utf8') };
    })
    // The sheet of the pages is the longer one: it holds what all pages share besides.
    .sort((one, other) => other.text.length - one.text.length);
  const [whole, ...others] = sheets;
  const known = scopesOf(whole.text);
  const lacks = (rule) => [...scopesOf(rule)].some((scope) => !known.has(scope));
  const text = whole.text + others.flatMap((sheet) => rulesOf(sheet.text).filter(lacks)).join('');
  const hash = createHash('sha256').update(text).digest('hex').slice(0, HASH_CHARACTERS);
  const address = whole.address.replace(/[^/]+$/, `style.${hash}.css`);
  for (const { file } of sheets) rmSync(file);
  writeFileSync(join(folder, '_astro', basename(address)), text);
  for (const page of pages) {
    let first = true;
    const html = readFileSync(page, 'utf8').replaceAll(LINK, () => {
      const link = first ? `<link rel="stylesheet" href="${address}">` : '';
      first = false;
      return link;
    });
    writeFileSync(page, html);
  }
}

/** @returns {import('astro').AstroIntegration} */
export function oneSheet() {
  return {
    name: 'one-sheet',
    hooks: { 'astro:build:done': ({ dir }) => leaveOneSheet(fileURLToPath(dir)) },
  };
}
