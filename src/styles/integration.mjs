/** After the build: one style sheet a page. The build makes one for the pages and one for the widgets, which the first holds too. */
import { readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const LINK = /<link rel="stylesheet" href="([^"]+)">/g;
/** The mark that a widget's own rules carry. */
const SCOPE = /\.svelte-[a-z0-9]+/g;

const scopesOf = (text) => new Set(text.match(SCOPE) ?? []);

/**
 * Take the sheet of the widgets out of every page of a built site.
 * Throws where it holds rules of a widget that the sheet of the pages lacks: those of a part that only an action fetches, which the
 * build of the pages leaves out. Such a part takes its rules from `src/styles/`.
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
      const text = readFileSync(file, 'utf8');
      return { address, file, bytes: text.length, scopes: scopesOf(text) };
    })
    .sort((one, other) => other.bytes - one.bytes);
  // The sheet of the pages is the longer one: it holds what all pages share besides.
  const [whole, ...others] = sheets;
  for (const { address, file, scopes } of others) {
    const missing = [...scopes].filter((scope) => !whole.scopes.has(scope));
    if (missing.length > 0)
      throw new Error(
        `styles: expected the rules of every widget in ${whole.address}, got ${missing.join(', ')} in ${address} alone`,
      );
    for (const page of pages)
      writeFileSync(
        page,
        readFileSync(page, 'utf8').replaceAll(`<link rel="stylesheet" href="${address}">`, ''),
      );
    rmSync(file);
  }
}

/** @returns {import('astro').AstroIntegration} */
export function oneSheet() {
  return {
    name: 'one-sheet',
    hooks: { 'astro:build:done': ({ dir }) => leaveOneSheet(fileURLToPath(dir)) },
  };
}
