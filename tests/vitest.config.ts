import { fileURLToPath } from 'node:url';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  // Components are rendered as the build renders them, without a browser.
  plugins: [svelte({ configFile: false })],
  test: {
    root: fileURLToPath(new URL('..', import.meta.url)),
    include: ['tests/{cli,components,content,core,draw,reference}/**/*.test.ts'],
    environment: 'node',
    passWithNoTests: false,
    allowOnly: false,
    retry: 0,
    // What is tested keeps no state between calls, so that files may share a worker and load the core once.
    isolate: false,
    // Tests over thousands of seeded cases take some seconds, and many more on a busy machine.
    testTimeout: 120_000,
  },
});
