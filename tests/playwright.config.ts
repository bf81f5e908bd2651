import { fileURLToPath } from 'node:url';
import { defineConfig, devices } from '@playwright/test';
import { findTestBrowser, NO_BROWSER, TEST_ARGUMENTS } from './support/browser.ts';
import { SITE_FOLDER } from './support/site.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const executablePath = findTestBrowser();
if (executablePath === undefined) throw new Error(NO_BROWSER);

export default defineConfig({
  testDir: '.',
  testMatch: '{widgets,pages}/**/*.test.ts',
  outputDir: '../test-results/browser',
  fullyParallel: true,
  // Node strips the types of what it loads by itself, in a fifth of the time.
  build: { external: ['**/*'] },
  forbidOnly: true,
  retries: 0,
  // The accessibility check of the longest page takes 20 s on two busy cores.
  timeout: 120_000,
  // A widget wakes within a moment, but not on two cores that a whole run shares with other work.
  expect: { timeout: 30_000 },
  // One more than two cores: a test waits for a tenth of its time.
  workers: 3,
  reporter: 'list',
  use: {
    baseURL: process.env['SITE_ADDRESS'] ?? '',
    // Each test opens a page for the first time; only the test of use without a network keeps the site.
    serviceWorkers: 'block',
    launchOptions: { executablePath, args: [...TEST_ARGUMENTS] },
  },
  projects: [
    { name: 'desktop', use: { ...devices['Desktop Chrome'], viewport: { width: 1440, height: 900 } } },
  ],
  webServer: {
    command: `"${process.execPath}" tests/support/serve.ts "${SITE_FOLDER}"`,
    cwd: root,
    // Playwright keeps the group's name, in capitals, as an environment variable: SITE_ADDRESS.
    wait: { stdout: /(?<site_address>http:\/\/localhost:\d+\/\S*)/ },
  },
});
