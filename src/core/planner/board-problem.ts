/** From a plan to the planning problem: who can feed whom, with which leads, at what cost. */
import { bestOf, breakoutCost, offersOf, shiftShare, wayMetres, waysToJoin } from '../board/index.ts';
import type { JackOnBoard, OfferedChoice } from '../board/index.ts';
import {
  MAKING_DEFAULTS,
  PLAN_LIMITS,
  WISH_DEFAULTS,
  onlyCarries,
  speaks,
  waysRound,
  wholeDevice,
} from '../plan/index.ts';
import type { Plan, WholeDevice, WholeJack } from '../plan/index.ts';
import type { LinkMemory } from '../verdict/index.ts';
import type { PlanProblem } from './problem.ts';

/** The problem, and the devices that its numbers stand for. */
export interface BoardProblem {
  readonly problem: PlanProblem;
  readonly controller: WholeDevice;
  readonly devices: readonly WholeDevice[];
  /** Hubs and converters; one on offer has no place on the board yet. */
  readonly hubs: readonly { readonly device: WholeDevice; readonly onBoard: boolean }[];
}

/** A link costs this much besides, so that of plans at one price the one of the fewest links is found; far below a cent. */
export const LINK_COST = 1e-4;

/** A device that feeds others, with the jacks it can do it by. */
interface Source {
  readonly device: WholeDevice;
  readonly jacks: readonly WholeJack[];
}

/**
 * Put the problem together: the first controller's outputs, every listening device, the hubs on the board and on offer.
 * Yields the share done after each source, since every pair of jacks is solved. Returns a message where there is nothing to plan.
 */
export function* boardProblem(plan: Plan, memory: LinkMemory): Generator<number, BoardProblem | string> {
  const all = plan.devices.map(wholeDevice);
  const controller = all.find((device) => speaks(device) && device.talks === 'jacks');
  if (!controller) return 'devices: expected a controller with jacks, got none';
  const outputs = controller.jacks.filter(({ direction, role }) => direction === 'out' && role !== 'thru');
  if (outputs.length === 0) return `devices: expected an output on '${controller.name}', got none`;
  const devices = all.filter((one) => one.talks === 'jacks' && !speaks(one) && !onlyCarries(one));
  if (devices.length === 0) return 'devices: expected a device to be fed, got none';
  const wishes = plan.wishes ?? WISH_DEFAULTS;
  const hubs = wishes.noHub ? [] : hubsOf(plan, all);
  const alone = (device: WholeDevice, jacks: readonly WholeJack[]): Source[] =>
    jacks.map((jack) => ({ device, jacks: [jack] }));
  const outlets = hubs.map(({ device }) =>
    alone(
      device,
      jacksOut(device, wishes, () => true),
    ),
  );
  const sources: readonly Source[] = [
    ...devices.map((device) => ({ device, jacks: jacksOut(device, wishes, ({ role }) => role !== 'plain') })),
    ...alone(controller, outputs),
    ...outlets.flat(),
  ];
  const { join, feed, owned } = joining(plan, all, [...devices, ...hubs.map(({ device }) => device)], memory);
  const ways: (readonly OfferedChoice[])[][] = [];
  for (const source of sources) {
    const row = devices.map((to) => (to === source.device ? [] : join(source, to)));
    const feeds = hubs.map((hub) => (source.device === controller ? feed(source, hub) : []));
    ways.push([...row, ...feeds]);
    yield ways.length / sources.length;
  }
  let first = devices.length + outputs.length;
  return {
    controller,
    devices,
    hubs,
    problem: {
      count: devices.length,
      ways,
      outputs: outputs.map((_, at) => devices.length + at),
      hubs: hubs.map(({ device, onBoard }, hub) => ({
        limit: onBoard ? 1 : Infinity,
        shift: shiftOf(device),
        outlets: outlets[hub]!.map(() => first++),
      })),
      owned,
      shift: devices.map(shiftOf),
      budget: 1,
      mostHops: wishes.mostHops > 0 ? wishes.mostHops : PLAN_LIMITS.devices,
      spareOutlets: wishes.spareOutlets,
      topology: 'any',
    },
  };
}

