/** Searches off the main thread how far a link goes. */
import {
  ONE_LOOK,
  WORST_CLOCKS,
  longestLead,
  mostHops,
  ownHop,
  prepareTimeLink,
  widestClockError,
} from '../../src/core/signal/index.ts';
import type { Limit, LongestLead } from '../../src/core/signal/index.ts';
import type { Link } from '../../src/core/wiring/index.ts';
import { answerOrders } from '../parts/orders.ts';

/** A link, and whether a 6N138 in it has its base resistor. */
export interface LimitsOrder {
  readonly link: Link;
  readonly baseResistor: boolean;
}

/** What is found by search on the simulation of a link. */
export interface Limits {
  readonly slow: Limit;
  readonly fast: Limit;
  readonly hops: Limit;
  readonly hopsAtClockLimits: Limit;
  /** The lead at which an edge of the line first takes longer than the standard allows. */
  readonly lead: LongestLead;
}

answerOrders<LimitsOrder, Limits>(({ link, baseResistor }) => {
  const hop = ownHop(prepareTimeLink(link), 0, baseResistor);
  return {
    slow: widestClockError('slow', { hops: [hop] }),
    fast: widestClockError('fast', { hops: [hop] }),
    hops: mostHops(hop, { receiver: ONE_LOOK }),
    hopsAtClockLimits: mostHops(hop, WORST_CLOCKS),
    lead: longestLead((metres) => withLength(link, metres)),
  };
});

/** The link with its first lead of another length. */
function withLength(link: Link, lengthMetres: number): Link {
  const branches = link.branches.map((branch) => ({
    ...branch,
    leads: branch.leads.map((lead, at) => (at === 0 ? { ...lead, lengthMetres } : lead)),
  }));
  return { ...link, branches };
}
