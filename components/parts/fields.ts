/** Number fields that stand in several forms: their unit and their bounds, each with its source where the core has it. */
import { PLAN_LIMITS } from '../../src/core/plan/index.ts';
import { LENGTH_METRES } from '../../src/core/wiring/index.ts';

/** Length of a lead, metres. */
export const LEAD_LENGTH = { unit: 'm', least: LENGTH_METRES[0], most: LENGTH_METRES[1] } as const;

/** A place on a board, and a size, centimetres. */
export const CENTIMETRES = { unit: 'cm', least: 0, most: PLAN_LIMITS.centimetres } as const;

/** A price in the reader's own currency; a sign or letters, or none. */
export function priceIn(currency: string | undefined): {
  readonly unit: string;
  readonly least: number;
  readonly most: number;
} {
  return { unit: currency ?? '', least: 0, most: PLAN_LIMITS.price };
}
