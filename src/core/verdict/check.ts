/** The verdict on a link: outcome, notes, readings and words. */
import type { Link } from '../wiring/index.ts';
import type { Grounding } from '../wiring/index.ts';
import { explain } from './explain.ts';
import type { Explanation } from './explain.ts';
import { judgeInputs } from './judge.ts';
import type { InputVerdict } from './judge.ts';
import { notesOf } from './notes.ts';
import { OUTCOMES } from './outcomes.ts';
import { outcomeOf } from './quick.ts';
import type { Note, Outcome } from './outcomes.ts';
import { prepareLink } from './prepare.ts';
import type { PreparedLink } from './prepare.ts';
import { conductorLines, reachOf } from './reach.ts';
import type { Reach } from './reach.ts';
import { readState } from './readings.ts';
import type { StateReading } from './readings.ts';

/** Everything there is to say about a link. Amperes and volts are those of `grounding`, the worse of the two ways. */
export interface LinkVerdict extends Explanation {
  readonly outcome: Outcome;
  readonly notes: readonly Note[];
  readonly grounding: Grounding;
  readonly byGrounding: Readonly<Record<Grounding, Outcome>>;
  readonly inputs: readonly InputVerdict[];
  /** Number of the input that decides the outcome. */
  readonly decides: number;
  readonly readings: { readonly idle: StateReading; readonly active: StateReading };
  readonly reach: readonly Reach[];
  /** The line each conductor carries, by branch, lead and conductor. */
  readonly lines: ReturnType<typeof conductorLines>;
}

/**
 * Solve a link in idle and active, grounds separate and joined, at nominal and at the corners of all tolerances.
 * @throws when the link has no input, or a value is out of range (a programmer's mistake: files and widgets check first).
 */
export function checkLink(link: Link): LinkVerdict {
  if (link.branches.length === 0) throw new Error('link: needs at least one input, got none');
  const separate = judged(prepareLink(link, 'separate'));
  const joined = separate.prepared.model.groundMatters ? judged(prepareLink(link, 'joined')) : separate;
  const reported = OUTCOMES.indexOf(joined.outcome) > OUTCOMES.indexOf(separate.outcome) ? joined : separate;
  const readings = readBoth(reported.prepared, link);
  const other = reported === separate ? joined : separate;
  const otherReadings = other === reported ? readings : readBoth(other.prepared, link);
  const { parts, misfits } = reported.prepared.model;
  const reach = reachOf(link, parts);
  const notes = notesOf({
    link,
    readings: [readings.idle, readings.active, otherReadings.idle, otherReadings.active],
    reach,
    misfits,
    separate: separate.outcome,
    joined: joined.outcome,
  });
  const decides = reported.inputs.findIndex(({ outcome }) => outcome === reported.outcome);
  const found = {
    outcome: reported.outcome,
    notes,
    grounding: reported.prepared.grounding,
    byGrounding: { separate: separate.outcome, joined: joined.outcome },
    inputs: reported.inputs,
    decides,
    readings,
    reach,
    lines: conductorLines(link, parts),
  };
  return { ...found, ...explain(link, found) };
}

function judged(prepared: PreparedLink): {
  prepared: PreparedLink;
  inputs: readonly InputVerdict[];
  outcome: Outcome;
} {
  const inputs = judgeInputs(prepared, true);
  return { prepared, inputs, outcome: outcomeOf(inputs) };
}

function readBoth(prepared: PreparedLink, link: Link): { idle: StateReading; active: StateReading } {
  return { idle: readState(prepared, link, 'idle'), active: readState(prepared, link, 'active') };
}
