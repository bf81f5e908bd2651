/** What components share without a page: past and future of a value, and work off the main thread from both sides. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { Background } from '../../../components/parts/background.svelte.ts';
import { History } from '../../../components/parts/history.svelte.ts';
import { answerOrders } from '../../../components/parts/orders.ts';
import type { Numbered } from '../../../components/parts/orders.ts';
import { STATUS_WORDS, statusAndSource } from '../../../components/parts/status-words.ts';
import statuses from '../../../content/reference/statuses.json' with { type: 'json' };

describe('A history', () => {
  test('goes back and forth between what was done, and forgets the future when something else is done', () => {
    const history = new History('a');
    expect([history.canUndo, history.canRedo]).toEqual([false, false]);
    history.do('b');
    history.do('c');
    history.undo();
    expect([history.now, history.canUndo, history.canRedo]).toEqual(['b', true, true]);
    history.redo();
    expect(history.now).toBe('c');
    history.undo();
    history.do('d');
    expect(history.canRedo).toBe(false);
    history.undo();
    history.undo();
    expect(history.now).toBe('a');
  });

  test('tells each step once, so that no undoing sounds like the one before', () => {
    const history = new History('a');
    history.do('b', 'b was laid.');
    expect(history.told).toBe('b was laid.');
    history.do('c');
    history.do('d');
    expect(history.told).toBe('');
    const told: string[] = [];
    for (let step = 0; step < 3; step += 1) {
      const ahead = history.tells('undo');
      history.undo();
      told.push(history.told);
      expect(ahead).toBe(history.told);
    }
    expect(history.tells('undo')).toBe('');
    const ahead = history.tells('redo');
    history.redo();
    expect(ahead).toBe(history.told);
    expect([...told, history.told]).toEqual([
      'Undone. 2 more steps are left to undo.',
      'Undone. 1 more step is left to undo.',
      'Undone. Nothing is left to undo.',
      'Done again. 2 more steps are left to do again.',
    ]);
  });

  test('takes no step for the same value, and none beyond its ends', () => {
    const history = new History(1);
    history.do(1);
    history.undo();
    history.redo();
    expect([history.now, history.canUndo, history.canRedo]).toEqual([1, false, false]);
  });

  test('forgets its oldest steps and no others', () => {
    const history = new History(0);
    for (let step = 1; step <= 250; step++) history.do(step);
    let steps = 0;
    for (; history.canUndo; steps++) history.undo();
    expect([steps, history.now]).toEqual([200, 50]);
  });
});

/** A worker that does nothing by itself: the test answers for it. */
class IdleWorker extends EventTarget {
  readonly orders: Numbered<string>[] = [];
  ended = false;

  postMessage(order: Numbered<string>): void {
    this.orders.push(order);
  }

  terminate(): void {
    this.ended = true;
  }

  say(data: object): void {
    this.dispatchEvent(Object.assign(new Event('message'), { data }));
  }
}

describe('Work off the main thread, as the page sees it,', () => {
  const made: IdleWorker[] = [];
  const heard: string[] = [];
  const start = () =>
    new Background<string, string, number>(
      () => {
        made.push(new IdleWorker());
        return made.at(-1) as unknown as Worker;
      },
      (answer) => heard.push(answer),
    );
  beforeEach(() => {
    made.length = 0;
    heard.length = 0;
  });

  test('starts with the first order, and one worker does for all', () => {
    const work = start();
    expect([made.length, work.waiting]).toEqual([0, true]);
    work.ask('one');
    work.ask('two');
    expect(made).toHaveLength(1);
    expect(made[0]?.orders).toEqual([
      { number: 1, order: 'one' },
      { number: 2, order: 'two' },
    ]);
  });

  test('can be woken before the first order, by the same worker', () => {
    const work = start();
    work.wake();
    expect([made.length, work.busy]).toEqual([1, false]);
    work.ask('one');
    expect(made).toHaveLength(1);
  });

  test('counts only what is said of the newest order', () => {
    const work = start();
    work.ask('one');
    work.ask('two');
    made[0]?.say({ number: 1, answer: 'late' });
    expect([work.answer, work.busy, heard]).toEqual([undefined, true, []]);
    made[0]?.say({ number: 2, progress: 0.5 });
    expect(work.progress).toBe(0.5);
    made[0]?.say({ number: 2, answer: 'good' });
    expect([work.answer, work.busy, work.waiting, heard]).toEqual(['good', false, false, ['good']]);
  });

  test('keeps the answer it had while the next is worked out', () => {
    const work = start();
    work.ask('one');
    made[0]?.say({ number: 1, answer: 'first' });
    work.ask('two');
    expect([work.answer, work.waiting]).toEqual(['first', true]);
  });

  test('ends when it is called off, and starts anew with the next order', () => {
    const work = start();
    work.ask('one');
    work.cancel();
    expect([made[0]?.ended, work.busy]).toEqual([true, false]);
    work.ask('two');
    expect(made).toHaveLength(2);
    made[1]?.say({ number: 2, answer: 'second' });
    expect(work.answer).toBe('second');
  });

  test('says what went wrong, and is no longer busy', () => {
    const work = start();
    work.ask('one');
    made[0]?.say({ number: 1, problem: 'no such jack' });
    expect([work.problem, work.busy, work.waiting]).toEqual(['no such jack', false, false]);
    work.ask('two');
    expect(work.problem).toBe('');
    made[1]?.dispatchEvent(Object.assign(new Event('error'), { message: '' }));
    expect(work.problem).toBe('the work in the background could not start');
  });
});

describe('Work off the main thread, as the worker sees it,', () => {
  const said: unknown[] = [];
  let order: ((event: MessageEvent) => void) | undefined;
  beforeEach(() => {
    said.length = 0;
    vi.stubGlobal('addEventListener', (_: string, hear: typeof order) => (order = hear));
    vi.stubGlobal('postMessage', (what: unknown) => said.push(what));
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
    vi.unstubAllGlobals();
  });
  const ask = (number: number, what: string): void =>
    order?.({ data: { number, order: what } } as MessageEvent);

  test('puts the number of the order on all it says', () => {
    answerOrders<string, string, number>((what, tell) => {
      tell(1);
      return what.toUpperCase();
    });
    ask(7, 'a');
    vi.runAllTimers();
    expect(said).toEqual([
      { number: 7, progress: 1 },
      { number: 7, answer: 'A' },
    ]);
  });

  test('tells what was thrown in words, and goes on with the next order', () => {
    answerOrders<string, string>((what) => {
      if (what === 'bad') throw new Error('no such jack');
      return what;
    });
    ask(1, 'bad');
    vi.runAllTimers();
    ask(2, 'good');
    vi.runAllTimers();
    expect(said).toEqual([
      { number: 1, problem: 'no such jack' },
      { number: 2, answer: 'good' },
    ]);
  });

  test('works on the newest order alone when several have come in', () => {
    answerOrders<string, string>((what) => what);
    ask(1, 'old');
    ask(2, 'older than the next');
    ask(3, 'new');
    vi.runAllTimers();
    expect(said).toEqual([{ number: 3, answer: 'new' }]);
  });
});

describe('Marks of trust', () => {
  test('have the words of the page of sources', () => {
    for (const [mark, words] of Object.entries(STATUS_WORDS))
      expect(statuses.find(({ id }) => id === mark)?.words).toBe(words);
  });

  test('are said once where the source says the same', () => {
    expect(statusAndSource('P', STATUS_WORDS.P)).toBe(STATUS_WORDS.P);
    expect(statusAndSource('C', 'a data sheet')).toBe(`a data sheet (${STATUS_WORDS.C})`);
  });
});
