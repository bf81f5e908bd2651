/** Walks of edits over random boards: 20 000 of them, or 300 with `--short`; every plan they make is written, read and equal. */
import { walk } from '../core/plan/walk.ts';

const WALKS = process.argv.includes('--short') ? 300 : 20_000;
const STEPS = 20;

/** Links remembered between walks; beyond this the memory begins anew, so that it stays flat. */
const MOST_REMEMBERED = 20_000;

let memory = new Map();
let [states, refused] = [0, 0];
for (let seed = 0; seed < WALKS; seed++) {
  const made = await walk(seed, STEPS, memory);
  states += made.states;
  refused += made.refused;
  if (memory.size > MOST_REMEMBERED) memory = new Map();
  if ((seed + 1) % 1000 === 0) console.log(`${seed + 1} walks, ${states} plans`);
}
console.log(
  `${WALKS} walks of ${STEPS} steps: ${states} plans written, read and equal; ${refused} changes refused in words`,
);
