/**
 * Changes to a board, each a new plan: devices, their names and places. What a reader asks for and cannot have comes back as
 * a problem that names the field, what was expected and what came; a name of no device is a programmer's mistake and throws.
 */
import { edited, freshName, nameProblem, refused } from './edited.ts';
import type { Edit } from './edited.ts';
import { PLAN_LIMITS } from './kinds.ts';
import { onlyCarries, speaks } from './passing.ts';
import type { Device, JackPlace, Plan, PlanLink } from './plan.ts';
import { isPlaced } from './route.ts';
import { wholeDevice } from './whole.ts';

/** The device of this name. @throws when there is none. */
export function deviceNamed(plan: Plan, name: string): Device {
  const found = plan.devices.find((one) => one.name === name);
  if (!found) throw new Error(`board: no device '${name}'`);
  return found;
}

const namesIn = (plan: Plan, but = ''): readonly string[] =>
  plan.devices.map(({ name }) => name).filter((name) => name !== but);

/** Say whose plan it is: its title, which may be empty, and the student's number in the class list, 0 for none. */
export function namePlan(plan: Plan, name: Partial<Pick<Plan, 'title' | 'student'>>): Edit {
  return edited({ ...plan, ...name });
}

/** Add a device. A name in use gets a number, and a device whose place is taken goes to the first free one. */
export function addDevice(plan: Plan, device: Device): Edit {
  if (device.name.trim() === '') return refused('name', 'a name', 'nothing');
  const name = freshName(device.name, namesIn(plan));
  return edited({ ...plan, devices: [...plan.devices, { ...device, name, ...freePlace(plan, device) }] });
}

/** Another device of the same kind with no links. */
export function duplicateDevice(plan: Plan, name: string): Edit {
  return addDevice(plan, deviceNamed(plan, name));
}

/** Room kept between devices that are put down side by side, and the longest row before the next begins, centimetres (our choice). */
const GAP = 3;
const ROW = 100;
const ROW_GAP = 7;

/** The first free place for a device, row by row from the back left, centimetres. */
function freePlace(plan: Plan, device: Device): Pick<Device, 'xCentimetres' | 'yCentimetres'> {
  const whole = wholeDevice(device);
  const { xCentimetres = 0, yCentimetres = 0 } = device;
  if (!isPlaced(whole)) return { xCentimetres, yCentimetres };
  const others = plan.devices.map(wholeDevice).filter(isPlaced);
  const blocker = (x: number, y: number) =>
    others.find(
      (one) =>
        x < one.xCentimetres + one.widthCentimetres + GAP &&
        x + whole.widthCentimetres + GAP > one.xCentimetres &&
        y < one.yCentimetres + one.depthCentimetres + ROW_GAP &&
        y + whole.depthCentimetres + ROW_GAP > one.yCentimetres,
    );
  if (xCentimetres > 0 || yCentimetres > 0) {
    if (!blocker(xCentimetres, yCentimetres)) return { xCentimetres, yCentimetres };
  }
  for (let y = ROW_GAP; ;) {
    let lowest = Infinity;
    for (let x = 0; x === 0 || x + whole.widthCentimetres <= ROW;) {
      const hit = blocker(x, y);
      if (!hit) return { xCentimetres: x, yCentimetres: y };
      lowest = Math.min(lowest, hit.yCentimetres + hit.depthCentimetres + ROW_GAP);
      x = hit.xCentimetres + hit.widthCentimetres + GAP;
    }
    y = lowest;
    if (y > PLAN_LIMITS.centimetres) return { xCentimetres, yCentimetres };
  }
}

/** Change fields of a device; a new name is carried into links and the press. Jacks have their own changes. */
export function changeDevice(plan: Plan, name: string, changes: Partial<Omit<Device, 'jacks'>>): Edit {
  const before = deviceNamed(plan, name);
  const after = { ...before, ...changes };
  const bad = nameProblem('name', after.name, namesIn(plan, name));
  if (bad) return bad;
  const renamed = <T extends { readonly device: string }>(one: T): T =>
    one.device === name ? { ...one, device: after.name } : one;
  return edited({
    ...withDevice(plan, before, after),
    links: withPlaces(plan.links, renamed),
    ...(plan.press ? { press: plan.press.map(renamed) } : {}),
  });
}

