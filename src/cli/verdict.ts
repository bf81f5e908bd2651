/** `npm run verdict -- FILE...`: the command line on files, standard input and output. */
import { filesOf, readFile } from './files.ts';
import { main } from './main.ts';

/** Paths count from where the command was typed. */
const HOME = process.env['INIT_CWD'] ?? process.cwd();

process.exitCode = await main(process.argv.slice(2), {
  list: (word) => filesOf(word, HOME),
  read: (file) => readFile(file, HOME),
  out: (text) => console.log(text),
  error: (text) => console.error(text),
});
