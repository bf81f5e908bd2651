/** `npm run verdict -- FILE...`: the command line on files, standard input and output. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { main } from './main.ts';
import { STANDARD_INPUT } from './options.ts';

/** The number of the standard input. */
const INPUT = 0;

process.exitCode = main(process.argv.slice(2), {
  // Paths count from where the command was typed.
  read: (file) =>
    readFileSync(
      file === STANDARD_INPUT ? INPUT : resolve(process.env['INIT_CWD'] ?? process.cwd(), file),
      'utf8',
    ),
  out: (line) => console.log(line),
  error: (line) => console.error(line),
});
