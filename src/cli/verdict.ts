/**
 * `npm run verdict -- FILE...`: read plan files, print a line a link; with bytes to send, what arrives too.
 * Exit status: 0 when every link works, 1 when any does not or there is none, 2 when any file is bad, 3 when a part of any link
 * would be over its rating, whatever else was found.
 */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { differences, readPlanText, sayProblems, wholeLink } from '../core/plan/index.ts';
import type { Plan } from '../core/plan/index.ts';
import { checkLink, noteLabel } from '../core/verdict/index.ts';
import type { NoteKind, Outcome } from '../core/verdict/index.ts';
import { prepareTimeLink, receivedBytes, sayReceived, sendThrough } from '../core/signal/index.ts';
import type { ReceivedByte } from '../core/signal/index.ts';
import type { Link } from '../core/wiring/index.ts';

const USAGE = `usage: npm run verdict -- [--json] [--against TEACHER.json] [--send BYTES] FILE...

Reads plan files and says of each link whether it works, and why. Links that share an output or an input are solved together.
  --json           print an array, one entry a link
  --against FILE   fail a file whose jacks or circuits differ from those of FILE
  --send BYTES     send bytes in hex, as in "90 88 00", and say what is heard at the input that decides
Exit status: 0 every link works, 1 one does not or there is none, 2 a file is bad,
3 a part of a link would be over its rating: do not connect it.`;

interface Row {
  readonly file: string;
  readonly link: string;
  readonly outcome: Outcome;
  /** What would be over its rating; null where nothing is. */
  readonly danger: string | null;
  readonly notes: readonly NoteKind[];
  readonly idleAmperes: number | null;
  readonly activeAmperes: number | null;
  readonly worstAmperes: number | null;
  readonly idleVolts: number | null;
  readonly activeVolts: number | null;
  readonly worstVolts: number | null;
  readonly why: string;
  /** Bytes heard, those that end in a framing error or a break too; only where bytes are sent. `seconds`: start of each. */
  readonly received?: readonly ReceivedByte[];
}

process.exitCode = main(process.argv.slice(2));

function main(given: readonly string[]): number {
  const parsed = parse(given);
  if (typeof parsed === 'string') {
    console.error(`${parsed}\n\n${USAGE}`);
    return 2;
  }
  const teacher = parsed.against === undefined ? undefined : load(parsed.against);
  if (teacher === null) return 2;
  let bad = false;
  let wrong = false;
  const rows: Row[] = [];
  for (const file of parsed.files) {
    const plan = load(file);
    if (plan === null) {
      bad = true;
      continue;
    }
    const apart = teacher ? differences(teacher, plan) : [];
    const found = plan.links.map((link) => rowOf(file, link.name, wholeLink(plan, link), apart, parsed.send));
    rows.push(...found);
    if (apart.length > 0 || found.some(({ outcome }) => outcome !== 'flows')) wrong = true;
    if (!parsed.json) print(file, found, apart);
  }
  if (parsed.json) console.log(JSON.stringify(rows, undefined, 2));
  if (rows.some(({ danger }) => danger !== null)) return 3;
  if (bad) return 2;
  return wrong || rows.length === 0 ? 1 : 0;
}

/** What was typed. */
interface Options {
  readonly json: boolean;
  readonly against?: string;
  readonly send?: readonly number[];
  readonly files: readonly string[];
}

/** The options, or what is wrong with what was typed. */
function parse(given: readonly string[]): Options | string {
  const found: { json: boolean; against?: string; send?: readonly number[]; files: string[] } = {
    json: false,
    files: [],
  };
  const words = [...given];
  for (let word = words.shift(); word !== undefined; word = words.shift()) {
    if (word === '--json') found.json = true;
    else if (word === '--against') {
      const file = words.shift();
      if (file === undefined) return '--against: expected a file, got nothing';
      found.against = file;
    } else if (word === '--send') {
      const text = words.shift() ?? '';
      const bytes = text.split(/[\s,]+/).filter((one) => one !== '');
      if (bytes.length === 0 || !bytes.every((one) => /^[0-9a-f]{2}$/i.test(one)))
        return `--send: expected bytes of two hex digits each, as in "90 88 00", got '${text}'`;
      found.send = bytes.map((one) => Number.parseInt(one, 16));
    } else if (word.startsWith('--'))
      return `${word}: expected --json, --against or --send, got an option that does not exist`;
    else found.files.push(word);
  }
  return found.files.length === 0 ? 'expected at least one file, got none' : found;
}

/** Read a plan file, paths counted from where the command was typed; null when bad, with the reason on the error output. */
function load(file: string): Plan | null {
  let text: string;
  try {
    text = readFileSync(resolve(process.env['INIT_CWD'] ?? process.cwd(), file), 'utf8');
  } catch (error) {
    console.error(`${file}: cannot be read: ${error instanceof Error ? error.message : String(error)}`);
    return null;
  }
  const reading = readPlanText(text);
  if (reading.ok) return reading.plan;
  console.error(`${file}: ${sayProblems(reading.problems)}`);
  return null;
}

function rowOf(
  file: string,
  link: string,
  whole: Link,
  apart: readonly string[],
  send: readonly number[] | undefined,
): Row {
  const verdict = checkLink(whole);
  const input = verdict.inputs[verdict.decides];
  const current = input?.kind === 'current' ? input : undefined;
  const level = input?.kind === 'level' ? input : undefined;
  return {
    file,
    link,
    outcome: verdict.outcome,
    danger: verdict.danger ?? null,
    notes: verdict.notes.map(({ kind }) => kind),
    idleAmperes: current?.idle ?? null,
    activeAmperes: current?.active ?? null,
    worstAmperes: current?.worstActive ?? null,
    idleVolts: level?.idle ?? null,
    activeVolts: level?.active ?? null,
    worstVolts: level?.worstActive ?? null,
    why:
      apart.length > 0
        ? `Not the teacher's task: ${apart.join('; ')}. ${verdict.sentence}`
        : verdict.sentence,
    ...(send ? { received: heardAt(whole, verdict.decides, send) } : {}),
  };
}

function heardAt(link: Link, input: number, bytes: readonly number[]): readonly ReceivedByte[] {
  const { reception } = sendThrough([{ time: prepareTimeLink(link), input }], bytes);
  return receivedBytes(reception.heard);
}

function print(file: string, rows: readonly Row[], apart: readonly string[]): void {
  if (apart.length > 0) console.log(`${file}: differs from the teacher's: ${apart.join('; ')}`);
  if (rows.length === 0) console.log(`${file}: no link to check`);
  for (const { link, notes, why, received } of rows) {
    const words = notes.map(noteLabel);
    console.log(`${file}: ${link}: ${why}${words.length > 0 ? ` [${words.join(', ')}]` : ''}`);
    if (received) console.log(`${file}: ${link}: heard: ${sayReceived(received)}`);
  }
}
