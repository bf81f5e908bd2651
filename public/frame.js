// No page of the site may stand inside a page of somebody else, who could lay things over it. A header forbids it where the host
// sends one; this does where it sends none. Pages made to be embedded stand in a folder of their own.
(() => {
  if (window.top === window.self) return;
  const embeddable = new URL('embed/', document.currentScript.src).pathname;
  if (location.pathname.startsWith(embeddable)) return;
  window.stop();
  const link = document.createElement('a');
  link.href = location.href;
  link.target = '_blank';
  link.rel = 'noopener';
  link.textContent = 'Open this page of Five Milliamps in a window of its own';
  const body = document.createElement('body');
  body.append(link);
  document.documentElement.replaceChildren(body);
})();
