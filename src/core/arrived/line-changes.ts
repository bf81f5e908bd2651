/** What a fault does to the line between a sender and a receiver. */
import type { Waveform } from '../signal/index.ts';

/** The same line with both levels exchanged. */
export function upsideDown({ before, edges }: Waveform): Waveform {
  return { before: !before, edges: edges.map(({ seconds, level }) => ({ seconds, level: !level })) };
}

/** Two outputs on one line: it is at 0 while either of them is. */
export function joined(one: Waveform, other: Waveform): Waveform {
  const edges = [
    ...one.edges.map((edge) => ({ ...edge, whose: 0 })),
    ...other.edges.map((edge) => ({ ...edge, whose: 1 })),
  ].sort((a, b) => a.seconds - b.seconds);
  const levels = [one.before, other.before];
  const before = one.before && other.before;
  const out: { seconds: number; level: boolean }[] = [];
  for (const { seconds, level, whose } of edges) {
    levels[whose] = level;
    const now = levels.every(Boolean);
    if (now !== (out.at(-1)?.level ?? before)) out.push({ seconds, level: now });
  }
  return { before, edges: out };
}

/** The line without some of its stretches of 0: `keeps` is asked of each in order. */
export function withoutPulses({ before, edges }: Waveform, keeps: () => boolean): Waveform {
  const out: { seconds: number; level: boolean }[] = [];
  let kept = true;
  for (const edge of edges) {
    if (!edge.level) kept = keeps();
    if (kept) out.push(edge);
  }
  return { before, edges: out };
}

/** A line held at 0 for a share of every period of the mains, from `startSeconds` on, as hum does to an input without its ground. */
export function hum(hertz: number, share: number, startSeconds: number, endSeconds: number): Waveform {
  const edges: { seconds: number; level: boolean }[] = [];
  for (let from = startSeconds; from < endSeconds; from += 1 / hertz) {
    edges.push({ seconds: from, level: false }, { seconds: from + share / hertz, level: true });
  }
  return { before: true, edges };
}
