/** A link tried in every way that a page tries it: judged, and a byte sent through it with its grounds apart and joined. */
import { GROUNDINGS } from '../../src/core/wiring/index.ts';
import type { Link } from '../../src/core/wiring/index.ts';
import { sendBytes } from '../../src/core/signal/frames.ts';
import { driveLine } from '../../src/core/signal/line.ts';
import { prepareTimeLink } from '../../src/core/signal/time-link.ts';
import { checkLink } from '../../src/core/verdict/index.ts';
import { workedMilliseconds } from './worked.ts';

/** What came of it: what is wrong, if anything is, how long this process worked at it, and the most moments that a byte was solved at. */
export interface Tried {
  readonly problem: string | undefined;
  readonly judgeMilliseconds: number;
  readonly sendMilliseconds: number;
  readonly moments: number;
}

/** Moments of a byte at most, the rests before and after it included: twelve stretches of what the hardest lead takes. */
const MOST_MOMENTS = 5000;

/** Judge a link and send a byte through it. Nothing may throw, stay unsolved or be no number. */
export function tryLink(link: Link, byte: number): Tried {
  const start = workedMilliseconds();
  let problem: string | undefined;
  let judged = start;
  let moments = 0;
  try {
    problem = judge(link);
    judged = workedMilliseconds();
    for (const grounding of GROUNDINGS) {
      const sent = send(link, grounding, byte);
      problem ??= sent.problem;
      moments = Math.max(moments, sent.moments);
    }
  } catch (error) {
    problem = `throws: ${(error as Error).message}`;
  }
  return {
    problem,
    judgeMilliseconds: judged - start,
    sendMilliseconds: workedMilliseconds() - judged,
    moments,
  };
}

function judge(link: Link): string | undefined {
  const verdict = checkLink(link);
  if (verdict.outcome === 'unsolved') return `not solved: ${verdict.unsolved}`;
  const bad = JSON.stringify(verdict, (_, value: unknown) =>
    typeof value === 'number' && !Number.isFinite(value) ? 'NOT FINITE' : value,
  );
  return bad.includes('NOT FINITE') ? 'the verdict holds what is no number' : undefined;
}

function send(
  link: Link,
  grounding: (typeof GROUNDINGS)[number],
  byte: number,
): { problem: string | undefined; moments: number } {
  const time = prepareTimeLink(link, { grounding });
  const { transient, inputs, unsolved, fromSeconds, toSeconds } = driveLine(time, sendBytes([byte]).wave);
  const moments = transient.moments();
  const looked = [fromSeconds, ...moments.filter((_, at) => at % 16 === 0), toSeconds];
  const numbers = [
    ...inputs.flatMap(({ edges }) => edges.map(({ seconds }) => seconds)),
    ...looked.flatMap((when) => time.compiled.nodeNames.map((node) => transient.volts(node, when))),
  ];
  const problem = unsolved
    ? `grounds ${grounding}: ${unsolved.reason} at ${unsolved.seconds} s`
    : numbers.every(Number.isFinite)
      ? moments.length > MOST_MOMENTS
        ? `grounds ${grounding}: ${moments.length} moments`
        : undefined
      : `grounds ${grounding}: what is no number`;
  return { problem, moments: moments.length };
}
