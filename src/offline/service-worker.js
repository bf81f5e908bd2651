/**
 * Keeps every file of the site on the reader's device, so that it works with the network off after the first visit.
 * The build puts the list of files and its fingerprint in front of this text, as FILES and FINGERPRINT.
 */
/* global FILES, FINGERPRINT */

const STORE = `five-milliamps ${FINGERPRINT}`;

addEventListener('install', (event) => {
  event.waitUntil(caches.open(STORE).then((store) => store.addAll(FILES)));
});

// A newer site takes over when no page of the older one is open any more; then the older files go.
addEventListener('activate', (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) =>
        Promise.all(
          names
            .filter((name) => name.startsWith('five-milliamps ') && name !== STORE)
            .map((name) => caches.delete(name)),
        ),
      )
      .then(() => clients.claim()),
  );
});

addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== location.origin) return;
  event.respondWith(
    caches
      .open(STORE)
      .then((store) => store.match(request, { ignoreSearch: true }))
      .then((kept) => kept ?? fetch(request)),
  );
});
