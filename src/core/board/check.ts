/** The check of a whole board. */
import { boardGraph } from '../plan/index.ts';
import type { Plan } from '../plan/index.ts';
import type { LinkMemory, LinkOutcome } from '../verdict/index.ts';
import { checkChannels } from './check-channels.ts';
import { checkNetwork } from './check-network.ts';
import { leadFindings } from './check-leads.ts';
import { circuitFindings } from './check-links.ts';
import { SEVERITIES } from './findings.ts';
import type { Finding } from './findings.ts';
import { solveOutputs } from './solve-outputs.ts';

/** Everything found, worst first, and the outcome of each link in the plan's order. */
export interface BoardCheck {
  readonly findings: readonly Finding[];
  readonly outcomes: readonly LinkOutcome[];
  /** Whether nothing stands in the way: no error. */
  readonly passes: boolean;
}

/** Check a board. A memory that is kept between checks saves solving again what has not changed. */
export function checkBoard(plan: Plan, memory: LinkMemory = new Map()): BoardCheck {
  const graph = boardGraph(plan);
  const solved = solveOutputs(plan, memory);
  const found = [
    ...circuitFindings(solved),
    ...leadFindings(plan, graph, solved),
    ...checkNetwork(graph, plan, solved),
    ...checkChannels(graph, plan),
  ];
  const findings = SEVERITIES.flatMap((severity) => found.filter((one) => one.severity === severity));
  const outcomes = plan.links.map((link) => solved.find(({ links }) => links.includes(link))!.judgement);
  return { findings, outcomes, passes: !findings.some(({ severity }) => severity === 'error') };
}
