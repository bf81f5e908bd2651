/** The JSON Schema of the plan file, made from the same closed sets and bounds that the reader uses. */
import { DEVICE_KINDS, EDGES, JACK_ROLES, LEAD_ORIGINS, POWERS, SETTINGS, TALKS, THRUS } from './plan.ts';
import { PRESS_RANGES } from './press.ts';
import { CIRCUITS, PARTS, VALUES } from '../wiring/index.ts';
import { CONNECTORS, CONTACTS, FORMS } from '../wiring/index.ts';
import { DIRECTIONS, JOINT_OHMS, SIDES } from '../wiring/index.ts';
import { STYLES } from '../wiring/index.ts';
import { CONTACT_OHMS, GAUGES, LENGTH_METRES } from '../wiring/index.ts';
import { PLAN_FORMAT, PLAN_LIMITS as MOST, PLAN_VERSION } from './plan.ts';

type Schema = Readonly<Record<string, unknown>>;

const name: Schema = { type: 'string', minLength: 1, maxLength: MOST.nameCharacters };
const oneOf = (all: readonly (string | number)[]): Schema => ({ enum: [...all] });
const list = (items: Schema, maxItems: number, minItems = 0): Schema => ({
  type: 'array',
  items,
  minItems,
  maxItems,
});
const range = ([minimum, maximum]: readonly [number, number]): Schema => ({
  type: 'number',
  minimum,
  maximum,
});

function object(properties: Readonly<Record<string, Schema>>, optional: readonly string[] = []): Schema {
  return {
    type: 'object',
    properties,
    required: Object.keys(properties).filter((key) => !optional.includes(key)),
    additionalProperties: false,
  };
}

const price = range([0, MOST.price]);
const centimetres = range([0, MOST.centimetres]);
const truth: Schema = { type: 'boolean' };
const whole = (minimum: number, maximum: number): Schema => ({ type: 'integer', minimum, maximum });

/** Fields that only a whole board needs; all may be left out. */
const JACK_FIELDS = {
  role: oneOf(JACK_ROLES),
  thru: oneOf(THRUS),
  setTo: oneOf(SETTINGS),
  latencySeconds: range([0, MOST.latencySeconds]),
  edge: oneOf(EDGES),
  alongCentimetres: centimetres,
  styles: list(oneOf(STYLES), STYLES.length),
  sharesHole: { type: 'string', maxLength: MOST.nameCharacters },
  supplyOnSpares: truth,
};
const DEVICE_FIELDS = {
  kind: oneOf(DEVICE_KINDS),
  talks: oneOf(TALKS),
  power: oneOf(POWERS),
  channel: whole(0, 16),
  xCentimetres: centimetres,
  yCentimetres: centimetres,
  widthCentimetres: centimetres,
  depthCentimetres: centimetres,
  toBuy: truth,
  price,
};
const LEAD_FIELDS = { origin: oneOf(LEAD_ORIGINS), price };
const PRESS: Schema = {
  oneOf: [
    object({ device: name, send: { const: 'program' }, program: whole(...PRESS_RANGES.program) }),
    object({ device: name, send: { const: 'bank' }, bank: whole(...PRESS_RANGES.bank) }),
    object({
      device: name,
      send: { const: 'control' },
      controller: whole(...PRESS_RANGES.controller),
      value: whole(...PRESS_RANGES.value),
    }),
  ],
};
const MAKING = object({
  plugs: object(Object.fromEntries(CONNECTORS.map((one) => [one, price])), CONNECTORS),
  plug: price,
  wirePerMetre: price,
  perLead: price,
});
const WISHES = object({
  noHub: truth,
  noSoldering: truth,
  mostHops: whole(0, MOST.hops),
  spareOutlets: whole(0, MOST.hops),
});

/** The schema (JSON Schema 2020-12). Names that must agree with one another are checked by the reader only. */
export function planSchema(): Schema {
  const end = object({ connector: oneOf(CONNECTORS), form: oneOf(FORMS) });
  const contact = oneOf(CONTACTS);
  const side = oneOf(SIDES);
  const fault: Schema = {
    oneOf: [
      object({ kind: { const: 'open' }, side, contact }),
      object({ kind: { const: 'joint' }, side, contact, ohms: range(JOINT_OHMS) }),
      object({ kind: { const: 'short' }, side, between: list(contact, 2, 2) }),
    ],
  };
  const jack = object(
    {
      name,
      direction: oneOf(DIRECTIONS),
      connector: oneOf(CONNECTORS),
      style: oneOf(STYLES),
      circuit: oneOf(CIRCUITS),
      part: { ...oneOf(PARTS), default: '6N138' },
      values: {
        type: 'object',
        properties: Object.fromEntries(VALUES.map((one) => [one, { type: 'number' }])),
        additionalProperties: false,
        default: {},
      },
      ...JACK_FIELDS,
    },
    ['part', 'values', ...Object.keys(JACK_FIELDS)],
  );
  const device = object(
    { name, jacks: list(jack, MOST.jacks), ...DEVICE_FIELDS },
    Object.keys(DEVICE_FIELDS),
  );
  const plainLead = {
    name,
    from: end,
    to: end,
    conductors: list(object({ from: contact, to: contact }), MOST.conductors),
    lengthMetres: range(LENGTH_METRES),
    gauge: oneOf(GAUGES),
    contactOhms: { ...range([0, 10]), default: CONTACT_OHMS },
    faults: { ...list(fault, MOST.faults), default: [] },
  };
  const mayBeLeftOut = ['contactOhms', 'faults'];
  const lead = object({ ...plainLead, ...LEAD_FIELDS }, [...mayBeLeftOut, ...Object.keys(LEAD_FIELDS)]);
  const board = {
    currency: { type: 'string', maxLength: 8 },
    pressLimitSeconds: range([0, MOST.pressLimitSeconds]),
    stock: list(
      object({ lead: object(plainLead, mayBeLeftOut), price, owned: whole(0, MOST.ownedLeads) }),
      MOST.stock,
    ),
    hubs: list(device, MOST.hubs),
    making: MAKING,
    wishes: WISHES,
    press: list(PRESS, MOST.press),
  };
  const branch = object({ device: name, jack: name, leads: list(name, MOST.leadsInSeries, 1) });
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'Five Milliamps plan',
    description:
      'Devices with jacks, leads, and links between them. Lengths in metres, resistances in ohms, gauges in AWG.',
    ...object(
      {
        format: { const: PLAN_FORMAT },
        version: { const: PLAN_VERSION },
        title: { type: 'string', maxLength: MOST.nameCharacters, default: '' },
        devices: list(device, MOST.devices),
        leads: list(lead, MOST.leads),
        links: list(
          object({
            name,
            output: object({ device: name, jack: name }),
            inputs: list(branch, MOST.inputs, 1),
          }),
          MOST.links,
        ),
        ...board,
      },
      ['title', ...Object.keys(board)],
    ),
  };
}
