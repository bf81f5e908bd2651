/** After the build: write the service worker with the list of every file that the build made. */
import { createHash } from 'node:crypto';
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Files that nobody needs offline: the worker itself, and the picture of the README. */
const LEFT_OUT = ['sw.js', 'bench-picture.png'];

/** @returns {import('astro').AstroIntegration} */
export function offline() {
  return {
    name: 'offline',
    hooks: {
      'astro:build:done': ({ dir }) => {
        const folder = fileURLToPath(dir);
        const files = readdirSync(folder, { recursive: true, withFileTypes: true })
          .filter((entry) => entry.isFile())
          .map((entry) => join(entry.parentPath, entry.name).slice(folder.length).split(sep).join('/'))
          .filter((name) => !LEFT_OUT.includes(name))
          .sort();
        const hash = createHash('sha256');
        for (const name of files) hash.update(name).update(readFileSync(join(folder, name)));
        const addresses = files.map((name) => `/${name.replace(/(^|\/)index\.html$/, '$1')}`);
        const text = readFileSync(new URL('./service-worker.js', import.meta.url), 'utf8');
        writeFileSync(
          join(folder, 'sw.js'),
          `const FILES = ${JSON.stringify(addresses)};\nconst FINGERPRINT = '${hash.digest('hex').slice(0, 16)}';\n${text}`,
        );
      },
    },
  };
}
