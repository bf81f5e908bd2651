/** Changes to what a plan lists beside the board: leads and hubs on offer, prices, wishes, and the messages of a press. */
import type { Lead } from '../wiring/index.ts';
import { freshName } from './edited.ts';
import type { PRESS_KINDS } from './kinds.ts';
import { MAKING_DEFAULTS, WISH_DEFAULTS } from './plan.ts';
import type { Device, MakingPrices, Plan, PressItem, StockLead, Wishes } from './plan.ts';

function changedAt<T>(list: readonly T[] = [], at: number, change: (one: T) => T): readonly T[] {
  return list.map((one, place) => (place === at ? change(one) : one));
}

function without<T>(list: readonly T[] = [], at: number): readonly T[] {
  return list.filter((_, place) => place !== at);
}

/** Put a lead on offer, or as many owned pieces; a name in use gets a number. */
export function addStock(plan: Plan, lead: Lead, price = 0, owned = 0): Plan {
  const stock = plan.stock ?? [];
  return { ...plan, stock: [...stock, { lead: freshLead(lead, stock), price, owned }] };
}

/** Change the lead on offer of that number; a name that another one has gets a number. */
export function changeStock(plan: Plan, at: number, changes: Partial<StockLead>): Plan {
  const others = without(plan.stock, at);
  const stock = changedAt(plan.stock, at, (one) => {
    const changed = { ...one, ...changes };
    return { ...changed, lead: freshLead(changed.lead, others) };
  });
  return { ...plan, stock };
}

function freshLead(lead: Lead, others: readonly StockLead[]): Lead {
  return {
    ...lead,
    name: freshName(
      lead.name,
      others.map((one) => one.lead.name),
    ),
  };
}

/** Take a lead off the offer. */
export function removeStock(plan: Plan, at: number): Plan {
  return { ...plan, stock: without(plan.stock, at) };
}

/** Put a hub or converter on offer; a name in use gets a number. */
export function addHub(plan: Plan, hub: Device): Plan {
  const hubs = plan.hubs ?? [];
  return { ...plan, hubs: [...hubs, freshHub(hub, hubs)] };
}

/** Change the hub on offer of that number; a name that another one has gets a number. */
export function changeHub(plan: Plan, at: number, changes: Partial<Device>): Plan {
  const others = without(plan.hubs, at);
  return { ...plan, hubs: changedAt(plan.hubs, at, (one) => freshHub({ ...one, ...changes }, others)) };
}

function freshHub(hub: Device, others: readonly Device[]): Device {
  return {
    ...hub,
    name: freshName(
      hub.name,
      others.map(({ name }) => name),
    ),
  };
}

/** Take a hub off the offer. */
export function removeHub(plan: Plan, at: number): Plan {
  return { ...plan, hubs: without(plan.hubs, at) };
}

/** Change what making a lead costs. */
export function setMaking(plan: Plan, changes: Partial<MakingPrices>): Plan {
  return { ...plan, making: { ...MAKING_DEFAULTS, ...plan.making, ...changes } };
}

/** Change what the owner wishes. */
export function setWishes(plan: Plan, changes: Partial<Wishes>): Plan {
  return { ...plan, wishes: { ...WISH_DEFAULTS, ...plan.wishes, ...changes } };
}

/** A message of a kind with its lowest numbers, for a device. */
export function pressItem(device: string, send: (typeof PRESS_KINDS)[number]): PressItem {
  switch (send) {
    case 'program':
      return { device, send, program: 1 };
    case 'bank':
      return { device, send, bank: 0 };
    case 'control':
      return { device, send, controller: 80, value: 127 };
  }
}

/** Put a message at the end of the press. */
export function addPress(plan: Plan, item: PressItem): Plan {
  return { ...plan, press: [...(plan.press ?? []), item] };
}

/** Put another message in the place of one. */
export function changePress(plan: Plan, at: number, item: PressItem): Plan {
  return { ...plan, press: changedAt(plan.press, at, () => item) };
}

/** Take a message out. */
export function removePress(plan: Plan, at: number): Plan {
  return { ...plan, press: without(plan.press, at) };
}

/** Let a message change places with the one before it (-1) or after it (1). */
export function movePress(plan: Plan, at: number, by: -1 | 1): Plan {
  const press = plan.press ?? [];
  const [one, other] = [press[at], press[at + by]];
  return one && other ? { ...plan, press: press.with(at, other).with(at + by, one) } : plan;
}
