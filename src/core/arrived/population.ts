/** What each cause makes of usual phrases: what a log is held against where nobody knows what was sent, or has words only. */
import { decode } from '../signal/index.ts';
import { seededChance } from '../verdict/index.ts';
import { CAUSES } from './causes.ts';
import type { Candidate, Cause } from './causes.ts';
import { COMPLAINTS, complains } from './complaints.ts';
import type { Complaint } from './complaints.ts';
import { allCandidates, foretell } from './fit.ts';
import { shownAs } from './log.ts';
import type { Code, SeenByte } from './log.ts';
import { USUAL_SPACINGS, layOut } from './spacing.ts';

/** Phrases each cause is tried on: their shares are good to a few parts in a hundred. */
const PHRASES = 80;

/** A phrase: a chord with its end, often by running status, a preset, and clock where there is one. */
function phrase(chance: () => number): readonly number[] {
  const below = (count: number): number => Math.floor(chance() * count);
  const channel = below(8);
  const tick = chance() < 0.4 ? [0xf8] : [];
  const inside = chance() < 0.5 ? tick : [];
  const running = chance() < 0.5;
  const notes = Array.from({ length: 2 + below(3) }, () => 40 + below(40));
  const status = (byte: number, at: number): number[] => (running && at > 0 ? [] : [byte | channel]);
  const chord = notes.flatMap((note, at) => [...status(0x90, at), note, ...inside, 40 + below(80)]);
  const end = notes.flatMap((note, at) => (running ? [note, 0] : [...status(0x80, at), note, 64]));
  const preset = [0xb0 | channel, 0, 1 + below(4), 0xc0 | channel, 1 + below(100)];
  return [...tick, ...chord, ...tick, ...end, ...tick, ...preset];
}

/** What a monitor shows of a phrase through a candidate, drawn by chance; marked, so that a log without marks is compared without. */
function through(candidate: Candidate, sent: readonly number[], chance: () => number) {
  const spacing = USUAL_SPACINGS[Math.floor(chance() * USUAL_SPACINGS.length)] ?? USUAL_SPACINGS[0]!;
  const line = layOut(sent, spacing).wave;
  return candidate.kind === 'chance' ? candidate.run(line, sent, chance) : foretell(candidate, sent, line);
}

/** What is counted in a list of bytes, each as a share of it from 0 to 1. */
const TRAITS: readonly ((codes: readonly Code[]) => number)[] = [
  (codes) => shareOf(codes, (code) => (code & 0xff) >= 0x80 && (code & 0xff) < 0xf0),
  (codes) => shareOf(codes, (code) => (code & 0xff) === 0),
  (codes) => shareOf(codes, (code) => (code & 0xff) === 0xff),
  (codes) => shareOf(codes, (code) => code === 0xf8 || code === 0xfe),
  (codes) => shareOf(codes, (code) => (code & 0xff) > 0xf0 && (code & 0xff) < 0xf8),
  (codes) => shareOf(codes, (code) => ((code & 0xff) >> 4) % 4 === 0),
  (codes) => {
    const events = decode(codes.map((code) => code & 0xff));
    return events.filter(({ kind }) => kind !== 'message').length / Math.max(1, events.length);
  },
];

const shareOf = (codes: readonly Code[], is: (code: Code) => boolean): number =>
  codes.filter(is).length / Math.max(1, codes.length);

/** A share falls in one of so many boxes, narrower near 0. */
const BOXES = [0.001, 0.1, 0.25, 0.5, 0.75];
const boxOf = (share: number): number => BOXES.filter((bound) => share > bound).length;

const BYTES = 256;

/** What was counted over all phrases of a cause: complaints that fit, and boxes of each trait. */
interface Counted {
  readonly complaints: ReadonlyMap<Complaint, number>;
  readonly traits: readonly (readonly number[])[];
  /** How often each byte was read, and how many were. */
  readonly bytes: readonly number[];
  readonly read: number;
}

function countCause(cause: Cause, candidates: readonly Candidate[]): Counted {
  const chance = seededChance(CAUSES.indexOf(cause) + 1);
  const complaints = new Map<Complaint, number>(COMPLAINTS.map((one) => [one, 0]));
  const bytes = new Array<number>(BYTES).fill(0);
  let readBytes = 0;
  const traits = TRAITS.map(() => new Array<number>(BOXES.length + 1).fill(0));
  for (let at = 0; at < PHRASES; at += 1) {
    const sent = phrase(chance);
    const candidate = candidates[Math.floor(chance() * candidates.length)]!;
    const read = through(candidate, sent, chance);
    const good = shownAs('good bytes only', read);
    for (const one of COMPLAINTS)
      if (complains(one, cause, sent, good)) complaints.set(one, (complaints.get(one) ?? 0) + 1);
    const shown = shownAs('plain', read);
    for (const code of shown) bytes[code] = (bytes[code] ?? 0) + 1;
    readBytes += shown.length;
    TRAITS.forEach((trait, number) => {
      const box = boxOf(trait(shown));
      traits[number]![box] = (traits[number]![box] ?? 0) + 1;
    });
  }
  return { complaints, traits, bytes, read: readBytes };
}

let counted: ReadonlyMap<Cause, Counted> | undefined;

function population(): ReadonlyMap<Cause, Counted> {
  return (counted ??= new Map(
    CAUSES.map((cause) => [
      cause,
      countCause(
        cause,
        allCandidates().filter((one) => one.cause === cause),
      ),
    ]),
  ));
}

/** A count as a chance: one more in each of `kinds`, so that nothing is impossible for a few phrases. */
const chanceOf = (count: number, kinds: number): number => (count + 1) / (PHRASES + kinds);

/** How likely a cause is to make a reader say all of this, as a natural logarithm. */
export function complaintLikeness(cause: Cause, complaints: readonly Complaint[]): number {
  const { complaints: known } = population().get(cause)!;
  return complaints.reduce((sum, one) => sum + Math.log(chanceOf(known.get(one) ?? 0, 2)), 0);
}

/** Traits and bytes go together, so that each counts for less than it would alone (our choice). */
const [TRAIT_WEIGHT, BYTE_WEIGHT] = [0.5, 0.4];
/** Share of a count that a byte has which no phrase gave. */
const UNSEEN = 0.2;
/** Bytes of a log beyond which more tell nothing new. */
const TELLING_BYTES = 40;

/** How well the bytes of a log fit a cause where nobody knows what was sent, as a natural logarithm. */
export function traitLikeness(cause: Cause, seen: readonly SeenByte[]): number {
  const { traits, bytes, read } = population().get(cause)!;
  const codes = seen.slice(0, TELLING_BYTES).map(({ value }) => value);
  const byTraits = TRAITS.map((trait, number) => {
    const found = traits[number]?.[boxOf(trait(codes))] ?? 0;
    return Math.log(chanceOf(found, BOXES.length + 1));
  });
  const byBytes = codes.map((code) => Math.log(((bytes[code] ?? 0) + UNSEEN) / (read + BYTES * UNSEEN)));
  const sum = (list: readonly number[]): number => list.reduce((all, one) => all + one, 0);
  return TRAIT_WEIGHT * sum(byTraits) + BYTE_WEIGHT * sum(byBytes);
}
