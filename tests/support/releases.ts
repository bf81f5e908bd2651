/** Two releases of the site at one address, as a plain host serves them: pages may be kept by the browser for ten minutes. */
import { cpSync, mkdtempSync, readFileSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import { writeWorker } from '../../src/offline/integration.mjs';
import { SITE_BASE } from './site.ts';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.json': 'application/json',
  '.woff2': 'font/woff2',
};

/** Scripts and styles, whose names hold a hash; and files whose text may name them. */
const NAMED = /\.(js|css)$/;
const NAMING = /\.(html|js|css)$/;

/**
 * A later release of a built site, in a folder of its own: every script and style has another name, and no page knows the old ones.
 * Each of its pages says 'next' as the name of its release.
 */
export function nextRelease(folder: string): string {
  const next = mkdtempSync(join(tmpdir(), 'five-milliamps-next-'));
  cpSync(folder, next, { recursive: true });
  const assets = join(next, '_astro');
  const names = readdirSync(assets).filter((name) => NAMED.test(name));
  const renamed = new Map(names.map((name) => [name, name.replace(/(\.\w+)$/, '_next$1')]));
  const any = new RegExp(names.map((name) => name.replaceAll('.', '\\.')).join('|'), 'g');
  for (const entry of readdirSync(next, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile() || !NAMING.test(entry.name)) continue;
    const file = join(entry.parentPath, entry.name);
    const text = readFileSync(file, 'utf8').replace(any, (name) => renamed.get(name) ?? name);
    writeFileSync(file, text.replace('<head>', '<head><meta name="release" content="next">'));
  }
  for (const [name, other] of renamed) renameSync(join(assets, name), join(assets, other));
  writeWorker(next, SITE_BASE);
  return next;
}

/** A host of one release at a time. */
interface Host {
  readonly address: string;
  /** Serve another folder from now on. */
  readonly release: (folder: string) => void;
  readonly close: () => Promise<void>;
}

/** Serve a folder on localhost: pages for ten minutes, files with a hash in their name for ever, no other header. */
export async function host(first: string): Promise<Host> {
  let folder = first;
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://localhost');
    const name = pathname.slice(SITE_BASE.length - 1);
    const file = join(folder, name.endsWith('/') ? `${name}index.html` : name);
    try {
      const content = readFileSync(file);
      const forEver = name.startsWith('/_astro/');
      response.writeHead(200, {
        'Content-Type': TYPES[extname(file)] ?? 'text/plain',
        'Cache-Control': forEver ? 'max-age=31536000, immutable' : 'max-age=600',
      });
      response.end(content);
    } catch {
      response.writeHead(404, { 'Content-Type': 'text/html' }).end('<title>404</title>');
    }
  });
  await new Promise<void>((done) => server.listen(0, 'localhost', done));
  const bound = server.address();
  if (bound === null || typeof bound === 'string')
    throw new Error(`host: needs a port, got ${String(bound)}`);
  return {
    address: `http://localhost:${bound.port}${SITE_BASE.slice(0, -1)}`,
    release: (next) => (folder = next),
    close: async () => {
      server.closeAllConnections();
      await new Promise((done) => server.close(done));
    },
  };
}

/** Let a release go that was made for a test. */
export function dropRelease(folder: string): void {
  rmSync(folder, { recursive: true, force: true });
}
