// Asks the browser to keep the site for use without a network. Nothing on a page waits for it.
if ('serviceWorker' in navigator) {
  addEventListener('load', () => {
    navigator.serviceWorker.register('/sw.js').catch(() => undefined);
  });
}
