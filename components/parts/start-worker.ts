/** Work off the main thread, under the content policy of the page. */

/**
 * Start a worker by the address of its script (`import address from './x-worker.ts?worker&url'`). It is started from a text of the
 * page's own, and so stands under the page's policy; fetched by its address it would stand under none where no header is sent.
 */
export function startWorker(address: string): Worker {
  const script = `import ${JSON.stringify(new URL(address, location.href).href)};`;
  const url = URL.createObjectURL(new Blob([script], { type: 'text/javascript' }));
  const worker = new Worker(url, { type: 'module' });
  const forget = (): void => URL.revokeObjectURL(url);
  worker.addEventListener('message', forget, { once: true });
  worker.addEventListener('error', forget, { once: true });
  return worker;
}
