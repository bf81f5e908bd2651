/**
 * The whole test run, as `npm test` starts it. Every stage runs even when an earlier one fails, so that one run tells all;
 * only the browser tests are left out, and counted as failed, when there is no built site or no browser to run them in.
 */
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { findBrowser, installBrowser, NO_BROWSER } from './support/browser.ts';
import { runStage, type Outcome, type Stage } from './support/stages.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const reports = mkdtempSync(join(tmpdir(), 'five-milliamps-'));
const VITEST = ['run', '--config', 'tests/vitest.config.ts'];

const CHECKS: readonly Stage[] = [
  {
    heading: 'Format',
    program: 'prettier',
    arguments: ['--check', '.', '--log-level', 'warn'],
    count: 'one',
  },
  {
    heading: 'Lint',
    program: 'eslint',
    arguments: ['--config', 'tests/eslint.config.js', '--max-warnings', '0', '.'],
    count: 'one',
  },
  { heading: 'Types (Astro)', program: 'astro', arguments: ['check'], count: 'one' },
  {
    heading: 'Types (Svelte)',
    program: 'svelte-check',
    arguments: ['--tsconfig', './tsconfig.json', '--fail-on-warnings'],
    count: 'one',
  },
  {
    heading: 'Unit, drawing and content',
    program: 'vitest',
    arguments: [...VITEST, 'tests/cli', 'tests/core', 'tests/draw', 'tests/content'],
    count: 'vitest',
  },
  { heading: 'Reference', program: 'vitest', arguments: [...VITEST, 'tests/reference'], count: 'vitest' },
];
const BUILD: Stage = { heading: 'Build', program: 'astro', arguments: ['build'], count: 'one' };
const BROWSER: Stage = {
  heading: 'Widgets and pages',
  program: 'playwright',
  arguments: ['test', '--config', 'tests/playwright.config.ts'],
  count: 'playwright',
};

const results: { readonly heading: string; readonly outcome: Outcome; readonly seconds: number }[] = [];

function run(heading: string, work: () => Outcome): Outcome {
  console.log(`\n== ${heading} ==`);
  const start = performance.now();
  const outcome = work();
  results.push({ heading, outcome, seconds: (performance.now() - start) / 1000 });
  return outcome;
}

function leaveOut(reason: string): Outcome {
  console.log(reason);
  return { passed: 0, failed: 1 };
}

for (const stage of CHECKS) run(stage.heading, () => runStage(stage, root, reports));
const built = run(BUILD.heading, () => runStage(BUILD, root, reports));
run(BROWSER.heading, () => {
  if (built.failed > 0) return leaveOut('Left out, and counted as failed: the site was not built.');
  if (findBrowser() === undefined && installBrowser() === undefined) return leaveOut(NO_BROWSER);
  return runStage(BROWSER, root, reports);
});

console.log('\n== Summary ==');
for (const { heading, outcome, seconds } of results) {
  const mark = outcome.failed === 0 ? 'ok' : 'FAILED';
  const counts = `${outcome.passed} passed, ${outcome.failed} failed`;
  console.log(
    `${heading.padEnd(28)}${mark.padEnd(9)}${counts.padEnd(26)}${seconds.toFixed(1).padStart(7)} s`,
  );
}
const passed = results.reduce((sum, { outcome }) => sum + outcome.passed, 0);
const failed = results.reduce((sum, { outcome }) => sum + outcome.failed, 0);
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
