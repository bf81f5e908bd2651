/** What comes later is taken once, and not after it was let go. */
import { expect, test } from 'vitest';
import { latest } from '../../../components/parts/latest.ts';
import { sayError } from '../../../components/parts/say-error.ts';

test('what a promise gives is taken, and nothing is once it was let go', async () => {
  const taken: string[] = [];
  const coming = Promise.resolve('here');
  latest(coming, (value) => taken.push(`first ${value}`));
  const letGo = latest(coming, (value) => taken.push(`second ${value}`));
  letGo();
  await coming;
  await Promise.resolve();
  expect(taken).toEqual(['first here']);
});

test('an error is said by its message, and whatever else was thrown as text', () => {
  expect(sayError(new RangeError('too large'))).toBe('too large');
  expect(sayError('no room')).toBe('no room');
});
