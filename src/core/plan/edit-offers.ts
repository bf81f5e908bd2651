/** Changes to what is on offer: stock leads, hubs, prices and wishes. Each gives a new plan with every name used once. */
import type { Lead } from '../wiring/index.ts';
import { freshName } from './edit.ts';
import { PLAN_LIMITS } from './kinds.ts';
import { MAKING_DEFAULTS, WISH_DEFAULTS } from './plan.ts';
import type { Device, MakingPrices, Plan, StockLead, Wishes } from './plan.ts';

const stockNames = (plan: Plan): readonly string[] => (plan.stock ?? []).map(({ lead }) => lead.name);
const hubNames = (plan: Plan): readonly string[] => (plan.hubs ?? []).map(({ name }) => name);

/** Put a lead on offer, or as many owned pieces; the same plan when the list is full. */
export function addStock(plan: Plan, lead: Lead, price = 0, owned = 0): Plan {
  const stock = plan.stock ?? [];
  if (stock.length >= PLAN_LIMITS.stock) return plan;
  const name = freshName(lead.name, stockNames(plan));
  return { ...plan, stock: [...stock, { lead: { ...lead, name }, price, owned }] };
}

/** Change the lead on offer of that number; a name that another one has gets a number. */
export function changeStock(plan: Plan, at: number, changes: Partial<StockLead>): Plan {
  const stock = (plan.stock ?? []).map((one, place) => {
    if (place !== at) return one;
    const changed = { ...one, ...changes };
    const others = stockNames(plan).filter((_, other) => other !== at);
    return { ...changed, lead: { ...changed.lead, name: freshName(changed.lead.name, others) } };
  });
  return { ...plan, stock };
}

/** Take a lead off the offer. */
export function removeStock(plan: Plan, at: number): Plan {
  return { ...plan, stock: (plan.stock ?? []).filter((_, place) => place !== at) };
}

/** Put a hub or converter on offer; the same plan when the list is full. */
export function addHub(plan: Plan, hub: Device): Plan {
  const hubs = plan.hubs ?? [];
  if (hubs.length >= PLAN_LIMITS.hubs) return plan;
  return { ...plan, hubs: [...hubs, { ...hub, name: freshName(hub.name, hubNames(plan)) }] };
}

/** Change the hub on offer of that number. */
export function changeHub(plan: Plan, at: number, changes: Partial<Device>): Plan {
  const hubs = (plan.hubs ?? []).map((one, place) => {
    if (place !== at) return one;
    const others = hubNames(plan).filter((_, other) => other !== at);
    return { ...one, ...changes, name: freshName(changes.name ?? one.name, others) };
  });
  return { ...plan, hubs };
}

/** Take a hub off the offer. */
export function removeHub(plan: Plan, at: number): Plan {
  return { ...plan, hubs: (plan.hubs ?? []).filter((_, place) => place !== at) };
}

/** Change what making a lead costs. */
export function setMaking(plan: Plan, changes: Partial<MakingPrices>): Plan {
  return { ...plan, making: { ...MAKING_DEFAULTS, ...plan.making, ...changes } };
}

/** Change what the owner wishes. */
export function setWishes(plan: Plan, changes: Partial<Wishes>): Plan {
  return { ...plan, wishes: { ...WISH_DEFAULTS, ...plan.wishes, ...changes } };
}
