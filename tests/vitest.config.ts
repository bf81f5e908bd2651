import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: fileURLToPath(new URL('..', import.meta.url)),
    include: ['tests/{cli,core,draw,content,reference}/**/*.test.ts'],
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
