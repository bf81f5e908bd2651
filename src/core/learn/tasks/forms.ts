/** Ways to put a question, so that a kind says what it asks and nothing twice. */
import { BITS_PER_FRAME, frameBit, hexOf } from '../../signal/index.ts';
import { answerOfText } from './answers.ts';
import type { Chance, Drawn, Level, Shows, Slip, Unit } from './task.ts';

/** An answer to choose: right, or wrong by a known mistake with what is said to it. */
type Offered =
  | { readonly text: string; readonly right: true }
  | { readonly text: string; readonly slip: string; readonly says: string };

type Answered = Pick<Drawn, 'form' | 'right' | 'slips'>;

/** For answers that are named after what is shown, and so are drawn with it. */
export const AS_THEY_STAND: Pick<Chance, 'shuffled'> = { shuffled: (list) => list };

type RowsShown = Extract<Shows, { shows: 'rows' }>;
/** What a task shows as a table; a row that does not belong to this task is false. */
export function inRows(rows: readonly (RowsShown['rows'][number] | false)[]): RowsShown {
  return { shows: 'rows', rows: rows.filter((row) => row !== false) };
}

/** What a task shows of a byte as it goes over the wire, from its start bit to its stop bit. */
export function inBits(byte: number): Extract<Shows, { shows: 'bits' }> {
  return { shows: 'bits', levels: Array.from({ length: BITS_PER_FRAME }, (_, bit) => frameBit(byte, bit)) };
}

/** The cases of a level out of all, the easy ones first: so many below level 2, so many at it, and all of them at level 3. */
export function casesAt<T>(
  level: Level,
  all: readonly T[],
  [easy, more]: readonly [number, number],
): readonly T[] {
  return all.slice(0, level < 2 ? easy : level === 2 ? more : all.length);
}

/** One of several answers, in an order that the seed decides. @throws unless exactly one is right. */
export function oneOf(offered: readonly Offered[], chance: Pick<Chance, 'shuffled'>): Answered {
  const shown = chance.shuffled(offered);
  const right = shown.flatMap((one, at) => ('right' in one ? [String(at)] : []));
  if (right.length !== 1) throw new Error(`task: needs one right answer, got ${right.length}`);
  return {
    form: { form: 'choice', options: shown.map(({ text }) => text) },
    right: right[0] as string,
    slips: shown.flatMap((one, at) =>
      'slip' in one ? [{ name: one.slip, answer: String(at), sentence: one.says }] : [],
    ),
  };
}

/** A known mistake: its name, and what is said to it. */
export type Mistake = readonly [slip: string, says: string];

/** A known mistake out of a table of what is said to each. */
export function met<S extends string>(said: Readonly<Record<S, string>>, slip: S): Mistake {
  return [slip, said[slip]];
}

/** One of a list of things, each told by `text`; `mistaken` tells what it means to take a wrong one. @throws unless the right one is asked. */
export function whichOf<T>(
  asked: readonly T[],
  right: T,
  text: (one: T) => string,
  mistaken: (said: T) => Mistake,
  chance: Pick<Chance, 'shuffled'>,
): Answered {
  return oneOf(
    asked.map((one) => {
      if (one === right) return { text: text(one), right: true };
      const [slip, says] = mistaken(one);
      return { text: text(one), slip, says };
    }),
    chance,
  );
}

/** One of a table of answers. @throws unless the right one is in it. */
export function whichText<K extends string>(
  texts: Readonly<Record<K, string>>,
  right: K,
  mistaken: (said: K) => Mistake,
  chance: Pick<Chance, 'shuffled'>,
): Answered {
  return whichOf(Object.keys(texts) as K[], right, (one) => texts[one], mistaken, chance);
}

/** What is said to each known mistake, by its name. */
type Said<S extends string> = Readonly<Record<S, string>>;
/** What each known mistake gives here, by its name; false where it gives nothing here. */
type Given<S extends string, T> = Readonly<Record<S, T | false>>;

/** Mistakes by name, but for those whose answer is right, or that of one named before: they could not be told from it. */
function slipsOf<S extends string, T>(
  said: Said<S>,
  given: readonly (readonly [name: string, answer: T | false])[],
  right: T,
  write: (answer: T) => string,
  isSame = (one: T, other: T): boolean => write(one) === write(other),
): readonly Slip[] {
  const taken = [right];
  return given.flatMap(([name, answer]) => {
    if (answer === false || taken.some((one) => isSame(answer, one))) return [];
    taken.push(answer);
    return [{ name, answer: write(answer), sentence: said[name as S] }];
  });
}

/** Share by which a number worked out by hand may be off where nothing is rounded but the number itself. */
export const ROUNDING = 0.02;
/** The same of whole things, which are right or wrong: less than one in the largest number that is asked for. */
export const EXACT = 0.002;

