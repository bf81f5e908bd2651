/** Plans drawn from a seed: every field of the file takes part, and every plan is one that the reader accepts. */
import {
  DEVICE_KINDS,
  EDGES,
  JACK_ROLES,
  LEAD_ORIGINS,
  POWERS,
  SETTINGS,
  TALKS,
  THRUS,
} from '../../../src/core/plan/kinds.ts';
import { STYLES } from '../../../src/core/wiring/styles.ts';
import type { Style } from '../../../src/core/wiring/styles.ts';
import { CIRCUITS, hasLed, valuesOf } from '../../../src/core/wiring/circuits.ts';
import { EXTRAS } from '../../../src/core/wiring/extras.ts';
import { PARTS } from '../../../src/core/wiring/parts.ts';
import { CONNECTORS, FORMS, contactsOf } from '../../../src/core/wiring/connectors.ts';
import type { Contact } from '../../../src/core/wiring/connectors.ts';
import {
  DIRECTIONS,
  SIDES,
  circuitsFor,
  jackProblem,
  makeJack,
  stylesFor,
} from '../../../src/core/wiring/link.ts';
import type { Conductor, Direction, Fault, Jack, Lead } from '../../../src/core/wiring/link.ts';
import { GAUGES } from '../../../src/core/wiring/wire.ts';
import { readPlan, writePlanText } from '../../../src/core/plan/read-plan.ts';
import type { Plan } from '../../../src/core/plan/plan.ts';
import { seededRandom } from '../../support/random.ts';
import type { Random } from '../../support/random.ts';

/** A plain plan of two devices and one straight DIN lead, as a person would write it in a file. */
export function plainFile(): Record<string, unknown> {
  const jack = { connector: 'din5', style: 'din' };
  return {
    format: 'five-milliamps-plan',
    version: 1,
    devices: [
      { name: 'switcher', jacks: [{ name: 'out', direction: 'out', circuit: 'driver-5v', ...jack }] },
      { name: 'echo', jacks: [{ name: 'in', direction: 'in', circuit: 'receiver-isolated', ...jack }] },
    ],
    leads: [
      {
        name: 'lead 1',
        from: { connector: 'din5', form: 'plug' },
        to: { connector: 'din5', form: 'plug' },
        conductors: [
          { from: '4', to: '4' },
          { from: '5', to: '5' },
          { from: '2', to: '2' },
        ],
        lengthMetres: 1,
        gauge: 26,
      },
    ],
    links: [
      {
        name: 'link 1',
        output: { device: 'switcher', jack: 'out' },
        inputs: [{ device: 'echo', jack: 'in', leads: ['lead 1'] }],
      },
    ],
  };
}

/** The plain plan, read. */
export function plainPlan(): Plan {
  const reading = readPlan(plainFile());
  if (!reading.ok) throw new Error('plain plan: the reader refuses it');
  return reading.plan;
}

/** A whole plan from a seed. */
export function randomPlan(seed: number): Plan {
  const random = seededRandom(seed);
  // Every second plan is one of before the board: none of its fields may be lost or added.
  const board = seed % 2 === 1;
  const devices = Array.from({ length: random.integer(2, 6) }, (_, at) => ({
    name: `device ${at}`,
    ...(board ? someOf(random, deviceFields(random)) : {}),
    jacks: Array.from({ length: random.integer(1, 3) }, (_jack, number) => ({
      name: `jack ${number}`,
      ...randomJack(random, random.pick(DIRECTIONS)),
      ...(board ? someOf(random, jackFields(random)) : {}),
    })),
  }));
  const leads = Array.from({ length: random.integer(1, 6) }, (_, at) => ({
    ...randomLead(random, `lead ${at}`),
    ...(board ? someOf(random, { origin: random.pick(LEAD_ORIGINS), price: random.integer(0, 40) }) : {}),
  }));
  const places = (direction: Direction): readonly { device: string; jack: string }[] =>
    devices.flatMap(({ name, jacks }) =>
      jacks.filter((jack) => jack.direction === direction).map((jack) => ({ device: name, jack: jack.name })),
    );
  const [outs, ins] = [places('out'), places('in')];
  const links =
    outs.length === 0 || ins.length === 0
      ? []
      : Array.from({ length: random.integer(0, 4) }, (_, at) => ({
          name: `link ${at}`,
          output: random.pick(outs),
          inputs: someDifferent(random, ins, 3).map((place) => ({
            ...place,
            leads: someDifferent(random, leads, 3).map(({ name }) => name),
          })),
        }));
  const file = {
    format: 'five-milliamps-plan',
    version: 1,
    title: random.pick(['', 'Saturday', 'Bühne, 2. Probe', '舞台']),
    devices,
    leads,
    links,
    ...(board
      ? someOf(
          random,
          planFields(
            random,
            devices.map(({ name }) => name),
          ),
        )
      : {}),
  };
  // Links that by chance make a circuit larger than a plan may have are left out, the last first.
  for (let count = links.length; count >= 0; count--) {
    const reading = readPlan({ ...file, links: links.slice(0, count) });
    if (reading.ok) return reading.plan;
    if (count === 0) throw new Error(`seed ${seed}: ${JSON.stringify(reading.problems[0])}`);
  }
  throw new Error(`seed ${seed}: no plan`);
}

