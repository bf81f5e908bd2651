/** The verdict on a link of a board, without the long explanation, and remembered: boards repeat the same link many times. */
import { judgeInputs } from '../verdict/index.ts';
import { notesOf } from '../verdict/index.ts';
import { worse } from '../verdict/index.ts';
import type { Note, Outcome } from '../verdict/index.ts';
import { prepareLink } from '../verdict/index.ts';
import type { PreparedLink } from '../verdict/index.ts';
import { reachOf } from '../verdict/index.ts';
import { readState } from '../verdict/index.ts';
import type { Link } from '../wiring/index.ts';
import type { Grounding } from '../wiring/index.ts';
import { plainJack } from '../plan/index.ts';

/** What the core says of a link: the worse of both ways grounds can be joined, and each of them. */
export interface LinkJudgement {
  readonly outcome: Outcome;
  readonly byGrounding: Readonly<Record<Grounding, Outcome>>;
  readonly notes: readonly Note[];
}

/** Judgements by the link's own values; a page keeps one, and gives it to every check. */
export type LinkMemory = Map<string, LinkJudgement>;

/** Links remembered before the oldest are forgotten: some hundred boards' worth. */
const MOST_REMEMBERED = 4096;

/** Everything that a judgement depends on, as text; names of leads appear in notes only where an adapter is too long. */
export function linkKey({ output, branches }: Link): string {
  return JSON.stringify([plainJack(output), branches.map(({ input, leads }) => [plainJack(input), leads])]);
}

/** Solve a link in both states and at every corner, as the bench does, and collect its notes. */
export function judgeLink(link: Link, memory: LinkMemory = new Map()): LinkJudgement {
  const key = linkKey(link);
  const known = memory.get(key);
  if (known) return known;
  const judged = solve(link);
  if (memory.size >= MOST_REMEMBERED) memory.delete(memory.keys().next().value as string);
  memory.set(key, judged);
  return judged;
}

function solve(link: Link): LinkJudgement {
  const first = prepareLink(link, 'separate');
  const separate = worstInput(first);
  const readings = both(first, link);
  let joined = separate;
  if (first.model.groundMatters) {
    const second = prepareLink(link, 'joined');
    joined = worstInput(second);
    readings.push(...both(second, link));
  }
  const { parts, misfits } = first.model;
  return {
    outcome: worse(separate, joined),
    byGrounding: { separate, joined },
    notes: notesOf({ link, readings, reach: reachOf(link, parts), misfits, separate, joined }),
  };
}

function worstInput(prepared: PreparedLink): Outcome {
  return judgeInputs(prepared, true)
    .map(({ outcome }) => outcome)
    .reduce(worse);
}

function both(prepared: PreparedLink, link: Link): ReturnType<typeof readState>[] {
  return [readState(prepared, link, 'idle'), readState(prepared, link, 'active')];
}
