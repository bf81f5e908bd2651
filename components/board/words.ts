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

export const KIND_WORDS: Readonly<Record<DeviceKind, string>> = {
  controller: 'controller',
  pedal: 'pedal',
  instrument: 'instrument',
  hub: 'hub: copies its input to every output',
  merger: 'merger: joins its inputs',
  converter: 'converter: passes on in another style',
  computer: 'computer',
  other: 'something else',
};

export const TALK_WORDS: Readonly<Record<Talk, string>> = {
  jacks: 'by its jacks',
  'usb-only': 'by USB only',
  wireless: 'wireless',
};

export const POWER_WORDS: Readonly<Record<DevicePower, string>> = {
  unknown: 'not known',
  own: 'a supply of its own',
  shared: 'a supply shared with others',
  battery: 'battery',
  'spare-pins': 'spare pins of a control lead',
};

export const EDGE_WORDS: Readonly<Record<Edge, string>> = {
  back: 'back',
  right: 'right side',
  front: 'front',
  left: 'left side',
};

export const DIRECTION_WORDS: Readonly<Record<Direction, string>> = { in: 'input', out: 'output' };

export const ROLE_WORDS: Readonly<Record<JackRole, string>> = {
  plain: 'OUT: its own messages',
  thru: 'THRU: copies what comes in',
  'out-or-thru': 'OUT or THRU, set by a menu',
};

export const THRU_WORDS: Readonly<Record<Thru, string>> = {
  hardware: 'at once, by hardware',
  software: 'after reading it, by software',
};

export const SETTING_WORDS: Readonly<Record<Setting, string>> = { out: 'OUT', thru: 'THRU' };

export const ORIGIN_WORDS: Readonly<Record<LeadOrigin, string>> = {
  made: 'to be made',
  shop: 'from the shop',
  owned: 'yours',
};
