/** What a page asks of the fault bench and its guide: whole answers from whole questions, so that the page keeps only inputs. */
import { faultName, sayBoardFault } from './board-faults.ts';
import type { BenchBoard, BoardFault } from './board-faults.ts';
import { remedyFor } from './board-remedies.ts';
import type { Symptom } from './board-symptoms.ts';
import { leadOf, workingBoard } from './board-state.ts';
import { benchTable, suspectsLeft } from './bench-table.ts';
import type { Frequencies, Seen } from './bench-table.ts';
import { guide } from './guide.ts';
import type { GuideStep } from './guide.ts';
import { gradeFault, hideNamedFault, hideNumberedFault, observe } from './hidden-fault.ts';
import type { FaultGrade, HiddenFault } from './hidden-fault.ts';
import type { PartSpot } from './observation.ts';
import { sayFaultPart } from './say-part.ts';
import type { Lead } from '../wiring/index.ts';

/** A round on the bench: what was observed, by identifier, and how it ended, if it did. */
export interface RoundOrder {
  readonly kind: 'round';
  readonly board: BenchBoard;
  /** The hidden fault: its number, or its name ('lead 1: open'). */
  readonly hidden: number | string;
  readonly made: readonly string[];
  /** The name given ('lead 1: open'), or that the reader wants to be told. */
  readonly end: { readonly named: string } | 'shown' | undefined;
}

/** A step of the guide. Symptoms left out: they are not known. */
interface GuideOrder {
  readonly kind: 'guide';
  readonly board: BenchBoard;
  readonly symptoms: readonly Symptom[] | undefined;
  readonly made: readonly Seen[];
  readonly skipped: readonly string[];
  /** Without a meter nothing is asked that has to be measured. */
  readonly hasMeter: boolean;
  readonly frequencies: Frequencies;
}

/** Kinds of observation, by the effort they take, the least first. */
export const OBSERVATION_WAYS = ['Check by eye', 'Swap a lead', 'Measure'] as const;

/** The effort of an observation that takes a meter. */
const MEASURED = 3;

/** Something that may be observed, and what it showed if it was. */
export interface ObservationChoice {
  readonly id: string;
  readonly words: string;
  readonly way: (typeof OBSERVATION_WAYS)[number];
  /** The part of the board that is looked at, swapped or measured: 'sender', 'lead 1', 'pedal 1'. */
  readonly place: string;
  /** What of that part; none where it is about all of it. */
  readonly spots: readonly PartSpot[];
  readonly seen: string | undefined;
  /** What the board shows here with nothing wrong. */
  readonly good: string;
}

/** A name that a fault can have, with the place it belongs to. */
export interface FaultChoice {
  readonly name: string;
  readonly words: string;
  readonly place: string;
}

/** How a round ended. */
export interface RoundEnd {
  readonly grade: FaultGrade | undefined;
  readonly truth: string;
  /** The part that it is in, as a sentence; empty where its name says all. */
  readonly part: string;
  readonly remedy: string;
  /** Fewest observations in expectation over the faults that the symptoms leave. */
  readonly fewest: number;
  readonly taken: number;
}

/** What a page shows of a round: the symptoms, what may be observed, the names to choose from, and how it ended. */
export interface RoundAnswer {
  readonly kind: 'round';
  readonly symptoms: readonly Symptom[];
  /** The leads as they should be, from the sender on. */
  readonly leads: readonly Lead[];
  readonly choices: readonly ObservationChoice[];
  readonly names: readonly FaultChoice[];
  readonly end: RoundEnd | undefined;
}

/** What a page shows of a step of the guide. */
export interface GuideAnswer {
  readonly kind: 'guide';
  /** Every set of symptoms that a fault of this board shows, the most silent first. */
  readonly shown: readonly (readonly Symptom[])[];
  /** What the guide says, and whether it asks for anything. */
  readonly words: string;
  readonly asks: string | undefined;
  readonly asksWords: string;
  readonly suspects: GuideStep['suspects'];
  /** What may be seen where the guide asks, and which of it a board in order shows. */
  readonly answers: readonly { readonly seen: string; readonly good: boolean }[];
  /** What to do about each fault that is left, by name. */
  readonly remedies: Readonly<Record<string, string>>;
}

