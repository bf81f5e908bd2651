/** After the build: write the service worker with the list of every file that the build made. */
import { createHash } from 'node:crypto';
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Files that nobody needs offline: the worker itself, what hosts and search engines read, and the picture of the README. */
const LEFT_OUT = ['sw.js', '_headers', 'bench-picture.png', 'social-card.png'];

/** Characters of a file's hash that the worker compares: 64 bits, against another file and not against an enemy (our choice). */
const HASH_CHARACTERS = 16;

const hashOf = (content) => createHash('sha256').update(content).digest('hex').slice(0, HASH_CHARACTERS);

/**
 * Write the service worker of a folder that holds a built site.
 * @param {string} folder
 * @param {string} base where the site stands on its host, with a slash at both ends
 */
export function writeWorker(folder, base = '/') {
  const names = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(join(folder, sep).length).split(sep).join('/'))
    .filter((name) => !LEFT_OUT.includes(name))
    .sort();
  const files = Object.fromEntries(
    names.map((name) => [
      `${base}${name.replace(/(^|\/)index\.html$/, '$1')}`,
      hashOf(readFileSync(join(folder, name))),
    ]),
  );
  const text = readFileSync(new URL('./service-worker.js', import.meta.url), 'utf8');
  const list = JSON.stringify(files);
  writeFileSync(
    join(folder, 'sw.js'),
    `const FILES = ${list};\nconst FINGERPRINT = '${hashOf(list)}';\n${text}`,
  );
}

/** @returns {import('astro').AstroIntegration} */
export function offline() {
  let base = '/';
  return {
    name: 'offline',
    hooks: {
      'astro:config:done': ({ config }) => {
        base = config.base.replace(/\/?$/, '/');
      },
      'astro:build:done': ({ dir }) => writeWorker(fileURLToPath(dir), base),
    },
  };
}
