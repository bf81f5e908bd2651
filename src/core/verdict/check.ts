/** The one judge of a link: as deep as is asked, and remembered where the same link comes back. */
import type { Jack, Link } from '../wiring/index.ts';
import { explain } from './explain.ts';
import type { Explanation } from './explain.ts';
import type { Findings, Judgement, LinkMemory, NotedJudgement } from './findings.ts';
import { judgeInputs } from './judge.ts';
import type { InputVerdict } from './judge.ts';
import { notesOf } from './notes.ts';
import { worse } from './outcomes.ts';
import type { Outcome } from './outcomes.ts';
import { prepareLink } from './prepare.ts';
import type { PreparedLink } from './prepare.ts';
import { conductorLines, reachOf } from './reach.ts';
import { readState } from './readings.ts';

/** Everything there is to say about a link. */
export interface LinkVerdict extends Findings, Explanation {}

/** Links remembered before the oldest are forgotten: some hundred boards' worth. */
const MOST_REMEMBERED = 4096;

/**
 * Solve a link in idle and active, grounds separate and joined, at nominal and at the corners of all tolerances.
 * @param depth how much is wanted: the outcome alone (for searches), with notes (for boards), or everything in words.
 * @param memory judgements kept between calls; without it nothing is remembered.
 * @throws when the link has no input, or a value is out of range (a programmer's mistake: files and widgets check first).
 */
export function checkLink(link: Link): LinkVerdict;
export function checkLink(link: Link, depth: 'outcome', memory?: LinkMemory): Judgement;
export function checkLink(link: Link, depth: 'notes', memory?: LinkMemory): NotedJudgement;
export function checkLink(
  link: Link,
  depth: 'outcome' | 'notes' | 'words' = 'words',
  memory?: LinkMemory,
): Judgement {
  if (link.branches.length === 0) throw new Error('link: needs at least one input, got none');
  if (depth === 'words') return lookInto(link);
  const key = memory && `${depth} ${linkKey(link)}`;
  const known = memory?.get(key as string);
  if (known) return known;
  const found = depth === 'outcome' ? judge(link, true).judgement : outcomeAndNotes(link);
  if (!memory) return found;
  if (memory.size >= MOST_REMEMBERED) memory.delete(memory.keys().next().value as string);
  memory.set(key as string, found);
  return found;
}

/** Everything that a judgement depends on, as text; names of leads appear in notes only where an adapter is too long. */
function linkKey({ output, branches }: Link): string {
  const plain = ({ direction, connector, style, circuit, part, values }: Jack): readonly unknown[] => [
    direction,
    connector,
    style,
    circuit,
    part,
    values,
  ];
  return JSON.stringify([plain(output), branches.map(({ input, leads }) => [plain(input), leads])]);
}

interface Judged {
  readonly judgement: Judgement;
  /** The circuits of the ways grounds can be joined, the reported one first. */
  readonly ways: readonly PreparedLink[];
}

/** @param quick whether corners may be left out where nominal is wrong already: the outcome is the same, worst values are not sought. */
function judge(link: Link, quick: boolean): Judged {
  const separate = prepareLink(link, 'separate');
  const ways = separate.model.groundMatters ? [separate, prepareLink(link, 'joined')] : [separate];
  const nominal = quick ? ways.map((way) => judgeInputs(way, false)) : [];
  const inputs = nominal.map(worstOf).every((outcome) => outcome === 'flows')
    ? ways.map((way) => judgeInputs(way, true))
    : nominal;
  const [apart, together = apart] = inputs.map(worstOf) as [Outcome, Outcome?];
  const outcome = worse(apart, together);
  const at = outcome === apart ? 0 : 1;
  const reported = inputs[at] as readonly InputVerdict[];
  return {
    judgement: {
      outcome,
      grounding: at === 0 ? 'separate' : 'joined',
      byGrounding: { separate: apart, joined: together },
      inputs: reported,
      decides: reported.findIndex((input) => input.outcome === outcome),
    },
    ways: at === 0 ? ways : ways.toReversed(),
  };
}

function worstOf(inputs: readonly InputVerdict[]): Outcome {
  return inputs.map(({ outcome }) => outcome).reduce(worse);
}

function outcomeAndNotes(link: Link): NotedJudgement {
  const { readings: _, reach: __, lines: ___, ...rest } = findingsOf(link);
  return rest;
}

function findingsOf(link: Link): Findings {
  const { judgement, ways } = judge(link, false);
  const readings = ways.map((way) => ({
    idle: readState(way, link, 'idle'),
    active: readState(way, link, 'active'),
  })) as [Findings['readings'], Findings['readings']?];
  const { parts, misfits } = (ways[0] as PreparedLink).model;
  const reach = reachOf(link, parts);
  const notes = notesOf({
    link,
    readings: readings.flatMap((one) => (one ? [one.idle, one.active] : [])),
    reach,
    misfits,
    byGrounding: judgement.byGrounding,
  });
  return { ...judgement, notes, readings: readings[0], reach, lines: conductorLines(link, parts) };
}

function lookInto(link: Link): LinkVerdict {
  const found = findingsOf(link);
  return { ...found, ...explain(link, found, checkLink) };
}
