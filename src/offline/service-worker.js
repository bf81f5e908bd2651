/**
 * Keeps every file of one release of the site on the reader's device, so that it works with the network off after the first
 * visit, and so that a page never meets the parts of another release. The build puts in front of this text FINGERPRINT, which
 * names the release, and FILES: the address of each file, with the beginning of its SHA-256 in hexadecimal.
 */
/* global FILES, FINGERPRINT */

/** Where this site stands on its host: another one may stand in another folder there. */
const BASE = new URL('./', location.href).pathname;
const PREFIX = `five-milliamps ${BASE} `;
const STORE = PREFIX + FINGERPRINT;

/** What a page shows that is neither kept nor to be had. */
const AWAY =
  '<!doctype html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width">' +
  '<title>You are offline</title><h1>You are offline</h1>' +
  '<p>This page is not kept on this device. Go back, or open it again when you are online.</p></html>';

/** So many files are fetched at once: the reader is at work meanwhile (our choice). */
const AT_ONCE = 4;

/** Without its scripts and styles no page is whole; pages, fonts and all else may come later, one by one. */
const isNeeded = (address) => /\.(js|css)$/.test(address);

/** A name that holds a hash of the content: what an older release kept under it may be taken over. */
const isNamedByContent = (address) => address.startsWith(`${BASE}_astro/`);

async function digestOf(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** Put an answer into the store if it is the file of this release, whole. Says whether it is. */
async function keep(store, address, answer) {
  if (!answer.ok) return false;
  const bytes = await answer.arrayBuffer();
  if (!(await digestOf(bytes)).startsWith(FILES[address])) return false;
  // An answer that came by another address cannot be given to a page that asks for this one, so it is made anew.
  await store.put(address, new Response(bytes, { headers: answer.headers }));
  return true;
}

/** Fetch a file past the cache of the browser, and keep it if it is that of this release. The answer is handed back anyhow. */
async function fetchAnew(store, address) {
  const answer = await fetch(address, { cache: 'reload' });
  await keep(store, address, answer.clone());
  // A page may not be answered with what came by another address.
  return answer.redirected ? new Response(answer.body, answer) : answer;
}

/** Bring a file into the store. Throws where the file of this release is not to be had. */
async function bring(store, address) {
  const older = isNamedByContent(address) ? await caches.match(address) : undefined;
  if (older && (await keep(store, address, older))) return;
  await fetchAnew(store, address);
  if (!(await store.match(address)))
    throw new Error(`offline: ${address}: expected the file of release ${FINGERPRINT}, got another`);
}

/** Bring what is missing, as far as it is to be had; throws where something is missing without which no page is whole. */
async function fill() {
  const store = await caches.open(STORE);
  const there = new Set((await store.keys()).map(({ url }) => new URL(url).pathname));
  const missing = Object.keys(FILES).filter((address) => !there.has(address));
  async function work() {
    for (let address = missing.shift(); address !== undefined; address = missing.shift())
      try {
        await bring(store, address);
      } catch (error) {
        if (isNeeded(address)) throw error;
      }
  }
  await Promise.all(Array.from({ length: AT_ONCE }, work));
}

/** Windows that were opened under this release, since this worker was last started. */
const ours = new Set();

/** Let the files of older releases go once no window is open that may still ask for them. */
async function sweep(leaving) {
  const windows = await clients.matchAll({ type: 'window', includeUncontrolled: true });
  if (windows.some(({ id }) => !ours.has(id) && !leaving.includes(id))) return;
  const names = await caches.keys();
  await Promise.all(
    names.filter((name) => name.startsWith(PREFIX) && name !== STORE).map((name) => caches.delete(name)),
  );
}

/** Whether this worker has looked after missing files; asked again when the browser next starts it. */
let filled = false;

async function lookAfter({ resultingClientId, clientId, replacesClientId }) {
  ours.add(resultingClientId);
  await sweep([clientId, replacesClientId]);
  if (filled) return;
  filled = true;
  await fill();
}

async function answer(request) {
  const address = new URL(request.url).pathname;
  const store = await caches.open(STORE);
  const kept = await store.match(address);
  if (kept) return kept;
  try {
    if (address in FILES) return await fetchAnew(store, address);
    if (`${address}/` in FILES) return Response.redirect(`${address}/`, 301);
    // A part of an older release, of which a window is still open.
    const older = isNamedByContent(address) ? await caches.match(address) : undefined;
    return older ?? (await fetch(request));
  } catch {
    if (request.mode !== 'navigate') return Response.error();
    const older = await caches.match(address);
    return older ?? new Response(AWAY, { status: 503, headers: { 'Content-Type': 'text/html' } });
  }
}

addEventListener('install', (event) => event.waitUntil(fill()));

// A newer release waits until no window of the older one is open, or until the reader asks for it.
addEventListener('message', ({ data }) => {
  if (data === 'use the new version') skipWaiting();
});

addEventListener('activate', (event) => event.waitUntil(sweep([]).then(() => clients.claim())));

addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || new URL(request.url).origin !== location.origin) return;
  if (request.mode === 'navigate') event.waitUntil(lookAfter(event).catch(() => undefined));
  event.respondWith(answer(request));
});
