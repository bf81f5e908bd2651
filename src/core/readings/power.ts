/** Devices with their power off: rails bled to ground, output stages open, clamp diodes left. */
import type { LinkPart } from '../wiring/index.ts';
import { PROTECTION_DIODE } from '../wiring/index.ts';

/** What the devices do while a reading is taken: off, on and at rest, on with clock running, or on while notes are played. */
export const POWERS = ['off', 'idle', 'clock', 'notes'] as const;

/** What the devices do during one reading. */
export type Power = (typeof POWERS)[number];

/** In words. */
export function sayPower(power: Power): string {
  switch (power) {
    case 'off':
      return 'power off';
    case 'idle':
      return 'power on, nothing sent';
    case 'clock':
      return 'power on, clock running at 120 beats a minute';
    case 'notes':
      return 'power on, a note played now and then';
  }
}

/** A dead supply rail to ground, ohms (common practice). */
const DEAD_RAIL_OHMS = 1e3;

/**
 * The same parts with every supply of the devices dead, a foreign one not: 1 kohm from rail to ground in its place, output stages open, with a clamp diode
 * to the rail and one to ground (common practice; MMA CA-033 does not say).
 */
export function powerOff(parts: readonly LinkPart[]): readonly LinkPart[] {
  const stage = parts.find(({ role }) => role === 'stage-low');
  const without = parts.flatMap((part): readonly LinkPart[] => {
    const { element, role } = part;
    if (role === 'stage-low' || role === 'stage-high') return [];
    if (element.kind !== 'voltage' || role === 'foreign-supply') return [part];
    const { name, plus, minus } = element;
    return [
      {
        ...part,
        role: 'rail',
        element: { kind: 'resistor', name, a: plus, b: minus, ohms: DEAD_RAIL_OHMS },
      },
    ];
  });
  const supply = parts.find(({ role, owner }) => role === 'supply' && owner.place === 'output');
  if (stage?.element.kind !== 'switch' || supply?.element.kind !== 'voltage') return without;
  const { a: drive, b: ground } = stage.element;
  return [
    ...without,
    clamp('out clamp to rail', drive, supply.element.plus),
    clamp('out clamp to ground', ground, drive),
  ];
}

/** A clamp diode of an output. */
export function clamp(name: string, anode: string, cathode: string): LinkPart {
  const element = { kind: 'diode', name, anode, cathode, ...PROTECTION_DIODE } as const;
  return { owner: { place: 'output' }, role: 'clamp', rating: {}, element };
}
