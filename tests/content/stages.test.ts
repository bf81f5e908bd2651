import { describe, expect, test } from 'vitest';
import { judge, readReport, runLanes, timedTests } from '../support/stages.ts';

describe('A stage of the test run', () => {
  test('without a report counts as one check', () => {
    expect(judge(0, undefined)).toEqual({ passed: 1, failed: 0 });
    expect(judge(1, undefined)).toEqual({ passed: 0, failed: 1 });
    expect(judge(null, undefined)).toEqual({ passed: 0, failed: 1 });
  });

  test('counts the tests of its report', () => {
    expect(judge(0, { passed: 7, failed: 0 })).toEqual({ passed: 7, failed: 0 });
    expect(judge(1, { passed: 5, failed: 2 })).toEqual({ passed: 5, failed: 2 });
  });

  test('that ends badly without a failed test counts as one failure', () => {
    expect(judge(1, { passed: 7, failed: 0 })).toEqual({ passed: 7, failed: 1 });
  });

  test('in which no test ran counts as one failure', () => {
    expect(judge(0, { passed: 0, failed: 0 })).toEqual({ passed: 0, failed: 1 });
  });
});

describe('A report', () => {
  test('counts skipped and flaky tests as failed', () => {
    const vitest = { numPassedTests: 4, numFailedTests: 1, numPendingTests: 2, numTodoTests: 1 };
    expect(readReport('vitest', vitest)).toEqual({ passed: 4, failed: 4 });
    const playwright = { stats: { expected: 3, unexpected: 1, flaky: 1, skipped: 1 } };
    expect(readReport('playwright', playwright)).toEqual({ passed: 3, failed: 3 });
  });

  test('of another shape throws and names what is missing', () => {
    expect(() => readReport('vitest', {})).toThrow(
      "test report: needs a number at 'numPassedTests', got undefined",
    );
    expect(() => readReport('playwright', null)).toThrow(
      "test report: needs a number at 'expected', got undefined",
    );
  });
});

describe('The times of tests', () => {
  test('are read from both reports, in seconds, with their files', () => {
    const vitest = {
      testResults: [
        {
          name: '/home/reader/tests/core/wiring/a.test.ts',
          assertionResults: [{ fullName: 'A lead flows', duration: 1500 }, { fullName: 'A lead waits' }],
        },
      ],
    };
    expect(timedTests('vitest', vitest)).toEqual([
      { title: 'core/wiring/a.test.ts: A lead flows', seconds: 1.5 },
      { title: 'core/wiring/a.test.ts: A lead waits', seconds: 0 },
    ]);
    const spec = { file: 'pages/a.test.ts', title: 'opens', tests: [{ results: [{ duration: 250 }] }] };
    expect(timedTests('playwright', { suites: [{ suites: [{ specs: [spec] }] }] })).toEqual([
      { title: 'pages/a.test.ts: opens', seconds: 0.25 },
    ]);
  });
});

describe('Lanes', () => {
  test('go side by side, each in its order', async () => {
    const heard: string[] = [];
    let letGo = (): void => undefined;
    const gate = new Promise<void>((done) => (letGo = done));
    const results = await runLanes(
      [
        ['held', 'after'],
        ['free', 'opens'],
      ],
      async (name) => {
        if (name === 'held') await gate;
        if (name === 'opens') letGo();
        heard.push(name);
        return name.toUpperCase();
      },
    );
    expect(heard.slice(0, 2)).toEqual(['free', 'opens']);
    expect(results).toEqual(['HELD', 'AFTER', 'FREE', 'OPENS']);
  });

  test('take from the end of one another when they have come to their own, once its first is done', async () => {
    const heard: string[] = [];
    let letGo = (): void => undefined;
    const gate = new Promise<void>((done) => (letGo = done));
    const results = await runLanes([['build', 'slow', 'third', 'last'], ['short']], async (name) => {
      if (name === 'slow') await gate;
      if (name === 'third') letGo();
      heard.push(name);
      return name;
    });
    // The first lane is held at 'slow', so the other must have taken what stands behind it, the last first.
    expect(heard).toEqual(['build', 'short', 'last', 'third', 'slow']);
    expect(results).toEqual(['build', 'slow', 'third', 'last', 'short']);
    const lone = await runLanes([['build', 'types'], []], async (name) => name);
    expect(lone).toEqual(['build', 'types']);
  });
});