/** Hubs and converters on the board and on offer that have an input. */
function hubsOf(plan: Plan, all: readonly WholeDevice[]): BoardProblem['hubs'] {
  const isHub = ({ talks, kind }: WholeDevice): boolean =>
    talks === 'jacks' && (kind === 'hub' || kind === 'converter');
  return [
    ...all.filter(isHub).map((device) => ({ device, onBoard: true })),
    // A hub that is not bought yet has no place: its leads are taken as of the usual length.
    ...(plan.hubs ?? []).map((device) => ({
      device: { ...wholeDevice(device), widthCentimetres: 0, depthCentimetres: 0 },
      onBoard: false,
    })),
  ].filter(({ device }) => inputsOf(device).length > 0);
}

/**
 * Jacks by which a device can pass its input on. One that shares its hole with the input needs a breakout lead, which is
 * soldered; with a second input beside it, whether it does hangs on the plan, and it is left out.
 */
function jacksOut(
  device: WholeDevice,
  { noSoldering }: { readonly noSoldering: boolean },
  passes: (jack: WholeJack) => boolean,
): readonly WholeJack[] {
  const breakout = !noSoldering && inputsOf(device).length === 1;
  return device.jacks.filter(
    (jack) => jack.direction === 'out' && passes(jack) && (jack.sharesHole === '' || breakout),
  );
}

function inputsOf(device: WholeDevice): readonly WholeJack[] {
  return device.jacks.filter(({ direction }) => direction === 'in');
}

/** Edges shift most at the slowest input of a device: its share of what a receiver bears. */
function shiftOf(device: WholeDevice): number {
  return Math.max(0, ...inputsOf(device).map(shiftShare));
}

/** The ways to join devices of this plan, and to feed a hub with its price in the cost. */
function joining(
  plan: Plan,
  all: readonly WholeDevice[],
  targets: readonly WholeDevice[],
  memory: LinkMemory,
): {
  readonly join: (from: Source, to: WholeDevice) => readonly OfferedChoice[];
  readonly feed: (from: Source, hub: BoardProblem['hubs'][number]) => readonly OfferedChoice[];
  readonly owned: readonly number[];
} {
  const making = plan.wishes?.noSoldering === true ? undefined : (plan.making ?? MAKING_DEFAULTS);
  const offers = offersOf(plan.stock ?? [], making, memory);
  const ends = targets.flatMap((device) => inputsOf(device).map((jack): JackOnBoard => ({ device, jack })));
  const ways = waysRound(all);
  const lengths = new Map<WholeJack, readonly number[]>();
  const join = (from: Source, to: WholeDevice): readonly OfferedChoice[] =>
    bestOf(
      from.jacks.flatMap((jack) => {
        const at = { ...from, jack };
        const metres = lengths.get(jack) ?? wayMetres(ways, at, ends);
        lengths.set(jack, metres);
        // A used input and this output of one hole need a breakout lead; a controller's output has no input in use.
        const hole =
          jack.sharesHole === '' || speaks(from.device) ? 0 : breakoutCost(plan.making, jack.connector);
        return ends
          .flatMap((end, place) => (end.device === to ? waysToJoin(offers, at, end, metres[place]!) : []))
          .map((way) => ({ ...way, cost: way.cost + hole + LINK_COST }));
      }),
    );
  return {
    join,
    feed: (from, { device, onBoard }) => {
      const price = onBoard && !device.toBuy ? 0 : offers.priced(device.price);
      return join(from, device).map((way) => ({ ...way, cost: way.cost + price }));
    },
    owned: offers.stock.map(({ owned }) => owned).filter((owned) => owned > 0),
  };
}
