/** Ways to put a question, so that a kind says what it asks and nothing twice. */
import { hexOf } from '../../signal/index.ts';
import { answerOfText } from './answers.ts';
import type { Chance, Drawn, Level, Shows, Slip, Unit } from './task.ts';

/** An answer to choose: right, or wrong by a known mistake with what is said to it. */
type Offered =
  | { readonly text: string; readonly right: true }
  | { readonly text: string; readonly slip: string; readonly says: string };

type Answered = Pick<Drawn, 'form' | 'right' | 'slips'>;

/** For answers that are named after what is shown, and so are drawn with it. */
export const AS_THEY_STAND: Pick<Chance, 'shuffled'> = { shuffled: (list) => list };

/** What a task shows as a table of rows. */
export function inRows(rows: Extract<Shows, { shows: 'rows' }>['rows']): Extract<Shows, { shows: 'rows' }> {
  return { shows: 'rows', rows };
}

/** The cases of a level out of all, the easy ones first: so many below level 2, so many at it, and all of them at level 3. */
export function casesAt<T>(
  level: Level,
  all: readonly T[],
  [easy, more]: readonly [number, number],
): readonly T[] {
  return all.slice(0, level < 2 ? easy : level === 2 ? more : all.length);
}

/** Words with a capital letter, as a sentence or an answer begins. */
export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
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

/** A number that a known mistake would give. */
interface WrongNumber {
  readonly slip: string;
  readonly value: number;
  readonly says: string;
}

/** Decimals that a number in a task is shown with at most: four digits that mean something. */
const DIGITS = 4;

/** A number as text, as a reader would type it. */
export function plainNumber(value: number): string {
  return String(Number(value.toPrecision(DIGITS)));
}

/**
 * A number within a share of the right one, in a unit. A mistake whose number is too near to the right one, or to that of a
 * mistake named before it, is left out: it could not be told from it.
 */
export function aNumber(right: number, unit: Unit, share: number, wrong: readonly WrongNumber[]): Answered {
  const slips: Slip[] = [];
  const taken = [right];
  for (const { slip, value, says } of wrong) {
    if (taken.some((one) => Math.abs(value - one) <= 2 * share * Math.abs(one) + Number.EPSILON)) continue;
    taken.push(value);
    slips.push({ name: slip, answer: plainNumber(value), sentence: says });
  }
  return { form: { form: 'number', unit, share }, right: plainNumber(right), slips };
}

/** A known wrong order. */
interface WrongOrder {
  readonly slip: string;
  readonly items: readonly string[];
  readonly says: string;
}

/** Items to be put in order; they are shown in an order that the seed decides and that is not the right one. */
export function inOrder(right: readonly string[], wrong: readonly WrongOrder[], chance: Chance): Answered {
  const drawn = chance.shuffled(right);
  const items = drawn.every((one, at) => one === right[at]) ? [...drawn.slice(1), drawn[0] as string] : drawn;
  const numbers = (order: readonly string[]): string => order.map((one) => items.indexOf(one)).join(' ');
  const answer = numbers(right);
  return {
    form: { form: 'order', items },
    right: answer,
    slips: wrong
      .map(({ slip, items: order, says }) => ({ name: slip, answer: numbers(order), sentence: says }))
      .filter(
        (one, at, all) =>
          one.answer !== answer && all.findIndex((other) => other.answer === one.answer) === at,
      ),
  };
}

/** Each of these that is so; `wrong` names mistakes by what they would tick. */
export function eachThat(
  offered: readonly { readonly text: string; readonly right: boolean }[],
  wrong: readonly {
    readonly slip: string;
    readonly ticks: (text: string) => boolean;
    readonly says: string;
  }[],
  chance: Chance,
): Answered {
  const shown = chance.shuffled(offered);
  const ticked = (test: (one: (typeof shown)[number]) => boolean): string =>
    shown.flatMap((one, at) => (test(one) ? [String(at)] : [])).join(' ') || '-';
  const right = ticked((one) => one.right);
  return {
    form: { form: 'several', options: shown.map(({ text }) => text) },
    right,
    slips: wrong
      .map(({ slip, ticks, says }) => ({
        name: slip,
        answer: ticked(({ text }) => ticks(text)),
        sentence: says,
      }))
      .filter(
        (one, at, all) =>
          one.answer !== right && all.findIndex((other) => other.answer === one.answer) === at,
      ),
  };
}

/**
 * Each of a list of things that is so, each told by `text`. `ticks` are the known mistakes by name: what each would tick, or false
 * where it cannot be made here; `said` is what is said to them.
 */
export function eachOf<T, S extends string>(
  asked: readonly T[],
  how: {
    readonly text: (one: T) => string;
    readonly right: (one: T) => boolean;
    readonly ticks: Readonly<Record<S, ((one: T) => boolean) | false>>;
    readonly said: Readonly<Record<S, string>>;
  },
  chance: Chance,
): Answered {
  const told = new Map(asked.map((one) => [how.text(one), one]));
  return eachThat(
    asked.map((one) => ({ text: how.text(one), right: how.right(one) })),
    (Object.keys(how.ticks) as S[]).flatMap((slip) => {
      const test = how.ticks[slip];
      return test ? [{ slip, ticks: (text: string) => test(told.get(text) as T), says: how.said[slip] }] : [];
    }),
    chance,
  );
}

const inHex = (bytes: readonly number[]): string => bytes.map(hexOf).join(' ');

/** Bytes, with those that known mistakes would give. */
export function theBytes(
  right: readonly number[],
  wrong: readonly { readonly slip: string; readonly bytes: readonly number[]; readonly says: string }[],
): Answered {
  const answer = inHex(right);
  return {
    form: { form: 'bytes' },
    right: answer,
    slips: wrong
      .map(({ slip, bytes, says }) => ({ name: slip, answer: inHex(bytes), sentence: says }))
      .filter(
        (one, at, all) =>
          one.answer !== answer && all.findIndex((other) => other.answer === one.answer) === at,
      ),
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
