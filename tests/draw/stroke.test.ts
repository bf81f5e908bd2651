import { expect, test } from 'vitest';
import { arrowhead, weightOf } from '../../src/draw/stroke.ts';
import { placeLanes } from '../../src/draw/channel.ts';
import { textBox } from '../../src/draw/text.ts';
import { pointsAlong } from './paths.ts';

test('weight grows with current, whichever way it flows: thin at 0 mA, 3 px at 5 mA and where it is not known', () => {
  expect(weightOf(0)).toBe(2);
  expect(weightOf(5e-3)).toBeCloseTo(3, 9);
  expect(weightOf(-5e-3)).toBeCloseTo(3, 9);
  expect(weightOf(null)).toBe(3);
  // 20 mA is four times 5 mA: twice the growth from thin, 2 + 2 = 4 px.
  expect(weightOf(20e-3)).toBeCloseTo(4, 9);
  expect(weightOf(1)).toBe(5);
});

test('an arrowhead points where it is headed', () => {
  const right = pointsAlong(arrowhead({ x: 100, y: 50 }, 0, 3), 100);
  const down = pointsAlong(arrowhead({ x: 100, y: 50 }, Math.PI / 2, 3), 100);
  expect(right[0]?.x).toBe(Math.max(...right.map(({ x }) => x)));
  expect(right[0]?.y).toBeCloseTo(50, 1);
  expect(down[0]?.y).toBe(Math.max(...down.map(({ y }) => y)));
});

test('lanes stay where they are wanted, spread evenly where they are too close, and keep inside their bounds', () => {
  expect(placeLanes([0, 100, 200], 30, -500, 500)).toEqual([0, 100, 200]);
  // Three lanes wanted at 100 spread round it.
  expect(placeLanes([100, 100, 100], 30, -500, 500)).toEqual([70, 100, 130]);
  expect(placeLanes([0, 0], 30, 10, 500)).toEqual([10, 40]);
  expect(placeLanes([95, 99], 30, 0, 100)).toEqual([70, 100]);
});

test('the room of a word reaches below its baseline only when a letter does', () => {
  const line = { x: 0, y: 100, anchor: 'start', size: 10 } as const;
  expect(textBox({ ...line, text: '4' }).height).toBeCloseTo(8, 9);
  expect(textBox({ ...line, text: 'ring' }).height).toBeCloseTo(10, 9);
});
