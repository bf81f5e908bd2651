/**
 * Changes to a board, each a new plan: devices, their names and places. What a reader asks for and cannot have comes back as
 * a problem that names the field, what was expected and what came; a name of no device is a programmer's mistake and throws.
 */
import { PLAN_LIMITS } from './kinds.ts';
import { wholeDevice } from './whole.ts';
import type { Device, Plan, PlanLink } from './plan.ts';
import { onlyCarries, speaks } from './passing.ts';
import { isPlaced } from './route.ts';

/** Why a change was not made. */
export interface EditProblem {
  readonly place: string;
  readonly expected: string;
  readonly got: string;
}

/** The changed plan, or why it stays as it was. */
export type Edit =
  { readonly ok: true; readonly plan: Plan } | { readonly ok: false; readonly problem: EditProblem };

/** A problem in words. */
export function sayEdit({ place, expected, got }: EditProblem): string {
  return `${place}: expected ${expected}, got ${got}. The plan is as it was.`;
}

export function edited(plan: Plan): Edit {
  return { ok: true, plan };
}

export function refused(place: string, expected: string, got: string): Edit {
  return { ok: false, problem: { place, expected, got } };
}

/** A name that none of these has: the wanted one, or with the first number that is free. */
export function freshName(wanted: string, taken: readonly string[]): string {
  const base = wanted.trim().slice(0, PLAN_LIMITS.nameCharacters);
  if (!taken.includes(base)) return base;
  for (let number = 2; ; number++) {
    const end = ` ${number}`;
    const name = base.slice(0, PLAN_LIMITS.nameCharacters - end.length) + end;
    if (!taken.includes(name)) return name;
  }
}

/** Why a name cannot be used, or undefined. */
export function nameProblem(
  place: string,
  name: string,
  taken: readonly string[],
): { readonly ok: false; readonly problem: EditProblem } | undefined {
  const expected = `a name of 1 to ${PLAN_LIMITS.nameCharacters} characters that is not used yet`;
  const bad = name.trim() === '' || name.length > PLAN_LIMITS.nameCharacters || taken.includes(name);
  return bad ? { ok: false, problem: { place, expected, got: `'${name}'` } } : undefined;
}

/** The device of this name. @throws when there is none. */
export function deviceNamed(plan: Plan, name: string): Device {
  const found = plan.devices.find((one) => one.name === name);
  if (!found) throw new Error(`board: no device '${name}'`);
  return found;
}

const namesIn = (plan: Plan, but = ''): readonly string[] =>
  plan.devices.map(({ name }) => name).filter((name) => name !== but);

/** Give the board a title; none is allowed. */
export function nameBoard(plan: Plan, title: string): Edit {
  const most = PLAN_LIMITS.nameCharacters;
  return title.length > most
    ? refused('title', `at most ${most} characters`, `${title.length}`)
    : edited(title === plan.title ? plan : { ...plan, title });
}

/** Add a device. A name in use gets a number, and a device whose place is taken goes to the first free one. */
export function addDevice(plan: Plan, device: Device): Edit {
  if (plan.devices.length >= PLAN_LIMITS.devices)
    return refused('devices', `at most ${PLAN_LIMITS.devices}`, `${plan.devices.length + 1}`);
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
export function freePlace(plan: Plan, device: Device): Pick<Device, 'xCentimetres' | 'yCentimetres'> {
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
  const bad =
    nameProblem('name', after.name, namesIn(plan, name)) ??
    rangeProblem('channel', after.channel, 0, 16) ??
    rangeProblem('price', after.price, 0, PLAN_LIMITS.price) ??
    rangeProblem('from the left', after.xCentimetres, 0, PLAN_LIMITS.centimetres) ??
    rangeProblem('from the back', after.yCentimetres, 0, PLAN_LIMITS.centimetres) ??
    rangeProblem('width', after.widthCentimetres, 0, PLAN_LIMITS.centimetres) ??
    rangeProblem('depth', after.depthCentimetres, 0, PLAN_LIMITS.centimetres);
  if (bad) return bad;
  const to = after.name;
  const named = <T extends { readonly device: string }>(one: T): T =>
    one.device === name ? { ...one, device: to } : one;
  return edited({
    ...plan,
    devices: plan.devices.map((one) => (one === before ? after : one)),
    links: plan.links.map((link) => ({
      ...link,
      output: named(link.output),
      inputs: link.inputs.map(named),
    })),
    ...(plan.press ? { press: plan.press.map(named) } : {}),
  });
}

function rangeProblem(
  place: string,
  value: number | undefined,
  least: number,
  most: number,
): { readonly ok: false; readonly problem: EditProblem } | undefined {
  if (value === undefined || (value >= least && value <= most)) return undefined;
  return { ok: false, problem: { place, expected: `${least} to ${most}`, got: `${value}` } };
}

/** Take a device out, with its links, the leads only they used, and what the press sends to it. */
export function removeDevice(plan: Plan, name: string): Plan {
  deviceNamed(plan, name);
  const links = withoutInputs(plan.links, ({ device }) => device === name).filter(
    ({ output }) => output.device !== name,
  );
  return withoutIdleLeads(plan, {
    ...plan,
    devices: plan.devices.filter((one) => one.name !== name),
    links,
    ...(plan.press ? { press: plan.press.filter(({ device }) => device !== name) } : {}),
  });
}

/** Put a device somewhere: its back left corner, held within the bounds of a plan, to the millimetre. */
export function moveDevice(plan: Plan, name: string, xCentimetres: number, yCentimetres: number): Plan {
  const before = deviceNamed(plan, name);
  const held = (value: number): number =>
    Math.round(Math.min(PLAN_LIMITS.centimetres, Math.max(0, value)) * 10) / 10;
  const after = { ...before, xCentimetres: held(xCentimetres), yCentimetres: held(yCentimetres) };
  return { ...plan, devices: plan.devices.map((one) => (one === before ? after : one)) };
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
