// Asks the browser to keep the site for use without a network, and tells the reader of a newer version, or of a part of the page
// that could not be fetched. Nothing on a page waits for it.
(() => {
  const worker = new URL('sw.js', document.currentScript.src);
  const notice = () => document.getElementById('notice');

  /** Say something above the page, with one thing to do about it. */
  function tell(words, label, act) {
    const place = notice();
    if (place === null) return;
    const text = document.createElement('p');
    text.textContent = words;
    const button = document.createElement('button');
    button.type = 'button';
    button.className = 'button';
    button.textContent = label;
    button.addEventListener('click', act);
    place.replaceChildren(text, button);
    place.hidden = false;
  }

  addEventListener('astro:hydration-error', () =>
    tell(
      'A part of this page could not be fetched, so something on it does not answer. What was kept is untouched.',
      'Reload the page',
      () => location.reload(),
    ),
  );

  const { serviceWorker } = navigator;
  if (serviceWorker === undefined) return;

  let asked = false;
  const had = serviceWorker.controller;

  function offer(waiting) {
    tell('A newer version of this workbook is ready. Your work stays.', 'Use the newer version', () => {
      asked = true;
      waiting.postMessage('use the new version');
    });
  }

  function watch(registration) {
    // A browser that was told to keep nothing hands back nothing.
    if (registration === undefined) return;
    if (registration.waiting !== null && had !== null) offer(registration.waiting);
    registration.addEventListener('updatefound', () => {
      const coming = registration.installing;
      coming?.addEventListener('statechange', () => {
        if (coming.state === 'installed' && serviceWorker.controller !== null) offer(coming);
      });
    });
  }

  serviceWorker.addEventListener('controllerchange', () => {
    if (asked) location.reload();
    else if (had !== null)
      tell(
        'Another tab uses a newer version of this workbook now. This page goes on with the older one.',
        'Reload with the newer version',
        () => location.reload(),
      );
  });

  let begun = false;

  /** Fetching the whole site takes the processor and the line: it begins once the page is awake. */
  function begin() {
    if (begun) return;
    begun = true;
    serviceWorker.register(worker).then(watch, () => undefined);
  }

  function whenAwake() {
    if (document.querySelector('astro-island[ssr][client="load"]') !== null) return;
    if (window.requestIdleCallback === undefined) setTimeout(begin, 1000);
    else requestIdleCallback(begin);
  }

  addEventListener('load', () => {
    whenAwake();
    document.addEventListener('astro:hydrate', whenAwake, true);
    // A part that never wakes holds it up no longer than this.
    setTimeout(begin, 10_000);
  });
})();
