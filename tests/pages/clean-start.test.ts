import { expect, test } from '../support/test.ts';

// Both in one worker and in this order: the second would find what the first left behind.
test.describe.configure({ mode: 'serial' });

test('a test leaves a store, a cookie, a permission, a route and an open page', async ({ page, context }) => {
  await page.goto('./meter/');
  await context.grantPermissions(['clipboard-read']);
  await context.route('**/sections.json', (route) => route.abort());
  await page.addInitScript(() => Object.assign(window, { left: true }));
  await (await context.newPage()).goto('./bench/');
  const kept = await page.evaluate(async () => {
    localStorage.setItem('five-milliamps bench', 'left');
    sessionStorage.setItem('left', 'left');
    document.cookie = 'left=left';
    await (await caches.open('left')).put('/left', new Response('left'));
    indexedDB.open('left');
    return [localStorage.length > 0, document.cookie];
  });
  expect(kept).toEqual([true, 'left=left']);
});

test('the next one finds none of them', async ({ page, context }) => {
  await page.goto('./meter/');
  expect(
    await page.evaluate(async () => ({
      local: localStorage.length,
      session: sessionStorage.length,
      cookie: document.cookie,
      caches: await caches.keys(),
      databases: await indexedDB.databases(),
      permission: (await navigator.permissions.query({ name: 'clipboard-read' as PermissionName })).state,
      route: (await fetch('../sections.json')).ok,
      script: 'left' in window,
    })),
  ).toEqual({
    local: 0,
    session: 0,
    cookie: '',
    caches: [],
    databases: [],
    permission: 'prompt',
    route: true,
    script: false,
  });
  expect(context.pages().filter((one) => one.url().includes('bench'))).toEqual([]);
});
