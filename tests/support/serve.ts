import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { extname, join, resolve, sep } from 'node:path';
import { pathToFileURL } from 'node:url';

/** The port that is tried first. */
const FIRST_PORT = 4321;

/** How many ports are tried, one after the other, before giving up. */
const PORTS_TRIED = 50;

const TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.webmanifest': 'application/manifest+json',
  '.woff2': 'font/woff2',
  '.xml': 'application/xml; charset=utf-8',
};

/** Headers of every answer. The rest of the content policy stands in each page; frame-ancestors works only as a header. */
const HEADERS: Readonly<Record<string, string>> = {
  'Content-Security-Policy': "frame-ancestors 'none'",
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Referrer-Policy': 'no-referrer',
  'X-Content-Type-Options': 'nosniff',
};

/** What to serve: a folder, and the port to try first (0 for any free one). */
export interface ServeOptions {
  readonly folder: string;
  readonly firstPort?: number;
}

/** A running server. */
export interface Site {
  readonly address: string;
  readonly close: () => Promise<void>;
}

/** Files whose name holds a hash of their content never change; all others are asked for again. */
function cacheControl(path: string): string {
  return path.includes(`${sep}_astro${sep}`) ? 'public, max-age=31536000, immutable' : 'no-cache';
}

async function isFile(path: string): Promise<boolean> {
  return stat(path).then(
    (found) => found.isFile(),
    () => false,
  );
}

/** The path part of an address, decoded; undefined when it cannot be decoded. */
function pathOf(address: string): string | undefined {
  try {
    return decodeURIComponent(new URL(address, 'http://localhost').pathname);
  } catch {
    return undefined;
  }
}

function send(request: IncomingMessage, response: ServerResponse, status: number, path: string): void {
  response.writeHead(status, {
    ...HEADERS,
    'Content-Type': TYPES[extname(path)] ?? 'application/octet-stream',
    'Cache-Control': cacheControl(path),
  });
  if (request.method === 'HEAD') {
    response.end();
    return;
  }
  createReadStream(path)
    .on('error', () => response.destroy())
    .pipe(response);
}

async function answer(folder: string, request: IncomingMessage, response: ServerResponse): Promise<void> {
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    response.writeHead(405, { ...HEADERS, Allow: 'GET, HEAD' }).end();
    return;
  }
  const asked = pathOf(request.url ?? '/');
  const path = asked === undefined ? undefined : resolve(folder, `.${asked}`);
  const inside = path !== undefined && (path === folder || path.startsWith(folder + sep));
  if (asked !== undefined && inside && !asked.includes('\0')) {
    if (!asked.endsWith('/') && (await isFile(path))) return send(request, response, 200, path);
    const page = join(path, 'index.html');
    if (await isFile(page)) {
      if (asked.endsWith('/')) return send(request, response, 200, page);
      const { search } = new URL(request.url ?? '/', 'http://localhost');
      response.writeHead(301, { ...HEADERS, Location: `${encodeURI(asked)}/${search}` }).end();
      return;
    }
  }
  const missing = join(folder, '404.html');
  if (await isFile(missing)) return send(request, response, 404, missing);
  response.writeHead(404, { ...HEADERS, 'Content-Type': 'text/plain; charset=utf-8' }).end('Not found\n');
}

function listen(server: Server, port: number): Promise<void> {
  return new Promise((done, failed) => {
    server.once('error', failed);
    server.listen(port, 'localhost', () => {
      server.off('error', failed);
      done();
    });
  });
}

/**
 * Serve a folder on localhost, on the first free port from `firstPort` on.
 * Throws when the folder holds no index.html, or when no port is free.
 */
export async function serve({ folder, firstPort = FIRST_PORT }: ServeOptions): Promise<Site> {
  const root = resolve(folder);
  if (!(await isFile(join(root, 'index.html')))) {
    throw new Error(`site '${root}': needs an index.html; run \`npm run build\` first`);
  }
  const server = createServer((request, response) => {
    answer(root, request, response).catch(() => response.destroy());
  });
  for (let port = firstPort; port < firstPort + PORTS_TRIED; port += 1) {
    try {
      await listen(server, port);
    } catch (error) {
      if (error instanceof Error && 'code' in error && error.code === 'EADDRINUSE') continue;
      throw error;
    }
    const bound = server.address();
    if (bound === null || typeof bound === 'string')
      throw new Error(`site '${root}': needs a port, got none`);
    return {
      address: `http://localhost:${bound.port}/`,
      close: () =>
        new Promise((done) => {
          server.close(() => done());
          server.closeAllConnections();
        }),
    };
  }
  throw new Error(
    `site '${root}': needs a free port from ${firstPort} to ${firstPort + PORTS_TRIED - 1}, got none`,
  );
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const folder = process.argv[2] ?? 'dist';
  serve({ folder }).then(
    ({ address }) => console.log(`Five Milliamps is at ${address} (stop it with Ctrl+C)`),
    (error: unknown) => {
      console.error(error instanceof Error ? error.message : error);
      process.exitCode = 1;
    },
  );
}
