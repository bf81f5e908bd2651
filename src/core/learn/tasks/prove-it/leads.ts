/** Leads as they were planned, for tasks on testing them, and what a meter says of them: all of it from the floor of making. */
import {
  faultsOf,
  fullTable,
  madeLead,
  proofRows,
  readingsOf,
  sayPlace,
  tableOf,
} from '../../../making/index.ts';
import { CONDUCTOR_ANSWERS } from '../../../making/index.ts';
import type { Beep, LeadFault, ProofPlace } from '../../../making/index.ts';
import { linkFor, lineByLine } from '../../../verdict/index.ts';
import { contactWords, makeJack } from '../../../wiring/index.ts';
import type { Jack, Lead } from '../../../wiring/index.ts';

/** Two jacks and the lead that was planned between them. */
export interface Plan {
  readonly output: Jack;
  readonly input: Jack;
  readonly lead: Lead;
}

/** The plan line by line between two jacks. */
function planFor(output: Jack, input: Jack): Plan {
  const link = linkFor(output, input, lineByLine(output, input));
  return { output, input, lead: link.branches[0]?.leads[0] as Lead };
}

const DIN_OUT = makeJack('out', 'din5', 'din');
const DIN_IN = makeJack('in', 'din5', 'din');
const A_OUT = makeJack('out', 'trs-3.5', 'type-a');
const A_IN = makeJack('in', 'trs-3.5', 'type-a');
const B_OUT = makeJack('out', 'trs-3.5', 'type-b');
const B_IN = makeJack('in', 'trs-3.5', 'type-b');

/** Leads of the loop between every two kinds of plug. */
export const PLANS: readonly Plan[] = [
  planFor(A_OUT, A_IN),
  planFor(DIN_OUT, A_IN),
  planFor(A_OUT, B_IN),
  planFor(B_OUT, DIN_IN),
  planFor(DIN_OUT, DIN_IN),
  planFor(DIN_OUT, B_IN),
  planFor(A_OUT, DIN_IN),
];

/** The conductors of a lead in words: 'pin 4 to ring, pin 5 to tip'. */
function sayConductors({ conductors }: Lead): string {
  return conductors.map(({ from, to }) => `${contactWords(from)} to ${contactWords(to)}`).join(', ');
}

/** How a lead was planned, as a task tells it: the output end first. */
export function sayPlan(lead: Lead): string {
  return `A lead lies on the bench, with nothing plugged in. It was planned so, from the output end to the input end: ${sayConductors(lead)}.`;
}

/** What a meter says at one place, in words. */
export const HEARD: Readonly<Record<Beep, string>> = {
  beep: 'beeps',
  silent: 'silent',
  flickers: 'flickers',
};

/** Every place of a lead that is read while it lies still. */
export function stillPlaces(lead: Lead): readonly ProofPlace[] {
  return fullTable(lead).filter(({ hold }) => hold === 'still');
}

/** What a lead of this plan says with some faults in it, place by place. */
export function saysWith(lead: Lead, faults: readonly LeadFault[]): (place: ProofPlace) => Beep {
  return tableOf(madeLead(lead, faults));
}

const COLUMNS = new Map<Lead, readonly { readonly fault: LeadFault; readonly says: readonly Beep[] }[]>();

/** Every single fault of a lead, with what it says at each of the still places; of those that read alike there, the first. */
export function stillColumns(
  lead: Lead,
): readonly { readonly fault: LeadFault; readonly says: readonly Beep[] }[] {
  const known = COLUMNS.get(lead);
  if (known) return known;
  const places = stillPlaces(lead);
  const all = faultsOf(lead).map((fault) => ({ fault, says: places.map(saysWith(lead, [fault])) }));
  const found = all.filter(
    ({ says }, at) => all.findIndex((other) => other.says.join() === says.join()) === at,
  );
  COLUMNS.set(lead, found);
  return found;
}

/** What is heard of each conductor while the lead lies still and while each plug is moved, in the words of the test. */
export function sayConductor(lead: Lead, conductor: number, faults: readonly LeadFault[]): string {
  const row = proofRows(lead)[conductor];
  if (row === undefined) throw new Error(`task: needs a conductor ${conductor} of the lead, got none`);
  const says = saysWith(lead, faults);
  const found = CONDUCTOR_ANSWERS.find(([said]) => {
    const readings = readingsOf(row, { of: 'conductor', said });
    return said !== 'still' && readings.every((reading) => says(reading) === reading.says);
  });
  return found?.[1] ?? '';
}

/** A place of the table with a capital letter, as it stands in a list of answers. */
export function placeText(place: ProofPlace): string {
  const words = sayPlace(place);
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}
