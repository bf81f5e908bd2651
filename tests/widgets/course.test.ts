/** A course package on its whole way: written by the class page, unzipped, and played under a course system that forgives nothing. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import type { BrowserContext, Page } from '@playwright/test';
import { expect, test } from '../support/test.ts';
import { unzipSync } from 'fflate';
import { numberOfStudent, readSet, setHash, tasksOfSet } from '../../src/core/class/index.ts';
import { makeTask } from '../../src/core/learn/index.ts';
import { strictRunTime } from '../support/strict-run-time.ts';
import type { StrictApi } from '../support/strict-run-time.ts';

const STUDENT = 's-17';
const reading = readSet({
  format: 'five-milliamps-set',
  version: 1,
  title: 'Two loops',
  seed: 12,
  perStudent: true,
  items: [{ kind: 'loop-current', level: 2, count: 2 }],
  show: 'each',
});
if (!reading.ok) throw new Error('the Set of the test is whole');
const SET = reading.value;

/** The right answers of the student whom the course system calls by `STUDENT`. */
const RIGHT = tasksOfSet(SET, numberOfStudent(STUDENT)).map((id) => {
  const task = makeTask(id);
  if (typeof task === 'string') throw new Error(task);
  return task.right;
});

type Kept = Pick<StrictApi, 'data' | 'faults' | 'calls'>;

/** Serve a course system's page with the run-time, the package in a frame of it, and the package alone. */
async function serve(context: BrowserContext, files: Readonly<Record<string, Uint8Array>>): Promise<void> {
  const page = `<!doctype html><title>Course system</title><script>
    const strictRunTime = ${strictRunTime.toString()};
    window.visit = (data) => {
      window.API = strictRunTime(data);
      document.body.innerHTML = '<iframe title="Course" width="900" height="700" src="/lms/pack/index.html"></iframe>';
    };
  </script><body></body>`;
  const types = { html: 'text/html', js: 'text/javascript', css: 'text/css' };
  await context.route(/\/(lms|alone)\//, async (route) => {
    const path = new URL(route.request().url()).pathname;
    if (path === '/lms/') return route.fulfill({ contentType: 'text/html', body: page });
    const name = path.replace(/^\/(lms\/pack|alone)\//, '');
    const body = files[name];
    const contentType = types[(name.split('.').at(-1) ?? '') as keyof typeof types];
    return body
      ? route.fulfill({ body: Buffer.from(body), ...(contentType ? { contentType } : {}) })
      : route.fulfill({ status: 404 });
  });
}

/** Begin a visit with what was kept. */
const visit = (page: Page, data: Record<string, string>): Promise<void> =>
  page.evaluate((kept) => (window as unknown as { visit: (data: object) => void }).visit(kept), data);

/** Leave, and see what the course system has. */
async function leave(page: Page): Promise<Kept> {
  return page.evaluate(() => {
    document.querySelector('iframe')?.remove();
    const { data, faults, calls } = (window as unknown as { API: Kept }).API;
    return { data, faults, calls };
  });
}

test('a package goes through start, leaving, coming back and handing in, in a frame, from an opener and alone', async ({
  page,
  context,
}, info) => {
  await page.goto(`./class/${await setHash(SET)}`);
  await page.getByText('As a package for a course system').click();
  await page.getByLabel('Right tasks needed to pass').fill('80');
  await page.getByLabel('Right tasks needed to pass').blur();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save a course package' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('two-loops-course.zip');
  const zip = info.outputPath('course.zip');
  await download.saveAs(zip);
  // A stock unzip takes it: the one of the system, else the one that comes with Python.
  const tried = [
    ['unzip', '-tq'],
    ['python3', '-m', 'zipfile', '-t'],
  ].map(([command = '', ...rest]) => spawnSync(command, [...rest, zip], { encoding: 'utf8' }));
  const present = tried.filter(({ error }) => error === undefined);
  expect(present.map(({ status, stderr }) => [status, stderr])).toEqual(present.map(() => [0, '']));
  const files = unzipSync(readFileSync(zip));
  await serve(context, files);

  await page.goto('/lms/');
  const frame = page.frameLocator('iframe');
  await visit(page, { 'cmi.core.student_id': STUDENT, 'cmi.core.lesson_status': 'not attempted' });
  await expect(frame.getByRole('heading', { name: 'Two loops: task 1 of 2' })).toBeVisible();
  await frame.getByLabel('Your answer').fill(RIGHT[0] ?? '');
  await frame.getByRole('button', { name: 'Check my answer' }).click();
  await expect(frame.getByText('Right', { exact: true })).toBeVisible();
  const first = await leave(page);
  expect(first.faults).toEqual([]);
  expect([first.calls[0], first.calls.at(-1)]).toEqual(['LMSInitialize', 'LMSFinish']);
  expect(first.data).toMatchObject({
    'cmi.core.lesson_status': 'incomplete',
    'cmi.core.score.raw': '50',
    'cmi.core.exit': 'suspend',
  });

  await visit(page, first.data);
  await expect(frame.getByRole('heading', { name: 'Two loops: task 2 of 2' })).toBeVisible();
  await frame.getByLabel('Your answer').fill(RIGHT[1] ?? '');
  await frame.getByRole('button', { name: 'Check my answer' }).click();
  await frame.getByRole('button', { name: 'Go on' }).click();
  await frame.getByRole('button', { name: 'Hand in' }).click();
  await expect(frame.getByText('2 of 2 right; 80 per cent are needed to pass.')).toBeVisible();
  const second = await leave(page);
  expect(second.faults).toEqual([]);
  expect(second.data).toMatchObject({
    'cmi.core.lesson_status': 'passed',
    'cmi.core.score.raw': '100',
    'cmi.core.exit': '',
  });

  // In a window of its own the run-time is that of the opener.
  await page.evaluate((data) => {
    const own = window as unknown as { visit: (data: object) => void };
    own.visit(data);
    document.body.innerHTML = '';
  }, second.data);
  const [popup] = await Promise.all([
    page.waitForEvent('popup'),
    page.evaluate(() => void window.open('/lms/pack/index.html')),
  ]);
  await expect(popup.getByText('2 of 2 tasks answered. Handed in.')).toBeVisible();
  await popup.close({ runBeforeUnload: true });
  await expect
    .poll(() => page.evaluate(() => (window as unknown as { API: Kept }).API.calls.at(-1)))
    .toBe('LMSFinish');
  const third = await leave(page);
  expect([third.faults, third.data['cmi.core.lesson_status']]).toEqual([[], 'passed']);

  // Without a course system it is a plain page, which asks who is there.
  await page.goto('/alone/index.html');
  await page.getByLabel('Your number in the class list').fill('3');
  await page.getByRole('button', { name: 'Begin' }).click();
  await expect(page.getByRole('heading', { name: 'Two loops: task 1 of 2' })).toBeVisible();
});
