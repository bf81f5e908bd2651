/** From a plan to the planning problem: who can feed whom, with which leads, at what cost. */
import { breakoutCost } from '../board/index.ts';
import { edgeShiftSeconds } from '../wiring/index.ts';
import { EDGE_BUDGET_SECONDS } from '../board/index.ts';
import type { LinkMemory } from '../verdict/index.ts';
import { bestOf, offersOf, waysToJoin } from '../board/index.ts';
import type { OfferedChoice } from '../board/index.ts';
import { onlyCarries, speaks } from '../plan/index.ts';
import { MAKING_DEFAULTS, PLAN_LIMITS, WISH_DEFAULTS, wholeDevice } from '../plan/index.ts';
import type { Plan, WholeDevice, WholeJack } from '../plan/index.ts';
import type { HubChoice, OutputChoice, PlanProblem, Topology } from '../board/index.ts';
import { isPlaced, jackPoint, leadMetres, waysRound } from '../plan/index.ts';

/** The problem, and the devices that its numbers stand for. */
export interface BoardProblem {
  readonly problem: PlanProblem;
  readonly controller: WholeDevice;
  readonly outputs: readonly WholeJack[];
  readonly devices: readonly WholeDevice[];
  readonly hubs: readonly WholeDevice[];
  /** For each hub, the number of its device in the plan, or -1 for one on offer. */
  readonly hubPlaces: readonly number[];
}

/** What a planned device has: it speaks by jacks, listens, and neither sends of its own nor only carries. */
function isListener(device: WholeDevice): boolean {
  return device.talks === 'jacks' && !speaks(device) && !onlyCarries(device);
}

/**
 * Jacks by which a device can pass its input on, set to THRU where a menu does that. One that shares its hole with the input
 * needs a breakout lead, which is soldered; with a second input beside it, whether it does hangs on the plan, and it is left out.
 */
function forwarders(device: WholeDevice, soldering: boolean): readonly WholeJack[] {
  return device.jacks.filter(
    ({ direction, role, sharesHole }) =>
      direction === 'out' &&
      role !== 'plain' &&
      (sharesHole === '' || (soldering && inputs(device).length === 1)),
  );
}

const inputs = (device: WholeDevice): readonly WholeJack[] =>
  device.jacks.filter(({ direction }) => direction === 'in');

/** Edges shift most at the slowest input of a device, seconds. */
function shiftOf(device: WholeDevice): number {
  return Math.max(0, ...inputs(device).map(edgeShiftSeconds));
}

/**
 * Put the problem together: the first controller's outputs, every listening device, the hubs on the board and on offer.
 * Yields after each device, since every pair of jacks is solved. Returns a message where there is nothing to plan.
 */