/** Either question. */
export type FaultOrder = RoundOrder | GuideOrder;
/** The answer to either question. */
export type FaultAnswer = RoundAnswer | GuideAnswer;

/** Answer either question. @throws when the round has no such number, observation or name. */
export function answerFaults(order: FaultOrder): FaultAnswer {
  return order.kind === 'round' ? answerRound(order) : answerGuide(order);
}

function answerRound({ board, hidden: which, made, end }: RoundOrder): RoundAnswer {
  const hidden = typeof which === 'number' ? hideNumberedFault(board, which) : hideNamedFault(board, which);
  const table = benchTable(board);
  return {
    kind: 'round',
    symptoms: hidden.symptoms,
    leads: workingBoard(board).links.map(leadOf),
    choices: table.observations.map(({ id, words, effort, place, spots }, at) => ({
      id,
      words,
      place,
      spots,
      way: OBSERVATION_WAYS[effort - 1] as (typeof OBSERVATION_WAYS)[number],
      seen: made.includes(id) ? observe(hidden, id).seen : undefined,
      good: table.good[at] as string,
    })),
    names: namesOf(table.faults),
    end: end && endOf(hidden, made, end, table.faults),
  };
}

function endOf(
  hidden: HiddenFault,
  made: readonly string[],
  end: NonNullable<RoundOrder['end']>,
  faults: readonly BoardFault[],
): RoundEnd {
  const seen = made.map((id) => observe(hidden, id));
  const named = end === 'shown' ? hidden.fault : faults.find((fault) => faultName(fault) === end.named);
  if (!named) throw new Error(`hidden fault: this board has no fault '${end === 'shown' ? '' : end.named}'`);
  const grade = gradeFault(hidden, named, seen);
  return {
    grade: end === 'shown' ? undefined : grade,
    truth: sayBoardFault(hidden.fault),
    part: sayFaultPart(hidden.board, hidden.fault),
    remedy: remedyFor(hidden.fault.kind),
    fewest: grade.fewest,
    taken: grade.taken,
  };
}

/** Names in order of place, each once. */
function namesOf(faults: readonly BoardFault[]): readonly FaultChoice[] {
  const names = new Map(
    faults.map((fault) => [
      faultName(fault),
      { name: faultName(fault), words: sayBoardFault(fault), place: fault.place },
    ]),
  );
  return [...names.values()];
}

function answerGuide(order: GuideOrder): GuideAnswer {
  const { board, symptoms, made, skipped, hasMeter, frequencies } = order;
  const table = benchTable(board);
  const measured = table.observations.flatMap(({ id, effort }) => (effort === MEASURED ? [id] : []));
  const step = guide(board, symptoms, made, frequencies, hasMeter ? skipped : [...skipped, ...measured]);
  const at = table.observations.findIndex(({ id }) => id === step.observation?.id);
  const seen = at < 0 ? [] : [...new Set([table.good[at] as string, ...(table.seen[at] ?? [])])];
  const left = suspectsLeft(table, symptoms, made).map((one) => table.faults[one] as BoardFault);
  const shown = new Map(table.symptoms.map((one) => [one.join(), one]));
  const silent = (one: readonly Symptom[]): number => one.filter((symptom) => symptom === 'nothing').length;
  return {
    kind: 'guide',
    shown: [...shown.values()].sort((a, b) => silent(b) - silent(a)),
    words: step.words,
    asks: step.observation?.id,
    asksWords: step.observation?.words ?? '',
    suspects: step.suspects,
    answers: seen.map((one) => ({ seen: one, good: one === table.good[at] })),
    remedies: Object.fromEntries(left.map((fault) => [faultName(fault), remedyFor(fault.kind)])),
  };
}
