/** A press that was listened to beside the plan. */
import { expect, test } from 'vitest';
import { demoBoard } from '../../../src/core/board/demo.ts';
import { timePress } from '../../../src/core/board/one-press.ts';
import { comparePress } from '../../../src/core/arrived/presses.ts';
import type { TimedMessage } from '../../../src/core/arrived/loop-judge.ts';

/** The messages of the demo's press, each with its status byte, 2 ms apart from the third second on. */
function pressOf(plan: Parameters<typeof timePress>[0]): readonly TimedMessage[] {
  const bytes = timePress(plan).items.flatMap((item) => item.bytes);
  const messages: number[][] = [];
  for (const byte of bytes) {
    if (byte >= 0x80) messages.push([]);
    messages.at(-1)?.push(byte);
  }
  return messages.map((one, at) => ({ bytes: one, seconds: 3 + at / 500 }));
}

const plan = demoBoard();
const whole = pressOf(plan);

test('a press that sends what the plan says has no difference, and each message its time', () => {
  const { rows, right, sentence } = comparePress(plan, whole);
  expect(right).toBe(whole.length);
  expect(rows.map(({ difference }) => difference).join('')).toBe('');
  expect(rows.slice(0, 2).map(({ after }) => after)).toEqual(['0.000 ms', '2.00 ms']);
  expect(sentence).toBe(`The press sends what the plan says: ${whole.length} of ${whole.length} messages.`);
});

test('clock and sensing belong to no press', () => {
  const clock = { bytes: [0xf8], seconds: 3 };
  expect(comparePress(plan, [clock, ...whole, clock])).toEqual(comparePress(plan, whole));
});

test('a message that did not come, one that is not planned, and one that is other are told apart', () => {
  expect(comparePress(plan, whole.slice(1)).rows[0]?.difference).toBe('did not come');
  const more = { bytes: [0x90, 1, 1], seconds: 4 };
  expect(comparePress(plan, [...whole, more]).rows.at(-1)?.difference).toBe('not in the plan');
  const [first, ...rest] = whole;
  if (!first) throw new Error('demo: needs a press');
  const last = first.bytes.length - 1;
  const off = first.bytes.map((byte, at) => (at === last ? byte + 1 : byte));
  expect(comparePress(plan, [{ ...first, bytes: off }, ...rest]).rows[0]?.difference).toBe(
    `${(first.bytes[last] ?? 0) + 1} in place of ${first.bytes[last]}; one of the two counts from 0, the other from 1?`,
  );
  const [status = 0, ...data] = first.bytes;
  const channel = status & 15;
  const other = (channel + 1) % 16;
  expect(
    comparePress(plan, [{ ...first, bytes: [(status & 0xf0) | other, ...data] }, ...rest]).rows[0]
      ?.difference,
  ).toBe(`channel ${other + 1} in place of ${channel + 1}`);
});

test('without a plan every message is told in words', () => {
  const { rows, sentence } = comparePress(undefined, [{ bytes: [0xc0, 4], seconds: 1 }]);
  expect(sentence).toBe('No board plan in this browser has a press. What came is told in words.');
  expect(rows[0]?.heard).toContain('C0 04: Program change, channel 1');
});
