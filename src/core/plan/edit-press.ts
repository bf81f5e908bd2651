/** Changes to what one press sends. Each gives a new plan; what cannot be gives the same plan. */
import { PLAN_LIMITS } from './kinds.ts';
import type { PRESS_KINDS } from './kinds.ts';
import type { Plan, PressItem } from './plan.ts';

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
  const press = plan.press ?? [];
  return press.length >= PLAN_LIMITS.press ? plan : { ...plan, press: [...press, item] };
}

/** Put another message in the place of one. */
export function changePress(plan: Plan, at: number, item: PressItem): Plan {
  return { ...plan, press: (plan.press ?? []).map((one, place) => (place === at ? item : one)) };
}

/** Take a message out. */
export function removePress(plan: Plan, at: number): Plan {
  return { ...plan, press: (plan.press ?? []).filter((_, place) => place !== at) };
}

/** Let a message change places with the one before it (-1) or after it (1). */
export function movePress(plan: Plan, at: number, by: -1 | 1): Plan {
  const press = [...(plan.press ?? [])];
  const [one, other] = [press[at], press[at + by]];
  if (!one || !other) return plan;
  [press[at], press[at + by]] = [other, one];
  return { ...plan, press };
}
