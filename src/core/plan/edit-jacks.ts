/** Changes to the jacks of a device: what hangs on a jack follows its name, and goes when it goes or turns round. */
import type { Connector } from '../wiring/index.ts';
import { jackProblem, settleJack, stylesFor } from '../wiring/index.ts';
import {
  deviceNamed,
  edited,
  freshName,
  nameProblem,
  refused,
  withoutIdleLeads,
  withoutInputs,
} from './edit.ts';
import type { Edit } from './edit.ts';
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
export function settlePlanJack(jack: PlanJack): PlanJack {
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
  const count = device.jacks.length + jacks.length;
  if (count > PLAN_LIMITS.jacks) return refused('jacks', `at most ${PLAN_LIMITS.jacks}`, `${count}`);
  for (const jack of jacks) {
    if (jack.name.trim() === '') return refused('name of the jack', 'a name', 'nothing');
    const problem = jackProblem(jack);
    if (problem !== undefined) return refused(`jack '${jack.name}'`, 'a jack that can be', problem);
  }
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
  const along = after.alongCentimetres ?? 0;
  if (!(along >= 0 && along <= PLAN_LIMITS.centimetres))
    return refused('place along the edge', `0 to ${PLAN_LIMITS.centimetres} cm`, `${along}`);
  const latency = after.latencySeconds ?? 0;
  if (!(latency >= 0 && latency <= PLAN_LIMITS.latencySeconds))
    return refused('time to pass on', `0 to ${PLAN_LIMITS.latencySeconds} s`, `${latency} s`);
  const problem = jackProblem(after);
  if (problem !== undefined) return refused(`jack '${after.name}'`, 'a jack that can be', problem);
  const partner = (one: PlanJack): PlanJack => {
    const { edge, alongCentimetres } = wholeJack(after);
    const moved = { ...one, sharesHole: after.name, edge, alongCentimetres, connector: after.connector };
    return settlePlanJack(moved);
  };
  const jacks = device.jacks.map((one) =>
    one === before ? after : one.name === shared ? partner(one) : one,
  );
  const named = <T extends JackPlace>(one: T): T =>
    one.device === place.device && one.jack === place.jack ? { ...one, jack: after.name } : one;
  const changed = withDevice(plan, device, { ...device, jacks });
  const turned = after.direction !== before.direction;
  const kept = turned ? linksWithout(changed, [place]) : changed;
  return edited({
    ...kept,
    links: kept.links.map((link) => ({
      ...link,
      output: named(link.output),
      inputs: link.inputs.map(named),
    })),
  });
}

/** Take a jack out with its links; the other half of an in-and-out jack goes with it. */
export function removeJack(plan: Plan, place: JackPlace): Plan {
  const device = deviceNamed(plan, place.device);
  const { name, sharesHole } = wholeJack(jackNamed(device, place.jack));
  const gone = [name, sharesHole];
  const jacks = device.jacks.filter((one) => !gone.includes(one.name));
  return linksWithout(
    withDevice(plan, device, { ...device, jacks }),
    gone.map((jack) => ({ device: device.name, jack })),
  );
}

function jackNamed(device: Device, name: string): PlanJack {
  const found = device.jacks.find((one) => one.name === name);
  if (!found) throw new Error(`board: no jack '${name}' on '${device.name}'`);
  return found;
}

function withDevice(plan: Plan, before: Device, after: Device): Plan {
  return { ...plan, devices: plan.devices.map((one) => (one === before ? after : one)) };
}

function linksWithout(plan: Plan, places: readonly JackPlace[]): Plan {
  const at = (place: JackPlace): boolean =>
    places.some((one) => one.device === place.device && one.jack === place.jack);
  const links = withoutInputs(plan.links, at).filter(({ output }) => !at(output));
  return withoutIdleLeads(plan, { ...plan, links });
}