export function* boardProblem(plan: Plan, memory: LinkMemory): Generator<number, BoardProblem | string> {
  const all = plan.devices.map(wholeDevice);
  const controller = all.find((device) => speaks(device) && device.talks === 'jacks');
  if (!controller) return 'devices: expected a controller with jacks, got none';
  const outputs = controller.jacks.filter(({ direction, role }) => direction === 'out' && role !== 'thru');
  if (outputs.length === 0) return `devices: expected an output on '${controller.name}', got none`;
  const devices = all.filter(isListener);
  if (devices.length === 0) return 'devices: expected a device to be fed, got none';
  const wishes = plan.wishes ?? WISH_DEFAULTS;
  const isHub = (device: WholeDevice): boolean =>
    device.talks === 'jacks' && (device.kind === 'hub' || device.kind === 'converter');
  const onBoard = all.flatMap((device, at) => (isHub(device) ? [{ device, at }] : []));
  const offered = (plan.hubs ?? []).map((device) => ({
    // A hub that is not bought yet has no place: its leads are taken as of the usual length.
    device: { ...wholeDevice(device), widthCentimetres: 0, depthCentimetres: 0 },
    at: -1,
  }));
  const hubs = wishes.noHub ? [] : [...onBoard, ...offered].filter(({ device }) => inputs(device).length > 0);

  const offers = offersOf(
    plan.stock ?? [],
    wishes.noSoldering ? undefined : (plan.making ?? MAKING_DEFAULTS),
    memory,
  );
  const ways = waysRound(all);
  const metres = new Map<string, number>();
  const wayMetres = (from: WholeDevice, jack: WholeJack, to: WholeDevice, input: WholeJack): number => {
    if (!isPlaced(from) || !isPlaced(to)) return 0;
    const key = JSON.stringify([from.name, jack.name, to.name, input.name]);
    const known = metres.get(key);
    if (known !== undefined) return known;
    const targets = [...devices, ...hubs.map(({ device }) => device)].filter(isPlaced).flatMap((device) =>
      inputs(device).map((one) => ({
        key: JSON.stringify([from.name, jack.name, device.name, one.name]),
        point: jackPoint(device, one),
      })),
    );
    const lengths = ways.lengths(
      jackPoint(from, jack),
      targets.map(({ point }) => point),
    );
    targets.forEach((target, at) => metres.set(target.key, leadMetres(lengths[at] ?? 0)));
    return metres.get(key) ?? 0;
  };
  /** What the breakout lead costs that a used input and this output of one hole need. */
  const holeCost = (from: WholeDevice, jack: WholeJack): number =>
    jack.sharesHole === '' || from === controller ? 0 : breakoutCost(plan.making, jack.connector);
  const join = (from: WholeDevice, jacks: readonly WholeJack[], to: WholeDevice): readonly OfferedChoice[] =>
    bestOf(
      jacks.flatMap((jack) =>
        inputs(to).flatMap((input) =>
          waysToJoin(
            offers,
            { device: from, jack },
            { device: to, jack: input },
            wayMetres(from, jack, to, input),
          ).map((way) => ({ ...way, cost: way.cost + holeCost(from, jack) })),
        ),
      ),
    );

  const next: (readonly OfferedChoice[])[][] = [];
  for (const from of devices) {
    next.push(
      devices.map((to) => (to === from ? [] : join(from, forwarders(from, !wishes.noSoldering), to))),
    );
    yield next.length / (devices.length + hubs.length + outputs.length);
  }
  const hubChoices: HubChoice[] = [];
  for (const { device, at } of hubs) {
    const outlets = device.jacks.filter(
      ({ direction, sharesHole }) =>
        direction === 'out' && (sharesHole === '' || (!wishes.noSoldering && inputs(device).length === 1)),
    );
    hubChoices.push({
      price: at < 0 || device.toBuy ? device.price : 0,
      limit: at < 0 ? Infinity : 1,
      shift: shiftOf(device),
      outlets: outlets.map((outlet) => devices.map((to) => join(device, [outlet], to))),
    });
    yield (devices.length + hubChoices.length) / (devices.length + hubs.length + outputs.length);
  }
  const outputChoices = outputs.map((output): OutputChoice => ({
    start: devices.map((to) => join(controller, [output], to)),
    feed: hubs.map(({ device }) => join(controller, [output], device)),
  }));
  return {
    controller,
    outputs,
    devices,
    hubs: hubs.map(({ device }) => device),
    hubPlaces: hubs.map(({ at }) => at),
    problem: {
      count: devices.length,
      next,
      outputs: outputChoices,
      hubs: hubChoices,
      owned: offers.stock.filter(({ owned }) => owned > 0).map(({ owned }) => owned),
      shift: devices.map(shiftOf),
      budget: EDGE_BUDGET_SECONDS,
      mostHops: wishes.mostHops > 0 ? wishes.mostHops : PLAN_LIMITS.devices,
      spareOutlets: wishes.spareOutlets,
      topology: 'any',
    },
  };
}

/** The same problem for other plans: those without a hub, or those with at least one. */
export function withTopology(board: BoardProblem, topology: Topology): BoardProblem {
  return { ...board, problem: { ...board.problem, topology } };
}

/** Devices that nothing on offer can feed. */
export function unfeedable({ problem, devices }: BoardProblem): readonly string[] {
  return devices.flatMap(({ name }, to) => {
    const fed =
      problem.next.some((row) => (row[to] ?? []).length > 0) ||
      problem.outputs.some(({ start }) => (start[to] ?? []).length > 0) ||
      problem.hubs.some(({ outlets }) => outlets.some((row) => (row[to] ?? []).length > 0));
    return fed ? [] : [name];
  });
}