/** One to `most` members of a list, none twice. */
function someDifferent<Item>(random: Random, items: readonly Item[], most: number): readonly Item[] {
  return [...new Set(Array.from({ length: random.integer(1, most) }, () => random.pick(items)))];
}

/** Each field of an object or not, by chance. */
function someOf(random: Random, fields: object): object {
  return Object.fromEntries(Object.entries(fields).filter(() => random.chance(0.6)));
}

function deviceFields(random: Random): object {
  return {
    kind: random.pick(DEVICE_KINDS),
    talks: random.pick(TALKS),
    power: random.pick(POWERS),
    channel: random.integer(0, 16),
    xCentimetres: random.integer(0, 90),
    yCentimetres: random.next() * 40,
    widthCentimetres: random.integer(0, 20),
    depthCentimetres: random.integer(0, 20),
    toBuy: random.chance(0.5),
    price: random.integer(0, 300),
  };
}

function jackFields(random: Random): object {
  return {
    role: random.pick(JACK_ROLES),
    thru: random.pick(THRUS),
    setTo: random.pick(SETTINGS),
    latencySeconds: random.next() / 100,
    edge: random.pick(EDGES),
    alongCentimetres: random.integer(0, 10),
    styles: STYLES.filter(() => random.chance(0.3)),
    supplyOnSpares: random.chance(0.5),
  };
}

function planFields(random: Random, names: readonly string[]): object {
  const items = (most: number): undefined[] => Array.from({ length: random.integer(0, most) });
  const half = (name: string, other: string, direction: Direction, style: Style): object => ({
    name,
    sharesHole: other,
    ...makeJack(direction, 'trs-3.5', style),
  });
  return {
    currency: random.pick(['', 'CHF', '\u20ac']),
    pressLimitSeconds: random.next(),
    stock: items(3).map((_, at) => ({
      lead: randomLead(random, `stock ${at}`),
      price: random.integer(0, 30),
      owned: random.integer(0, 3),
    })),
    hubs: items(2).map((_, at) => ({
      name: `hub ${at}`,
      ...someOf(random, deviceFields(random)),
      jacks: [half('in', 'out', 'in', 'tip-signal'), half('out', 'in', 'out', 'ring-signal')],
    })),
    making: { plugs: { din5: 3, 'ts-3.5': 1.5 }, plug: 2, wirePerMetre: 0.7, perLead: random.integer(0, 5) },
    wishes: {
      noHub: random.chance(0.5),
      noSoldering: random.chance(0.5),
      mostHops: random.integer(0, 9),
      spareOutlets: 1,
    },
    press: items(4).map(() => {
      const device = random.pick(names);
      return random.pick([
        { device, send: 'program', program: random.integer(1, 128) },
        { device, send: 'bank', bank: random.integer(0, 16383) },
        { device, send: 'control', controller: random.integer(0, 119), value: random.integer(0, 127) },
      ]);
    }),
  };
}

