/** How often the way back from a log names its hidden cause. */
import { answerArrived } from '../../../src/core/arrived/answer.ts';
import type { Answer } from '../../../src/core/arrived/answer.ts';
import { drawForeign, drawLog } from './world.ts';
import type { Drawn } from './world.ts';
import { runThrough } from '../../../src/core/signal/index.ts';

/** Shares of all logs: true cause first, among the first three, and 'fits nothing' of logs that no cause made; times of an answer. */
export interface Judged {
  readonly first: number;
  readonly three: number;
  readonly refused: number;
  readonly byCause: Readonly<Record<string, { readonly drawn: number; readonly first: number }>>;
  /** Of each answer, on the clock and of the processor: the second stays the same on a machine that does much else. */
  readonly milliseconds: readonly number[];
  readonly processorMilliseconds: readonly number[];
}

const answer = ({ log }: Drawn): Answer => runThrough(answerArrived({ ...log, complaints: [] }));

const known = new Map<string, Judged>();

/** Judge logs with hidden causes, and half as many that no cause made, by seeds from `firstSeed` on; the same again costs nothing. */
export function judgeLogs(count: number, firstSeed: number): Judged {
  const name = `${count} ${firstSeed}`;
  const before = known.get(name);
  if (before) return before;
  const byCause: Record<string, { drawn: number; first: number }> = {};
  const [milliseconds, processorMilliseconds]: [number[], number[]] = [[], []];
  let [first, three, refused] = [0, 0, 0];
  for (let at = 0; at < count; at += 1) {
    const drawn = drawLog(firstSeed + at);
    const [start, usedBefore] = [performance.now(), process.cpuUsage()];
    const { causes } = answer(drawn);
    const { user, system } = process.cpuUsage(usedBefore);
    milliseconds.push(performance.now() - start);
    processorMilliseconds.push((user + system) / 1000);
    const place = causes.findIndex(({ cause }) => cause === drawn.cause);
    const entry = (byCause[drawn.cause ?? ''] ??= { drawn: 0, first: 0 });
    entry.drawn += 1;
    if (place === 0) [first, entry.first] = [first + 1, entry.first + 1];
    if (place >= 0 && place < 3) three += 1;
  }
  const foreign = Math.floor(count / 2);
  for (let at = 0; at < foreign; at += 1) {
    if (answer(drawForeign(firstSeed + at)).state === 'fits nothing') refused += 1;
  }
  const judged = {
    first: first / count,
    three: three / count,
    refused: refused / foreign,
    byCause,
    milliseconds,
    processorMilliseconds,
  };
  known.set(name, judged);
  return judged;
}
