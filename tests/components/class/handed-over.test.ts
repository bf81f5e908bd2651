/** What is handed over to others: the text for another page, what that page is told, and words for a camera that is not there. */
import { beforeEach, afterEach, describe, expect, test, vi } from 'vitest';
import { sayNoCamera } from '../../../components/class/camera.ts';
import { frameText } from '../../../components/class/markup.ts';
import { linkToWork, toldOfWork } from '../../../components/class/work-told.ts';
import { resultsIn } from '../../../src/core/class/index.ts';
import type { WorkSet } from '../../../src/core/class/index.ts';
import { CLASS_SET, resultOf, studentResult } from '../../support/classroom.ts';

beforeEach(() => void vi.stubGlobal('location', { origin: 'https://school.example' }));
afterEach(() => void vi.unstubAllGlobals());

test('The text for another page lets no title end its tag or its attribute', () => {
  expect(frameText('https://a.example/embed/hand-in/#set=x', '"></iframe><script>')).toBe(
    '<iframe src="https://a.example/embed/hand-in/#set=x" title="&#34;&#62;&#60;/iframe&#62;&#60;script&#62;" width="100%" height="900" allow="clipboard-write"></iframe>',
  );
});

describe('A page around class work', () => {
  const work = (show: WorkSet['show']) => {
    const whole = resultOf({ ...CLASS_SET, show }, 8, (_, at) => (at === 0 ? 'none' : undefined));
    return { ...whole, attempts: whole.attempts.slice(0, 3) };
  };

  test.each([
    ['each', false, 2],
    ['end', false, undefined],
    ['end', true, 2],
    ['never', true, undefined],
  ] as const)('where it is told %s, handed in %s: right %s', async (show, handedIn, right) => {
    const told = await toldOfWork(work(show), handedIn);
    expect(told).toMatchObject({ title: 'Loop test', number: 8, tasks: 5, answered: 3, right, handedIn });
    expect(told.link !== undefined).toBe(handedIn);
  });

  test('gets a link that holds the work as it was handed in', async () => {
    const result = studentResult(8);
    const link = await linkToWork(result);
    expect(link).toMatch(/^https:\/\/school\.example\/mark\/#result=/);
    expect(await resultsIn('link', link)).toEqual([{ source: 'link', reading: { ok: true, value: result } }]);
    expect((await toldOfWork(result, true)).link).toBe(link);
  });
});

test.each([
  ['NotAllowedError', /^This page may not use the camera\./],
  ['NotFoundError', /^No camera was found on this device\./],
  ['NotReadableError', /^Another program uses the camera\./],
  ['AbortError', /^The camera did not start \(why\)\./],
])('A camera that fails with %s is told in words, and what goes without one', (name, words) => {
  const said = sayNoCamera(Object.assign(new Error('why'), { name }));
  expect(said).toMatch(words);
  expect(said).toMatch(/Files and links can be marked without a camera\.$/);
});
