/** Leads as they were planned, for tasks on testing them, and what a meter says of them: all of it from the floor of making. */
import {
  CONDUCTOR_ANSWERS,
  faultsOf,
  fullTable,
  madeLead,
  proofRows,
  readingsOf,
  sayPlace,
  tableOf,
} from '../../../making/index.ts';
import type { Beep, LeadFault, ProofPlace } from '../../../making/index.ts';
import { linkFor, lineByLine, capital } from '../../../verdict/index.ts';
import { makeJack, makeLead, wiringWords } from '../../../wiring/index.ts';
import type { Connector, Lead, Style } from '../../../wiring/index.ts';
import { conductorsOf } from '../answers.ts';
import { remembered } from '../chance.ts';
import type { Pair } from '../pairs.ts';

/** Two jacks and the lead that was planned between them. */
export interface Plan extends Pair {
  readonly lead: Lead;
}

const DIN = ['din5', 'din'] as const;
const A = ['trs-3.5', 'type-a'] as const;
const B = ['trs-3.5', 'type-b'] as const;
type Told = readonly [Connector, Style];
const BETWEEN: readonly (readonly [out: Told, into: Told])[] = [
  [A, A],
  [DIN, A],
  [A, B],
  [B, DIN],
  [DIN, DIN],
  [DIN, B],
  [A, DIN],
];

/** Leads of the loop between every two kinds of plug, each planned line by line. */
export const PLANS: readonly Plan[] = BETWEEN.map(([out, into]) => {
  const [output, input] = [makeJack('out', ...out), makeJack('in', ...into)];
  const link = linkFor(output, input, lineByLine(output, input));
  return { output, input, lead: link.branches[0]?.leads[0] as Lead };
});

/** A lead with its plugs, its conductors as an answer writes them, and what is wrong with it. */
export const leadOf = (from: Connector, to: Connector, pairs: string, faults: Lead['faults'] = []): Lead =>
  makeLead(from, to, conductorsOf(pairs), { faults });

/** How a lead was planned, as a task tells it: the output end first. */
export function sayPlan(lead: Lead): string {
  return `A lead lies on the bench, with nothing plugged in. It was planned so, from the output end to the input end: ${wiringWords(lead.conductors)}.`;
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

/** A single fault of a lead, with what it says at each of the still places. */
export interface Column {
  readonly fault: LeadFault;
  readonly says: readonly Beep[];
}

/** Every single fault of a lead; of those that read alike at the still places, the first. */
export const stillColumns = remembered((lead: Lead): readonly Column[] => {
  const places = stillPlaces(lead);
  const all = faultsOf(lead).map((fault) => ({ fault, says: places.map(saysWith(lead, [fault])) }));
  return all.filter(({ says }, at) => all.findIndex((other) => other.says.join() === says.join()) === at);
});

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
export const placeText = (place: ProofPlace): string => capital(sayPlace(place));
