/** The server of the built site: Vite's own preview (types, ETags, compression, the next free port) with our headers and addresses. */
import { createReadStream, existsSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { preview, type Connect, type PreviewServer } from 'vite';
import { headersOf } from '../../src/headers/integration.mjs';

/** The port that is tried first; when it is taken, the next one. */
const FIRST_PORT = 4321;

/** What to serve: a folder, where it stands on the host ('/' or '/course/loop/', as it was built), and the port to try first. */
interface ServeOptions {
  readonly folder: string;
  readonly base?: string;
  readonly firstPort?: number;
}

/** A running server. */
export interface Site {
  readonly address: string;
  readonly close: () => Promise<void>;
}

const isFile = (path: string): boolean => statSync(path, { throwIfNoEntry: false })?.isFile() ?? false;

/** Whether an address, as it came, is that of a page of the folder, with or without its last slash. */
function isPage(folder: string, path: string): boolean {
  try {
    return isFile(join(folder, decodeURIComponent(path), 'index.html'));
  } catch {
    return false;
  }
}

/** What stands before the files: headers, methods, and the addresses of pages. */
function before(folder: string, base: string): Connect.NextHandleFunction {
  return (request, response, next) => {
    const [asked = '/', search = ''] = (request.url ?? '/').split(/(?=\?)/, 2);
    // What stands beside the site's folder is not the site's.
    const path = asked.startsWith(base) ? asked.slice(base.length - 1) : '';
    for (const [name, value] of Object.entries(headersOf(path))) response.setHeader(name, value);
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      response.writeHead(405, { Allow: 'GET, HEAD' }).end();
      return;
    }
    request.url = path + search;
    if (path.endsWith('/')) request.url = `${path}index.html${search}`;
    else if ((path !== '' || `${asked}/` === base) && isPage(folder, path)) {
      response.writeHead(301, { Location: `${asked}/${search}` }).end();
      return;
    }
    next();
  };
}

/** What answers where there is no file. */
function missing(folder: string): Connect.NextHandleFunction {
  return (request, response) => {
    response.setHeader('Cache-Control', 'no-cache');
    response.writeHead(404, { 'Content-Type': 'text/html; charset=utf-8' });
    const page = join(folder, '404.html');
    if (request.method === 'HEAD' || !existsSync(page)) response.end();
    else createReadStream(page).pipe(response);
  };
}

/**
 * Serve a folder on localhost, on the first free port from `firstPort` on.
 * Throws when the folder holds no index.html.
 */
export async function serve({ folder, base = '/', firstPort = FIRST_PORT }: ServeOptions): Promise<Site> {
  const root = resolve(folder);
  if (!isFile(join(root, 'index.html'))) {
    throw new Error(`site '${root}': needs an index.html; run \`npm run build\` first`);
  }
  const addresses = {
    name: 'our-addresses',
    configurePreviewServer({ middlewares }: PreviewServer) {
      middlewares.use(before(root, base));
      return () => {
        middlewares.use(missing(root));
      };
    },
  };
  const server = await preview({
    root,
    configFile: false,
    envFile: false,
    appType: 'custom',
    logLevel: 'silent',
    plugins: [addresses],
    build: { outDir: '.' },
    preview: { host: 'localhost', port: firstPort, cors: false },
  });
  const bound = server.httpServer.address();
  if (bound === null || typeof bound === 'string')
    throw new Error(`site '${root}': needs a port, got ${bound ?? 'none'}`);
  return { address: `http://localhost:${bound.port}${base}`, close: () => server.close() };
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const folder = process.argv[2] ?? 'dist';
  serve({ folder, base: process.env['BASE_PATH'] ?? '/' }).then(
    ({ address }) => console.log(`Five Milliamps is at ${address} (stop it with Ctrl+C)`),
    (error: unknown) => {
      console.error(error instanceof Error ? error.message : error);
      process.exitCode = 1;
    },
  );
}
