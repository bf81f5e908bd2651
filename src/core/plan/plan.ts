/**
 * The plan: one file for the whole workbook. Devices with jacks, leads, and links; one lead is a plan of two devices and one link.
 * What only a whole board needs may be left out, and then has the default given here.
 */
import type { Connector } from '../wiring/index.ts';
import type { Jack, Lead, Link } from '../wiring/index.ts';
import type { Style } from '../wiring/index.ts';
import type { PressItem } from './press.ts';

export const PLAN_FORMAT = 'five-milliamps-plan';
export const PLAN_VERSION = 1;

/** What a device is for. Hubs and converters copy their input to every outlet; a merger joins its inputs into one output. */
export const DEVICE_KINDS = [
  'other',
  'controller',
  'pedal',
  'instrument',
  'hub',
  'merger',
  'converter',
  'computer',
] as const;
export type DeviceKind = (typeof DEVICE_KINDS)[number];

/** How a device speaks: by its jacks, or by something that is no wired link of this kind. */
export const TALKS = ['jacks', 'usb-only', 'wireless'] as const;
export type Talk = (typeof TALKS)[number];

/** Where a device gets its power. Devices on a shared supply have joined grounds; `spare-pins` is fed through a control lead. */
export const POWERS = ['unknown', 'own', 'shared', 'battery', 'spare-pins'] as const;
export type Power = (typeof POWERS)[number];

/** Edges of a device seen from above, the player standing at the front. */
export const EDGES = ['back', 'right', 'front', 'left'] as const;
export type Edge = (typeof EDGES)[number];

/** What a jack is: a plain IN or OUT by its direction, a THRU, or one that a menu sets to OUT or THRU. */
export const JACK_ROLES = ['plain', 'thru', 'out-or-thru'] as const;
export type JackRole = (typeof JACK_ROLES)[number];

/** How a THRU copies its input: edge by edge, or byte by byte after reading it. */
export const THRUS = ['hardware', 'software'] as const;
export type Thru = (typeof THRUS)[number];

/** What a menu sets an OUT-or-THRU jack to. */
export const SETTINGS = ['out', 'thru'] as const;
export type Setting = (typeof SETTINGS)[number];

/** A jack on a device, by name. */
export interface PlanJack extends Jack {
  readonly name: string;
  readonly role?: JackRole;
  readonly thru?: Thru;
  readonly setTo?: Setting;
  /** Time a software THRU or a merger needs between a byte read and its copy, seconds. */
  readonly latencySeconds?: number;
  readonly edge?: Edge;
  /** From the left end of a back or front edge, from the back end of a side, centimetres. */
  readonly alongCentimetres?: number;
  /** Styles that this jack can be set to; none when it is fixed. */
  readonly styles?: readonly Style[];
  /** Name of the jack of the other direction that shares the hole of an in-and-out jack; empty for none. */
  readonly sharesHole?: string;
  /** Whether its spare pins carry a supply. */
  readonly supplyOnSpares?: boolean;
}

/** A device and its jacks. Position: the back left corner from the back left of the board, centimetres; width 0 is not placed. */
export interface Device {
  readonly name: string;
  readonly jacks: readonly PlanJack[];
  readonly kind?: DeviceKind;
  readonly talks?: Talk;
  readonly power?: Power;
  /** 1 to 16, or 0 where none is set: the device listens to all. */
  readonly channel?: number;
  readonly xCentimetres?: number;
  readonly yCentimetres?: number;
  readonly widthCentimetres?: number;
  readonly depthCentimetres?: number;
  /** Whether it is still to be bought. */
  readonly toBuy?: boolean;
  /** The reader's own figure. */
  readonly price?: number;
}

/** Where a lead comes from. */
export const LEAD_ORIGINS = ['made', 'shop', 'owned'] as const;
export type LeadOrigin = (typeof LEAD_ORIGINS)[number];

/** A lead of the plan; its price is the reader's own figure. */
export interface PlanLead extends Lead {
  readonly origin?: LeadOrigin;
  readonly price?: number;
}

/** A jack named by device and jack. */
export interface JackPlace {
  readonly device: string;
  readonly jack: string;
}

/** One input of a link, with the names of the leads in series that lead to it, the one at the output first. */
export interface PlanBranch extends JackPlace {
  readonly leads: readonly string[];
}

/** A link of the plan: an output and one or more inputs. */
export interface PlanLink {
  readonly name: string;
  readonly output: JackPlace;
  readonly inputs: readonly PlanBranch[];
}

/** A lead on offer: `owned` pieces at no cost, or 0 for the shop's, as many as wanted at `price` each. */
export interface StockLead {
  readonly lead: Lead;
  readonly price: number;
  readonly owned: number;
}

/** What a made lead costs, the reader's own figures: each plug by connector, wire by the metre, and the rest by the lead. */
export interface MakingPrices {
  readonly plugs: Readonly<Partial<Record<Connector, number>>>;
  readonly plug: number;
  readonly wirePerMetre: number;
  readonly perLead: number;
}

/** What the owner wishes: `mostHops` 0 is no wish, otherwise the most links between the controller and any device. */
export interface Wishes {
  readonly noHub: boolean;
  readonly noSoldering: boolean;
  readonly mostHops: number;
  readonly spareOutlets: number;
}

