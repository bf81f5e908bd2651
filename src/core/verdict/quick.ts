/** The outcome of a link alone, without notes, readings or words: for searches, and for advice that has to be solved. */
import type { Jack, Link } from '../wiring/index.ts';
import { makeLead } from '../wiring/index.ts';
import { judgeInputs } from './judge.ts';
import type { InputVerdict } from './judge.ts';
import { lineByLine } from './needed.ts';
import { worse } from './outcomes.ts';
import type { Outcome } from './outcomes.ts';
import { prepareLink } from './prepare.ts';

/** The worst outcome among inputs. */
export function outcomeOf(inputs: readonly InputVerdict[]): Outcome {
  return inputs.map(({ outcome }) => outcome).reduce(worse);
}

/** Quick judgement for searches: nominal only, or with corners, for the worse of the two ways grounds may be joined. */
export function quickOutcome(link: Link, corners: boolean): Outcome {
  const separate = prepareLink(link, 'separate');
  const first = outcomeOf(judgeInputs(separate, corners));
  if (!separate.model.groundMatters) return first;
  return worse(first, outcomeOf(judgeInputs(prepareLink(link, 'joined'), corners)));
}

/** Pairs of jacks remembered; a bench goes back and forth between a few. */
const PAIRS_REMEMBERED = 64;

const remembered = new Map<string, Outcome>();

/**
 * The outcome of the plainest lead between two jacks, line by line, at all corners. Asked at every change of a lead while its
 * answer hangs on the jacks alone, so the last answers are kept.
 */
export function plainLeadOutcome(output: Jack, input: Jack): Outcome {
  const key = JSON.stringify([output, input]);
  const known = remembered.get(key);
  if (known !== undefined) return known;
  const lead = makeLead(output.connector, input.connector, lineByLine(output, input));
  const outcome = quickOutcome({ output, branches: [{ input, leads: [lead] }] }, true);
  if (remembered.size >= PAIRS_REMEMBERED) remembered.clear();
  remembered.set(key, outcome);
  return outcome;
}
