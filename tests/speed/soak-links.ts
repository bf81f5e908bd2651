/**
 * `npm run soak:links -- COUNT FIRST`: seeded links over all allowed values, each judged and sent a byte; 200 000 when no count is given.
 * Prints the count, what went wrong by seed, and the slowest. Exit status 1 when anything went wrong.
 */
import { anyLink } from '../support/any-link.ts';
import { seededRandom } from '../support/random.ts';
import { tryLink } from '../support/try-link.ts';

const COUNT = 200_000;

/** A run that is stopped says how far it came: it goes on from there. */
const TELL_EVERY = 10_000;
const [count = COUNT, first = 1] = process.argv.slice(2).map(Number);
if (![count, first].every(Number.isInteger)) {
  console.error(`soak: expected whole numbers COUNT and FIRST, got ${process.argv.slice(2).join(' ')}`);
  process.exit(2);
}

const most = { judgeMilliseconds: [0, 0], sendMilliseconds: [0, 0], moments: [0, 0] };
let wrong = 0;
const start = performance.now();
for (let seed = first; seed < first + count; seed++) {
  const random = seededRandom(seed);
  const tried = tryLink(anyLink(random), random.integer(0, 255));
  for (const name of ['judgeMilliseconds', 'sendMilliseconds', 'moments'] as const)
    if (tried[name] > (most[name][0] as number)) most[name] = [tried[name], seed];
  if (tried.problem !== undefined) {
    wrong++;
    console.log(`seed ${seed}: ${tried.problem}`);
  }
  if ((seed - first + 1) % TELL_EVERY === 0) console.log(`${seed - first + 1} links, ${wrong} wrong so far`);
}
const seconds = (performance.now() - start) / 1e3;
console.log(`${count} links from seed ${first} in ${seconds.toFixed(0)} s, ${wrong} wrong`);
for (const [name, [value = 0, seed]] of Object.entries(most))
  console.log(`most ${name}: ${value.toFixed(1)}, seed ${seed}`);
if (wrong > 0) process.exitCode = 1;
