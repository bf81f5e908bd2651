/** Questions to the floor as tests put them. */
import { answerArrived } from '../../../src/core/arrived/answer.ts';
import type { Answer, Question } from '../../../src/core/arrived/answer.ts';
import { rank } from '../../../src/core/arrived/fit.ts';
import type { Ranking } from '../../../src/core/arrived/fit.ts';
import type { Log } from '../../../src/core/arrived/log.ts';
import { readTyped } from '../../../src/core/arrived/read-typed.ts';
import type { SeenByte } from '../../../src/core/arrived/log.ts';
import { runThrough } from '../../../src/core/signal/index.ts';

/** Bytes of a text in hex, a star behind one that is marked. */
export function hex(text: string): readonly SeenByte[] {
  const read = readTyped(text, 'hex');
  if (read.left.length > 0) throw new Error(read.left.join('; '));
  return read.bytes;
}

/** The ranking of a log. */
export const ranked = (log: Log & { readonly sent: readonly number[] }): Ranking => runThrough(rank(log));

/** The answer for bytes sent and seen, both in hex; `sent` empty where nobody knows. */
export function ask(sent: string, seen: string, complaints: Question['complaints'] = []): Answer {
  const bytes = hex(sent).map(({ value }) => value);
  return runThrough(
    answerArrived({ ...(bytes.length > 0 ? { sent: bytes } : {}), seen: hex(seen), complaints }),
  );
}
