/** Readers of what only a whole board needs; every field may be left out. */
import {
  DEVICE_KINDS,
  EDGES,
  JACK_ROLES,
  LEAD_ORIGINS,
  PLAN_LIMITS as MOST,
  POWERS,
  SETTINGS,
  TALKS,
  THRUS,
} from './plan.ts';
import type { MakingPrices, Wishes } from './plan.ts';
import { PRESS_KINDS, PRESS_RANGES } from './press.ts';
import type { PressItem } from './press.ts';
import { CONNECTORS } from '../wiring/index.ts';
import { STYLES } from '../wiring/index.ts';
import { listOf, miss, number, objectOf, oneOf, text, truth, whole } from './read.ts';
import type { Reader } from './read.ts';

const name = text(MOST.nameCharacters);
const price = number(0, MOST.price, '');
const centimetres = number(0, MOST.centimetres, 'cm');

export const JACK_FIELDS = {
  role: oneOf(JACK_ROLES),
  thru: oneOf(THRUS),
  setTo: oneOf(SETTINGS),
  latencySeconds: number(0, MOST.latencySeconds, 's'),
  edge: oneOf(EDGES),
  alongCentimetres: centimetres,
  styles: listOf(oneOf(STYLES), STYLES.length),
  sharesHole: text(MOST.nameCharacters, 0),
  supplyOnSpares: truth,
} as const;

export const DEVICE_FIELDS = {
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
} as const;

export const LEAD_FIELDS = { origin: oneOf(LEAD_ORIGINS), price } as const;

export const BOARD_FIELDS = {
  currency: text(8, 0),
  pressLimitSeconds: number(0, MOST.pressLimitSeconds, 's'),
} as const;

const readPlugs: Reader<MakingPrices['plugs']> = objectOf<MakingPrices['plugs']>(
  {
    din5: price,
    din7: price,
    'trs-6.35': price,
    'trs-3.5': price,
    'trs-2.5': price,
    'ts-6.35': price,
    'ts-3.5': price,
  },
  {},
  CONNECTORS,
);

export const readMaking: Reader<MakingPrices> = objectOf<MakingPrices>({
  plugs: readPlugs,
  plug: price,
  wirePerMetre: price,
  perLead: price,
});

export const readWishes: Reader<Wishes> = objectOf<Wishes>({
  noHub: truth,
  noSoldering: truth,
  mostHops: whole(0, MOST.hops),
  spareOutlets: whole(0, MOST.hops),
});

export const readPress: Reader<PressItem> = (value, place, reading) => {
  const send = value !== null && typeof value === 'object' && 'send' in value ? value.send : undefined;
  switch (send) {
    case 'program':
      return objectOf<Extract<PressItem, { send: 'program' }>>({
        device: name,
        send: oneOf(['program']),
        program: whole(...PRESS_RANGES.program),
      })(value, place, reading);
    case 'bank':
      return objectOf<Extract<PressItem, { send: 'bank' }>>({
        device: name,
        send: oneOf(['bank']),
        bank: whole(...PRESS_RANGES.bank),
      })(value, place, reading);
    case 'control':
      return objectOf<Extract<PressItem, { send: 'control' }>>({
        device: name,
        send: oneOf(['control']),
        controller: whole(...PRESS_RANGES.controller),
        value: whole(...PRESS_RANGES.value),
      })(value, place, reading);
    default:
      return miss(reading, `${place}.send`, `one of ${PRESS_KINDS.join(', ')}`, send);
  }
};
