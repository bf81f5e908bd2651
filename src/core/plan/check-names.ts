/** Names in a plan: each used once, and each that points somewhere points at what is there. */
import { wholeJack } from './whole.ts';
import type { Device, JackPlace, Plan } from './plan.ts';
import { miss } from './reading.ts';
import type { Problem } from './reading.ts';

/** Note every name that is used twice or that names nothing. */
export function checkNames(plan: Plan, problems: Problem[]): void {
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
  links.forEach((link, at) => {
    checkPlace(plan, link.output, 'out', `links[${at}].output`, problems);
    link.inputs.forEach((input, number) => {
      const place = `links[${at}].inputs[${number}]`;
      checkPlace(plan, input, 'in', place, problems);
      input.leads.forEach((lead, series) => {
        if (!leads.some(({ name }) => name === lead))
          miss(problems, `${place}.leads[${series}]`, 'the name of a lead in this plan', lead);
      });
    });
  });
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
