import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** One test of a report: its file with its title, and how long it ran. */
interface TimedTest {
  readonly title: string;
  readonly seconds: number;
}

/** What came of one stage of the test run. */
interface Outcome {
  readonly passed: number;
  readonly failed: number;
}

/** How a stage is counted: as one check, or by the tests that a runner reports in a JSON file. */
type Count = 'one' | 'vitest' | 'playwright';

/** One stage of the test run: a heading, a program in node_modules/.bin with its arguments, and how it is counted. */
export interface Stage {
  readonly heading: string;
  readonly program: string;
  readonly arguments: readonly string[];
  readonly count: Count;
}

/** What stands at `key` of a part of a report, if anything does. */
function valueAt(report: unknown, key: string): unknown {
  return typeof report === 'object' && report !== null ? Reflect.get(report, key) : undefined;
}

/** The number at `key` of a report. Throws when it is missing: a report that cannot be read must not count as passed. */
function numberAt(report: unknown, key: string): number {
  const value = valueAt(report, key);
  if (typeof value !== 'number')
    throw new Error(`test report: needs a number at '${key}', got ${String(value)}`);
  return value;
}

/** The list at `key` of a report: empty when there is none, as where a suite holds no other. */
function listAt(report: unknown, key: string): readonly unknown[] {
  const value = valueAt(report, key);
  return Array.isArray(value) ? value : [];
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
  const stats = valueAt(report, 'stats');
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

/** Every test of a runner's JSON report with its time. One without a time, such as one that was skipped, took none. */
export function timedTests(count: 'vitest' | 'playwright', report: unknown): readonly TimedTest[] {
  const timed = (file: unknown, title: unknown, milliseconds: number): TimedTest => ({
    title: `${String(file).replace(/^.*\/tests\//, '')}: ${String(title)}`,
    seconds: milliseconds / 1000,
  });
  if (count === 'vitest')
    return listAt(report, 'testResults').flatMap((file) =>
      listAt(file, 'assertionResults').map((one) =>
        timed(valueAt(file, 'name'), valueAt(one, 'fullName'), Number(valueAt(one, 'duration') ?? 0)),
      ),
    );
  const inSuite = (suite: unknown): readonly TimedTest[] => [
    ...listAt(suite, 'suites').flatMap(inSuite),
    ...listAt(suite, 'specs').map((spec) => {
      const results = listAt(spec, 'tests').flatMap((test) => listAt(test, 'results'));
      const milliseconds = results.reduce<number>((sum, result) => sum + numberAt(result, 'duration'), 0);
      return timed(valueAt(spec, 'file'), valueAt(spec, 'title'), milliseconds);
    }),
  ];
  return inSuite(report);
}

/** What came of a stage, and its tests when a runner reported them. */
export interface Run {
  readonly outcome: Outcome;
  readonly tests: readonly TimedTest[];
}

/** How a stage meets the terminal: as it goes, or whole once it has ended (for stages that run side by side). */
type Voice = 'live' | 'at the end';

/** Arguments that make a runner leave its report in `file`. */
function reporting(count: Count, file: string): readonly string[] {
  if (count === 'vitest') return ['--reporter=default', '--reporter=json', `--outputFile.json=${file}`];
  return count === 'playwright' ? ['--reporter=list,json'] : [];
}

/** Start a program of the project and wait for its end: its exit status (null when it was killed) and, unless live, what it said. */
function start(
  stage: Stage,
  root: string,
  file: string,
  voice: Voice,
): Promise<{ readonly status: number | null; readonly said: string }> {
  return new Promise((done, failed) => {
    const child = spawn(
      process.execPath,
      [
        join(root, 'node_modules', '.bin', stage.program),
        ...stage.arguments,
        ...reporting(stage.count, file),
      ],
      {
        cwd: root,
        stdio: voice === 'live' ? 'inherit' : ['ignore', 'pipe', 'pipe'],
        env: { ...process.env, ASTRO_TELEMETRY_DISABLED: '1', PLAYWRIGHT_JSON_OUTPUT_FILE: file },
      },
    );
    let said = '';
    for (const stream of [child.stdout, child.stderr])
      stream?.setEncoding('utf8').on('data', (text: string) => {
        said += text;
      });
    child.on('error', failed).on('close', (status) => done({ status, said }));
  });
}

/** Run a stage in folder `root`, with its heading and output on the terminal; a runner's report is left in folder `reports`. */
export async function runStage(stage: Stage, root: string, reports: string, voice: Voice): Promise<Run> {
  const file = join(reports, `${stage.heading.replaceAll(/\W+/g, '-')}.json`);
  if (voice === 'live') console.log(`\n== ${stage.heading} ==`);
  const { status, said } = await start(stage, root, file, voice);
  if (voice === 'at the end') console.log(`\n== ${stage.heading} ==\n${said.trimEnd()}`);
  if (stage.count === 'one') return { outcome: judge(status, undefined), tests: [] };
  if (!existsSync(file)) return { outcome: judge(status, { passed: 0, failed: 0 }), tests: [] };
  const report: unknown = JSON.parse(readFileSync(file, 'utf8'));
  return {
    outcome: judge(status, readReport(stage.count, report)),
    tests: timedTests(stage.count, report),
  };
}

/**
 * Run work on lanes that go side by side: the first of a lane before all others of it, which do not wait for one another. A lane
 * that has come to its end takes from the end of another. What comes back stands in the order of the lanes.
 */
export async function runLanes<In, Out>(
  lanes: readonly (readonly In[])[],
  work: (one: In) => Promise<Out>,
): Promise<readonly Out[]> {
  const results = lanes.map((lane) => new Array<Out>(lane.length));
  const waiting = lanes.map((lane) => [...lane.entries()]);
  const begun = new Set<number>();
  const run = async (lane: number, [place, one]: [number, In]): Promise<void> => {
    (results[lane] as Out[])[place] = await work(one);
    begun.add(lane);
  };
  await Promise.all(
    lanes.map(async (_, own) => {
      for (let next = waiting[own]?.shift(); next; next = waiting[own]?.shift()) await run(own, next);
      for (const [other, left] of waiting.entries())
        for (let next = begun.has(other) ? left.pop() : undefined; next; next = left.pop())
          await run(other, next);
    }),
  );
  return results.flat();
}
