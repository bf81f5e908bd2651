/** Waking in slices: what the build shows of it, and that a turn lets what waits go first. */
import { expect, test } from 'vitest';
import { Turns, nextTurn } from '../../../components/parts/turns.svelte.ts';

test('before anything has started no turn has passed', () => {
  expect(new Turns(2).at).toBe(0);
});

test('a turn comes after all that was waiting for the present one', async () => {
  const order: string[] = [];
  setTimeout(() => order.push('waiting before'));
  const turn = nextTurn().then(() => order.push('turn'));
  await Promise.resolve();
  order.push('present');
  await turn;
  expect(order).toEqual(['present', 'waiting before', 'turn']);
});