/** Decimals that a number in a task is shown with at most: four digits that mean something. */
const DIGITS = 4;

/** A number as text, as a reader would type it. */
export function plainNumber(value: number): string {
  return String(Number(value.toPrecision(DIGITS)));
}

/**
 * A number within a share of the right one, in a unit, and the numbers that known mistakes give. One that is too near to the right
 * number, or to that of a mistake named before it, could not be told from it.
 */
export function aNumber<S extends string>(
  right: number,
  unit: Unit,
  share: number,
  said: Said<S>,
  given: Given<S, number>,
): Answered {
  const isNear = (value: number, one: number): boolean =>
    Math.abs(value - one) <= 2 * share * Math.abs(one) + Number.EPSILON;
  return {
    form: { form: 'number', unit, share },
    right: plainNumber(right),
    slips: slipsOf(said, Object.entries<number | false>(given), right, plainNumber, isNear),
  };
}

/** Items to be put in order, shown in one that the seed decides and that is not the right one; a known mistake may give several orders. */
export function inOrder<S extends string>(
  right: readonly string[],
  chance: Chance,
  said: Said<S>,
  given: Readonly<Record<S, readonly (readonly string[])[]>>,
): Answered {
  const drawn = chance.shuffled(right);
  const items = drawn.every((one, at) => one === right[at]) ? [...drawn.slice(1), drawn[0] as string] : drawn;
  const numbers = (order: readonly string[]): string => order.map((one) => items.indexOf(one)).join(' ');
  const orders = Object.entries<readonly (readonly string[])[]>(given).flatMap(([name, all]) =>
    all.map((order) => [name, order] as const),
  );
  return {
    form: { form: 'order', items },
    right: numbers(right),
    slips: slipsOf(said, orders, right, numbers),
  };
}

/**
 * Each of a list of things that is so, each told by `text`. `ticks` are the known mistakes by name: what each would tick, or false
 * where it cannot be made here; `said` is what is said to them.
 */
export function eachOf<T, S extends string>(
  asked: readonly T[],
  chance: Pick<Chance, 'shuffled'>,
  how: {
    readonly text: (one: T) => string;
    readonly right: (one: T) => boolean;
    readonly said: Said<S>;
    readonly ticks: Given<S, (one: T) => boolean>;
  },
): Answered {
  const shown = chance.shuffled(asked);
  const ticked = (isTicked: (one: T) => boolean): string =>
    shown.flatMap((one, at) => (isTicked(one) ? [String(at)] : [])).join(' ') || '-';
  return {
    form: { form: 'several', options: shown.map((one) => how.text(one)) },
    right: ticked(how.right),
    slips: slipsOf(how.said, Object.entries<((one: T) => boolean) | false>(how.ticks), how.right, ticked),
  };
}

/** Bytes as they are written: 'C0 04'. */
export const inHex = (bytes: readonly number[]): string => bytes.map(hexOf).join(' ');

/** Bytes, with those that known mistakes give. */
export function theBytes<S extends string>(
  right: readonly number[],
  said: Said<S>,
  given: Given<S, readonly number[]>,
): Answered {
  return {
    form: { form: 'bytes' },
    right: inHex(right),
    slips: slipsOf(said, Object.entries<readonly number[] | false>(given), right, inHex),
  };
}

/** A point that a text may hold: one that is wanted, with what is said where it is missing, or one that spoils it. */
interface Point {
  readonly text: string;
  readonly wanted: boolean;
  readonly slip: string;
  readonly says: string;
}

/**
 * A text of the reader's own against a rubric, which the reader marks. `model` is a text that holds what is wanted and nothing
 * that spoils it. Of several mistakes the first one is told: what spoils a text before what it lacks.
 */
export function aText(points: readonly Point[], model: string, chance: Chance): Answered {
  const shown = chance.shuffled(points);
  const ways = Array.from({ length: 2 ** shown.length }, (_, way) =>
    shown.flatMap((__, at) => ((way >> at) % 2 === 1 ? [at] : [])),
  );
  const wrongIn = (held: readonly number[]): Point | undefined => {
    const wrong = shown.filter(({ wanted }, at) => wanted !== held.includes(at));
    return wrong.find(({ wanted }) => !wanted) ?? wrong[0];
  };
  return {
    form: { form: 'rubric', points: shown.map(({ text }) => text) },
    right: answerOfText(
      shown.flatMap(({ wanted }, at) => (wanted ? [at] : [])),
      model,
    ),
    slips: ways.flatMap((held) => {
      const wrong = wrongIn(held);
      return wrong ? [{ name: wrong.slip, answer: answerOfText(held, model), sentence: wrong.says }] : [];
    }),
  };
}
