/** A pile of suspects that a reader splits look by look: how one look would split it, and how a hunt for a hidden one stands. */
import { bitsOfObservation, fewestExpected } from '../faults/index.ts';
import type { Pile } from './suspects.ts';

/** The suspects, by number, that show the same at one look. */
interface PileGroup {
  readonly answer: string;
  readonly suspects: readonly number[];
}

/** How a hunt stands: the suspects left, by number, whether it is over, and both in words. */
interface Hunt {
  readonly left: readonly number[];
  readonly over: boolean;
  readonly sentence: string;
}

/** Bits below which a look tells nothing, and two looks tell the same: far above rounding, far below any real split. */
const NOTHING_BITS = 1e-9;

/** Every suspect counts the same. */
function weighed({ suspects, looks }: Pile): Parameters<typeof bitsOfObservation>[0] {
  return {
    names: suspects.map(({ name }) => name),
    weights: suspects.map(() => 1),
    answers: looks.map(({ seen }) => seen.map((one) => seen.indexOf(one))),
  };
}

const everyOne = ({ suspects }: Pile): readonly number[] => [...suspects.keys()];

/** What a suspect shows at a look, both by number; empty where there is no such look or suspect. */
export function seenAt({ looks }: Pile, look: number, suspect: number): string {
  return looks[look]?.seen[suspect] ?? '';
}

/** The pile in groups by what each suspect would show at a look, in the order of the suspects. */
export function splitBy(pile: Pile, look: number): readonly PileGroup[] {
  const groups = Map.groupBy(everyOne(pile), (suspect) => seenAt(pile, look, suspect));
  return [...groups].map(([answer, suspects]) => ({ answer, suspects }));
}

/** How well a look splits the pile, in words. */
export function saySplit(pile: Pile, look: number): string {
  const [all, suspects] = [everyOne(pile), weighed(pile)];
  const worst = Math.max(...splitBy(pile, look).map((group) => group.suspects.length));
  const most = Math.max(...pile.looks.map((_, at) => bitsOfObservation(suspects, all, at)));
  const best = bitsOfObservation(suspects, all, look) > most - NOTHING_BITS;
  const rest = best ? 'No look in this list tells more.' : 'Another look in this list tells more.';
  return `At worst ${worst} of ${all.length} are left. ${rest}`;
}

/** How the hunt for a hidden suspect stands after some looks, all by number, in the order they were taken. */
export function huntFor(pile: Pile, hidden: number, taken: readonly number[]): Hunt {
  const [all, suspects] = [everyOne(pile), weighed(pile)];
  const seen = (look: number): string => seenAt(pile, look, hidden);
  const left = all.filter((at) => taken.every((look) => seenAt(pile, look, at) === seen(look)));
  const stuck = pile.looks.every(
    (_, look) => taken.includes(look) || bitsOfObservation(suspects, left, look) < NOTHING_BITS,
  );
  const over = left.length === 1 || stuck;
  const last = taken.at(-1);
  const start = last === undefined ? '' : `Seen: ${seen(last)}. `;
  if (!over) return { left, over, sentence: `${start}${left.length} of ${all.length} suspects are left.` };
  const [one] = left.length === 1 ? left.map((at) => pile.suspects[at]) : [];
  const end = one ? `Found: ${one.words}. ${one.remedy}` : 'No look in this list parts those that are left.';
  const looks = taken.length === 1 ? '1 look' : `${taken.length} looks`;
  const fewest = fewestExpected(suspects, all).toFixed(1);
  return {
    left,
    over,
    sentence: `${start}${end} You took ${looks}; the best way takes ${fewest} on average over all ${all.length}.`,
  };
}
