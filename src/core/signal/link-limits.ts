/** How far a link goes before bytes are lost, by search on its simulation, and the same in words beside the standard's bounds. */
import { STANDARD_METRES } from '../wiring/index.ts';
import type { Link } from '../wiring/index.ts';
import { ONE_LOOK, WORST_CLOCKS } from './bit-budget.ts';
import type { Clocks } from './bit-budget.ts';
import { STANDARD_EDGE_SECONDS, longestLead } from './edge-times.ts';
import type { LongestLead } from './edge-times.ts';
import { STANDARD_CLOCK_ERROR } from './frames.ts';
import { mostHops, widestClockError } from './limits.ts';
import type { Limit } from './limits.ts';
import { stageOf } from './line.ts';
import { sayMicroseconds } from './say-time.ts';
import { ownHop } from './send.ts';
import { prepareTimeLink } from './time-link.ts';
import type { TimeLink } from './time-link.ts';

/** What is found by search on the simulation of a link. Clock errors are fractions, hops are counts. */
interface LinkLimits {
  readonly slow: Limit;
  readonly fast: Limit;
  readonly hops: Limit;
  readonly hopsAtClockLimits: Limit;
  /** The lead at which an edge of the line first takes longer than the standard allows. */
  readonly lead: LongestLead;
}

/** One line of the table of limits, all in words. */
export interface LimitRow {
  readonly what: string;
  readonly found: string;
  readonly gaveWay: string;
  readonly bound: string;
}

/**
 * Most equal links in a row that still deliver every byte, each with its lead and the optocoupler at its end; the last one is the
 * receiver's own. `baseResistor`: whether a 6N138 has its base resistor. @throws RangeError for impossible clocks.
 */
export function mostLinks(time: TimeLink, clocks: Clocks, baseResistor = true): Limit {
  return mostHops(ownHop(time, 0, baseResistor), { ...clocks, link: stageOf(time) });
}

/** Every limit of a link. Clocks are tried with a receiver that votes on three samples, chains with one that looks once a bit. */
export function linkLimits(link: Link, baseResistor: boolean): LinkLimits {
  const time = prepareTimeLink(link);
  const once = { hops: [ownHop(time, 0, baseResistor)], link: stageOf(time) };
  return {
    slow: widestClockError('slow', once),
    fast: widestClockError('fast', once),
    hops: mostLinks(time, { receiver: ONE_LOOK }, baseResistor),
    hopsAtClockLimits: mostLinks(time, WORST_CLOCKS, baseResistor),
    lead: longestLead((metres) => withLength(link, metres)),
  };
}

/** The link with its first lead of another length. */
function withLength(link: Link, lengthMetres: number): Link {
  const branches = link.branches.map((branch) => ({
    ...branch,
    leads: branch.leads.map((lead, at) => (at === 0 ? { ...lead, lengthMetres } : lead)),
  }));
  return { ...link, branches };
}

const FAR = 'nothing gave way as far as was looked';
/** What is said of chains: common practice, no source. */
const ADVICE = 'about three, then faster parts';
const BOUND = `${STANDARD_CLOCK_ERROR * 100} %`;

const percent = (share: number): string => `${(share * 100).toFixed(2)} %`;

/** The limits as a table, each beside the standard's bound or the usual advice. */
export function limitRows({ slow, fast, hops, hopsAtClockLimits, lead }: LinkLimits): readonly LimitRow[] {
  const row = (what: string, { value, gaveWay }: Limit, say: (value: number) => string, bound: string) => ({
    what,
    found: say(value),
    gaveWay: gaveWay?.why ?? FAR,
    bound,
  });
  const edge = sayMicroseconds(STANDARD_EDGE_SECONDS);
  return [
    row('sender too slow', slow, percent, `${BOUND} at each end`),
    row('sender too fast', fast, percent, `${BOUND} at each end`),
    row('links in a chain, clocks equal', hops, String, ADVICE),
    row(`links in a chain, clocks ${BOUND} apart each way`, hopsAtClockLimits, String, ADVICE),
    {
      what: 'length of the lead',
      found: `${lead.slow === null ? 'more than ' : ''}${lead.metres.toFixed(1)} m`,
      gaveWay:
        lead.slow === null
          ? FAR
          : `the current ${lead.slow === 'toActiveSeconds' ? 'rises' : 'falls'} in more than ${edge}`,
      bound: `${STANDARD_METRES} m, edges under ${edge} at the standard's receiver; to hold the lead to it is our reading`,
    },
  ];
}
