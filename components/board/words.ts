/** Words of the board page for the closed sets of the plan. */
import type {
  DeviceKind,
  Power as DevicePower,
  Edge,
  JackRole,
  LeadOrigin,
  Setting,
  Talk,
  Thru,
} from '../../src/core/plan/index.ts';
import type { Direction } from '../../src/core/wiring/index.ts';

/** What each kind of device is, with what it does where a player may not know it. */
export const KIND_WORDS: Readonly<Record<DeviceKind, string>> = {
  controller: 'controller',
  pedal: 'pedal',
  instrument: 'instrument',
  hub: 'hub: copies its input to every output',
  merger: 'merger: joins its inputs',
  converter: 'converter: passes on to another type',
  computer: 'computer',
  other: 'something else',
};

/** How a device connects. */
export const TALK_WORDS: Readonly<Record<Talk, string>> = {
  jacks: 'by its jacks',
  'usb-only': 'by USB only',
  wireless: 'wireless',
};

/** Where a device gets its power. */
export const POWER_WORDS: Readonly<Record<DevicePower, string>> = {
  unknown: 'not known',
  own: 'a supply of its own',
  shared: 'a supply shared with others',
  battery: 'battery',
  'spare-pins': 'spare pins of a control lead',
};

/** The side of a device that a jack sits on. */
export const EDGE_WORDS: Readonly<Record<Edge, string>> = {
  back: 'back',
  right: 'right side',
  front: 'front',
  left: 'left side',
};

/** Whether a jack takes messages in or gives them out. */
export const DIRECTION_WORDS: Readonly<Record<Direction, string>> = { in: 'input', out: 'output' };

/** What an output sends. */
export const ROLE_WORDS: Readonly<Record<JackRole, string>> = {
  plain: 'OUT: its own messages',
  thru: 'THRU: copies what comes in',
  'out-or-thru': 'OUT or THRU, set by a menu',
};

/** When a THRU copies what comes in. */
export const THRU_WORDS: Readonly<Record<Thru, string>> = {
  hardware: 'at once, by hardware',
  software: 'after reading it, by software',
};

/** What the menu of an output is set to. */
export const SETTING_WORDS: Readonly<Record<Setting, string>> = { out: 'OUT', thru: 'THRU' };

/** Where a lead comes from. */
export const ORIGIN_WORDS: Readonly<Record<LeadOrigin, string>> = {
  made: 'to be made',
  shop: 'from the shop',
  owned: 'yours',
};
