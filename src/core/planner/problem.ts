/**
 * The planning problem in numbers: which output feeds which input, at what cost.
 * A solution gives each output of the controller nothing, one chain of devices, or a hub with a chain on each outlet.
 */
import type { Choice } from '../board/index.ts';

/** A hub on offer: the sources that are its outlets, how many such hubs there are to be had, and its own shift of edges. */
export interface PlanHub {
  readonly limit: number;
  readonly shift: number;
  readonly outlets: readonly number[];
}

/** Which plans count: all, those without a hub, or those with at least one. */
export type Topology = 'any' | 'chain' | 'hub';

/** The whole problem. Sources are the devices, then outputs of the controller and outlets; targets are the devices, then the hubs. */
export interface PlanProblem {
  /** Devices to be fed. */
  readonly count: number;
  /** `ways[source][target]` are the ways to make that link, none where it cannot be; one into a hub has the hub's price in it. */
  readonly ways: readonly (readonly (readonly Choice[])[])[];
  /** The sources that are outputs of the controller. */
  readonly outputs: readonly number[];
  readonly hubs: readonly PlanHub[];
  /** Pieces of each kind of owned lead. */
  readonly owned: readonly number[];
  /** Shift of edges at each device's input; the sum along a chain, the hub's included, is at most `budget`. Any unit. */
  readonly shift: readonly number[];
  readonly budget: number;
  /** Most links between the controller and a device. */
  readonly mostHops: number;
  /** Least number of outlets left free, outputs of the controller and outlets of the hubs in use counted. */
  readonly spareOutlets: number;
  readonly topology: Topology;
}

/** What hangs on one output: `hub` -1 and at most one chain, or the number of a hub and a chain for each outlet. */
export interface OutputUse {
  readonly hub: number;
  readonly chains: readonly (readonly number[])[];
}

/** What hangs on each output. */
export type Layout = readonly OutputUse[];

/** A link from a source to a target, with the place of the output that it hangs on. */
export interface Link {
  readonly from: number;
  readonly to: number;
  readonly output: number;
}

/** A layout, the way each of its links is made, and what they cost together. */
export interface Found {
  readonly layout: Layout;
  readonly chosen: readonly Choice[];
  readonly cost: number;
}

/** How far a search has come. Costs in the reader's own figures. */
export interface Progress {
  readonly done: number;
  readonly cost: number;
  readonly bound: number;
}

/** The best layout found, and the bound that no layout can be below. `proven` when the two meet. */
export interface SearchResult {
  readonly found: Found | undefined;
  readonly bound: number;
  readonly proven: boolean;
}

/** Shifts that differ by less are equal: rounding of sums, seconds. */
const ROUNDING = 1e-12;

/** Every link of a layout in order: output by output, the hub's feed first, then chain by chain. */
export function linksOf({ count, outputs, hubs }: PlanProblem, layout: Layout): readonly Link[] {
  return layout.flatMap(({ hub, chains }, output): Link[] => {
    const source = outputs[output]!;
    const feed = hub < 0 ? [] : [{ from: source, to: count + hub, output }];
    const rest = chains.flatMap((chain, outlet) =>
      chain.map((to, at) => ({
        from: chain[at - 1] ?? (hub < 0 ? source : hubs[hub]!.outlets[outlet]!),
        to,
        output,
      })),
    );
    return [...feed, ...rest];
  });
}

/** The ways to make each of these links. */
export function waysOf({ ways }: PlanProblem, links: readonly Link[]): readonly (readonly Choice[])[] {
  return links.map(({ from, to }) => ways[from]![to]!);
}

/** Whether a chain of so many links and so much shift may hang here; `hub` is undefined straight on an output. */
export function chainFits(
  { mostHops, budget }: PlanProblem,
  length: number,
  shift: number,
  hub: PlanHub | undefined,
): boolean {
  return length + (hub ? 1 : 0) <= mostHops && shift + (hub?.shift ?? 0) <= budget + ROUNDING;
}
