/** Figures of the way back from what arrived: how often it names the hidden cause, and how long an answer takes. */
import { judgeLogs } from '../core/arrived/judge.ts';
import { quantile } from './figures.ts';
import type { Figure } from './figures.ts';

const LOGS = 2000;
/** The first of the logs by which it is judged: no choice was made by any from here on. */
const FIRST_SEED = 5_000_000;

/** Every figure of what arrived; a warm-up goes first. */
export function figures(): Promise<readonly Figure[]> {
  judgeLogs(20, 1);
  const { first, three, refused, byCause, milliseconds } = judgeLogs(LOGS, FIRST_SEED);
  const share = (name: string, part: number, atLeast?: number): Figure => ({
    name: `what arrived: ${name}`,
    value: 100 * part,
    unit: '%',
    ...(atLeast === undefined ? {} : { atLeast }),
  });
  return Promise.resolve([
    { name: 'what arrived: logs with a hidden cause', value: LOGS, unit: 'logs', atLeast: LOGS },
    share('true cause first', first, 85),
    share('true cause among the first three', three, 97),
    share('fits nothing, of logs that no cause made', refused, 95),
    ...Object.entries(byCause)
      .sort(([one], [other]) => one.localeCompare(other))
      .map(([cause, entry]) => share(`first, ${cause}`, entry.first / entry.drawn)),
    { name: 'what arrived: answer, median', value: quantile(milliseconds, 0.5), unit: 'ms' },
    {
      name: 'what arrived: answer, 95 of 100 within',
      value: quantile(milliseconds, 0.95),
      unit: 'ms',
      atMost: 500,
    },
  ]);
}
