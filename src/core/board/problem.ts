/**
 * The planning problem in numbers: which output feeds which input, at what cost.
 * A solution gives each output of the controller nothing, one chain of devices, or a hub with a chain on each outlet.
 */

/** One way to make a link: its cost, and the kinds of owned leads it takes, one piece for each mention. */
export interface Choice {
  readonly cost: number;
  readonly uses: readonly number[];
}

/** A hub on offer. `outlets[outlet][device]` are the ways to feed a device; `limit` is how many there are to be had. */
export interface HubChoice {
  readonly price: number;
  readonly limit: number;
  readonly shift: number;
  readonly outlets: readonly (readonly (readonly Choice[])[])[];
}

/** An output of the controller: ways to feed each device, and each hub. */
export interface OutputChoice {
  readonly start: readonly (readonly Choice[])[];
  readonly feed: readonly (readonly Choice[])[];
}

/** The whole problem. Empty lists of choices mean that there is no way. */
export interface PlanProblem {
  readonly count: number;
  readonly next: readonly (readonly (readonly Choice[])[])[];
  readonly outputs: readonly OutputChoice[];
  readonly hubs: readonly HubChoice[];
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

/** Which plans count: all, those without a hub, or those with at least one. */
export const TOPOLOGIES = ['any', 'chain', 'hub'] as const;
export type Topology = (typeof TOPOLOGIES)[number];

/** What hangs on one output: `hub` -1 and at most one chain, or the number of a hub and a chain for each outlet. */
export interface OutputUse {
  readonly hub: number;
  readonly chains: readonly (readonly number[])[];
}

/** What hangs on each output. */
export type Layout = readonly OutputUse[];

/** A link of a layout, and the ways to make it. */
export interface LayoutEdge {
  readonly edge: Edge;
  readonly choices: readonly Choice[];
}

/** Which link: from an output straight, from an output to a hub, from an outlet, or from device to device. */
export type Edge =
  | { readonly kind: 'start'; readonly output: number; readonly to: number }
  | { readonly kind: 'feed'; readonly output: number; readonly hub: number }
  | {
      readonly kind: 'outlet';
      readonly hub: number;
      readonly outlet: number;
      readonly to: number;
      readonly output: number;
    }
  | { readonly kind: 'next'; readonly from: number; readonly to: number };

/** Every link of a layout in order: output by output, the hub's feed first, then chain by chain. */
export function edgesOf(problem: PlanProblem, layout: Layout): readonly LayoutEdge[] {
  const edges: LayoutEdge[] = [];
  layout.forEach(({ hub, chains }, output) => {
    if (hub >= 0)
      edges.push({ edge: { kind: 'feed', output, hub }, choices: problem.outputs[output]?.feed[hub] ?? [] });
    chains.forEach((chain, outlet) => {
      chain.forEach((to, at) => {
        const from = chain[at - 1];
        if (from !== undefined) {
          edges.push({ edge: { kind: 'next', from, to }, choices: problem.next[from]?.[to] ?? [] });
        } else if (hub >= 0) {
          edges.push({
            edge: { kind: 'outlet', hub, outlet, to, output },
            choices: problem.hubs[hub]?.outlets[outlet]?.[to] ?? [],
          });
        } else {
          edges.push({
            edge: { kind: 'start', output, to },
            choices: problem.outputs[output]?.start[to] ?? [],
          });
        }
      });
    });
  });
  return edges;
}

/** Price of the hubs of a layout. */
export function hubPrices(problem: PlanProblem, layout: Layout): number {
  return layout.reduce((sum, { hub }) => sum + (hub < 0 ? 0 : (problem.hubs[hub]?.price ?? 0)), 0);
}

/** Whether a chain may hang here: links and shift of edges, counted with those of the hub. */
export function chainFits(problem: PlanProblem, chain: readonly number[], hub: number): boolean {
  const before = hub < 0 ? 0 : 1;
  const shift = chain.reduce(
    (sum, at) => sum + (problem.shift[at] ?? 0),
    hub < 0 ? 0 : (problem.hubs[hub]?.shift ?? 0),
  );
  return chain.length + before <= problem.mostHops && shift <= problem.budget + 1e-12;
}
