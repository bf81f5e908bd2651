import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** What came of one stage of the test run. */
export interface Outcome {
  readonly passed: number;
  readonly failed: number;
}

/** How a stage is counted: as one check, or by the tests that a runner reports in a JSON file. */
export type Count = 'one' | 'vitest' | 'playwright';

/** One stage of the test run: a heading, a program in node_modules/.bin with its arguments, and how it is counted. */
export interface Stage {
  readonly heading: string;
  readonly program: string;
  readonly arguments: readonly string[];
  readonly count: Count;
}

/** A whole number at `key` of a report. Throws when it is missing: a report that cannot be read must not count as passed. */
function numberAt(report: unknown, key: string): number {
  const value: unknown = typeof report === 'object' && report !== null ? Reflect.get(report, key) : undefined;
  if (typeof value !== 'number')
    throw new Error(`test report: needs a number at '${key}', got ${String(value)}`);
  return value;
}

/**
 * Passed and failed tests in a runner's JSON report. A skipped or flaky test counts as failed: here every test runs, once.
 * Throws when the report has another shape.
 */
export function readReport(count: 'vitest' | 'playwright', report: unknown): Outcome {
  if (count === 'vitest') {
    return {
      passed: numberAt(report, 'numPassedTests'),
      failed:
        numberAt(report, 'numFailedTests') +
        numberAt(report, 'numPendingTests') +
        numberAt(report, 'numTodoTests'),
    };
  }
  const stats: unknown =
    typeof report === 'object' && report !== null ? Reflect.get(report, 'stats') : undefined;
  return {
    passed: numberAt(stats, 'expected'),
    failed: numberAt(stats, 'unexpected') + numberAt(stats, 'flaky') + numberAt(stats, 'skipped'),
  };
}

/**
 * The outcome of a stage from its exit status (null when it was killed) and its report.
 * A stage that ended badly without a failed test (a file that did not load, say), or that ran no test at all, counts as one failure.
 */
export function judge(status: number | null, reported: Outcome | undefined): Outcome {
  const { passed, failed } = reported ?? { passed: 0, failed: 0 };
  if (failed > 0) return { passed, failed };
  const ran = reported === undefined || passed > 0;
  return status === 0 && ran
    ? { passed: reported === undefined ? 1 : passed, failed: 0 }
    : { passed, failed: 1 };
}

/** Run a stage in folder `root`, with its output on the terminal; a runner's report is left in folder `reports`. */
export function runStage(stage: Stage, root: string, reports: string): Outcome {
  const file = join(reports, `${stage.heading.replaceAll(/\W+/g, '-')}.json`);
  const extra = {
    one: [],
    vitest: ['--reporter=default', '--reporter=json', `--outputFile.json=${file}`],
    playwright: ['--reporter=list,json'],
  }[stage.count];
  const { status } = spawnSync(
    process.execPath,
    [join(root, 'node_modules', '.bin', stage.program), ...stage.arguments, ...extra],
    {
      cwd: root,
      stdio: 'inherit',
      env: { ...process.env, ASTRO_TELEMETRY_DISABLED: '1', PLAYWRIGHT_JSON_OUTPUT_FILE: file },
    },
  );
  if (stage.count === 'one') return judge(status, undefined);
  const reported = existsSync(file)
    ? readReport(stage.count, JSON.parse(readFileSync(file, 'utf8')))
    : { passed: 0, failed: 0 };
  return judge(status, reported);
}
