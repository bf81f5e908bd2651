/** After the build: write the licence texts of all that is shipped, from the packages that the bundles were really made of. */
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const LICENCE_FILE = /^(licen[cs]e|copying)(\.(md|txt))?$/i;

/** Packages that are shipped without standing in a bundle: the script that wakes the widgets, which stands in each page. */
const ALWAYS = ['astro'];

/** The folder of the package that a file belongs to, or undefined for a file of our own. */
function packageFolder(file) {
  const path = file.replace(/^\0+/, '').replace(/\?.*$/, '').replaceAll('\\', '/');
  return /^((?:.*\/)?node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(path)?.[1];
}

/** Name, version, licence and its text. Throws where a package that is shipped has no licence text. */
function licenceOf(folder) {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const file = readdirSync(folder).find((one) => LICENCE_FILE.test(one));
  if (file === undefined)
    throw new Error(`licences: package '${name}' is shipped: expected a licence file in ${folder}, got none`);
  return { name, version, license, text: readFileSync(join(folder, file), 'utf8').trim() };
}

/** @returns {import('astro').AstroIntegration} */
export function licences() {
  const folders = new Set();
  let root = '';
  const collect = () => ({
    name: 'licences',
    generateBundle(_, bundle) {
      // Fonts come with the pages; of the code, what only makes the pages is not shipped.
      const isShipped = this.environment?.name !== 'prerender' && this.environment?.name !== 'ssr';
      for (const part of Object.values(bundle)) {
        const code = part.type === 'chunk' && isShipped ? Object.keys(part.modules) : [];
        const files = part.type === 'asset' ? (part.originalFileNames ?? []) : code;
        for (const file of files) {
          const folder = packageFolder(file);
          if (folder !== undefined) folders.add(resolve(root, folder));
        }
      }
    },
  });
  return {
    name: 'licences',
    hooks: {
      'astro:config:setup': ({ config, updateConfig }) => {
        root = fileURLToPath(config.root);
        updateConfig({
          vite: {
            plugins: [collect()],
            worker: { plugins: () => [collect()] },
          },
        });
      },
      'astro:build:done': ({ dir }) => {
        const all = [...folders, ...ALWAYS.map((name) => join(root, 'node_modules', name))].map(licenceOf);
        const byName = [...new Map(all.map((one) => [one.name, one])).values()].sort((one, other) =>
          one.name.localeCompare(other.name, 'en'),
        );
        const own = readFileSync(join(root, 'LICENSE'), 'utf8').trim();
        const texts = byName.map(
          ({ name, version, license, text }) => `${name} ${version} (${license})\n\n${text}`,
        );
        writeFileSync(
          join(fileURLToPath(dir), 'licences.txt'),
          `${[`Five Milliamps\n\n${own}`, 'It is shipped with these libraries and fonts:', ...texts].join(`\n\n${'-'.repeat(80)}\n\n`)}\n`,
        );
      },
    },
  };
}
