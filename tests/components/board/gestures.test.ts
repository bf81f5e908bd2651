/** Pointer and fingers on the drawn board, with events made by hand. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { MOVES, gripAt, isDrag, listenToPinch } from '../../../components/board/gestures.ts';

/** What the page's elements are to a gesture: data of their own or of what they stand in. */
class FakeElement extends EventTarget {
  readonly held: Readonly<Record<string, string>> | undefined;

  constructor(held?: Readonly<Record<string, string>>) {
    super();
    this.held = held;
  }

  closest(): { readonly dataset: Readonly<Record<string, string>> } | null {
    return this.held ? { dataset: this.held } : null;
  }
}

beforeEach(() => void vi.stubGlobal('Element', FakeElement));
afterEach(() => void vi.unstubAllGlobals());

describe('A grip', () => {
  test('is the jack, else the device, else the paper under the pointer', () => {
    expect(gripAt(new FakeElement({ device: 'hub', jack: 'IN' }))).toEqual({
      kind: 'jack',
      device: 'hub',
      jack: 'IN',
    });
    expect(gripAt(new FakeElement({ device: 'hub' }))).toEqual({ kind: 'device', device: 'hub' });
    expect(gripAt(new FakeElement())).toEqual({ kind: 'paper' });
    expect(gripAt(null)).toEqual({ kind: 'paper' });
  });
});

describe('A drag', () => {
  const drag = (x: number, y: number): boolean =>
    isDrag({ grip: { kind: 'paper' }, from: { x: 10, y: 10 }, to: { x: 10 + x, y: 10 + y } });

  test('begins when the pointer went further than a hand trembles, in any direction', () => {
    expect([drag(0, 0), drag(3, 4), drag(0, -5)]).toEqual([false, false, false]);
    expect([drag(4, 4), drag(-6, 0), drag(0, -5.1)]).toEqual([true, true, true]);
  });
});

describe('Arrow keys', () => {
  test('undo each other in pairs', () => {
    for (const [there, back] of [
      ['ArrowLeft', 'ArrowRight'],
      ['ArrowUp', 'ArrowDown'],
    ] as const) {
      const sum = [0, 1].map((axis) => (MOVES[there]?.[axis] ?? NaN) + (MOVES[back]?.[axis] ?? NaN));
      expect(sum).toEqual([0, 0]);
    }
  });
});

describe('A pinch', () => {
  /** A touch event with fingers at these places. */
  const touch = (name: string, ...at: readonly (readonly [number, number])[]): Event =>
    Object.assign(new Event(name, { cancelable: true }), {
      touches: at.map(([clientX, clientY]) => ({ clientX, clientY })),
    });
  const heard: (readonly [number, number, number])[] = [];
  let paper = new FakeElement();
  let stop: () => void = () => undefined;

  beforeEach(() => {
    heard.length = 0;
    paper = new FakeElement();
    stop = listenToPinch(paper as unknown as HTMLElement, (factor, { x, y }) => heard.push([factor, x, y]));
  });

  test('zooms by how much further apart the fingers are, about the point between them', () => {
    paper.dispatchEvent(touch('touchstart', [0, 0], [100, 0]));
    paper.dispatchEvent(touch('touchmove', [0, 0], [200, 0]));
    paper.dispatchEvent(touch('touchmove', [0, 0], [200, 100]));
    expect(heard[0]).toEqual([2, 100, 0]);
    // From 200 apart to the diagonal of 200 by 100.
    expect(heard[1]?.[0]).toBeCloseTo(Math.sqrt(5) / 2, 9);
    expect(heard[1]?.slice(1)).toEqual([100, 50]);
  });

  test('keeps the page from scrolling only while there are two fingers', () => {
    const one = touch('touchmove', [5, 5]);
    paper.dispatchEvent(touch('touchstart', [0, 0]));
    paper.dispatchEvent(one);
    paper.dispatchEvent(touch('touchstart', [0, 0], [0, 50]));
    const two = touch('touchmove', [0, 0], [0, 25]);
    paper.dispatchEvent(two);
    expect([one.defaultPrevented, two.defaultPrevented, heard.length]).toEqual([false, true, 1]);
  });

  test('does not begin from fingers in one place, nor in the middle of a move', () => {
    paper.dispatchEvent(touch('touchstart', [7, 7], [7, 7]));
    paper.dispatchEvent(touch('touchmove', [0, 0], [9, 9]));
    expect(heard).toEqual([]);
  });

  test('is no longer heard once it was stopped', () => {
    paper.dispatchEvent(touch('touchstart', [0, 0], [100, 0]));
    stop();
    paper.dispatchEvent(touch('touchmove', [0, 0], [200, 0]));
    expect(heard).toEqual([]);
  });
});
