/** Links by name, the ways to make each, and what a branch of the exact search has decided. */
import type { Choice, Edge, PlanProblem } from '../board/index.ts';

/** What is decided: leads forbidden on links, and links that must be made in one way. */
export interface Rules {
  readonly banned: ReadonlySet<string>;
  readonly forced: ReadonlyMap<string, number>;
}

/** A link by name; the outlets of two hubs of one kind share theirs. */
export function edgeKey(edge: Edge): string {
  switch (edge.kind) {
    case 'start':
      return `s${edge.output}>${edge.to}`;
    case 'feed':
      return `f${edge.output}>${edge.hub}`;
    case 'outlet':
      return `h${edge.hub}.${edge.outlet}>${edge.to}`;
    case 'next':
      return `d${edge.from}>${edge.to}`;
  }
}

/** The ways to make a link. */
export function choicesAt(problem: PlanProblem, edge: Edge): readonly Choice[] {
  switch (edge.kind) {
    case 'start':
      return problem.outputs[edge.output]?.start[edge.to] ?? [];
    case 'feed':
      return problem.outputs[edge.output]?.feed[edge.hub] ?? [];
    case 'outlet':
      return problem.hubs[edge.hub]?.outlets[edge.outlet]?.[edge.to] ?? [];
    case 'next':
      return problem.next[edge.from]?.[edge.to] ?? [];
  }
}