/** The plan with a device in the place of another. */
export function withDevice(plan: Plan, before: Device, after: Device): Plan {
  return { ...plan, devices: plan.devices.map((one) => (one === before ? after : one)) };
}

/** Links with every jack that they name changed. */
export function withPlaces(
  links: readonly PlanLink[],
  change: <T extends JackPlace>(place: T) => T,
): readonly PlanLink[] {
  return links.map((link) => ({ ...link, output: change(link.output), inputs: link.inputs.map(change) }));
}

/** Take a device out, with its links, the leads only they used, and what the press sends to it. */
export function removeDevice(plan: Plan, name: string): Plan {
  const gone = deviceNamed(plan, name);
  const without = withoutLinks(plan, ({ device }) => device === name);
  return untold({ ...without, devices: plan.devices.filter((one) => one !== gone) });
}

/** The plan without what the press sends to devices that are not there. */
function untold(plan: Plan): Plan {
  if (!plan.press) return plan;
  const names = new Set(plan.devices.map(({ name }) => name));
  return { ...plan, press: plan.press.filter(({ device }) => names.has(device)) };
}

/** The plan without the links and inputs at these jacks, and the leads that only they used. */
export function withoutLinks(plan: Plan, goes: (place: JackPlace) => boolean): Plan {
  const links = withoutInputs(plan.links, goes).filter(({ output }) => !goes(output));
  return withoutIdleLeads(plan, { ...plan, links });
}

/** Put a device somewhere: its back left corner, held within the bounds of a plan, to the millimetre. */
export function moveDevice(plan: Plan, name: string, xCentimetres: number, yCentimetres: number): Plan {
  const before = deviceNamed(plan, name);
  const held = (value: number): number =>
    Math.round(Math.min(PLAN_LIMITS.centimetres, Math.max(0, value)) * 10) / 10;
  return withDevice(plan, before, {
    ...before,
    xCentimetres: held(xCentimetres),
    yCentimetres: held(yCentimetres),
  });
}

/** Give each device that listens a channel of its own, those that have one first; carriers and senders keep none. */
export function numberChannels(plan: Plan): Plan {
  const listens = (device: Device): boolean => {
    const { kind, talks } = wholeDevice(device);
    return talks === 'jacks' && !onlyCarries({ kind }) && !speaks({ kind });
  };
  const taken = new Set<number>();
  const channels = plan.devices.map((device) => {
    const { channel } = wholeDevice(device);
    if (!listens(device) || channel === 0 || taken.has(channel)) return 0;
    taken.add(channel);
    return channel;
  });
  const devices = plan.devices.map((device, at) => {
    if (!listens(device) || (channels[at] ?? 0) > 0) return device;
    for (let channel = 1; channel <= 16; channel++) {
      if (taken.has(channel)) continue;
      taken.add(channel);
      return { ...device, channel };
    }
    return device;
  });
  return { ...plan, devices };
}

/** Links without the inputs that go; a link without inputs goes too. */
export function withoutInputs(
  links: readonly PlanLink[],
  goes: (input: PlanLink['inputs'][number], link: PlanLink) => boolean,
): readonly PlanLink[] {
  return links.flatMap((link) => {
    const inputs = link.inputs.filter((input) => !goes(input, link));
    return inputs.length === link.inputs.length ? [link] : inputs.length === 0 ? [] : [{ ...link, inputs }];
  });
}

/** The plan without the leads that were in use before and are in no link now; a lead that lay idle stays. */
export function withoutIdleLeads(before: Plan, after: Plan): Plan {
  const used = (plan: Plan): ReadonlySet<string> =>
    new Set(plan.links.flatMap(({ inputs }) => inputs.flatMap(({ leads }) => leads)));
  const [was, is] = [used(before), used(after)];
  return { ...after, leads: after.leads.filter(({ name }) => is.has(name) || !was.has(name)) };
}
