import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { request } from 'node:http';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { serve, type Site } from '../support/serve.ts';

const parent = mkdtempSync(join(tmpdir(), 'five-milliamps-'));
const folder = join(parent, 'site');
/** Long enough that packing it pays. */
const LONG = 'await 0;\n'.repeat(1000);
let site: Site;

const ask = (path: string) => fetch(new URL(path, site.address), { redirect: 'manual' });

beforeAll(async () => {
  mkdirSync(join(folder, 'bench'), { recursive: true });
  writeFileSync(join(parent, 'secret.txt'), 'not for readers');
  writeFileSync(join(folder, 'index.html'), '<title>First</title>');
  writeFileSync(join(folder, '404.html'), '<title>No path</title>');
  writeFileSync(join(folder, 'theme.js'), '0;');
  mkdirSync(join(folder, '_astro'));
  writeFileSync(join(folder, '_astro', 'long.D4f5.js'), LONG);
  writeFileSync(join(folder, 'bench', 'index.html'), '<title>Bench</title>');
  site = await serve({ folder });
});

afterAll(async () => {
  await site.close();
  rmSync(parent, { recursive: true });
});

describe('The server of the built site', () => {
  test('serves pages and files with their types', async () => {
    const page = await ask('/bench/');
    expect([page.status, page.headers.get('content-type')]).toEqual([200, 'text/html;charset=utf-8']);
    expect(await page.text()).toContain('Bench');
    const script = await ask('/theme.js?x=1');
    expect([script.status, script.headers.get('content-type')]).toEqual([200, 'text/javascript']);
    expect(script.headers.get('x-content-type-options')).toBe('nosniff');
  });

  test('sends an address without its last slash on to the page', async () => {
    const answer = await ask('/bench?work=1');
    expect([answer.status, answer.headers.get('location')]).toEqual([301, '/bench/?work=1']);
  });

  test('answers with the 404 page where there is nothing', async () => {
    const answer = await ask('/nowhere/');
    expect(answer.status).toBe(404);
    expect(await answer.text()).toContain('No path');
  });

  test.each(['/..%2fsecret.txt', '/%2e%2e/secret.txt', '/%', '/%00'])(
    'gives nothing away for %s',
    async (path) => {
      const answer = await ask(path);
      expect(answer.status).toBe(404);
      expect(await answer.text()).not.toContain('not for readers');
    },
  );

  test('packs what is long for whoever can unpack it, and nobody else', async () => {
    const asked = (encoding: string) =>
      new Promise<{ encoding: string | undefined; bytes: number }>((done, failed) => {
        request(new URL('/_astro/long.D4f5.js', site.address), { headers: { 'accept-encoding': encoding } })
          .on('response', (answer) => {
            let bytes = 0;
            answer
              .on('data', (chunk: Buffer) => (bytes += chunk.length))
              .on('end', () => done({ encoding: answer.headers['content-encoding'], bytes }));
          })
          .on('error', failed)
          .end();
      });
    const packed = await asked('gzip');
    expect(packed.encoding).toBe('gzip');
    expect(packed.bytes).toBeLessThan(LONG.length / 10);
    expect(await asked('identity')).toEqual({ encoding: undefined, bytes: LONG.length });
    expect(await (await ask('/_astro/long.D4f5.js')).text()).toBe(LONG);
  });

  test('lets files named by their content be kept for ever, and has all others asked for again', async () => {
    const kept = await ask('/_astro/long.D4f5.js');
    expect(kept.headers.get('cache-control')).toBe('public, max-age=31536000, immutable');
    for (const path of ['/', '/theme.js', '/nowhere/'])
      expect((await ask(path)).headers.get('cache-control'), path).toBe('no-cache');
  });

  test('gives every answer its headers: pages, files, redirects, refusals and what is missing', async () => {
    for (const path of ['/', '/theme.js', '/bench', '/nowhere/']) {
      const { headers } = await ask(path);
      expect(headers.get('content-security-policy'), path).toBe("frame-ancestors 'none'");
      expect(headers.get('cross-origin-opener-policy'), path).toBe('same-origin');
      expect(headers.get('referrer-policy'), path).toBe('no-referrer');
      expect(headers.get('access-control-allow-origin'), path).toBeNull();
    }
  });

  test('answers HEAD without a body and refuses what would change something', async () => {
    const head = await fetch(new URL('/bench/', site.address), { method: 'HEAD' });
    expect([head.status, await head.text()]).toEqual([200, '']);
    const nowhere = await fetch(new URL('/nowhere/', site.address), { method: 'HEAD' });
    expect([nowhere.status, await nowhere.text()]).toEqual([404, '']);
    const post = await fetch(new URL('/bench/', site.address), { method: 'POST', body: 'x' });
    expect([post.status, post.headers.get('allow'), post.headers.get('x-content-type-options')]).toEqual([
      405,
      'GET, HEAD',
      'nosniff',
    ]);
  });

  test('takes the next port when the first is taken', async () => {
    const port = Number(new URL(site.address).port);
    const other = await serve({ folder, firstPort: port });
    expect(Number(new URL(other.address).port)).toBeGreaterThan(port);
    await other.close();
  });

  test('says what to do when the site is not built', async () => {
    await expect(serve({ folder: parent })).rejects.toThrow('needs an index.html; run `npm run build` first');
  });
});
