/** What must hold of a whole plan: each name used once and pointing at what is there, and no more to solve than a page can. */
import { PLAN_LIMITS } from './kinds.ts';
import type { Device, JackPlace, Plan, PlanLink } from './plan.ts';
import { miss } from './reading.ts';
import type { Problem } from './reading.ts';
import { wholeJack } from './whole.ts';

/** Note every name that is used twice or names nothing, what cannot be plugged in, and more conductors than any board has. */
export function checkPlan(plan: Plan, problems: Problem[]): void {
  const { devices, leads, links, hubs = [], stock = [], press = [] } = plan;
  once(devices, 'devices', problems);
  once(hubs, 'hubs', problems);
  once(leads, 'leads', problems);
  once(links, 'links', problems);
  stock
    .map(({ lead }) => lead.name)
    .forEach((name, at, all) => {
      if (all.indexOf(name) !== at) miss(problems, `stock[${at}].lead.name`, 'a name used once', name);
    });
  devices.forEach((device, at) => checkJacks(device, `devices[${at}]`, problems));
  hubs.forEach((device, at) => checkJacks(device, `hubs[${at}]`, problems));
  press.forEach(({ device }, at) => {
    if (!devices.some(({ name }) => name === device))
      miss(problems, `press[${at}].device`, 'the name of a device in this plan', device);
  });
  links.forEach((link, at) => checkLink(plan, link, `links[${at}]`, problems));
  checkSize(plan, problems);
}

function checkLink(plan: Plan, { output, inputs }: PlanLink, place: string, problems: Problem[]): void {
  checkPlace(plan, output, 'out', `${place}.output`, problems);
  inputs.forEach((input, at) => {
    const here = `${place}.inputs[${at}]`;
    checkPlace(plan, input, 'in', here, problems);
    if (inputs.findIndex(({ device, jack }) => device === input.device && jack === input.jack) !== at)
      miss(problems, here, 'each input once', `${input.device}: ${input.jack}`);
    input.leads.forEach((name, series) => {
      if (!plan.leads.some((lead) => lead.name === name))
        miss(problems, `${here}.leads[${series}]`, 'the name of a lead in this plan', name);
      if (input.leads.indexOf(name) !== series)
        miss(problems, `${here}.leads[${series}]`, 'each lead once', name);
    });
  });
}

/** What a page has to solve: links that share a jack are one circuit. */
function checkSize({ leads, links }: Plan, problems: Problem[]): void {
  const counts = new Map(leads.map(({ name, conductors }) => [name, conductors.length]));
  let circuits: readonly Circuit[] = [];
  links.forEach(({ output, inputs }, at) => {
    const jacks = [output, ...inputs].map(({ device, jack }) => JSON.stringify([device, jack]));
    const names = inputs.flatMap((input) => input.leads);
    const alone = { jacks, inputs: inputs.length, conductors: total(names, (name) => counts.get(name) ?? 0) };
    const joined = circuits.filter((one) => one.jacks.some((jack) => jacks.includes(jack)));
    const parts = [alone, ...joined];
    const whole = {
      jacks: parts.flatMap((one) => one.jacks),
      inputs: total(parts, (one) => one.inputs),
      conductors: total(parts, (one) => one.conductors),
    };
    circuits = [...circuits.filter((one) => !joined.includes(one)), whole];
    const shared = 'in one circuit, with all links that share a jack with it';
    atMost(PLAN_LIMITS.inputs, whole.inputs, `inputs ${shared}`, `links[${at}]`, problems);
    const most = PLAN_LIMITS.conductorsInCircuit;
    atMost(most, whole.conductors, `conductors ${shared}`, `links[${at}]`, problems);
  });
  const all = total(circuits, ({ conductors }) => conductors);
  atMost(PLAN_LIMITS.conductorsInUse, all, 'conductors in all their leads together', 'links', problems);
}

interface Circuit {
  readonly jacks: readonly string[];
  readonly inputs: number;
  readonly conductors: number;
}

function total<T>(list: readonly T[], count: (one: T) => number): number {
  return list.reduce((sum, one) => sum + count(one), 0);
}

function atMost(most: number, got: number, what: string, place: string, problems: Problem[]): void {
  if (got > most) miss(problems, place, `at most ${most} ${what}`, got);
}

function once(all: readonly { readonly name: string }[], place: string, problems: Problem[]): void {
  all.forEach(({ name }, at) => {
    if (all.findIndex((one) => one.name === name) !== at)
      miss(problems, `${place}[${at}].name`, 'a name used once', name);
  });
}

function checkPlace(
  plan: Plan,
  { device: deviceName, jack: jackName }: JackPlace,
  direction: 'out' | 'in',
  where: string,
  problems: Problem[],
): void {
  const device = plan.devices.find(({ name }) => name === deviceName);
  if (!device) return void miss(problems, `${where}.device`, 'the name of a device in this plan', deviceName);
  const jack = device.jacks.find(({ name }) => name === jackName);
  if (!jack) return void miss(problems, `${where}.jack`, `the name of a jack of '${deviceName}'`, jackName);
  if (jack.direction !== direction)
    miss(problems, `${where}.jack`, `a jack with direction '${direction}'`, jack.direction);
}

/** An in-and-out jack is two jacks of one hole: each names the other, one sends and one receives, on the same connector. */
function checkJacks({ jacks }: Device, place: string, problems: Problem[]): void {
  once(jacks, `${place}.jacks`, problems);
  jacks.forEach((jack, at) => {
    const { sharesHole } = wholeJack(jack);
    if (sharesHole === '') return;
    const other = jacks.find(({ name }) => name === sharesHole);
    const fits =
      other?.sharesHole === jack.name &&
      other.direction !== jack.direction &&
      other.connector === jack.connector;
    if (!fits)
      miss(
        problems,
        `${place}.jacks[${at}].sharesHole`,
        'the name of a jack of the same device and connector, of the other direction, that names this one',
        sharesHole,
      );
  });
}
