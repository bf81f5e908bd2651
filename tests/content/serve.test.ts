import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { serve, type Site } from '../support/serve.ts';

const parent = mkdtempSync(join(tmpdir(), 'five-milliamps-'));
const folder = join(parent, 'site');
let site: Site;

const ask = (path: string) => fetch(new URL(path, site.address), { redirect: 'manual' });

beforeAll(async () => {
  mkdirSync(join(folder, 'bench'), { recursive: true });
  writeFileSync(join(parent, 'secret.txt'), 'not for readers');
  writeFileSync(join(folder, 'index.html'), '<title>First</title>');
  writeFileSync(join(folder, '404.html'), '<title>No path</title>');
  writeFileSync(join(folder, 'theme.js'), '0;');
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
    expect([page.status, page.headers.get('content-type')]).toEqual([200, 'text/html; charset=utf-8']);
    expect(await page.text()).toContain('Bench');
    const script = await ask('/theme.js?x=1');
    expect([script.status, script.headers.get('content-type')]).toEqual([
      200,
      'text/javascript; charset=utf-8',
    ]);
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
