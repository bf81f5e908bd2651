/** The path of the current: through the input that is asked about, part by part, always along the most current. */
import { nodesOf } from '../circuit/index.ts';
import { CURRENT_TO_SPEAK_OF, OUTPUT_GROUND, inputGround } from '../wiring/index.ts';
import type { LinkPart } from '../wiring/index.ts';
import type { PartReading, StateReading } from './readings.ts';

/** One part on the path; `amperes` is positive along the path. */
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

const OUTPUT_RAIL = 'out rail';
const inputRail = (branch: number): string => `in${branch} rail`;

/** Parts that all of an input's current passes through; the one with the most current is where its path is picked up. */
const GATES: readonly LinkPart['role'][] = ['led', 'protection', 'turned-diode', 'input-resistor'];

/**
 * The path that matters for input number `branch`: the one through its LED, protection diode or input resistor, from a
 * supply and back; where that carries nothing to speak of, the path of the most current out of the output's supply.
 */
export function pathOf(reading: StateReading, branch: number): CurrentPath {
  const ways = waysOf(reading);
  const gate = gateOf(reading, branch);
  const seen = new Set(gate ? [gate.from, gate.to] : [OUTPUT_RAIL]);
  const follow = (start: string, sign: 1 | -1, ends: readonly string[]): readonly Hop[] => {
    const hops: Hop[] = [];
    let here = start;
    while (!ends.includes(here)) {
      const hop = mostCurrent(ways, here, sign, seen, branch);
      if (!hop) break;
      hops.push(hop);
      here = sign > 0 ? hop.to : hop.from;
      seen.add(here);
    }
    return hops;
  };
  const foreign = foreignFeeds(reading);
  const starts = [OUTPUT_RAIL, inputRail(branch), ...foreign.keys()];
  const before = gate ? follow(gate.from, -1, starts).toReversed() : [];
  const start = before[0]?.from ?? gate?.from ?? OUTPUT_RAIL;
  const end =
    foreign.get(start) ?? (start === OUTPUT_RAIL ? OUTPUT_GROUND : inputGround(railNumber(start) ?? branch));
  const after = follow(gate?.to ?? OUTPUT_RAIL, 1, [end]);
  const hops = [...before, ...(gate ? [gate] : []), ...after];
  return { hops, returned: hops.at(-1)?.to === end };
}

/** The node that each foreign supply feeds, and the node that its current goes back to. */
function foreignFeeds({ parts }: StateReading): ReadonlyMap<string, string> {
  return new Map(
    parts.flatMap(({ part: { role, element } }) =>
      role === 'foreign-supply' ? [nodesOf(element) as [string, string]] : [],
    ),
  );
}

/** The supply rail's input number, or undefined for the output's rail and for any other node. */
function railNumber(node: string): number | undefined {
  const match = /^in(\d+) rail$/.exec(node);
  return match ? Number(match[1]) : undefined;
}

function gateOf(reading: StateReading, branch: number): Hop | undefined {
  let best: Hop | undefined;
  for (const { part, amperes } of reading.parts) {
    const { owner, role } = part;
    if (owner.place !== 'input' || owner.branch !== branch || !GATES.includes(role)) continue;
    const carried = Math.abs(amperes);
    if (carried < CURRENT_TO_SPEAK_OF || (best && best.amperes >= carried)) continue;
    const [a, b] = nodesOf(part.element);
    best = { part, from: amperes > 0 ? a : b, to: amperes > 0 ? b : a, amperes: carried };
  }
  return best;
}

type Ways = ReadonlyMap<string, readonly PartReading[]>;

function waysOf(reading: StateReading): Ways {
  const ways = new Map<string, PartReading[]>();
  for (const one of reading.parts) {
    for (const node of nodesOf(one.part.element)) {
      const list = ways.get(node);
      if (list) list.push(one);
      else ways.set(node, [one]);
    }
  }
  return ways;
}

/**
 * The hop of the most current out of a node (`sign` 1) or into it (-1) that is to speak of, parts of other inputs only where
 * nothing else is.
 */
function mostCurrent(
  ways: Ways,
  node: string,
  sign: 1 | -1,
  seen: ReadonlySet<string>,
  branch: number,
): Hop | undefined {
  let best: Hop | undefined;
  let bestIsOurs = false;
  for (const { part, amperes } of ways.get(node) ?? []) {
    const [a, b] = nodesOf(part.element);
    const carried = sign * (node === a ? amperes : -amperes);
    const other = node === a ? b : a;
    if (carried < CURRENT_TO_SPEAK_OF || seen.has(other)) continue;
    const ours = !('branch' in part.owner) || part.owner.branch === branch;
    if (best && (bestIsOurs === ours ? best.amperes >= carried : bestIsOurs)) continue;
    best = { part, from: sign > 0 ? node : other, to: sign > 0 ? other : node, amperes: carried };
    bestIsOurs = ours;
  }
  return best;
}
