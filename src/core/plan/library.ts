/**
 * Devices to start from, by kind. Every one is invented: no product is meant. Sizes, prices and jacks are made up to look
 * like what a player meets; a reader puts in their own.
 */
import { makeJack } from '../wiring/index.ts';
import type { Connector, Direction, Style } from '../wiring/index.ts';
import type { Device, PlanJack } from './plan.ts';

/** What the library says of itself wherever it is shown. */
export const LIBRARY_NOTE = 'These devices are invented. Put in what your own devices and their manuals say.';

/** A jack by name, with whatever else is known. */
export function planJack(
  name: string,
  direction: Direction,
  connector: Connector,
  style: Style,
  more: Partial<PlanJack> = {},
): PlanJack {
  return { ...makeJack(direction, connector, style, more), ...more, name };
}

/**
 * An in-and-out jack: one TRS hole that receives on one contact and sends on the other, as two jacks that name each other.
 * `receivesOn` tells the contact of the input; both halves use the sleeve. Common practice, no standard.
 */
export function inAndOut(
  name: string,
  receivesOn: 'tip' | 'ring',
  connector: Connector = 'trs-6.35',
): readonly PlanJack[] {
  const [into, out] =
    receivesOn === 'tip'
      ? (['tip-signal', 'ring-signal'] as const)
      : (['ring-signal', 'tip-signal'] as const);
  return [
    planJack(`${name} in`, 'in', connector, into, { sharesHole: `${name} out` }),
    planJack(`${name} out`, 'out', connector, out, { sharesHole: `${name} in` }),
  ];
}

const size = (widthCentimetres: number, depthCentimetres: number): Partial<Device> => ({
  widthCentimetres,
  depthCentimetres,
});

const SETTABLE: readonly Style[] = ['type-a', 'type-b'];

/** The invented library. Names tell what is special about each. */
export const LIBRARY: readonly Device[] = [
  {
    name: 'foot controller with DIN OUT',
    kind: 'controller',
    ...size(40, 12),
    jacks: [planJack('OUT', 'out', 'din5', 'din', { alongCentimetres: 5 })],
  },
  {
    name: 'foot controller with two TRS OUTs',
    kind: 'controller',
    ...size(30, 10),
    jacks: [
      planJack('OUT 1', 'out', 'trs-3.5', 'type-a', {
        circuit: 'driver-3v3',
        alongCentimetres: 5,
        styles: SETTABLE,
      }),
      planJack('OUT 2', 'out', 'trs-3.5', 'type-a', {
        circuit: 'driver-3v3',
        alongCentimetres: 8,
        styles: SETTABLE,
      }),
    ],
  },
  {
    name: 'echo with DIN IN and THRU',
    kind: 'pedal',
    ...size(12, 14),
    jacks: [
      planJack('IN', 'in', 'din5', 'din', { alongCentimetres: 3 }),
      planJack('THRU', 'out', 'din5', 'din', { role: 'thru', alongCentimetres: 9 }),
    ],
  },
  {
    name: 'drive with TRS IN, Type A',
    kind: 'pedal',
    ...size(7, 12),
    jacks: [planJack('IN', 'in', 'trs-3.5', 'type-a', { part: 'H11L1', alongCentimetres: 3.5 })],
  },
  {
    name: 'chorus with TRS IN and THRU, Type B',
    kind: 'pedal',
    ...size(7, 12),
    jacks: [
      planJack('IN', 'in', 'trs-3.5', 'type-b', { part: 'H11L1', alongCentimetres: 2 }),
      planJack('THRU', 'out', 'trs-3.5', 'type-b', {
        role: 'thru',
        circuit: 'driver-3v3',
        alongCentimetres: 5,
      }),
    ],
  },
  {
    name: 'looper with OUT or THRU by menu',
    kind: 'pedal',
    ...size(14, 13),
    jacks: [
      planJack('IN', 'in', 'din5', 'din', { part: 'PC900V', alongCentimetres: 3 }),
      planJack('OUT/THRU', 'out', 'din5', 'din', {
        role: 'out-or-thru',
        thru: 'software',
        alongCentimetres: 10,
      }),
    ],
  },
  {
    name: 'tremolo with an in-and-out jack',
    kind: 'pedal',
    ...size(7, 12),
    jacks: inAndOut('CONTROL', 'tip'),
  },
  {
    name: 'rack synthesizer with IN, OUT and THRU',
    kind: 'instrument',
    ...size(44, 20),
    jacks: [
      planJack('IN', 'in', 'din5', 'din', { alongCentimetres: 8 }),
      planJack('OUT', 'out', 'din5', 'din', { alongCentimetres: 12 }),
      planJack('THRU', 'out', 'din5', 'din', { role: 'thru', alongCentimetres: 16 }),
    ],
  },
  {
    name: 'hub with five outputs, two of them to be set',
    kind: 'hub',
    price: 90,
    ...size(18, 8),
    jacks: [
      planJack('IN', 'in', 'din5', 'din', { part: 'H11L1', alongCentimetres: 2 }),
      planJack('OUT 1', 'out', 'din5', 'din', { alongCentimetres: 5 }),
      planJack('OUT 2', 'out', 'din5', 'din', { alongCentimetres: 8 }),
      planJack('OUT 3', 'out', 'trs-3.5', 'type-a', { styles: SETTABLE, alongCentimetres: 10.8 }),
      planJack('OUT 4', 'out', 'trs-3.5', 'type-a', { styles: SETTABLE, alongCentimetres: 13.3 }),
      planJack('OUT 5', 'out', 'trs-6.35', 'tip-signal', { alongCentimetres: 16 }),
    ],
  },
  {
    name: 'hub with eight DIN outputs',
    kind: 'hub',
    price: 120,
    ...size(22, 8),
    jacks: [
      planJack('IN', 'in', 'din5', 'din', { part: 'H11L1', alongCentimetres: 2 }),
      ...[1, 2, 3, 4, 5, 6, 7, 8].map((number) =>
        planJack(`OUT ${number}`, 'out', 'din5', 'din', { alongCentimetres: 2 + 2.3 * number }),
      ),
    ],
  },
  {
    name: 'merger of two inputs',
    kind: 'merger',
    price: 80,
    ...size(9, 6),
    jacks: [
      planJack('IN 1', 'in', 'din5', 'din', { part: 'H11L1', alongCentimetres: 2 }),
      planJack('IN 2', 'in', 'din5', 'din', { part: 'H11L1', alongCentimetres: 4 }),
      planJack('OUT', 'out', 'din5', 'din', { alongCentimetres: 7 }),
    ],
  },
  {
    name: 'converter from signal on tip to DIN',
    kind: 'converter',
    price: 60,
    ...size(6, 6),
    jacks: [
      planJack('IN', 'in', 'trs-6.35', 'tip-signal', { alongCentimetres: 2 }),
      planJack('OUT', 'out', 'din5', 'din', { alongCentimetres: 4 }),
    ],
  },
  { name: 'reverb by USB only', kind: 'pedal', talks: 'usb-only', ...size(12, 13), jacks: [] },
];
