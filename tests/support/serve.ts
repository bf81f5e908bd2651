/** The server of the built site: Vite's own preview (types, ETags, compression, the next free port) with our headers and addresses. */
import { createReadStream, existsSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { preview, type Connect, type PreviewServer } from 'vite';

/** The port that is tried first; when it is taken, the next one. */
const FIRST_PORT = 4321;

/** Headers of every answer. The rest of the content policy stands in each page; frame-ancestors works only as a header. */
const HEADERS: Readonly<Record<string, string>> = {
  'Content-Security-Policy': "frame-ancestors 'none'",
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Referrer-Policy': 'no-referrer',
  'X-Content-Type-Options': 'nosniff',
};

/** What to serve: a folder, and the port to try first. */
interface ServeOptions {
  readonly folder: string;
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
function before(folder: string): Connect.NextHandleFunction {
  return (request, response, next) => {
    for (const [name, value] of Object.entries(HEADERS)) response.setHeader(name, value);
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      response.writeHead(405, { Allow: 'GET, HEAD' }).end();
      return;
    }
    const [path = '/', search] = (request.url ?? '/').split(/(?=\?)/, 2);
    // A file whose name holds a hash of its content never changes; all others are asked for again.
    if (path.startsWith('/_astro/'))
      response.setHeader('Cache-Control', 'public, max-age=31536000, immutable');
    if (path.endsWith('/')) request.url = `${path}index.html`;
    else if (isPage(folder, path)) {
      response.writeHead(301, { Location: `${path}/${search ?? ''}` }).end();
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
export async function serve({ folder, firstPort = FIRST_PORT }: ServeOptions): Promise<Site> {
  const root = resolve(folder);
  if (!isFile(join(root, 'index.html'))) {
    throw new Error(`site '${root}': needs an index.html; run \`npm run build\` first`);
  }
  const addresses = {
    name: 'our-addresses',
    configurePreviewServer({ middlewares }: PreviewServer) {
      middlewares.use(before(root));
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
  return { address: `http://localhost:${bound.port}/`, close: () => server.close() };
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
