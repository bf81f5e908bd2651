/** Ways in which class work comes and goes besides files and links: inside a page of somebody else, and by a camera. */
import { writeFileSync } from 'node:fs';
import { chromium, type Page } from '@playwright/test';
import { expect, test } from '../support/test.ts';
import { squareCode } from '../../components/parts/square-code.ts';
import { resultHash, resultsIn, setHash, tasksOfSet } from '../../src/core/class/index.ts';
import type { WorkSet } from '../../src/core/class/index.ts';
import { writeTaskId } from '../../src/core/learn/index.ts';
import { accessibilityFaults, faintFaults } from '../support/accessible.ts';
import { taskOf } from '../support/answering.ts';
import { BROWSER_ARGUMENTS, findTestBrowser } from '../support/browser.ts';
import { CLASS_SET, resultOf, slipOf, studentResult } from '../support/classroom.ts';
import { wakeIslands } from '../support/watch.ts';

const AROUND = 'http://somebody-else.test/';

/** Two sums, each told at once. */
const SUMS: WorkSet = {
  ...CLASS_SET,
  title: 'Two "sums" & <more>',
  show: 'each',
  items: [{ kind: 'loop-current', level: 2, count: 2 }],
};

async function open(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await wakeIslands(page);
}

test('a Set stands inside a page of somebody else by the text that the class page gives, and tells it how far a student is', async ({
  page,
  baseURL,
}) => {
  await open(page, `./class/${await setHash(SUMS)}`);
  await page.getByText('Inside a page of your own').click();
  const text = await page.getByRole('textbox', { name: 'Text for your page' }).inputValue();
  expect(text).toContain('title="Two &#34;sums&#34; &#38; &#60;more&#62;"');
  expect(await accessibilityFaults(page, 'main')).toEqual([]);

  const listens = `<script>const told = []; addEventListener('message', ({ data }) => told.push(data));</script>`;
  // All comes by the test's own hand: a browser lets no page of the open network into one of this machine.
  await page.route('**/*', async (route) =>
    route.request().url().startsWith(AROUND)
      ? route.fulfill({ contentType: 'text/html', body: `<!doctype html>${text}${listens}` })
      : route.fulfill({ response: await route.fetch() }),
  );
  await page.goto(AROUND);
  const told = (): Promise<unknown> => page.evaluate(`told.filter(({ kind }) => kind === 'work').at(-1)`);
  const frame = page.frameLocator('iframe[title="Two \\"sums\\" & <more>"]');
  await frame.getByLabel('Your number in the class list').fill('7');
  await frame.getByRole('button', { name: 'Begin' }).click();
  const [first, second] = tasksOfSet(SUMS, 7).map((id) => taskOf(writeTaskId(id)));
  if (!first || !second) throw new Error('test: needs two tasks');
  await frame.getByRole('textbox', { name: 'Your answer' }).fill(slipOf(first, 'LED forgotten'));
  await frame.getByRole('button', { name: 'Check my answer' }).click();
  await frame.getByRole('textbox', { name: 'Your answer' }).fill(first.right);
  await frame.getByRole('button', { name: 'Check my answer' }).click();
  const far = {
    from: 'five-milliamps',
    tool: 'hand-in',
    kind: 'work',
    title: SUMS.title,
    number: 7,
    tasks: 2,
  };
  await expect.poll(told).toEqual({ ...far, answered: 1, right: 1, handedIn: false });
  await frame.getByRole('button', { name: 'Go on' }).click();
  await frame.getByRole('textbox', { name: 'Your answer' }).fill(slipOf(second, 'LED forgotten'));
  await frame.getByRole('button', { name: 'Check my answer' }).click();
  await frame.getByRole('button', { name: 'Leave it for now' }).click();
  await frame.getByRole('button', { name: 'Show a QR code of my work' }).click();
  await expect.poll(told).toMatchObject({ ...far, answered: 2, right: 1, handedIn: true });
  const { link } = (await told()) as { readonly link: string };
  expect(link.startsWith(`${baseURL}mark/#result=`)).toBe(true);
  const [handedIn] = await resultsIn('link', link);
  const answers = handedIn?.reading.ok ? handedIn.reading.value.attempts.map(({ answer }) => answer) : [];
  expect(answers).toEqual([slipOf(first, 'LED forgotten'), first.right, slipOf(second, 'LED forgotten')]);
});

