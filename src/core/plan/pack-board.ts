/**
 * Packing of the fields that only a whole board needs: pairs of a field's number and its value, only those that are there.
 * Field lists may only grow at their ends, like every set that a link numbers.
 */
import { DEVICE_KINDS, EDGES, JACK_ROLES, LEAD_ORIGINS, POWERS, SETTINGS, TALKS, THRUS } from './plan.ts';
import { PRESS_KINDS } from './press.ts';
import type { PressItem } from './press.ts';
import { CONNECTORS } from '../wiring/index.ts';
import { STYLES } from '../wiring/index.ts';

/** How one field is written: as it is, or by its number in a closed set. */
type Field = readonly [name: string, set?: readonly string[]];

export const PACKED_JACK_FIELDS: readonly Field[] = [
  ['role', JACK_ROLES],
  ['thru', THRUS],
  ['setTo', SETTINGS],
  ['latencySeconds'],
  ['edge', EDGES],
  ['alongCentimetres'],
  ['styles', STYLES],
  ['sharesHole'],
  ['supplyOnSpares'],
];

export const PACKED_DEVICE_FIELDS: readonly Field[] = [
  ['kind', DEVICE_KINDS],
  ['talks', TALKS],
  ['power', POWERS],
  ['channel'],
  ['xCentimetres'],
  ['yCentimetres'],
  ['widthCentimetres'],
  ['depthCentimetres'],
  ['toBuy'],
  ['price'],
];

export const PACKED_LEAD_FIELDS: readonly Field[] = [['origin', LEAD_ORIGINS], ['price']];

/** Fields of the plan itself; those of a shape of their own are packed by the shared link. */
export const PACKED_PLAN_FIELDS: readonly Field[] = [
  ['currency'],
  ['pressLimitSeconds'],
  ['stock'],
  ['hubs'],
  ['making'],
  ['wishes'],
  ['press'],
];

const WISHES = ['noHub', 'noSoldering', 'mostHops', 'spareOutlets'] as const;
const MAKING = ['plug', 'wirePerMetre', 'perLead'] as const;

/** A way to write one field and to read it back. */
export interface Codec {
  readonly pack: (value: never) => unknown;
  readonly unpack: (value: unknown) => unknown;
}

/** Codecs of the fields with a shape of their own. Press items name their device by number in the plan. */
export function boardCodecs(deviceNames: readonly unknown[]): Readonly<Record<string, Codec>> {
  return {
    making: {
      pack: (making: Record<string, unknown> & { plugs: Record<string, number> }) => [
        ...MAKING.map((key) => making[key]),
        Object.entries(making.plugs).flatMap(([key, one]) => [
          (CONNECTORS as readonly string[]).indexOf(key),
          one,
        ]),
      ],
      unpack: (value) => {
        const given = list(value);
        const plugs = pairs(given[MAKING.length]).map(([key, one]) => [CONNECTORS[Number(key)], one]);
        return {
          ...Object.fromEntries(MAKING.map((key, at) => [key, given[at]])),
          plugs: Object.fromEntries(plugs),
        };
      },
    },
    wishes: {
      pack: (wishes: Record<string, unknown>) => WISHES.map((key) => packTruth(wishes[key])),
      unpack: (value) => {
        const [noHub, noSoldering, mostHops, spareOutlets] = list(value);
        return { noHub: unpackTruth(noHub), noSoldering: unpackTruth(noSoldering), mostHops, spareOutlets };
      },
    },
    press: {
      pack: (press: readonly PressItem[]) =>
        press.map((item) => [
          deviceNames.indexOf(item.device),
          PRESS_KINDS.indexOf(item.send),
          ...numbersOf(item),
        ]),
      unpack: (value) =>
        list(value).map((item) => {
          const [device, kind, first, second] = list(item);
          const send = PRESS_KINDS[Number(kind)];
          const head = { device: deviceNames[Number(device)], send };
          if (send === 'program') return { ...head, program: first };
          return send === 'bank' ? { ...head, bank: first } : { ...head, controller: first, value: second };
        }),
    },
  };
}

function numbersOf(item: PressItem): readonly number[] {
  switch (item.send) {
    case 'program':
      return [item.program];
    case 'bank':
      return [item.bank];
    case 'control':
      return [item.controller, item.value];
  }
}

/** The fields that are there, as number and value in turn; an empty list when there are none. */
export function packFields(
  holder: object,
  fields: readonly Field[],
  codecs: Readonly<Record<string, Codec>> = {},
): readonly unknown[] {
  return fields.flatMap(([name, set], at) => {
    const value = (holder as Readonly<Record<string, unknown>>)[name];
    if (value === undefined) return [];
    const codec = codecs[name];
    if (codec) return [at, codec.pack(value as never)];
    if (!set) return [at, packTruth(value)];
    return [
      at,
      Array.isArray(value) ? value.map((one) => set.indexOf(String(one))) : set.indexOf(String(value)),
    ];
  });
}

/** Back to fields with names; a number that stands for nothing gives undefined under a name of its own, which the reader refuses. */
export function unpackFields(
  packed: unknown,
  fields: readonly Field[],
  codecs: Readonly<Record<string, Codec>> = {},
): Readonly<Record<string, unknown>> {
  return Object.fromEntries(
    pairs(packed).map(([at, value]) => {
      const field = fields[Number(at)];
      if (!field) return [`field ${String(at)}`, value];
      const [name, set] = field;
      const codec = codecs[name];
      if (codec) return [name, codec.unpack(value)];
      if (!set) return [name, TRUTHS.includes(name) ? unpackTruth(value) : value];
      const word = (one: unknown): unknown => set[Number(one)] ?? null;
      return [name, Array.isArray(value) ? value.map(word) : word(value)];
    }),
  );
}

/** Fields that hold true or false, written as 1 and 0. */
const TRUTHS: readonly string[] = ['supplyOnSpares', 'toBuy'];

function packTruth(value: unknown): unknown {
  return typeof value === 'boolean' ? Number(value) : value;
}

function unpackTruth(value: unknown): unknown {
  return value === 1 ? true : value === 0 ? false : value;
}

/** A list, or an empty one for anything else. */
export function list(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}

/** A flat list taken two by two. */
export function pairs(value: unknown): readonly (readonly [unknown, unknown])[] {
  const flat = list(value);
  return Array.from(
    { length: Math.ceil(flat.length / 2) },
    (_, at) => [flat[2 * at], flat[2 * at + 1]] as const,
  );
}
