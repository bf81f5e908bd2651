/** What readings that differ from the plan may mean before anything is mended: another lead as shops sell it, or a plug held the wrong way. */
import { goodsLike } from '../wiring/index.ts';
import type { Goods, Lead } from '../wiring/index.ts';
import { madeLead } from './lead-faults.ts';
import type { Proof } from './prove.ts';

/** Whether no further reading can rule out any of the smallest sets: until then one that fits is a guess. */
const isSettled = ({ alike }: Proof): boolean => alike.length === 1;

/** The ready-made goods that a smallest set of faults turns the planned lead into; undefined where a shop has no name for it. */
export function readsLike(lead: Lead, proof: Proof): Goods | undefined {
  for (const set of isSettled(proof) ? proof.sets : []) {
    const made = madeLead(lead, set);
    const sound = made.conductors.every(({ whole, parts }) => whole && parts.length === 0);
    const conductors = made.conductors.map(({ from, to }) => ({ from, to }));
    const goods = sound && made.shorts.length === 0 ? goodsLike({ ...lead, conductors }) : undefined;
    if (goods) return goods;
  }
  return undefined;
}

/** Whether a lead that is as planned would read so where one of its plugs is looked at from the other side: DIN pins then stand mirrored. */
export function readsMirrored(proof: Proof): boolean {
  return (
    isSettled(proof) && proof.sets.some(([fault, ...more]) => fault?.kind === 'mirrored' && more.length === 0)
  );
}