/** A film for the browser's own stand-in for a camera: each picture is what a camera sees that a student holds a screen to, a little turned. */
async function film(page: Page, texts: readonly string[], path: string): Promise<void> {
  const pictures: Buffer[] = [];
  await page.setViewportSize({ width: 1280, height: 720 });
  for (const [at, text] of texts.entries()) {
    const square = await squareCode(text);
    await page.setContent(
      `<body style="background: #765"><svg viewBox="0 0 ${square?.modules} ${square?.modules}"
        style="background: #eee; width: 480px; margin: 110px 390px; transform: rotate(${at * 20 - 8}deg)">
        <path d="${square?.d}" fill="#222"/></svg></body>`,
    );
    pictures.push(await page.screenshot({ type: 'jpeg', quality: 70 }));
  }
  writeFileSync(path, Buffer.concat(pictures));
}

test('codes that are held to a camera are marked, each once, as soon as the camera may be used', async ({
  page,
  baseURL,
}, info) => {
  const address = async (number: number): Promise<string> =>
    `http://localhost/mark/${await resultHash(studentResult(number))}`;
  const seen = info.outputPath('camera.mjpeg');
  await film(page, [await address(8), 'https://example.org/', await address(22)], seen);
  const browser = await chromium.launch({
    executablePath: findTestBrowser() ?? '',
    args: [
      ...BROWSER_ARGUMENTS,
      // Where the browser asks whether the page may use the camera, it is told yes.
      '--use-fake-ui-for-media-stream',
      '--use-fake-device-for-media-stream',
      `--use-file-for-fake-video-capture=${seen}`,
    ],
  });
  try {
    const marking = await browser.newPage({ ...(baseURL && { baseURL }) });
    await open(marking, './mark/');
    const button = marking.getByRole('button', { name: 'Scan QR codes' });
    // The first time the reader says no (W3C Media Capture and Streams, getUserMedia: NotAllowedError).
    await marking.evaluate(() => {
      const { mediaDevices } = navigator;
      Object.defineProperty(mediaDevices, 'getUserMedia', {
        configurable: true,
        value: () => {
          Reflect.deleteProperty(mediaDevices, 'getUserMedia');
          return Promise.reject(new DOMException('Permission denied', 'NotAllowedError'));
        },
      });
    });
    await button.press('Enter');
    await expect(marking.getByRole('alert')).toHaveText(
      'This page may not use the camera. Allow it in the settings of your browser, then press the button again. Files and links can be marked without a camera.',
    );
    await button.press('Enter');
    await expect(marking.getByText('3 codes read.')).toBeVisible();
    await expect(marking.getByText('2 of 3 marked, 1 not: see below.')).toBeVisible();
    await expect(
      marking.getByText("the text: expected a link to work that was handed in, got 'https://example.org/'"),
    ).toBeVisible();
    await expect(marking.getByRole('table').first().locator('tbody tr')).toHaveText([/^8/, /^22/]);
    expect(await accessibilityFaults(marking, 'main')).toEqual([]);
    await marking.getByRole('button', { name: 'Stop the camera' }).press('Enter');
    await expect(marking.locator('video')).toHaveCount(0);
    await expect(button).toBeVisible();
  } finally {
    await browser.close();
  }
});

test('that there is no camera is told in words, and the rest of the page goes on', async ({ page }) => {
  await open(page, './mark/');
  const button = page.getByRole('button', { name: 'Scan QR codes' });
  await button.click();
  await expect(page.getByRole('alert')).toHaveText(
    'No camera was found on this device. Files and links can be marked without a camera.',
  );
  expect(await faintFaults(page)).toEqual([]);
  // The same work twice under one name, and a mistake made twice, are on show as often as they came.
  const twice = resultOf(SUMS, 3);
  const [one] = twice.attempts;
  if (!one) throw new Error('test: needs an answer');
  const wrong = { ...one, answer: slipOf(taskOf(one.task), 'LED forgotten') };
  const text = `http://localhost/mark/${await resultHash({ ...twice, attempts: [wrong, wrong] })}`;
  const file = { name: 'mail.txt', mimeType: 'text/plain', buffer: Buffer.from(text) };
  for (const count of [1, 2]) {
    await page.getByLabel('Files to mark').setInputFiles(file);
    await expect(page.getByText(`${count} of ${count} marked.`)).toBeVisible();
  }
  await page.getByText('Answers of each student').click();
  await expect(page.getByText('Number 3 (mail.txt)')).toHaveCount(2);
  await page.getByText('Number 3 (mail.txt)').first().click();
  await expect(page.getByText('LED forgotten: ').filter({ visible: true })).toHaveCount(2);
});
