/** Keys on a drawing: a press is a press by Enter and by the space bar, and every other key is for whoever asks for it. */
import { expect, test } from 'vitest';
import { pressKeys } from '../../../components/figures/pointer.ts';

/** What becomes of one key: whether the page lets it be, and who heard it. */
function hear(
  key: string,
  presses: boolean,
  asks: boolean,
): { readonly stopped: boolean; readonly heard: string[] } {
  const heard: string[] = [];
  let stopped = false;
  const event = { key, preventDefault: () => (stopped = true) } as unknown as KeyboardEvent;
  const listen = pressKeys(
    presses ? () => heard.push('press') : undefined,
    asks ? (other) => heard.push(other.key) : undefined,
  );
  listen(event);
  return { stopped, heard };
}

test('Enter and the space bar press, and the page does not scroll by them', () => {
  for (const key of ['Enter', ' '])
    expect(hear(key, true, true)).toEqual({ stopped: true, heard: ['press'] });
});

test('another key is handed on as it came, and goes nowhere where nobody asks for it', () => {
  expect(hear('Delete', true, true)).toEqual({ stopped: false, heard: ['Delete'] });
  expect(hear('ArrowUp', true, false)).toEqual({ stopped: false, heard: [] });
});

test('a part that is not pressed leaves both keys to the page', () => {
  for (const key of ['Enter', ' ']) expect(hear(key, false, true)).toEqual({ stopped: false, heard: [] });
});
