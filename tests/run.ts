/**
 * The whole test run, as `npm test` starts it. Every stage runs even when an earlier one fails, so that one run tells all;
 * only the browser tests are left out, and counted as failed, when there is no built site or no browser to run them in.
 * `npm test -- --changed` runs what a change against HEAD can break, `--changed main` against another base.
 */
import { existsSync, mkdtempSync, readFileSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { findTestBrowser, installBrowser, NO_BROWSER } from './support/browser.ts';
import { changedFiles, reachOf } from './support/changed.ts';
import { filesUnder, importsUnder } from './support/imports.ts';
import { ratioTable, readTexts } from './support/ratio.ts';
import { runLanes, runStage, type Run, type Stage } from './support/stages.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const reports = mkdtempSync(join(tmpdir(), 'five-milliamps-'));
const VITEST = ['run', '--config', 'tests/vitest.config.ts'];

/** How many of the slowest tests the summary names. */
const SLOWEST = 5;

const vitest = (heading: string, ...paths: readonly string[]): Stage => ({
  heading,
  program: 'vitest',
  arguments: [...VITEST, ...paths],
  count: 'vitest',
});
const CORE = vitest('Core', 'tests/core');
const AROUND = vitest('Around the core', 'tests/cli', 'tests/components', 'tests/content', 'tests/draw');
const REFERENCE = vitest('Reference', 'tests/reference');
const BUILD: Stage = { heading: 'Build', program: 'astro', arguments: ['build'], count: 'one' };
/** Those of the Astro files alone: the next stage has the same of all other files. */
const TYPES: Stage = {
  heading: 'Types (Astro)',
  program: 'astro',
  arguments: ['check', '--tsconfig', 'tests/support/astro.tsconfig.json'],
  count: 'one',
};
const SVELTE: Stage = {
  heading: 'Types (Svelte)',
  program: 'svelte-check',
  arguments: ['--tsconfig', './tsconfig.json', '--fail-on-warnings', '--tsgo'],
  count: 'one',
};
/** Svelte and Astro files. */
const LINT: Stage = {
  heading: 'Lint (Svelte, Astro)',
  program: 'eslint',
  arguments: ['--config', 'tests/eslint.config.js', '--max-warnings', '0', '.'],
  count: 'one',
};
const LINT_CODE: Stage = { heading: 'Lint (code)', program: 'oxlint', arguments: ['.'], count: 'one' };
const FORMAT: Stage = {
  heading: 'Format',
  program: 'oxfmt',
  arguments: ['--check', '.'],
  count: 'one',
};
const BROWSER: Stage = {
  heading: 'Widgets and pages',
  program: 'playwright',
  arguments: ['test', '--config', 'tests/playwright.config.ts'],
  count: 'playwright',
};

const stageWith = (stage: Stage, heading: string, more: readonly string[]): Stage => ({
  ...stage,
  heading,
  arguments: [...stage.arguments, ...more],
});

/**
 * The build writes the types of the content, which the checks of types and the lint read: they follow it. The shortest stand last: the
 * other lane, once it is through, takes from there.
 */
const BUILT: readonly Stage[] = [BUILD, LINT, REFERENCE, SVELTE, TYPES, FORMAT, LINT_CODE];
/** As long as nearly all of the others together: of the core's tests there are most. */
const PLAIN: readonly Stage[] = [CORE, AROUND];

/** The stages of a run: a lane that begins with the build, one that does not wait for it, and what runs in a browser after both. */
interface Work {
  readonly built: readonly Stage[];
  readonly plain: readonly Stage[];
  readonly browser: readonly Stage[];
}

/** The part of the work that a change against `base` can break; all of it when the tools themselves were changed. */
function narrow(all: Work, base: string): Work {
  const changed = changedFiles(root, base);
  const folders = ['src', 'components', 'content', 'tests'];
  const tests = new Map(
    filesUnder(root, ['tests/pages', 'tests/widgets']).map((path) => [
      path,
      readFileSync(join(root, path), 'utf8'),
    ]),
  );
  const reach = reachOf(changed, importsUnder(root, folders), tests, filesUnder(root, folders));
  console.log(
    `${changed.length} files changed against ${base}; pages: ${reach.addresses.join(' ') || 'none'}`,
  );
  if (reach.all) {
    console.log('The tools are among them: everything is run.');
    return all;
  }
  const there = changed.filter((file) => existsSync(join(root, file)));
  const code = there.filter((file) => /\.(ts|js|mjs)$/.test(file));
  const markup = there.filter((file) => /\.(svelte|svelte\.ts|astro)$/.test(file));
  const lint = (stage: Stage, files: readonly string[]): readonly Stage[] =>
    files.length === 0 ? [] : [{ ...stage, arguments: [...stage.arguments.slice(0, -1), ...files] }];
  const onPages = reach.addresses.map((address) => ` ${address} `).join('|');
  const inBrowser = [
    ...(reach.browserTests.length === 0 ? [] : [stageWith(BROWSER, 'Widgets', reach.browserTests)]),
    ...(onPages === ''
      ? []
      : [stageWith(BROWSER, 'Pages', ['tests/pages', 'predict.test', '--grep', onPages])]),
  ];
  return {
    built: [
      ...(inBrowser.length === 0 ? [] : [BUILD]),
      ...(there.some((file) => /\.(astro|mdx)$/.test(file)) ? [TYPES] : []),
      ...(code.length + markup.length === 0 ? [] : [SVELTE]),
      ...lint(LINT, markup),
      ...lint(LINT_CODE, code),
    ],
    plain: [
      vitest('Unit', ...reach.unitTests),
      ...(there.length === 0
        ? []
        : [{ ...FORMAT, arguments: ['--check', '--no-error-on-unmatched-pattern', ...there] }]),
    ],
    browser: inBrowser,
  };
}

type Result = Run & { readonly heading: string; readonly seconds: number };

async function timed(heading: string, work: () => Promise<Run>): Promise<Result> {
  const start = performance.now();
  const run = await work();
  return { ...run, heading, seconds: (performance.now() - start) / 1000 };
}

function leaveOut(heading: string, reason: string): Run {
  console.log(`\n== ${heading} ==\n${reason}`);
  return { outcome: { passed: 0, failed: 1 }, tests: [] };
}

async function runBrowser(stage: Stage, isBuilt: boolean): Promise<Run> {
  if (!isBuilt) return leaveOut(stage.heading, 'Left out, and counted as failed: the site was not built.');
  if (findTestBrowser() === undefined && installBrowser() === undefined)
    return leaveOut(stage.heading, NO_BROWSER);
  return runStage(stage, root, reports, 'live');
}

function printSummary(results: readonly Result[]): void {
  console.log('\n== Slowest tests ==');
  const tests = results.flatMap((result) => result.tests).sort((one, other) => other.seconds - one.seconds);
  for (const { title, seconds } of tests.slice(0, SLOWEST))
    console.log(`${seconds.toFixed(1).padStart(7)} s  ${title}`);
  console.log('\n== Summary ==');
  for (const { heading, outcome, seconds } of results) {
    const mark = outcome.failed === 0 ? 'ok' : 'FAILED';
    const counts = `${outcome.passed} passed, ${outcome.failed} failed`;
    console.log(
      `${heading.padEnd(28)}${mark.padEnd(9)}${counts.padEnd(26)}${seconds.toFixed(1).padStart(7)} s`,
    );
  }
  console.log(`${'Whole run'.padEnd(63)}${(performance.now() / 1000).toFixed(1).padStart(7)} s`);
  console.log('\n== Tests to code, lines ==');
  for (const line of ratioTable(readTexts(root))) console.log(line);
  const sum = (key: 'passed' | 'failed') => results.reduce((total, { outcome }) => total + outcome[key], 0);
  // Programs read this last line: it stands alone and in these words.
  console.log(`\n${sum('passed')} passed, ${sum('failed')} failed`);
  process.exitCode = sum('failed') === 0 ? 0 : 1;
}

const everything: Work = { built: BUILT, plain: PLAIN, browser: [BROWSER] };
const at = process.argv.indexOf('--changed');
const { built, plain, browser } = at < 0 ? everything : narrow(everything, process.argv[at + 1] ?? 'HEAD');
const lanes = availableParallelism() > 1 ? [built, plain] : [[...built, ...plain]];
const results = [
  ...(await runLanes(lanes, (stage) =>
    timed(stage.heading, () => runStage(stage, root, reports, 'at the end')),
  )),
];
const isBuilt = results.find(({ heading }) => heading === BUILD.heading)?.outcome.failed === 0;
for (const stage of browser) results.push(await timed(stage.heading, () => runBrowser(stage, isBuilt)));
printSummary(results);
