// No page of the site may stand inside a page of somebody else, who could lay things over it. A header forbids it where the host
// sends one; this does where it sends none. Pages made to be embedded are named here.
(() => {
  const EMBEDDABLE = ['/embed/'];
  if (window.top === window.self) return;
  if (EMBEDDABLE.some((start) => location.pathname.startsWith(start))) return;
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
