/** The command line as a function: what was typed goes in, an exit status comes out. */
import type { HandedIn } from '../core/class/index.ts';
import { studentOfFile } from '../core/plan/index.ts';
import type { Plan } from '../core/plan/index.ts';
import { readOptions } from './options.ts';
import { linesOf, rowsOf } from './rows.ts';
import type { Asked, Row } from './rows.ts';
import { jsonText, sayPath, shown } from './say.ts';
import { sheetsOf } from './sheets.ts';
import type { Sheet } from './sheets.ts';
import { csvOf, summaryOf } from './summary.ts';

const USAGE = `usage: npm run verdict -- [--json | --csv] [--against TEACHER.json] [--send BYTES] [--] FILE...

Reads plans and says of each link whether it works, and why; reads work on a Set and marks each task. Links that share an output or an input are solved together.
  FILE             a plan, work on a Set, a text with a link to one on each line, a folder, or a pattern such as "class/*.json"
  --json           print an array, one entry a link, and one for each file without
  --csv            print a table for a spreadsheet
  --against FILE   fail a plan whose jacks, circuits or links differ from those of FILE
  --send BYTES     send bytes in hex, as in "90 88 00", and say what is heard at the input that decides
  --help           print this
  --               what follows are files, whatever they begin with
  -                as a FILE: the standard input
A bad file is named, and the others are read all the same. Students are told by the ends of names, as in 'loop-07-ann.json'.
Exit status: 0 every link works and every answer is right, 1 one is not, is not solved, or there is none, 2 a file is bad,
3 a part of a link would be over its rating: do not connect it.`;

/** Where the command line reads and writes. */
interface Streams {
  /** The files that a word stands for: a folder's, a pattern's, or the word itself. @throws when there is none. */
  readonly list: (word: string) => readonly string[];
  /** The text of a file, '-' for the standard input. @throws where there is none. */
  readonly read: (file: string) => string;
  readonly out: (text: string) => void;
  readonly error: (text: string) => void;
}

/**
 * Read plans and print a line a link; with bytes to send, what arrives too; of several plans, a summary at the end.
 * @returns the exit status: 0 when every link works, 1 when any does not or there is none, 2 when any file is bad, 3 when a part
 * of any link would be over its rating, whatever else was found.
 */
export async function main(given: readonly string[], streams: Streams): Promise<number> {
  const options = readOptions(given);
  if (options === 'help') {
    streams.out(USAGE);
    return 0;
  }
  if ('wrong' in options) {
    streams.error(`${shown(options.wrong)}\n\n${USAGE}`);
    return 2;
  }
  const { print, against, send } = options;
  const teacher = against === undefined ? undefined : await teacherOf(against, streams);
  if (teacher === null) return 2;
  const asked: Asked = { ...(teacher ? { teacher } : {}), ...(send ? { send } : {}) };
  const rows: Row[] = [];
  const works: HandedIn[] = [];
  for (const sheet of await handedIn(options.files, streams)) {
    const found = sheet.work ? (await import('./results.ts')).taskRows(sheet.work) : rowsOf(sheet, asked);
    if (sheet.work) works.push(sheet.work);
    rows.push(...found);
    const [first] = found;
    if (first?.read === false) complain({ place: first.file, problem: first.why }, streams);
    else if (print === 'lines') found.flatMap(linesOf).forEach(streams.out);
  }
  if (print === 'json') streams.out(jsonText(rows));
  else if (print === 'csv') streams.out(csvOf(rows).trimEnd());
  else {
    summaryOf(rows).forEach(streams.out);
    if (works.length > 0) (await import('./results.ts')).classSummary(works).forEach(streams.out);
  }
  return statusOf(rows);
}

/** 3 where something would be over its rating, 2 where a file is bad, 1 where a link does not work or an answer is not right, else 0. */
function statusOf(rows: readonly Row[]): number {
  if (rows.some(({ danger }) => danger !== null)) return 3;
  if (rows.some(({ read }) => !read)) return 2;
  const good = ({ task, outcome, right }: Row): boolean => right && (task !== null || outcome === 'flows');
  return rows.every(good) ? 0 : 1;
}

/** Every sheet of every file that was named, bad ones with their problem. */
async function handedIn(words: readonly string[], { list, read }: Streams): Promise<readonly Sheet[]> {
  const sheets: Sheet[] = [];
  const bad = (place: string, why: unknown): Sheet => ({
    place,
    student: studentOfFile(place),
    problem: `cannot be read: ${why instanceof Error ? why.message : String(why)}`,
  });
  for (const word of words) {
    let files: readonly string[];
    try {
      files = list(word);
    } catch (why) {
      sheets.push(bad(word, why));
      continue;
    }
    for (const file of files)
      try {
        sheets.push(...(await sheetsOf(file, read(file))));
      } catch (why) {
        sheets.push(bad(file, why));
      }
  }
  return sheets;
}

function complain({ place, problem = '' }: Pick<Sheet, 'place' | 'problem'>, { error }: Streams): void {
  error(`${sayPath(place)}: ${shown(problem)}`);
}

/** The plan to compare with; null when there is none, with the reason on the error output. */
async function teacherOf(file: string, streams: Streams): Promise<Plan | null> {
  const [sheet] = await handedIn([file], streams);
  if (sheet?.plan) return sheet.plan;
  if (sheet) complain(sheet, streams);
  return null;
}
