/** The command line as a function: what was typed goes in, an exit status comes out. */
import { differences, readPlanText, sayProblems } from '../core/plan/index.ts';
import type { Plan } from '../core/plan/index.ts';
import { readOptions } from './options.ts';
import { linesOf, rowsOf } from './rows.ts';
import type { Row } from './rows.ts';
import { jsonText, sayPath, shown } from './say.ts';

const USAGE = `usage: npm run verdict -- [--json] [--against TEACHER.json] [--send BYTES] [--] FILE...

Reads plan files and says of each link whether it works, and why. Links that share an output or an input are solved together.
  --json           print an array, one entry a link
  --against FILE   fail a file whose jacks or circuits differ from those of FILE
  --send BYTES     send bytes in hex, as in "90 88 00", and say what is heard at the input that decides
  --help           print this
  --               what follows are files, whatever they begin with
  -                as a FILE: the standard input
A bad file is named, and the others are read all the same.
Exit status: 0 every link works, 1 one does not, is not solved, or there is none, 2 a file is bad,
3 a part of a link would be over its rating: do not connect it.`;

/** Where the command line reads and writes. `read` gives the text of a file, '-' for the standard input, and throws where there is none. */
interface Streams {
  readonly read: (file: string) => string;
  readonly out: (line: string) => void;
  readonly error: (line: string) => void;
}

/**
 * Read plan files and print a line a link; with bytes to send, what arrives too.
 * @returns the exit status: 0 when every link works, 1 when any does not or there is none, 2 when any file is bad, 3 when a part
 * of any link would be over its rating, whatever else was found.
 */
export function main(given: readonly string[], streams: Streams): number {
  const options = readOptions(given);
  if (options === 'help') {
    streams.out(USAGE);
    return 0;
  }
  if ('wrong' in options) {
    streams.error(`${shown(options.wrong)}\n\n${USAGE}`);
    return 2;
  }
  const teacher = options.against === undefined ? undefined : load(options.against, streams);
  if (teacher === null) return 2;
  let bad = false;
  let wrong = false;
  const rows: Row[] = [];
  for (const file of options.files) {
    const plan = load(file, streams);
    if (plan === null) {
      bad = true;
      continue;
    }
    const apart = teacher ? differences(teacher, plan) : [];
    const found = rowsOf(file, plan, apart, options.send);
    rows.push(...found);
    if (apart.length > 0 || found.some(({ outcome }) => outcome !== 'flows')) wrong = true;
    if (!options.json) linesOf(file, found, apart).forEach(streams.out);
  }
  if (options.json) streams.out(jsonText(rows));
  if (rows.some(({ danger }) => danger !== null)) return 3;
  if (bad) return 2;
  return wrong || rows.length === 0 ? 1 : 0;
}

/** Read a plan file; null when it is bad, with the reason on the error output. */
function load(file: string, { read, error }: Streams): Plan | null {
  let text: string;
  try {
    text = read(file);
  } catch (problem) {
    const why = problem instanceof Error ? problem.message : String(problem);
    error(`${sayPath(file)}: cannot be read: ${shown(why)}`);
    return null;
  }
  const reading = readPlanText(text);
  if (reading.ok) return reading.plan;
  error(`${sayPath(file)}: ${shown(sayProblems(reading.problems))}`);
  return null;
}
