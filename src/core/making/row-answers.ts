/** What a reader says of one row of the test, and the readings that it stands for. */
import { contactWords } from '../wiring/index.ts';
import type { Beep, Hold, ProofPlace, ProofReading } from './lead-table.ts';
import type { ProofRow } from './proof-rows.ts';

/** What continuity said of a conductor, each with its words; 'still' says that no plug was moved yet. */
export const CONDUCTOR_ANSWERS = [
  ['beep', 'beeps, still and with each plug moved'],
  ['still', 'beeps; no plug moved yet'],
  ['silent', 'silent'],
  ['from', 'flickers when the plug at the output end is moved'],
  ['to', 'flickers when the plug at the input end is moved'],
  ['both', 'flickers at both ends'],
] as const;

/** One of these answers. */
export type ConductorAnswer = (typeof CONDUCTOR_ANSWERS)[number][0];

/** The answer to one row: of a conductor, or of a contact against others with the places that beep, by number. */
export type RowAnswer =
  | { readonly of: 'conductor'; readonly said: ConductorAnswer }
  | { readonly of: 'apart'; readonly beeping: readonly number[] };

/** The readings of one row. */
export function readingsOf(row: ProofRow, answer: RowAnswer): readonly ProofReading[] {
  if (answer.of === 'apart')
    return row.places.map((place, at) => ({
      ...place,
      says: answer.beeping.includes(at) ? 'beep' : 'silent',
    }));
  return row.places.flatMap((place): readonly ProofReading[] => {
    const says = saysOf(place.hold, answer.said);
    return says === undefined ? [] : [{ ...place, says }];
  });
}

function saysOf(hold: Hold, said: ConductorAnswer): Beep | undefined {
  switch (said) {
    case 'beep':
      return 'beep';
    case 'silent':
      return hold === 'still' ? 'silent' : undefined;
    case 'still':
      return hold === 'still' ? 'beep' : undefined;
    case 'both':
      return hold === 'still' ? 'beep' : 'flickers';
    case 'from':
    case 'to':
      return hold === said ? 'flickers' : 'beep';
  }
}

/** What a reader would say of a row of a lead that reads so: the answer with these readings. */
export function answerTo({ expects, places }: ProofRow, says: (place: ProofPlace) => Beep): RowAnswer {
  if (expects === 'silent')
    return {
      of: 'apart',
      beeping: [...places.keys()].filter((at) => says(places[at] as ProofPlace) !== 'silent'),
    };
  if (places.every((place) => says(place) === 'silent')) return { of: 'conductor', said: 'silent' };
  const [first, second] = places.flatMap((place) => (says(place) === 'flickers' ? [place.hold] : []));
  if (first === undefined || first === 'still') return { of: 'conductor', said: 'beep' };
  return { of: 'conductor', said: second === undefined ? first : 'both' };
}

/** Whether the answer is what the plan expects, with nothing left to do in this row. */
export function agrees(row: ProofRow, answer: RowAnswer): boolean {
  return answer.of === 'apart' ? answer.beeping.length === 0 : answer.said === row.expects;
}

/** What continuity says, as the reader hears it. */
const HEARD: Readonly<Record<Beep, string>> = { beep: 'beeps', silent: 'silent', flickers: 'flickers' };

/** The second contact of a place in words: 'ring at the input end'. */
export function otherContact({ b }: ProofPlace): string {
  return `${contactWords(b.contact)} at the ${b.side === 'from' ? 'output' : 'input'} end`;
}

/** What the readings of one row say in words: 'silent', or 'beeps to ring at the input end'; undefined where there is none. */
export function sayRow(row: ProofRow, readings: readonly ProofReading[]): string | undefined {
  const [first] = readings;
  if (first === undefined) return undefined;
  if (row.expects === 'beep') return HEARD[first.says];
  const beeping = readings.filter(({ says }) => says !== 'silent');
  return beeping.length === 0 ? 'silent' : `beeps to ${beeping.map(otherContact).join(' and ')}`;
}
