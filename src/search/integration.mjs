/** After the build: write what can be searched, section by section, from the pages as they were built. */
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { ELEMENT_NODE, TEXT_NODE, parse, walkSync } from 'ultrahtml';

/** Pages that nobody looks for. */
const LEFT_OUT = /^(404\.html|search\/|embed\/)/;

/** What of a page is no text to be found: code, drawings, controls, and what stands in each page alike. */
const UNREAD = new Set(['script', 'style', 'svg', 'template', 'nav', 'button', 'select', 'form', 'noscript']);
const HEADINGS = new Set(['h1', 'h2', 'h3']);
/** What stands within a line: no space comes after it. */
const INLINE = new Set(['a', 'abbr', 'code', 'em', 'i', 'small', 'span', 'strong', 'sub', 'sup']);

const childrenOf = (node) => node.children ?? [];
const plain = (text) =>
  text
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&nbsp;', ' ')
    .replaceAll('&amp;', '&');

function textOf(node) {
  if (node.type === TEXT_NODE) return node.value;
  if (node.type === ELEMENT_NODE && UNREAD.has(node.name)) return ' ';
  return childrenOf(node).map(textOf).join('');
}

/** The first node below `node` for which `test` holds. */
function found(node, test) {
  let hit;
  walkSync(node, (one) => {
    if (hit === undefined && one.type === ELEMENT_NODE && test(one)) hit = one;
  });
  return hit;
}

/**
 * The sections of a page, each from one heading to the next: where it is to be found, of which page, under which heading, and its text.
 * @param {string} html
 * @param {string} address address of the page from the root of the site
 */
export function sectionsOf(html, address) {
  const page = parse(html);
  const main = found(page, ({ name }) => name === 'main');
  if (main === undefined) throw new Error(`search: ${address}: expected a page with a main part, got none`);
  const title = found(main, ({ name }) => name === 'h1');
  const sections = [];
  const begin = (heading, id) => sections.push({ id, heading, text: '' });
  const read = (node, id, parent) => {
    if (node.type === TEXT_NODE) {
      const last = sections.at(-1);
      if (last !== undefined) last.text += node.value;
      return;
    }
    if (node.type !== ELEMENT_NODE || UNREAD.has(node.name)) return;
    const here = node.attributes.id ?? id;
    // A word of the glossary heads what is said of it.
    const isHeading = HEADINGS.has(node.name) || (node.name === 'dt' && parent.attributes.id !== undefined);
    if (isHeading) begin(textOf(node), here);
    else for (const child of childrenOf(node)) read(child, here, node);
    const last = sections.at(-1);
    if (last !== undefined && !INLINE.has(node.name)) last.text += ' ';
  };
  for (const child of childrenOf(main)) read(child, '', main);
  const tidy = (text) => plain(text).replace(/\s+/g, ' ').trim();
  return sections.map(({ id, heading, text }) => ({
    address: id === '' ? address : `${address}#${id}`,
    page: tidy(title === undefined ? '' : textOf(title)),
    heading: tidy(heading),
    text: tidy(text),
  }));
}

/** @returns {import('astro').AstroIntegration} */
export function search() {
  return {
    name: 'search',
    hooks: {
      'astro:build:done': ({ dir }) => {
        const folder = fileURLToPath(dir);
        const sections = readdirSync(folder, { recursive: true, encoding: 'utf8' })
          .map((name) => name.split(sep).join('/'))
          .filter((name) => name.endsWith('.html') && !LEFT_OUT.test(name))
          .sort()
          .flatMap((name) =>
            sectionsOf(
              readFileSync(join(folder, name), 'utf8'),
              `/${name.replace(/(^|\/)index\.html$/, '$1')}`,
            ),
          );
        writeFileSync(join(folder, 'sections.json'), JSON.stringify(sections));
      },
    },
  };
}
