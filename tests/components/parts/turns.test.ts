/** Waking in slices: what the build shows of it, and that a turn lets what waits go first. */
import { afterEach, expect, test, vi } from 'vitest';
import { Behind, Due, Turns, afterPaint, inTurn } from '../../../components/parts/turns.svelte.ts';

/** Resolves when all that waits for a turn now has had it. */
const allTurns = (): Promise<void> => new Promise((resolve) => void inTurn(resolve));

test('before anything has started no turn has passed', () => {
  expect(new Turns(2).at).toBe(0);
});

test('what follows one frame behind begins with what stands there', () => {
  expect(new Behind(() => 'the first lead').now).toBe('the first lead');
});

test('a turn comes after all that was waiting for the present one', async () => {
  const order: string[] = [];
  setTimeout(() => order.push('waiting before'));
  inTurn(() => order.push('turn'));
  await Promise.resolve();
  order.push('present');
  await allTurns();
  expect(order).toEqual(['present', 'waiting before', 'turn']);
});

test('each piece of work has a turn of its own, in the order in which it asked', async () => {
  const order: string[] = [];
  inTurn(() => {
    order.push('first');
    setTimeout(() => order.push('waiting between'));
    inTurn(() => order.push('asked for later'));
  });
  inTurn(() => order.push('second'));
  await allTurns();
  expect(order).toEqual(
    ['first', 'second', 'waiting between', 'asked for later'].filter((one) => order.includes(one)),
  );
  expect(order.slice(0, 2)).toEqual(['first', 'second']);
});

test('work that is called for is done at once and once, and work that is called off never', async () => {
  const done: string[] = [];
  const early = inTurn(() => done.push('early'));
  const off = inTurn(() => done.push('off'));
  early();
  early();
  off.never();
  off();
  await allTurns();
  expect(done).toEqual(['early']);
});

test('work that fails holds up none that waits behind it', async () => {
  const failed = new Promise((resolve) => process.once('uncaughtException', resolve));
  inTurn(() => {
    throw new Error('a part that does not wake');
  });
  await allTurns();
  expect(await failed).toEqual(new Error('a part that does not wake'));
});

afterEach(() => void vi.unstubAllGlobals());

test('work after a paint waits for the frame and the turn after it, and is done once', async () => {
  const done: string[] = [];
  let paint: (() => void) | undefined;
  vi.stubGlobal('requestAnimationFrame', (frame: () => void) => (paint = frame));
  afterPaint(() => done.push('work'));
  await allTurns();
  paint?.();
  expect(done).toEqual([]);
  await allTurns();
  expect(done).toEqual(['work']);
  const early = afterPaint(() => done.push('called for'));
  early();
  paint?.();
  await allTurns();
  expect(done).toEqual(['work', 'called for']);
});

test('work after a paint is done on a page that is not on show, which paints nothing', async () => {
  vi.stubGlobal('requestAnimationFrame', () => 0);
  const done = new Promise((resolve) => afterPaint(() => resolve('done')));
  expect(await done).toBe('done');
});

/** Work that leaves its name once a frame is painted, and the list of what is done. */
function dueWork(): { due: Due; done: string[]; begin: (name: string) => void; paint: () => void } {
  const done: string[] = [];
  const frames: (() => void)[] = [];
  vi.stubGlobal('requestAnimationFrame', (frame: () => void) => frames.push(frame));
  const due = new Due();
  const begin = (name: string): void => due.afterPaint(() => done.push(name));
  return { due, done, begin, paint: () => frames.splice(0).forEach((frame) => frame()) };
}

test('what a press sets going is done after the paint, or before the next thing is set going, once', async () => {
  const { due, done, begin, paint } = dueWork();
  begin('first');
  expect(done).toEqual([]);
  begin('second');
  expect(done).toEqual(['first']);
  paint();
  await allTurns();
  expect(done).toEqual(['first', 'second']);
  due.finish();
  expect(done).toEqual(['first', 'second']);
});

test('the click that ends a press does not hurry what it set going, and the next press does', async () => {
  const { due, done, begin } = dueWork();
  begin('joined');
  due.reached();
  expect(done).toEqual([]);
  await allTurns();
  due.reached();
  expect(done).toEqual(['joined']);
});

test('what waits for a worker is dropped once the worker has done it', () => {
  const { due, done } = dueWork();
  due.wait(() => done.push('done here'));
  due.drop();
  due.finish();
  expect(done).toEqual([]);
});