/** A whole plan. */
export interface Plan {
  readonly format: typeof PLAN_FORMAT;
  readonly version: typeof PLAN_VERSION;
  readonly title: string;
  readonly devices: readonly Device[];
  readonly leads: readonly PlanLead[];
  readonly links: readonly PlanLink[];
  /** Sign or letters of the reader's currency. */
  readonly currency?: string;
  readonly stock?: readonly StockLead[];
  /** Hubs and converters on offer; each has a price. */
  readonly hubs?: readonly Device[];
  readonly making?: MakingPrices;
  readonly wishes?: Wishes;
  readonly press?: readonly PressItem[];
  /** The longest that one press may take, seconds. */
  readonly pressLimitSeconds?: number;
}

/** Bounds of a plan file: far above any board, low enough that a spoiled file cannot stall a page. */
export const PLAN_LIMITS = {
  characters: 1_000_000,
  nameCharacters: 80,
  devices: 64,
  jacks: 32,
  leads: 256,
  links: 256,
  inputs: 16,
  leadsInSeries: 8,
  conductors: 64,
  faults: 32,
  stock: 64,
  hubs: 16,
  press: 256,
  price: 1e9,
  centimetres: 1000,
  ownedLeads: 64,
  latencySeconds: 1,
  pressLimitSeconds: 60,
  hops: 64,
} as const;

/** Time between a byte read and its copy where none is given, seconds: the byte itself comes on top (our choice; may be far more). */
export const LATENCY_SECONDS = 0.001;

export const JACK_DEFAULTS = {
  role: 'plain',
  thru: 'hardware',
  setTo: 'out',
  latencySeconds: LATENCY_SECONDS,
  edge: 'back',
  alongCentimetres: 0,
  styles: [],
  sharesHole: '',
  supplyOnSpares: false,
} as const satisfies Partial<PlanJack>;

export const DEVICE_DEFAULTS = {
  kind: 'other',
  talks: 'jacks',
  power: 'unknown',
  channel: 0,
  xCentimetres: 0,
  yCentimetres: 0,
  widthCentimetres: 0,
  depthCentimetres: 0,
  toBuy: false,
  price: 0,
} as const satisfies Partial<Device>;

export const LEAD_DEFAULTS = { origin: 'made', price: 0 } as const satisfies Partial<PlanLead>;

/** One unit for every part, so that plans can be compared before the reader has put prices in. */
export const MAKING_DEFAULTS: MakingPrices = { plugs: {}, plug: 1, wirePerMetre: 1, perLead: 0 };

export const WISH_DEFAULTS: Wishes = { noHub: false, noSoldering: false, mostHops: 0, spareOutlets: 0 };

export const PLAN_DEFAULTS = {
  currency: '',
  stock: [],
  hubs: [],
  making: MAKING_DEFAULTS,
  wishes: WISH_DEFAULTS,
  press: [],
  pressLimitSeconds: 0.1,
} as const satisfies Partial<Plan>;

export type WholeJack = Required<PlanJack>;
export type WholeDevice = Required<Omit<Device, 'jacks'>> & { readonly jacks: readonly WholeJack[] };

/** A jack with every field that was left out at its default. */
export function wholeJack(jack: PlanJack): WholeJack {
  return { ...JACK_DEFAULTS, ...jack };
}

/** A device with every field that was left out at its default. */
export function wholeDevice(device: Device): WholeDevice {
  return { ...DEVICE_DEFAULTS, ...device, jacks: device.jacks.map(wholeJack) };
}

/** A plan of these parts. */
export function makePlan(parts: Partial<Plan>): Plan {
  return {
    format: PLAN_FORMAT,
    version: PLAN_VERSION,
    title: '',
    devices: [],
    leads: [],
    links: [],
    ...parts,
  };
}

/** The jack alone, without name and place: what a circuit is built from. */
export function plainJack({ direction, connector, style, circuit, part, values }: Jack): Jack {
  return { direction, connector, style, circuit, part, values };
}

/** Where a named jack is in a plan, or undefined. */
export function findJack(plan: Plan, place: JackPlace): PlanJack | undefined {
  return plan.devices
    .find(({ name }) => name === place.device)
    ?.jacks.find(({ name }) => name === place.jack);
}

/** A link of a plan with its jacks and leads in place. @throws when a name is not in the plan (read plans are checked). */
export function linkOf(plan: Plan, link: PlanLink): Link {
  const jackAt = (place: JackPlace): Jack => {
    const found = findJack(plan, place);
    if (!found) throw new Error(`link '${link.name}': no jack '${place.jack}' on a device '${place.device}'`);
    return plainJack(found);
  };
  const leadNamed = (name: string): Lead => {
    const found = plan.leads.find((lead) => lead.name === name);
    if (!found) throw new Error(`link '${link.name}': no lead '${name}'`);
    return found;
  };
  return {
    output: jackAt(link.output),
    branches: link.inputs.map((input) => ({ input: jackAt(input), leads: input.leads.map(leadNamed) })),
  };
}

/** A plan of one link: the output's device, the input's device, and the leads between. */
export function planOfLink(output: Jack, input: Jack, leads: readonly Lead[], title = ''): Plan {
  const named = leads.map((lead, at) => ({ ...lead, name: `lead ${at + 1}` }));
  return makePlan({
    title,
    devices: [
      { name: 'sender', jacks: [{ ...output, name: 'out' }] },
      { name: 'receiver', jacks: [{ ...input, name: 'in' }] },
    ],
    leads: named,
    links: [
      {
        name: 'link 1',
        output: { device: 'sender', jack: 'out' },
        inputs: [{ device: 'receiver', jack: 'in', leads: named.map(({ name }) => name) }],
      },
    ],
  });
}
