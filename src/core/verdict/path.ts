/** The path of the current: from a supply, part by part, always along the most current, until it is back. */
import { nodesOf } from '../circuit/elements.ts';
import type { LinkPart } from '../wiring/build.ts';
import { OUTPUT_GROUND, inputGround } from '../wiring/build.ts';
import { CURRENT_TO_SPEAK_OF } from '../wiring/circuits.ts';
import type { PartReading, StateReading } from './readings.ts';

/** One part on the path; `amperes` is positive along the path, `volts` is what is left at its far node. */
export interface Hop {
  readonly part: LinkPart;
  readonly from: string;
  readonly to: string;
  readonly amperes: number;
}

/** A path and where it ended: back at its supply, or at a node from which nothing to speak of goes on. */
export interface CurrentPath {
  readonly hops: readonly Hop[];
  readonly returned: boolean;
}

/** Supplies and loads feed a path; a walk never goes through them. */
const FEEDS: readonly LinkPart['role'][] = ['supply'];

/** Follow the current from the rail of the output, or of an input that feeds its own LED. */
export function currentPath(
  reading: StateReading,
  feed: 'output' | { readonly branch: number },
): CurrentPath {
  const start = feed === 'output' ? 'out rail' : `in${feed.branch} rail`;
  const end = feed === 'output' ? OUTPUT_GROUND : inputGround(feed.branch);
  return follow(reading, start, end);
}

function follow(reading: StateReading, start: string, end: string): CurrentPath {
  const byNode = new Map<string, PartReading[]>();
  for (const one of reading.parts) {
    if (FEEDS.includes(one.part.role)) continue;
    for (const node of nodesOf(one.part.element)) {
      const list = byNode.get(node);
      if (list) list.push(one);
      else byNode.set(node, [one]);
    }
  }
  const hops: Hop[] = [];
  const seen = new Set<string>([start]);
  let here = start;
  while (here !== end) {
    let best: Hop | undefined;
    for (const { part, amperes } of byNode.get(here) ?? []) {
      const [a, b] = nodesOf(part.element);
      const outward = here === a ? amperes : -amperes;
      const to = here === a ? b : a;
      if (outward < CURRENT_TO_SPEAK_OF || seen.has(to) || (best && best.amperes >= outward)) continue;
      best = { part, from: here, to, amperes: outward };
    }
    if (!best) return { hops, returned: false };
    hops.push(best);
    here = best.to;
    seen.add(here);
  }
  return { hops, returned: true };
}
