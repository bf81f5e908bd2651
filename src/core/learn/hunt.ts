/** A pile of suspects that a reader splits look by look: how one look would split it, and how a hunt for a hidden one stands. */
import { bitsOfObservation, fewestExpected } from '../faults/index.ts';
import { sayList } from '../verdict/index.ts';
import { counted } from './say.ts';
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
  const rest = best ? 'No check in this list tells more.' : 'Another check in this list tells more.';
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
  const end = one
    ? `Found: ${one.words}. ${one.remedy}`
    : 'No check in this list separates those that are left.';
  const fewest = fewestExpected(suspects, all).toFixed(1);
  return {
    left,
    over,
    sentence: `${start}${end} You needed ${counted(taken.length, 'check')}; the best way needs ${fewest} on average over all ${all.length}.`,
  };
}

/** One step of a hunt that is shown: the check that splits best, in how many groups of what size, what is seen, and who is left. */
interface HuntStep {
  readonly check: string;
  readonly why: string;
  readonly seen: string;
  /** Suspects left after it, by number. */
  readonly left: readonly number[];
}

/** A hunt for a hidden suspect, by number, that takes the check which tells most each time, the first of the list where two tell the same. */
export function workedHunt(pile: Pile, hidden: number): readonly HuntStep[] {
  const suspects = weighed(pile);
  const steps: HuntStep[] = [];
  const taken: number[] = [];
  for (let { left, over } = huntFor(pile, hidden, []); !over; { left, over } = huntFor(pile, hidden, taken)) {
    const bits = pile.looks.map((_, look) => bitsOfObservation(suspects, left, look));
    const best = bits.findIndex((one) => one > Math.max(...bits) - NOTHING_BITS);
    const sizes = splitBy(pile, best)
      .map((group) => group.suspects.filter((at) => left.includes(at)).length)
      .filter((size) => size > 0)
      .sort((a, b) => b - a);
    taken.push(best);
    steps.push({
      check: pile.looks[best]?.words ?? '',
      why: `It splits the ${left.length} that are left into ${sayList(sizes.map(String))}.`,
      seen: seenAt(pile, best, hidden),
      left: huntFor(pile, hidden, taken).left,
    });
  }
  return steps;
}
