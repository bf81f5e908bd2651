/** Figures of the way back from what arrived: how often it names the hidden cause, and how long an answer takes. */
import { judgeLogs } from '../core/arrived/judge.ts';
import { quantile } from './figures.ts';
import type { Figure } from './figures.ts';

/** Logs with a hidden cause, and half as many that no cause made; the short form has a quarter of them. */
const [LOGS, FEWER_LOGS] = [2000, 500];
/** The first of the logs by which it is judged: no choice was made by any from here on. */
const FIRST_SEED = 5_000_000;

/** Every figure of what arrived; a warm-up goes first. */
export function figures({ short }: { readonly short: boolean }): Promise<readonly Figure[]> {
  judgeLogs(20, 1);
  const logs = short ? FEWER_LOGS : LOGS;
  const { first, three, refused, byCause, milliseconds, processorMilliseconds } = judgeLogs(logs, FIRST_SEED);
  const share = (name: string, part: number, atLeast?: number): Figure => ({
    name: `what arrived: ${name}`,
    value: 100 * part,
    unit: '%',
    ...(atLeast === undefined ? {} : { atLeast }),
  });
  return Promise.resolve([
    { name: 'what arrived: logs with a hidden cause', value: logs, unit: 'logs', atLeast: logs },
    share('true cause first', first, 85),
    share('true cause among the first three', three, 97),
    share('fits nothing, of logs that no cause made', refused, 95),
    ...Object.entries(byCause)
      .sort(([one], [other]) => one.localeCompare(other))
      .map(([cause, entry]) => share(`first, ${cause}`, entry.first / entry.drawn)),
    ...times('on the clock', milliseconds, 500),
    ...times('of the processor', processorMilliseconds),
  ]);
}

/** The middle of some times and what 95 of 100 are within, with the bound for that where there is one. */
function times(by: string, list: readonly number[], atMost?: number): readonly Figure[] {
  const name = `what arrived: answer, ${by}`;
  return [
    { name: `${name}, median`, value: quantile(list, 0.5), unit: 'ms' },
    {
      name: `${name}, 95 of 100 within`,
      value: quantile(list, 0.95),
      unit: 'ms',
      ...(atMost === undefined ? {} : { atMost }),
    },
  ];
}
