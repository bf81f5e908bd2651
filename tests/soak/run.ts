/**
 * The long runs, as `npm run soak` starts them: every other file of this folder is a program that draws seeded cases for as
 * long as it is told and ends with 0 when all held. `npm run soak -- --short` gives each the shortest run that means something.
 */
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';

const folder = import.meta.dirname;
const passedOn = process.argv.slice(2);
const files = readdirSync(folder)
  .filter((name) => name.endsWith('.ts') && name !== 'run.ts')
  .sort();
if (files.length === 0) console.log('soak: no file stands beside run.ts, so there is nothing to run');

const rows = files.map((name) => {
  console.log(`\n== ${name} ==`);
  const start = performance.now();
  const { status } = spawnSync(process.execPath, [join(folder, name), ...passedOn], { stdio: 'inherit' });
  return { name, held: status === 0, seconds: (performance.now() - start) / 1000 };
});

console.log('');
for (const { name, held, seconds } of rows)
  console.log(`${name.padEnd(32)}${(held ? 'held' : 'BROKE').padEnd(5)}${seconds.toFixed(1).padStart(10)} s`);
process.exitCode = rows.length > 0 && rows.every(({ held }) => held) ? 0 : 1;
