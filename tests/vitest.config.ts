import { fileURLToPath } from 'node:url';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

const SHARED = {
  root: fileURLToPath(new URL('..', import.meta.url)),
  environment: 'node',
  // What is tested keeps no state between calls, so that files may share a worker and load the core once.
  isolate: false,
  // Plans and tasks are made by the thousand and thrown away: with more room for the young the collector runs a tenth of the time less.
  execArgv: ['--max-semi-space-size=64'],
  // Tests over thousands of seeded cases take some seconds, and many more on a busy machine.
  testTimeout: 120_000,
  hookTimeout: 120_000,
};

export default defineConfig({
  test: {
    passWithNoTests: false,
    allowOnly: false,
    retry: 0,
    projects: [
      {
        test: {
          ...SHARED,
          name: 'plain',
          include: ['tests/{cli,content,core,draw,reference}/**/*.test.ts'],
          // Node reads these by itself, as it does when they are started as programs: numbers are worked out faster so.
          experimental: { viteModuleRunner: false, nodeLoader: false },
        },
      },
      {
        // Components are rendered as the build renders them, without a browser.
        plugins: [svelte({ configFile: false })],
        test: { ...SHARED, name: 'components', include: ['tests/components/**/*.test.ts'] },
      },
    ],
  },
});
