/**
 * The shared link: a whole plan in a piece of an address. The plan is written as arrays in a fixed order with numbers for
 * words, packed with raw deflate, and spelt in base64url behind one letter for the version.
 */
import { CIRCUITS, PARTS, VALUES } from '../wiring/index.ts';
import { CONNECTORS, CONTACTS, FORMS } from '../wiring/index.ts';
import { DIRECTIONS, FAULT_KINDS, SIDES } from '../wiring/index.ts';
import type { Fault, Lead } from '../wiring/index.ts';
import { STYLES } from '../wiring/index.ts';
import type { StockLead } from './plan.ts';
import {
  PACKED_DEVICE_FIELDS,
  PACKED_JACK_FIELDS,
  PACKED_LEAD_FIELDS,
  PACKED_PLAN_FIELDS,
  boardCodecs,
  list,
  packFields,
  pairs,
  unpackFields,
} from './pack-board.ts';
import type { Codec } from './pack-board.ts';
import { PLAN_FORMAT, PLAN_VERSION } from './plan.ts';
import type { Device, Plan, PlanLead } from './plan.ts';
import { readPlan } from './read-plan.ts';
import type { PlanReading } from './read-plan.ts';

/** Version letter of the packing. The closed sets it numbers may only grow at their ends; a test holds their order. */
const PACKING = 'a';

/** Unpacked size above which a link is refused, bytes. */
const MOST_UNPACKED = 1_000_000;

/** Longest link that is looked at, characters. */
const MOST_PACKED = 100_000;

type Packed = readonly unknown[];

/** Write a plan into a link's text. */
export async function writeSharedLink(plan: Plan): Promise<string> {
  const bytes = new TextEncoder().encode(JSON.stringify(packPlan(plan)));
  const packed = await throughStream(bytes, new CompressionStream('deflate-raw'), Infinity);
  return PACKING + toBase64Url(packed);
}

/** Read a plan from a link's text; never throws, a spoiled link is a reading with problems. */
export async function readSharedLink(text: string): Promise<PlanReading> {
  const bad = (expected: string, got: string): PlanReading => ({
    ok: false,
    problems: [{ place: 'the link', expected, got }],
  });
  if (text.length > MOST_PACKED) return bad(`at most ${MOST_PACKED} characters`, `${text.length} characters`);
  if (!text.startsWith(PACKING))
    return bad(
      'a link made by this workbook',
      text === '' ? 'nothing' : `one that begins with '${text.slice(0, 1)}'`,
    );
  try {
    const bytes = fromBase64Url(text.slice(1));
    const unpacked = await throughStream(bytes, new DecompressionStream('deflate-raw'), MOST_UNPACKED);
    const value: unknown = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(unpacked));
    return readPlan(unpackPlan(value));
  } catch {
    return bad('a whole link', 'one that is cut short or changed');
  }
}

function packPlan(plan: Plan): Packed {
  return [
    plan.title,
    plan.devices.map(packDevice),
    plan.leads.map(packLead),
    plan.links.map(({ name, output, inputs }) => [
      name,
      ...placeNumbers(plan, output.device, output.jack),
      inputs.map(({ device, jack, leads }) => [
        ...placeNumbers(plan, device, jack),
        leads.map((one) => plan.leads.findIndex((lead) => lead.name === one)),
      ]),
    ]),
    ...more(packFields(plan, PACKED_PLAN_FIELDS, codecs(plan.devices.map(({ name }) => name)))),
  ];
}

/** The codecs of the board, and those that hold leads and devices. */
function codecs(deviceNames: readonly unknown[]): Readonly<Record<string, Codec>> {
  return {
    ...boardCodecs(deviceNames),
    stock: {
      pack: (stock: readonly StockLead[]) =>
        stock.map(({ lead, price, owned }) => [price, owned, packLead(lead)]),
      unpack: (value) =>
        list(value).map((one) => {
          const [price, owned, lead] = list(one);
          return { lead: unpackLead(lead), price, owned };
        }),
    },
    hubs: {
      pack: (hubs: readonly Device[]) => hubs.map(packDevice),
      unpack: (value) => list(value).map(unpackDevice),
    },
  };
}

/** Nothing for no fields, so that a plan without them keeps the text it has always had. */
function more(fields: readonly unknown[]): readonly unknown[] {
  return fields.length === 0 ? [] : [fields];
}

function packDevice(device: Device): Packed {
  return [
    device.name,
    device.jacks.map((jack) => [
      jack.name,
      DIRECTIONS.indexOf(jack.direction),
      CONNECTORS.indexOf(jack.connector),
      STYLES.indexOf(jack.style),
      CIRCUITS.indexOf(jack.circuit),
      PARTS.indexOf(jack.part),
      Object.entries(jack.values).flatMap(([key, value]) => [
        VALUES.indexOf(key as (typeof VALUES)[number]),
        value,
      ]),
      ...more(packFields(jack, PACKED_JACK_FIELDS)),
    ]),
    ...more(packFields(device, PACKED_DEVICE_FIELDS)),
  ];
}

function packLead(lead: PlanLead): Packed {
  return [
    lead.name,
    CONNECTORS.indexOf(lead.from.connector),
    FORMS.indexOf(lead.from.form),
    CONNECTORS.indexOf(lead.to.connector),
    FORMS.indexOf(lead.to.form),
    lead.conductors.flatMap(({ from, to }) => [CONTACTS.indexOf(from), CONTACTS.indexOf(to)]),
    lead.lengthMetres,
    lead.gauge,
    lead.contactOhms,
    lead.faults.map(packFault),
    ...more(packFields(lead, PACKED_LEAD_FIELDS)),
  ];
}

