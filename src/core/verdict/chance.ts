/** Chance with a seed, for builds of a link and for searches. */

/**
 * Numbers from 0 to below 1 that look random and are the same for the same seed, a whole number.
 * Generator: a Weyl sequence mixed by multiply and shift (mulberry32, public domain, 32 bits of state); no more is asked of it.
 */
export function seededChance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
