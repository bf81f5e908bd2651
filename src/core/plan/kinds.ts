/** The closed sets and the bounds of a plan file. A shared link numbers the sets, so they may only grow at their ends. */

/** What a plan file says it is. */
export const PLAN_FORMAT = 'five-milliamps-plan';

/** Version of the file format; a file of a later one is refused by name. */
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
/** What a device is for. */
export type DeviceKind = (typeof DEVICE_KINDS)[number];

/** How a device speaks: by its jacks, or by something that is no wired link of this kind. */
export const TALKS = ['jacks', 'usb-only', 'wireless'] as const;
/** How a device speaks. */
export type Talk = (typeof TALKS)[number];

/** Where a device gets its power. Devices on a shared supply have joined grounds; `spare-pins` is fed through a control lead. */
export const POWERS = ['unknown', 'own', 'shared', 'battery', 'spare-pins'] as const;
/** Where a device gets its power. */
export type Power = (typeof POWERS)[number];

/** Edges of a device seen from above, the player standing at the front. */
export const EDGES = ['back', 'right', 'front', 'left'] as const;
/** An edge of a device. */
export type Edge = (typeof EDGES)[number];

/** What a jack is: a plain IN or OUT by its direction, a THRU, or one that a menu sets to OUT or THRU. */
export const JACK_ROLES = ['plain', 'thru', 'out-or-thru'] as const;
/** What a jack is. */
export type JackRole = (typeof JACK_ROLES)[number];

/** How a THRU copies its input: edge by edge, or byte by byte after reading it. */
export const THRUS = ['hardware', 'software'] as const;
/** How a THRU copies its input. */
export type Thru = (typeof THRUS)[number];

/** What a menu sets an OUT-or-THRU jack to. */
export const SETTINGS = ['out', 'thru'] as const;
/** What an OUT-or-THRU jack is set to. */
export type Setting = (typeof SETTINGS)[number];

/** Where a lead comes from. */
export const LEAD_ORIGINS = ['made', 'shop', 'owned'] as const;
/** Where a lead comes from. */
export type LeadOrigin = (typeof LEAD_ORIGINS)[number];

/** What can be sent to a device at one press. */
export const PRESS_KINDS = ['program', 'bank', 'control'] as const;

/** Ranges of the numbers of a press: programs count from 1, banks from 0, as most manuals print them. */
export const PRESS_RANGES = {
  program: [1, 128],
  bank: [0, 16383],
  controller: [0, 119],
  value: [0, 127],
} as const;

/**
 * Bounds of a plan file: far above any board, low enough that a spoiled file cannot stall a page. Links that share a jack are one
 * circuit, with at most `inputs` inputs and `conductorsInCircuit` conductors: solving one of these takes about 0.2 s, and its
 * cost grows with the square of its size and more. All leads in use have at most `conductorsInUse`: 64 links of two DIN leads.
 */
export const PLAN_LIMITS = {
  characters: 1_000_000,
  nameCharacters: 80,
  currencyCharacters: 8,
  devices: 64,
  jacks: 32,
  leads: 256,
  links: 128,
  inputs: 4,
  leadsInSeries: 4,
  conductors: 16,
  conductorsInCircuit: 48,
  conductorsInUse: 640,
  faults: 32,
  stock: 64,
  hubs: 16,
  press: 256,
  channel: 16,
  price: 1e9,
  centimetres: 1000,
  ownedLeads: 64,
  latencySeconds: 1,
  pressLimitSeconds: 60,
  hops: 64,
  student: 999,
} as const;