function packFault(fault: Fault): Packed {
  const head = [FAULT_KINDS.indexOf(fault.kind), SIDES.indexOf(fault.side)];
  switch (fault.kind) {
    case 'open':
      return [...head, CONTACTS.indexOf(fault.contact)];
    case 'joint':
      return [...head, CONTACTS.indexOf(fault.contact), fault.ohms];
    case 'short':
      return [...head, ...fault.between.map((contact) => CONTACTS.indexOf(contact))];
  }
}

function placeNumbers(plan: Plan, device: string, jack: string): readonly [number, number] {
  const at = plan.devices.findIndex(({ name }) => name === device);
  return [at, plan.devices[at]?.jacks.findIndex(({ name }) => name === jack) ?? -1];
}

/** Back to the shape of a plan file; what does not fit becomes undefined, which the reader then names. */
function unpackPlan(value: unknown): unknown {
  const [title, devices, leads, links, board] = list(value);
  const names = list(devices).map((device) => list(device)[0]);
  const jackNames = list(devices).map((device) => list(list(device)[1]).map((jack) => list(jack)[0]));
  const leadNames = list(leads).map((lead) => list(lead)[0]);
  const place = (device: unknown, jack: unknown): { device: unknown; jack: unknown } => ({
    device: names[Number(device)],
    jack: jackNames[Number(device)]?.[Number(jack)],
  });
  return {
    format: PLAN_FORMAT,
    version: PLAN_VERSION,
    title,
    ...unpackFields(board, PACKED_PLAN_FIELDS, codecs(names)),
    devices: list(devices).map(unpackDevice),
    leads: list(leads).map(unpackLead),
    links: list(links).map((link) => {
      const [name, device, jack, inputs] = list(link);
      return {
        name,
        output: place(device, jack),
        inputs: list(inputs).map((input) => {
          const [inDevice, inJack, series] = list(input);
          return { ...place(inDevice, inJack), leads: list(series).map((one) => leadNames[Number(one)]) };
        }),
      };
    }),
  };
}

function unpackDevice(value: unknown): unknown {
  const [name, jacks, fields] = list(value);
  return { name, jacks: list(jacks).map(unpackJack), ...unpackFields(fields, PACKED_DEVICE_FIELDS) };
}

function unpackJack(value: unknown): unknown {
  const [name, direction, connector, style, circuit, part, values, fields] = list(value);
  return {
    ...unpackFields(fields, PACKED_JACK_FIELDS),
    name,
    direction: DIRECTIONS[Number(direction)],
    connector: CONNECTORS[Number(connector)],
    style: STYLES[Number(style)],
    circuit: CIRCUITS[Number(circuit)],
    part: PARTS[Number(part)],
    values: Object.fromEntries(pairs(values).map(([key, one]) => [VALUES[Number(key)], one])),
  };
}

function unpackLead(value: unknown): Readonly<Record<keyof Lead, unknown>> {
  const [
    name,
    fromConnector,
    fromForm,
    toConnector,
    toForm,
    conductors,
    lengthMetres,
    gauge,
    contactOhms,
    faults,
    fields,
  ] = list(value);
  return {
    ...unpackFields(fields, PACKED_LEAD_FIELDS),
    name,
    from: { connector: CONNECTORS[Number(fromConnector)], form: FORMS[Number(fromForm)] },
    to: { connector: CONNECTORS[Number(toConnector)], form: FORMS[Number(toForm)] },
    conductors: pairs(conductors).map(([from, to]) => ({
      from: CONTACTS[Number(from)],
      to: CONTACTS[Number(to)],
    })),
    lengthMetres,
    gauge,
    contactOhms,
    faults: list(faults).map(unpackFault),
  };
}

function unpackFault(value: unknown): unknown {
  const [kindNumber, sideNumber, first, second] = list(value);
  const kind = FAULT_KINDS[Number(kindNumber)];
  const side = SIDES[Number(sideNumber)];
  if (kind === 'short') return { kind, side, between: [CONTACTS[Number(first)], CONTACTS[Number(second)]] };
  const contact = CONTACTS[Number(first)];
  return kind === 'joint' ? { kind, side, contact, ohms: second } : { kind, side, contact };
}

async function throughStream(
  bytes: Uint8Array<ArrayBuffer>,
  stream: CompressionStream | DecompressionStream,
  most: number,
): Promise<Uint8Array> {
  const reader = new Blob([bytes]).stream().pipeThrough(stream).getReader();
  const chunks: Uint8Array[] = [];
  let length = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.length;
    if (length > most) {
      await reader.cancel();
      throw new Error(`link: unpacks to more than ${most} bytes`);
    }
    chunks.push(value);
  }
  const whole = new Uint8Array(length);
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}

function toBase64Url(bytes: Uint8Array): string {
  let text = '';
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text).replace(/\+/g, '-').replace(/\//g, '_').replace(/=+$/, '');
}

function fromBase64Url(text: string): Uint8Array<ArrayBuffer> {
  const plain = atob(text.replace(/-/g, '+').replace(/_/g, '/'));
  return Uint8Array.from(plain, (letter) => letter.charCodeAt(0));
}
