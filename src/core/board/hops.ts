/** What each hop adds: delay, and how much it shifts one edge against the other. */
import {
  BAUD,
  BITS_PER_FRAME,
  WORST_CLOCKS,
  WORST_CLOCKS_EARLY,
  delaysOf,
  edgeShiftSeconds,
  follow,
  gaveWayAt,
  shareOfBudget,
  trialLine,
  followerOf,
} from '../signal/index.ts';
import type { Clocks } from '../signal/index.ts';
import type { SolvedOutput } from './solve-outputs.ts';
import type { Jack } from '../wiring/index.ts';
import { outputOf, inputOf, passesOn } from '../plan/index.ts';
import type { BoardGraph, Feed, PlanLink } from '../plan/index.ts';

/** One byte on the wire, seconds: ten bits of 32 us (MIDI 1.0 Detailed Specification 4.2.1, hardware). */
export const BYTE_SECONDS = BITS_PER_FRAME / BAUD;

/** What one link of a path adds when a message has come to its far end. */
export interface HopTiming {
  readonly feed: Feed;
  /** How the device at the near end passed the message on; 'own' for the sender itself. */
  readonly by: 'own' | 'hardware' | 'software';
  /** From the end of a byte at the device before to its end at this one, seconds. */
  readonly delaySeconds: number;
  /**
   * Shift of the end of a 0 against its beginning since the edges were last made afresh, this receiver's own included, seconds;
   * below 0 where 0s have shrunk.
   */
  readonly shiftSeconds: number;
}

/** Each link of a path with its delay and the shift of edges so far. A software THRU makes its edges afresh. */
export function hopTimings(graph: BoardGraph, path: readonly Feed[]): readonly HopTiming[] {
  let shiftSeconds = 0;
  return path.map((feed, at) => {
    const output = outputOf(graph, feed);
    const by = passedBy(graph, feed, at);
    const input = inputOf(graph, feed);
    const { toOnSeconds, toOffSeconds } = delaysOf(input);
    if (by === 'software') shiftSeconds = 0;
    shiftSeconds += edgeShiftSeconds(input);
    const resent = by === 'software' ? BYTE_SECONDS + output.latencySeconds : 0;
    return { feed, by, delaySeconds: Math.max(toOnSeconds, toOffSeconds) + resent, shiftSeconds };
  });
}

function passedBy(graph: BoardGraph, feed: Feed, at: number): HopTiming['by'] {
  const device = graph.devices[feed.fromDevice];
  const passed = device && at > 0 ? passesOn(device, outputOf(graph, feed)) : 'nothing';
  return passed === 'nothing' ? 'own' : passed;
}

/** What the LED of an input carries; undefined where its link does not work, which is told elsewhere, or its part is not known. */
function litBy(
  graph: BoardGraph,
  feed: Feed,
  solved: readonly SolvedOutput[],
): { readonly dark: number; readonly bright: number } | undefined {
  if (inputOf(graph, feed).part === 'unknown') return undefined;
  const { link, input } = feed;
  const { links } = graph;
  const group = solved.find((one) => one.links.includes(links[link] as PlanLink));
  if (!group) return undefined;
  const before = group.links.slice(0, group.links.indexOf(links[link] as PlanLink));
  const branch = before.reduce((sum, { inputs }) => sum + inputs.length, input);
  const found = group.judgement.inputs[branch];
  if (!found || (found.outcome !== 'flows' && found.outcome !== 'weak')) return undefined;
  return { dark: found.idle, bright: found.active };
}

/** Whether bytes can be read at the end of a chain, by its clocks and by all that follows in it: what a change leaves alone is not sent through again. */
const READ_BEFORE = new Map<string, boolean>();

/** Chains remembered, far more than a board has; then all are forgotten (our choice). */
const MOST_REMEMBERED = 5000;

function remember(chain: string, reads: boolean): boolean {
  if (READ_BEFORE.size >= MOST_REMEMBERED) READ_BEFORE.clear();
  READ_BEFORE.set(chain, reads);
  return reads;
}

/**
 * Whether bytes can still be read at the end of each link of a path, by the same simulation that sends bytes: trial bytes follow every
 * optocoupler of the path. Clocks at the standard's bounds, either way round, and a receiver that looks once a bit.
 */
export function pathReads(
  graph: BoardGraph,
  path: readonly Feed[],
  solved: readonly SolvedOutput[],
  clocks: readonly Clocks[] = [WORST_CLOCKS, WORST_CLOCKS_EARLY],
): readonly boolean[] {
  const fresh = { chain: JSON.stringify(clocks), lines: clocks.map(trialLine) };
  let { chain, lines } = fresh;
  /** What the lines have not been sent through yet. */
  let ahead: readonly ReturnType<typeof followerOf>[] = [];
  return path.map((feed, at) => {
    if (passedBy(graph, feed, at) === 'software') [chain, lines, ahead] = [fresh.chain, fresh.lines, []];
    const follower = followerOf(inputOf(graph, feed), litBy(graph, feed, solved));
    chain += JSON.stringify(follower);
    ahead = [...ahead, follower];
    const known = READ_BEFORE.get(chain);
    if (known !== undefined) return known;
    lines = lines.map((line) => ({ ...line, arrived: ahead.reduce(follow, line.arrived) }));
    ahead = [];
    return remember(
      chain,
      lines.every((line) => gaveWayAt(line) === null),
    );
  });
}

/** The share of what a receiver bears that one input uses up: shares of a chain, added up, are never less than what it uses in all. */
export function shiftShare(jack: Jack): number {
  return shareOfBudget(edgeShiftSeconds(jack));
}