function randomJack(random: Random, direction: Direction): Jack {
  for (;;) {
    const connector = random.pick(CONNECTORS);
    const styles = stylesFor(direction, connector);
    if (styles.length === 0) continue;
    const style = random.pick(styles);
    const circuit = random.pick(CIRCUITS);
    if (!circuitsFor(direction, style).includes(circuit)) continue;
    const part = hasLed(circuit) ? random.pick(PARTS) : '6N138';
    const values: Partial<Record<string, number>> = {};
    for (const { name, least, most } of valuesOf(circuit, part)) {
      if (random.chance(0.15)) values[name] = least + random.next() * (most - least);
    }
    const extras = EXTRAS.filter(() => random.chance(0.1));
    const plain: Jack = { direction, connector, style, circuit, part, values };
    const jack = extras.length > 0 ? { ...plain, extras } : plain;
    if (jackProblem(jack) === undefined) return jack;
  }
}

function randomLead(random: Random, name: string): Lead {
  const from = { connector: random.pick(CONNECTORS), form: random.pick(FORMS) };
  const to = { connector: random.pick(CONNECTORS), form: random.pick(FORMS) };
  const ends = { from, to };
  const conductors: Conductor[] = [];
  for (let wire = 0; wire < random.integer(0, 5); wire++) {
    const one = {
      from: random.pick(contactsOf(from.connector)),
      to: random.pick(contactsOf(to.connector)),
    };
    if (!conductors.some((other) => other.from === one.from && other.to === one.to)) conductors.push(one);
  }
  const fault = (): Fault => {
    const side = random.pick(SIDES);
    const contacts = contactsOf(ends[side].connector);
    const contact = random.pick(contacts);
    switch (random.integer(0, 2)) {
      case 0:
        return { kind: 'open', side, contact };
      case 1:
        return { kind: 'joint', side, contact, ohms: random.decades(0.1, 1e6) };
      default: {
        const other = random.pick(contacts.filter((one) => one !== contact)) as Contact;
        return { kind: 'short', side, between: [contact, other] };
      }
    }
  };
  return {
    name,
    from,
    to,
    conductors,
    lengthMetres: random.decades(0.01, 100),
    gauge: random.pick(GAUGES),
    contactOhms: random.next() * 10,
    faults: Array.from({ length: random.integer(0, 2) }, fault),
  };
}

/** Time that thousands of spoiled files may take on a busy machine, milliseconds. */
export const PATIENCE = 120_000;

/** Texts of plans to be spoiled, made once. */
export function randomTexts(count: number): readonly string[] {
  return Array.from({ length: count }, (_, seed) => writePlanText(randomPlan(seed)));
}

/** Values that a spoiled file may hold anywhere. */
const ODD_VALUES: readonly unknown[] = [
  null,
  true,
  0,
  -1,
  1e300,
  0.5,
  '',
  'x'.repeat(200),
  'nowhere',
  [],
  [1, 2, 3],
  {},
  { name: 'x' },
];

/** Change one thing, somewhere in a JSON value: replace it, leave it out, add a field, repeat or drop a member. */
export function mutate(value: unknown, random: Random): unknown {
  const copy: unknown = JSON.parse(JSON.stringify(value));
  const spots: { readonly holder: Record<string, unknown> | unknown[]; readonly key: string }[] = [];
  const walk = (holder: unknown): void => {
    if (holder === null || typeof holder !== 'object') return;
    for (const key of Object.keys(holder)) {
      spots.push({ holder: holder as Record<string, unknown>, key });
      walk((holder as Record<string, unknown>)[key]);
    }
  };
  walk(copy);
  if (spots.length === 0) return random.pick(ODD_VALUES);
  const { holder, key } = random.pick(spots);
  const list = Array.isArray(holder) ? holder : undefined;
  const record = holder as Record<string, unknown>;
  switch (random.integer(0, 4)) {
    case 0:
      if (list) list.splice(Number(key), 1);
      else Reflect.deleteProperty(record, key);
      break;
    case 1:
      record[key] = random.pick(ODD_VALUES);
      break;
    case 2:
      if (list) list.push(JSON.parse(JSON.stringify(list[Number(key)])));
      else record['surprise'] = random.pick(ODD_VALUES);
      break;
    case 3: {
      const other = random.pick(spots);
      record[key] = JSON.parse(JSON.stringify((other.holder as Record<string, unknown>)[other.key] ?? null));
      break;
    }
    default: {
      const now = record[key];
      if (typeof now === 'number') record[key] = random.pick([now + 1, -now, now * 1000, now + 0.5]);
      else if (typeof now === 'string') record[key] = `${now}!`;
      else record[key] = random.pick(ODD_VALUES);
    }
  }
  return copy;
}
