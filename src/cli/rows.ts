/** What the command line says of each link of a plan. */
import { wholeLink } from '../core/plan/index.ts';
import type { Plan } from '../core/plan/index.ts';
import {
  prepareTimeLink,
  receivedBytes,
  sayReceived,
  sayUnsolved,
  sendThrough,
} from '../core/signal/index.ts';
import type { ReceivedByte } from '../core/signal/index.ts';
import { checkLink, noteLabel } from '../core/verdict/index.ts';
import type { NoteKind, Outcome } from '../core/verdict/index.ts';
import type { Link } from '../core/wiring/index.ts';
import { quoted, sayPath, shown } from './say.ts';

/** One link as `--json` prints it. Names stand as they are in the file. */
export interface Row {
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
  /** What of the sending could not be solved, in words; only where bytes are sent and something could not. */
  readonly notSolved?: string;
}

/**
 * A row for each link of a plan. `apart` says how the plan differs from the teacher's, and stands before each reason; `send`
 * are bytes to be sent through each link.
 */
export function rowsOf(
  file: string,
  plan: Plan,
  apart: readonly string[],
  send: readonly number[] | undefined,
): readonly Row[] {
  const before = apart.length > 0 ? `Not the teacher's task: ${apart.join('; ')}. ` : '';
  return plan.links.map((link) => {
    const whole = wholeLink(plan, link);
    const { decides, ...row } = judged(whole, before);
    return { file, link: link.name, ...row, ...(send ? heardAt(whole, decides, send) : {}) };
  });
}

function judged(link: Link, before: string): Omit<Row, 'file' | 'link'> & { readonly decides: number } {
  const verdict = checkLink(link);
  const { decides, outcome } = verdict;
  // What has no solution has no amperes either.
  const input = outcome === 'unsolved' ? undefined : verdict.inputs[decides];
  const current = input?.kind === 'current' ? input : undefined;
  const level = input?.kind === 'level' ? input : undefined;
  return {
    decides,
    outcome,
    danger: verdict.danger ?? null,
    notes: verdict.notes.map(({ kind }) => kind),
    idleAmperes: current?.idle ?? null,
    activeAmperes: current?.active ?? null,
    worstAmperes: current?.worstActive ?? null,
    idleVolts: level?.idle ?? null,
    activeVolts: level?.active ?? null,
    worstVolts: level?.worstActive ?? null,
    why: `${before}${verdict.sentence}`,
  };
}

function heardAt(link: Link, input: number, bytes: readonly number[]): Pick<Row, 'received' | 'notSolved'> {
  const { reception, unsolved } = sendThrough([{ time: prepareTimeLink(link), input }], bytes);
  return {
    received: receivedBytes(reception.heard),
    ...(unsolved ? { notSolved: sayUnsolved(unsolved) } : {}),
  };
}

/** The rows of one file as lines to print: the names in them quoted, and nothing in them that a terminal acts on. */
export function linesOf(file: string, rows: readonly Row[], apart: readonly string[]): readonly string[] {
  const path = sayPath(file);
  return [
    ...(apart.length > 0 ? [`${path}: differs from the teacher's: ${shown(apart.join('; '))}`] : []),
    ...(rows.length === 0 ? [`${path}: no link to check`] : []),
    ...rows.flatMap(({ link, notes, why, received, notSolved }) => {
      const place = `${path}: ${quoted(link)}`;
      const words = notes.map(noteLabel);
      return [
        `${place}: ${shown(why)}${words.length > 0 ? ` [${words.join(', ')}]` : ''}`,
        ...(received ? [`${place}: heard: ${sayReceived(received)}`] : []),
        ...(notSolved === undefined ? [] : [`${place}: ${shown(notSolved)}`]),
      ];
    }),
  ];
}
