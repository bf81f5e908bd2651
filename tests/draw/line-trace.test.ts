import { expect, test } from 'vitest';
import { drawTrace } from '../../src/draw/line-trace.ts';
import { ask } from '../core/arrived/ask.ts';

test('a trace shows the line sent and the line read as steps, its votes and its bytes, inside its width', () => {
  const trace = ask('90 3C 40', '00 30 00').causes[0]?.trace;
  if (!trace) throw new Error('trace: must be there');
  const { sent, line, votes, bytes, width } = drawTrace(trace, 600);
  // 90, 3C and 40 with start and stop bits change level 4, 4 and 4 times: 90 is 0 0000 1001 1, and so on, lowest bit first.
  expect(sent.match(/V/g)).toHaveLength(12);
  expect(sent.startsWith('M8.0,24H')).toBe(true);
  expect(line).not.toBe(sent);
  expect(bytes.map(({ text }) => text)).toEqual(['00*', '30*', '00*']);
  // Three frames of ten bits, three votes each.
  expect(votes).toHaveLength(90);
  for (const { x } of [...votes, ...bytes]) {
    expect(x).toBeGreaterThanOrEqual(8);
    expect(x).toBeLessThanOrEqual(width - 8);
  }
});
