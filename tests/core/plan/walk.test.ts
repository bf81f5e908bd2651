import { expect, test } from 'vitest';
import { PATIENCE } from './plans.ts';
import { walk } from './walk.ts';

test(
  'Every plan that 300 seeded walks of edits make is written, read and equal',
  { timeout: PATIENCE },
  async () => {
    const memory = new Map();
    let [states, refused] = [0, 0];
    for (let seed = 0; seed < 300; seed++) {
      const made = await walk(seed, 20, memory);
      states += made.states;
      refused += made.refused;
    }
    expect(states).toBeGreaterThan(2000);
    expect(refused).toBeGreaterThan(300);
  },
);
