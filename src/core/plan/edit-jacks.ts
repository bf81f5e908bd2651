/** Changes to the jacks of a device: what hangs on a jack follows its name, and goes when it goes or turns round. */
import type { Connector } from '../wiring/index.ts';
import { settleJack, stylesFor } from '../wiring/index.ts';
import { deviceNamed, withDevice, withPlaces, withoutLinks } from './edit.ts';
import { edited, freshName, nameProblem, refused } from './edited.ts';
import type { Edit } from './edited.ts';
import { inAndOut } from './library.ts';
import { PLAN_LIMITS } from './kinds.ts';
import type { Edge } from './kinds.ts';
import { wholeDevice, wholeJack } from './whole.ts';
import type { Device, JackPlace, Plan, PlanJack } from './plan.ts';

/** Space between two jacks on one edge, centimetres: a DIN plug is about 1.8 wide (our choice). */
const JACK_SPACE = 2.5;

/** The first place on an edge that is free of other jacks, centimetres along it. */
export function freeAlong(device: Device, edge: Edge, but = ''): number {
  const { jacks, widthCentimetres, depthCentimetres } = wholeDevice(device);
  const length = edge === 'back' || edge === 'front' ? widthCentimetres : depthCentimetres;
  const taken = jacks
    .filter((one) => one.edge === edge && one.name !== but)
    .map((one) => one.alongCentimetres);
  const room = (space: number): number | undefined => {
    for (let along = space; along <= length - space / 2 + 1e-9; along += space / 2)
      if (taken.every((other) => Math.abs(other - along) >= space - 1e-9)) return along;
    return undefined;
  };
  return room(JACK_SPACE) ?? room(JACK_SPACE / 2) ?? Math.min(JACK_SPACE, length / 2);
}

/** A jack of a plan settled as its circuit is, with its role and the styles it can be set to. */
function settlePlanJack(jack: PlanJack): PlanJack {
  const styles = stylesFor(jack.direction, jack.connector);
  const settable = jack.styles?.filter((one) => styles.includes(one));
  const { role = 'plain', ...others } = settleJack(jack);
  return {
    ...others,
    ...(jack.direction === 'out' && role !== 'plain' ? { role } : {}),
    ...(settable ? { styles: settable } : {}),
  };
}

/** Add a jack; a name in use gets a number. */
export function addJack(plan: Plan, deviceName: string, jack: PlanJack): Edit {
  return addJacks(plan, deviceName, [jack]);
}

/** Add an in-and-out jack: one hole that receives on one contact and sends on the other. */
export function addInAndOut(
  plan: Plan,
  deviceName: string,
  receivesOn: 'tip' | 'ring',
  connector: Connector = 'trs-6.35',
): Edit {
  const device = deviceNamed(plan, deviceName);
  const alongCentimetres = freeAlong(device, 'back');
  const taken = device.jacks.map(({ name }) => name);
  const name = ['CONTROL', ...Array.from({ length: PLAN_LIMITS.jacks }, (_, at) => `CONTROL ${at + 2}`)].find(
    (one) => !taken.includes(`${one} in`) && !taken.includes(`${one} out`),
  );
  const jacks = inAndOut(name ?? 'CONTROL', receivesOn, connector).map((one) => ({
    ...one,
    alongCentimetres,
  }));
  return addJacks(plan, deviceName, jacks);
}

function addJacks(plan: Plan, deviceName: string, jacks: readonly PlanJack[]): Edit {
  const device = deviceNamed(plan, deviceName);
  if (jacks.some(({ name }) => name.trim() === '')) return refused('name of the jack', 'a name', 'nothing');
  const taken = device.jacks.map(({ name }) => name);
  const added = jacks.map((jack) => ({ ...jack, name: freshName(jack.name, taken) }));
  return edited(withDevice(plan, device, { ...device, jacks: [...device.jacks, ...added] }));
}

/** Change a jack. Links follow a new name and go when it turns round; an in-and-out partner keeps hole, connector and place. */
export function changeJack(plan: Plan, place: JackPlace, changes: Partial<PlanJack>): Edit {
  const device = deviceNamed(plan, place.device);
  const before = jackNamed(device, place.jack);
  const others = device.jacks.filter((one) => one !== before).map(({ name }) => name);
  const after = settlePlanJack({ ...before, ...changes });
  const shared = wholeJack(before).sharesHole;
  if (shared !== '' && after.direction !== before.direction)
    return refused(
      'direction',
      'the same direction, since this jack shares its hole',
      `'${after.direction}'`,
    );
  const bad = nameProblem('name of the jack', after.name, others);
  if (bad) return bad;
  const partner = (one: PlanJack): PlanJack => {
    const { edge, alongCentimetres } = wholeJack(after);
    const moved = { ...one, sharesHole: after.name, edge, alongCentimetres, connector: after.connector };
    return settlePlanJack(moved);
  };
  const jacks = device.jacks.map((one) =>
    one === before ? after : one.name === shared ? partner(one) : one,
  );
  const changed = withDevice(plan, device, { ...device, jacks });
  if (after.direction !== before.direction) return edited(withoutLinks(changed, isAt(place)));
  const renamed = <T extends JackPlace>(one: T): T => (isAt(place)(one) ? { ...one, jack: after.name } : one);
  return edited({ ...changed, links: withPlaces(changed.links, renamed) });
}

/** Take a jack out with its links; the other half of an in-and-out jack goes with it. */
export function removeJack(plan: Plan, place: JackPlace): Plan {
  const device = deviceNamed(plan, place.device);
  const { name, sharesHole } = wholeJack(jackNamed(device, place.jack));
  const gone = [name, sharesHole];
  const jacks = device.jacks.filter((one) => !gone.includes(one.name));
  return withoutLinks(
    withDevice(plan, device, { ...device, jacks }),
    (one) => one.device === device.name && gone.includes(one.jack),
  );
}

function jackNamed(device: Device, name: string): PlanJack {
  const found = device.jacks.find((one) => one.name === name);
  if (!found) throw new Error(`board: no jack '${name}' on '${device.name}'`);
  return found;
}

function isAt(place: JackPlace): (one: JackPlace) => boolean {
  return ({ device, jack }) => device === place.device && jack === place.jack;
}
