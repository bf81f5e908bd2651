/** One cause shown by its simulation: the bytes that it gives, and the line that gives them. */
import { bitCells, receive } from '../signal/index.ts';
import type { Heard, SentFrames, Waveform } from '../signal/index.ts';
import { seededChance } from '../verdict/index.ts';
import type { Candidate } from './causes.ts';
import { SURE, likeness, oddsOf, patientTo } from './compare.ts';
import { foretell } from './fit.ts';
import type { Fit } from './fit.ts';
import { codeOf, seenOf, shownAs } from './log.ts';
import type { Code, SeenByte } from './log.ts';
import { layOut } from './spacing.ts';

/** Runs of a cause of chance from which the one closest to the log is shown. */
const RUNS = 24;

/** The bytes that a fit gives for bytes sent, as its monitor shows them; of a cause of chance the run that comes closest to `seen`. */
export function givenBy(fit: Fit, sent: readonly number[], seen: readonly SeenByte[]): readonly SeenByte[] {
  const { candidate, spacing, view } = fit;
  const { wave } = layOut(sent, spacing);
  if (candidate.kind !== 'chance') return shownAs(view, foretell(candidate, sent, wave)).map(seenOf);
  const codes = seen.map(codeOf);
  let best: readonly Code[] = [];
  let most = -Infinity;
  for (let seed = 1; seed <= RUNS; seed += 1) {
    const shown = shownAs(view, candidate.run(wave, sent, seededChance(seed)));
    const found = likeness(shown.length, codes, oddsOf(shown, SURE), patientTo(most));
    if (found > most || seed === 1) [most, best] = [found, shown];
  }
  return best.map(seenOf);
}

/** A line with what was sent and what a receiver made of it, for a figure. */
export interface Trace {
  readonly bits: readonly ReturnType<typeof bitCells>[number][];
  readonly output: Waveform;
  readonly heard: readonly Heard[];
  readonly fromSeconds: number;
  readonly toSeconds: number;
}

/** Bytes that a figure has room for. */
const SHOWN_BYTES = 4;

function lineOf(candidate: Candidate, { wave }: SentFrames): Waveform {
  return candidate.kind === 'line' ? candidate.change(wave) : wave;
}

/** The line of the first bytes of a fit; of a cause that is not on the line, or strikes now and then, the line as it should be. */
export function traceOf(fit: Fit, sent: readonly number[]): Trace {
  const { candidate, spacing } = fit;
  const frames = layOut(sent.slice(0, SHOWN_BYTES), spacing);
  const output = lineOf(candidate, frames);
  const receiver = candidate.kind === 'line' ? candidate.receiver : undefined;
  const end = frames.bytes.at(-1)?.endSeconds ?? 0;
  const { heard } = receive(output, receiver);
  const ready = heard.findLast(({ readySeconds }) => Number.isFinite(readySeconds))?.readySeconds ?? end;
  return {
    bits: frames.bytes.flatMap(bitCells),
    output,
    heard,
    fromSeconds: -frames.bitSeconds / 2,
    toSeconds: Math.max(end, ready) + frames.bitSeconds,
  };
}
