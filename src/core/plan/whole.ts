/** Jacks and devices with nothing left out. */
import { DEVICE, JACK } from './plan.ts';
import type { Device, PlanJack } from './plan.ts';

/** A jack with nothing left out. */
export type WholeJack = Required<PlanJack>;

/** A device with nothing left out, its jacks neither. */
export type WholeDevice = Required<Omit<Device, 'jacks'>> & { readonly jacks: readonly WholeJack[] };

/** A jack with every field that was left out at its default. */
export function wholeJack(jack: PlanJack): WholeJack {
  return { ...JACK.defaults, ...jack };
}

/** A device with every field that was left out at its default. */
export function wholeDevice(device: Device): WholeDevice {
  return { ...DEVICE.defaults, ...device, jacks: device.jacks.map(wholeJack) };
}
