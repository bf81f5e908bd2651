/** The circuits of a board: all links that leave one output are one circuit. */
import { wholeLink } from '../plan/index.ts';
import type { Plan, PlanLink } from '../plan/index.ts';
import { checkLink, recallLink } from '../verdict/index.ts';
import type { LinkMemory, NotedJudgement } from '../verdict/index.ts';
import type { Link } from '../wiring/index.ts';

/** All links that leave one output, solved as the one circuit that they are, with other outputs that end on the same inputs. */
export interface SolvedOutput {
  readonly links: readonly PlanLink[];
  readonly link: Link;
  readonly judgement: NotedJudgement;
}

/** The links of a board by the output that they leave. */
export function linksByOutput({ links }: Plan): readonly (readonly PlanLink[])[] {
  return [...Map.groupBy(links, ({ output }) => JSON.stringify([output.device, output.jack])).values()];
}

/** Solve all links that leave one output; there must be one at least. */
export function solveOutput(plan: Plan, links: readonly PlanLink[], memory: LinkMemory): SolvedOutput {
  const link = wholeLink(plan, links[0]!);
  return { links, link, judgement: checkLink(link, 'notes', memory) };
}

/** Solve the board output by output. */
export function solveOutputs(plan: Plan, memory: LinkMemory): readonly SolvedOutput[] {
  return linksByOutput(plan).map((links) => solveOutput(plan, links, memory));
}

/** The board solved, where no more than `most` of its circuits are not remembered yet; undefined, and nothing solved, where more are. */
export function solveRemembered(
  plan: Plan,
  memory: LinkMemory,
  most: number,
): readonly SolvedOutput[] | undefined {
  const outputs = linksByOutput(plan).map((links) => {
    const link = wholeLink(plan, links[0]!);
    return { links, link, known: recallLink(link, memory) };
  });
  if (outputs.filter(({ known }) => known === undefined).length > most) return undefined;
  return outputs.map(({ links, link, known }) => ({
    links,
    link,
    judgement: known ?? checkLink(link, 'notes', memory),
  }));
}
