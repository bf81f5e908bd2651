/** Names in a plan: each used once, and each that points somewhere points at what is there. */
import { wholeJack } from './plan.ts';
import type { Device } from './plan.ts';
import type { JackPlace, Plan } from './plan.ts';
import { miss } from './read.ts';
import type { Reading } from './read.ts';

/** Note every name that is used twice or that names nothing. */
export function checkNames(plan: Plan, reading: Reading): void {
  const once = (names: readonly string[], place: (at: number) => string): void =>
    names.forEach((one, at) => {
      if (names.indexOf(one) !== at) miss(reading, place(at), 'a name used once', one);
    });
  once(
    plan.devices.map((one) => one.name),
    (at) => `devices[${at}].name`,
  );
  plan.devices.forEach(({ jacks }, device) =>
    once(
      jacks.map((one) => one.name),
      (at) => `devices[${device}].jacks[${at}].name`,
    ),
  );
  plan.devices.forEach((device, at) => checkHoles(device, `devices[${at}]`, reading));
  (plan.hubs ?? []).forEach((device, at) => {
    once(
      device.jacks.map((one) => one.name),
      (jack) => `hubs[${at}].jacks[${jack}].name`,
    );
    checkHoles(device, `hubs[${at}]`, reading);
  });
  once(
    (plan.hubs ?? []).map((one) => one.name),
    (at) => `hubs[${at}].name`,
  );
  once(
    (plan.stock ?? []).map((one) => one.lead.name),
    (at) => `stock[${at}].lead.name`,
  );
  (plan.press ?? []).forEach(({ device }, at) => {
    if (!plan.devices.some(({ name }) => name === device))
      miss(reading, `press[${at}].device`, 'the name of a device in this plan', device);
  });
  once(
    plan.leads.map((one) => one.name),
    (at) => `leads[${at}].name`,
  );
  once(
    plan.links.map((one) => one.name),
    (at) => `links[${at}].name`,
  );
  plan.links.forEach((link, at) => {
    checkPlace(plan, reading, link.output, 'out', `links[${at}].output`);
    link.inputs.forEach((input, number) => {
      const place = `links[${at}].inputs[${number}]`;
      checkPlace(plan, reading, input, 'in', place);
      input.leads.forEach((lead, series) => {
        if (!plan.leads.some((one) => one.name === lead))
          miss(reading, `${place}.leads[${series}]`, 'the name of a lead in this plan', lead);
      });
    });
  });
}

function checkPlace(
  plan: Plan,
  reading: Reading,
  place: JackPlace,
  direction: 'out' | 'in',
  where: string,
): void {
  const device = plan.devices.find((one) => one.name === place.device);
  if (!device)
    return void miss(reading, `${where}.device`, 'the name of a device in this plan', place.device);
  const jack = device.jacks.find((one) => one.name === place.jack);
  if (!jack) return void miss(reading, `${where}.jack`, `the name of a jack of '${device.name}'`, place.jack);
  if (jack.direction !== direction)
    miss(reading, `${where}.jack`, `a jack with direction '${direction}'`, jack.direction);
}

/** An in-and-out jack is two jacks of one hole: each names the other, one sends and one receives, on the same connector. */
function checkHoles({ jacks }: Device, place: string, reading: Reading): void {
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
        reading,
        `${place}.jacks[${at}].sharesHole`,
        'the name of a jack of the same device and connector, of the other direction, that names this one',
        sharesHole,
      );
  });
}
