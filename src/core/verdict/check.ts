/** The one judge of a link: as deep as is asked, and remembered where the same link comes back. */
import type { Branch, Jack, Link } from '../wiring/index.ts';
import { explain } from './explain.ts';
import type { Explanation } from './explain.ts';
import type { Findings, Judgement, LinkMemory, NotedJudgement } from './findings.ts';
import { judgeInputs } from './judge.ts';
import type { InputVerdict, InputsJudged } from './judge.ts';
import { namedLinks } from './named-parts.ts';
import { notesOf } from './notes.ts';
import { worse } from './outcomes.ts';
import type { Outcome } from './outcomes.ts';
import { dangerOf } from './overloads.ts';
import { prepareLink, readInput, solveState } from './prepare.ts';
import type { InputReading, PreparedLink } from './prepare.ts';
import { conductorLines, pin2MeetsShell, reachOf } from './reach.ts';
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
export function checkLink(link: Link, depth?: 'words', memory?: LinkMemory): LinkVerdict;
export function checkLink(link: Link, depth: 'outcome', memory?: LinkMemory): Judgement;
export function checkLink(link: Link, depth: 'notes', memory?: LinkMemory): NotedJudgement;
export function checkLink(link: Link, depth: Depth = 'words', memory?: LinkMemory): Judgement {
  if (link.branches.length === 0) throw new Error('link: needs at least one input, got none');
  if (!memory) return checkAnew(link, depth);
  const key = memoryKey(link, depth);
  const known = memory.get(key);
  if (known) return known;
  const found = checkAnew(link, depth);
  if (memory.size >= MOST_REMEMBERED) memory.delete(memory.keys().next().value as string);
  memory.set(key, found);
  return found;
}

/** The notes of a link as `checkLink` would give them, without solving anything; undefined where they are not remembered. */
export function recallLink(link: Link, memory: LinkMemory): NotedJudgement | undefined {
  // What stands under this depth was put there by `checkLink`, with notes.
  return memory.get(memoryKey(link, 'notes')) as NotedJudgement | undefined;
}

type Depth = 'outcome' | 'notes' | 'words';

function checkAnew(link: Link, depth: Depth): Judgement {
  switch (depth) {
    case 'outcome':
      return judge(link, true).judgement;
    case 'notes':
      return outcomeAndNotes(link);
    case 'words':
      return lookInto(link);
  }
}

function memoryKey(link: Link, depth: Depth): string {
  return `${depth} ${linkKey(link)}`;
}

/** Everything that a judgement depends on, as text; names of leads appear in notes only where an adapter is too long. */
function linkKey({ output, branches, rivals = [] }: Link): string {
  const plain = ({
    direction,
    connector,
    style,
    circuit,
    part,
    values,
    extras,
  }: Jack): readonly unknown[] => [direction, connector, style, circuit, part, values, extras ?? []];
  const ends = (all: readonly (Branch & { readonly shares?: number })[]): readonly unknown[] =>
    all.map(({ input, leads, shares }) => [plain(input), leads, shares]);
  return JSON.stringify([
    plain(output),
    ends(branches),
    rivals.map((rival) => [plain(rival.output), ends(rival.branches)]),
  ]);
}

interface Judged {
  readonly judgement: Judgement;
  /** The circuits of the ways grounds can be joined, the reported one first. */
  readonly ways: readonly PreparedLink[];
}

/** @param quick whether corners may be left out where nominal is wrong already: the outcome is the same, worst values are not sought. */
function judge(link: Link, quick: boolean): Judged {
  const all = namedLinks(link).map(({ link: named, part }) => ({ part, judged: judgeNamed(named, quick) }));
  if (all.length === 0) return judgeNamed(link, quick);
  const { judged } = all.reduce((least, one) => (leavesLess(one.judged, least.judged) ? one : least));
  const byPart = all.flatMap(({ part, judged: { judgement } }) =>
    part === undefined ? [] : [{ part, outcome: judgement.outcome }],
  );
  return { ...judged, judgement: { ...judged.judgement, byPart } };
}

/** Whether one leaves less than another: a part over its rating first, then the outcome, then the share of what is needed. */
function leavesLess({ judgement: one }: Judged, { judgement: other }: Judged): boolean {
  const [danger, known] = [one.danger, other.danger].map((text) => Number(text !== undefined)) as [
    number,
    number,
  ];
  if (danger !== known) return danger > known;
  if (one.outcome !== other.outcome) return worse(one.outcome, other.outcome) === one.outcome;
  return marginOf(one) < marginOf(other);
}

function marginOf({ inputs, decides }: Judgement): number {
  const { worstActive, on } = inputs[decides] as InputVerdict;
  return worstActive / on;
}

function judgeNamed(link: Link, quick: boolean): Judged {
  const separate = prepareLink(link, 'separate');
  const ways = separate.model.groundMatters ? [separate, prepareLink(link, 'joined')] : [separate];
  const nominal = quick ? ways.map((way) => judgeInputs(way, false)) : [];
  const found = nominal.map(worstOf).every((outcome) => outcome === 'flows')
    ? ways.map((way) => judgeInputs(way, true))
    : nominal;
  const [apart, together = apart] = found.map(worstOf) as [Outcome, Outcome?];
  const outcome = worse(apart, together);
  const at = outcome === apart ? 0 : 1;
  const { inputs, unsolved } = found[at] as InputsJudged;
  return {
    judgement: {
      outcome,
      danger: dangerOf(ways),
      link,
      byPart: [],
      grounding: at === 0 ? 'separate' : 'joined',
      byGrounding: { separate: apart, joined: together },
      inputs,
      decides: inputs.findIndex((input) => input.outcome === outcome),
      unsolved,
    },
    ways: at === 0 ? ways : ways.toReversed(),
  };
}

function worstOf({ inputs }: InputsJudged): Outcome {
  return inputs.map(({ outcome }) => outcome).reduce(worse);
}

function outcomeAndNotes(link: Link): NotedJudgement {
  const { readings: _, reach: __, lines: ___, ...rest } = findingsOf(link);
  return rest;
}

function findingsOf(given: Link): Findings {
  const { judgement, ways } = judge(given, false);
  const { link } = judgement;
  const readings = ways.map((way) => ({
    idle: readState(way, link, 'idle'),
    active: readState(way, link, 'active'),
  })) as [Findings['readings'], Findings['readings']?];
  const { parts, misfits } = (ways[0] as PreparedLink).model;
  const reach = reachOf(link, parts);
  const notes = notesOf({
    judgement,
    readings: readings.flatMap((one) => (one ? [one.idle, one.active] : [])),
    reach,
    misfits,
    shellOnPin2: pin2MeetsShell(link, parts),
    together: together(ways[0] as PreparedLink, judgement),
  });
  return { ...judgement, notes, readings: readings[0], reach, lines: conductorLines(link, parts) };
}

/** What the input that decides gets while all outputs that end on it send at once; undefined where it has one alone. */
function together(way: PreparedLink, { link, decides }: Judgement): InputReading | undefined {
  if (link.rivals === undefined) return undefined;
  const solved = solveState(
    way,
    'active',
    link.rivals.map(() => 'active'),
  );
  return solved.ok ? readInput(way, decides) : undefined;
}

function lookInto(link: Link): LinkVerdict {
  const found = findingsOf(link);
  return { ...found, ...explain(link, found, checkLink) };
}
