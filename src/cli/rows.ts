/** What the command line says of each link of a plan. */
import { differences, wholeLink } from '../core/plan/index.ts';
import type { Plan } from '../core/plan/index.ts';
import {
  prepareTimeLink,
  receivedBytes,
  sayLostBits,
  sayReceived,
  sayUnsolved,
  sendThrough,
} from '../core/signal/index.ts';
import type { ReceivedByte } from '../core/signal/index.ts';
import { checkLink, noteLabel, works } from '../core/verdict/index.ts';
import type { NoteKind, Outcome } from '../core/verdict/index.ts';
import type { Branch, Link } from '../core/wiring/index.ts';
import { quoted, sayPath, shown } from './say.ts';
import type { Sheet } from './sheets.ts';

/** One link or task as `--json` prints it, or a file without any. Names stand as they are in the file. */
export interface Row {
  readonly file: string;
  /** The student's number in the class list, from the plan or the file's name; null where neither says one. */
  readonly number: number | null;
  /** The student's name, from the file's name; may be empty. */
  readonly name: string;
  /** Whether it was read; `why` says why not. */
  readonly read: boolean;
  /** Null where there is none. */
  readonly link: string | null;
  /** The task of a Set as it is written, 'lay-lead.2.7F3K'; null for a plan. */
  readonly task: string | null;
  /** Whether jacks and links are the teacher's, or the task is the student's own; null where there is nothing to compare. */
  readonly sameTask: boolean | null;
  /** Whether the link works and harms nothing, or the answer is right; never in a changed task or a bad file. */
  readonly right: boolean;
  readonly outcome: Outcome | null;
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
  /** What the input that decides loses behind its LED, in words; only where current alone says that the link works. */
  readonly lostBits?: string;
  /** Bytes heard, those that end in a framing error or a break too; only where bytes are sent. `seconds`: start of each. */
  readonly received?: readonly ReceivedByte[];
  /** What of the sending could not be solved, in words; only where bytes are sent and something could not. */
  readonly notSolved?: string;
}

/** What a sheet is judged by: the teacher's plan, where there is one, and bytes to be sent through each link. */
export interface Asked {
  readonly teacher?: Plan;
  readonly send?: readonly number[];
}

/** A row for each link of a sheet, or one that says why there is none. */
export function rowsOf({ place, student, plan, problem }: Sheet, { teacher, send }: Asked): readonly Row[] {
  const whose = { file: place, number: student.number || null, name: student.name, read: plan !== undefined };
  const apart = teacher && plan ? differences(teacher, plan) : [];
  const sameTask = teacher && plan ? apart.length === 0 : null;
  const before = sameTask === false ? `Not the teacher's task: ${apart.join('; ')}. ` : '';
  if (!plan || plan.links.length === 0)
    return [{ ...whose, ...NOTHING, sameTask, why: problem ?? `${before}no link to check` }];
  return plan.links.map((link) => {
    const whole = wholeLink(plan, link);
    const { decides, right, ...row } = judged(whole, before);
    const heard = send ? heardAt(whole, decides, send) : {};
    return {
      ...whose,
      link: link.name,
      task: null,
      sameTask,
      right: right && sameTask !== false,
      ...row,
      ...heard,
    };
  });
}

/** A row without a link. */
export const NOTHING = {
  link: null,
  task: null,
  sameTask: null,
  right: false,
  outcome: null,
  danger: null,
  notes: [],
  idleAmperes: null,
  activeAmperes: null,
  worstAmperes: null,
  idleVolts: null,
  activeVolts: null,
  worstVolts: null,
} as const;

/** What the circuit of a link says: the row's own part. */
type Judged = Omit<Row, 'file' | 'number' | 'name' | 'read' | 'link' | 'task' | 'sameTask'> & {
  readonly decides: number;
};

function judged(link: Link, before: string): Judged {
  const verdict = checkLink(link);
  const { decides, outcome } = verdict;
  // What has no solution has no amperes either.
  const input = outcome === 'unsolved' ? undefined : verdict.inputs[decides];
  const current = input?.kind === 'current' ? input : undefined;
  const level = input?.kind === 'level' ? input : undefined;
  const lostBits =
    current && works(verdict)
      ? sayLostBits((link.branches[decides] as Branch).input, { dark: current.idle, bright: current.active })
      : undefined;
  return {
    decides,
    right: works(verdict) && lostBits === undefined,
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
    ...(lostBits === undefined ? {} : { lostBits }),
  };
}

function heardAt(link: Link, input: number, bytes: readonly number[]): Pick<Row, 'received' | 'notSolved'> {
  const { reception, unsolved } = sendThrough([{ time: prepareTimeLink(link), input }], bytes);
  return {
    received: receivedBytes(reception.heard),
    ...(unsolved ? { notSolved: sayUnsolved(unsolved) } : {}),
  };
}

/** A row as lines to print: the names in it quoted, and nothing in it that a terminal acts on. */
export function linesOf({ file, link, notes, why, lostBits, received, notSolved }: Row): readonly string[] {
  const place = link === null ? sayPath(file) : `${sayPath(file)}: ${quoted(link)}`;
  const words = notes.map(noteLabel);
  return [
    `${place}: ${shown(why)}${words.length > 0 ? ` [${words.join(', ')}]` : ''}`,
    ...(lostBits === undefined ? [] : [`${place}: ${shown(lostBits)}`]),
    ...(received ? [`${place}: heard: ${sayReceived(received)}`] : []),
    ...(notSolved === undefined ? [] : [`${place}: ${shown(notSolved)}`]),
  ];
}
