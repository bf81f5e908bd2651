/** Draws builds of a link off the main thread: takes an order, sends progress, then the result or what went wrong. */
import { drawBuilds } from '../../src/core/verdict/index.ts';
import {
  WORST_CLOCKS,
  longestLead,
  mostHops,
  ownHop,
  prepareTimeLink,
  widestClockError,
} from '../../src/core/signal/index.ts';
import type { DrawProgress, ToleranceResult } from '../../src/core/verdict/index.ts';
import type { Limit, LongestLead } from '../../src/core/signal/index.ts';
import type { Link } from '../../src/core/wiring/index.ts';
import { answerOrder } from '../parts/ask-worker.ts';

/** What the page asks for. */
export type Order =
  | { readonly kind: 'builds'; readonly link: Link; readonly seed: number }
  | { readonly kind: 'limits'; readonly link: Link; readonly baseResistor: boolean };

/** What is found by search on the simulation of a link. */
export interface Limits {
  readonly slow: Limit;
  readonly fast: Limit;
  readonly hops: Limit;
  readonly hopsAtClockLimits: Limit;
  /** The lead at which an edge of the line first takes longer than the standard allows. */
  readonly lead: LongestLead;
}

/** What the worker sends. */
export type Answer =
  | { readonly kind: 'progress'; readonly progress: DrawProgress }
  | { readonly kind: 'builds'; readonly result: ToleranceResult }
  | { readonly kind: 'limits'; readonly limits: Limits };

answerOrder<Order, Answer>((order, answer) => {
  if (order.kind === 'builds') draw(order.link, order.seed, answer);
  else answer({ kind: 'limits', limits: limitsOf(order.link, order.baseResistor) });
});

function draw(link: Link, seed: number, answer: (what: Answer) => void): void {
  const drawing = drawBuilds(link, { seed });
  let step = drawing.next();
  while (!step.done) {
    answer({ kind: 'progress', progress: step.value });
    step = drawing.next();
  }
  answer({ kind: 'builds', result: step.value });
}

function limitsOf(link: Link, baseResistor: boolean): Limits {
  const hop = ownHop(prepareTimeLink(link), 0, baseResistor);
  return {
    slow: widestClockError('slow', { hops: [hop] }),
    fast: widestClockError('fast', { hops: [hop] }),
    hops: mostHops(hop),
    hopsAtClockLimits: mostHops(hop, WORST_CLOCKS),
    lead: longestLead((metres) => withLength(link, metres)),
  };
}

/** The link with its first lead of another length. */
function withLength(link: Link, lengthMetres: number): Link {
  return {
    ...link,
    branches: link.branches.map((branch) => ({
      ...branch,
      leads: branch.leads.map((lead, at) => (at === 0 ? { ...lead, lengthMetres } : lead)),
    })),
  };
}
