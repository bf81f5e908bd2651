/** The check of a whole board. */
import { boardGraph } from '../plan/index.ts';
import type { Plan, PlanLink } from '../plan/index.ts';
import type { LinkMemory, LinkOutcome } from '../verdict/index.ts';
import { checkChannels } from './check-channels.ts';
import { checkNetwork } from './check-network.ts';
import { leadFindings } from './check-leads.ts';
import { circuitFindings } from './check-links.ts';
import { SEVERITIES, finding } from './findings.ts';
import { samePlace } from './jacks.ts';
import type { Finding } from './findings.ts';
import { linksByOutput, solveOutput, solveRemembered } from './solve-outputs.ts';
import type { SolvedOutput } from './solve-outputs.ts';
import { runThrough } from '../signal/index.ts';

/** Everything found, worst first, and the outcome of each link in the plan's order. */
export interface BoardCheck {
  readonly findings: readonly Finding[];
  readonly outcomes: readonly LinkOutcome[];
  /** Whether nothing stands in the way: no error. */
  readonly passes: boolean;
}

/** How far a check is: outputs solved, of how many. */
export interface CheckProgress {
  readonly done: number;
  readonly of: number;
}

/** Check a board. A memory that is kept between checks saves solving again what has not changed. */
export function checkBoard(plan: Plan, memory: LinkMemory = new Map()): BoardCheck {
  return runThrough(checkSteps(plan, memory));
}

/** As `checkBoard`, circuit by circuit, so that whoever asks may stop after any of them. */
export function* checkSteps(plan: Plan, memory: LinkMemory): Generator<CheckProgress, BoardCheck> {
  const outputs = linksByOutput(plan);
  const solved: SolvedOutput[] = [];
  const circuits: Finding[] = [];
  for (const links of outputs) {
    const one = solveOutput(plan, links, memory);
    solved.push(one);
    circuits.push(...circuitFindings(one, memory));
    yield { done: solved.length, of: outputs.length };
  }
  return checkOf(plan, solved, circuits);
}

/** As `checkBoard`, where no more than `most` circuits have to be solved that the memory does not hold; undefined where more have. */
export function checkRemembered(plan: Plan, memory: LinkMemory, most: number): BoardCheck | undefined {
  const solved = solveRemembered(plan, memory, most);
  return (
    solved &&
    checkOf(
      plan,
      solved,
      solved.flatMap((one) => circuitFindings(one, memory)),
    )
  );
}

/** Solve the circuits that a link is part of, so that the memory holds them. @throws when there is no such link. */
export function solveLink(plan: Plan, linkName: string, memory: LinkMemory): void {
  const link = plan.links.find(({ name }) => name === linkName);
  if (!link) throw new Error(`board: no link '${linkName}'`);
  const ends = (one: PlanLink): boolean =>
    one === link || one.inputs.some((input) => link.inputs.some((other) => samePlace(input, other)));
  for (const links of linksByOutput(plan))
    if (links.some(ends)) circuitFindings(solveOutput(plan, links, memory), memory);
}

function checkOf(plan: Plan, solved: readonly SolvedOutput[], circuits: readonly Finding[]): BoardCheck {
  const graph = boardGraph(plan);
  const found = [
    // What is over its rating stands first.
    ...circuits.toSorted((a, b) => Number(b.kind === 'over-rating') - Number(a.kind === 'over-rating')),
    ...leadFindings(plan, graph, solved),
    ...checkNetwork(graph, plan, solved),
    ...checkChannels(graph, plan),
  ];
  const findings = SEVERITIES.flatMap((severity) => found.filter((one) => one.severity === severity));
  const outcomes = plan.links.map((link) => solved.find(({ links }) => links.includes(link))!.judgement);
  return { findings, outcomes, passes: !findings.some(({ severity }) => severity === 'error') };
}

/** What is known of a board before it is solved: no link has an outcome, and nothing is called good. */
export function unsolvedBoard({ links }: Plan): BoardCheck {
  const words = {
    what: 'the links of this board are not solved yet',
    why: 'What each of them does is known when all are solved.',
    mend: 'Let them be solved to the end.',
  };
  const where = { links: links.map(({ name }) => name) };
  return {
    findings: [finding('not-solved', 'error', where, words)],
    outcomes: links.map(() => ({ outcome: 'unsolved', danger: undefined })),
    passes: false,
  };
}
