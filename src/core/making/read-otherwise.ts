/** What readings that differ from the plan may mean before anything is mended: another lead as shops sell it, or a plug held the wrong way. */
import { goodsLike } from '../wiring/index.ts';
import type { Goods, Lead } from '../wiring/index.ts';
import { madeLead } from './lead-faults.ts';
import type { Proof } from './prove.ts';

/** The ready-made goods that a smallest set of faults turns the planned lead into; undefined where a shop has no name for it. */
export function readsLike(lead: Lead, { sets }: Proof): Goods | undefined {
  for (const set of sets) {
    const made = madeLead(lead, set);
    const sound = made.conductors.every(({ whole, parts }) => whole && parts.length === 0);
    const conductors = made.conductors.map(({ from, to }) => ({ from, to }));
    const goods = sound && made.shorts.length === 0 ? goodsLike({ ...lead, conductors }) : undefined;
    if (goods) return goods;
  }
  return undefined;
}

/** Whether a lead that is as planned would read so where one of its plugs is looked at from the other side: DIN pins then stand mirrored. */
export function readsMirrored({ sets }: Proof): boolean {
  return sets.some(([fault, ...more]) => fault?.kind === 'mirrored' && more.length === 0);
}
