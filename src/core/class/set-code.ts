/**
 * A Set as a short code for the board: its seed, how it is drawn and when answers are shown, and its kinds with level and count, in 32 letters with two check
 * letters. Nothing is stored anywhere: the code is the Set. The title is not in it.
 */
import { LEVELS, MOST_SEED } from '../learn/index.ts';
import { CODE_LETTERS, MOST_LETTERS, checkLetters, withChecks } from '../making/index.ts';
import type { Reading } from './reading.ts';
import { DRAWS, SHOWS } from './limits.ts';
import { KINDS, readSet } from './work-set.ts';
import type { SetItem, WorkSet } from './work-set.ts';

/** Values that one letter has, and letters in a group as printed. */
const BASE = 32;
const GROUP = 4;

/** Letters of a seed, of a kind's name, and of an item: its kind, and one for level and count. */
const SEED_LETTERS = Math.round(Math.log2(MOST_SEED + 1) / Math.log2(BASE));
const KIND_LETTERS = 3;
const ITEM_LETTERS = KIND_LETTERS + 1;

/** Tasks of one kind and level that one item of a code can hold; more take another item. */
const MOST_COUNT = BASE / LEVELS.length;

/** What a step of showing, and one of drawing, adds to the letter of the choices; how a Set is drawn that does not say it. */
const SHOW_STEP = 2;
const DRAW_STEP = 8;
const [FIRST_DRAW] = DRAWS;

const lettersOf = (value: number, length: number): readonly number[] =>
  Array.from({ length }, (_, at) => Math.floor(value / BASE ** (length - 1 - at)) % BASE);

const valueOf = (letters: readonly number[]): number =>
  letters.reduce((value, letter) => value * BASE + letter, 0);

/** The number that stands for a kind: a hash of its name (FNV-1a of 32 bits, folded), so that a code outlives new kinds. */
export function kindNumber(kind: string): number {
  let hash = 0x811c9dc5;
  for (const sign of kind) hash = Math.imul(hash ^ (sign.codePointAt(0) ?? 0), 0x01000193) >>> 0;
  const room = BASE ** KIND_LETTERS;
  return ((hash ^ Math.floor(hash / room)) >>> 0) % room;
}

/** The code of a Set, or undefined where it has too many kinds for one. */
export function setCode(set: WorkSet): string | undefined {
  const items = set.items.flatMap(({ kind, level, count }) =>
    Array.from({ length: Math.ceil(count / MOST_COUNT) }, (_, at) => {
      const part = Math.min(MOST_COUNT, count - at * MOST_COUNT);
      return [...lettersOf(kindNumber(kind), KIND_LETTERS), level * MOST_COUNT + part - 1];
    }),
  );
  const letters = [
    ...lettersOf(set.seed, SEED_LETTERS),
    DRAWS.indexOf(set.draw ?? FIRST_DRAW) * DRAW_STEP +
      SHOWS.indexOf(set.show) * SHOW_STEP +
      Number(set.perStudent),
    ...items.flat(),
  ];
  if (letters.length + 2 > MOST_LETTERS) return undefined;
  const spelt = withChecks(letters)
    .map((letter) => CODE_LETTERS[letter])
    .join('');
  return (spelt.match(new RegExp(`.{1,${GROUP}}`, 'g')) ?? []).join('-');
}

const wrong = (expected: string, got: string): Reading<never> => ({
  ok: false,
  problems: [{ place: 'the code', expected, got }],
});

/** What a typed code must be read as: O, I and L are read for the digits that they look like. */
const LOOKS_LIKE: Readonly<Record<string, string>> = { O: '0', I: '1', L: '1' };

/** The Set of a code as it was typed, under a title that names it by its first letters. */
export function readSetCode(typed: string): Reading<WorkSet> {
  const signs = [...typed.toUpperCase().replace(/[\s-]/g, '')].map((one) => LOOKS_LIKE[one] ?? one);
  const letters = signs.map((one) => CODE_LETTERS.indexOf(one));
  const strange = signs.find((_, at) => letters[at] === -1);
  if (strange !== undefined) return wrong('letters and digits as printed', `'${strange}'`);
  if (letters.length < SEED_LETTERS + 1 + ITEM_LETTERS + 2)
    return wrong('a whole code', `${letters.length} letters`);
  const checked = checkLetters(letters);
  if (checked.kind !== 'right')
    return wrong(
      'the letters as printed',
      checked.kind === 'slip'
        ? `a code that would be right with '${CODE_LETTERS[checked.letter]}' as letter ${checked.at + 1}`
        : checked.kind === 'swap'
          ? `a code that would be right with letters ${checked.at + 1} and ${checked.at + 2} the other way round`
          : 'a code with more than one wrong letter',
    );
  const told = letters.slice(SEED_LETTERS + 1, -2);
  const options = letters[SEED_LETTERS] ?? 0;
  const draw = DRAWS[Math.floor(options / DRAW_STEP)];
  return readSet({
    format: 'five-milliamps-set',
    version: 1,
    title: `Set ${signs.slice(0, GROUP).join('')}`,
    seed: valueOf(letters.slice(0, SEED_LETTERS)),
    perStudent: options % SHOW_STEP === 1,
    items: itemsIn(told),
    show: SHOWS[Math.floor((options % DRAW_STEP) / SHOW_STEP)],
    ...(draw === FIRST_DRAW ? {} : { draw: draw ?? 'not known here' }),
  });
}

/** What a Set is called by whoever opens it by its code; empty where it has none. */
export function titleByCode(set: WorkSet): string {
  const opened = readSetCode(setCode(set) ?? '');
  return opened.ok ? opened.value.title : '';
}

/** The items in the letters of a code; what follows another of the same kind and level is one with it. */
function itemsIn(letters: readonly number[]): readonly SetItem[] {
  const items: SetItem[] = [];
  for (let at = 0; at < letters.length; at += ITEM_LETTERS) {
    const number = valueOf(letters.slice(at, at + KIND_LETTERS));
    const last = letters[at + KIND_LETTERS] ?? 0;
    const kind = [...KINDS.keys()].find((name) => kindNumber(name) === number) ?? 'not known here';
    const level = LEVELS[Math.floor(last / MOST_COUNT)] ?? 0;
    const count = (last % MOST_COUNT) + 1;
    const before = items.at(-1);
    if (before?.kind === kind && before.level === level)
      items[items.length - 1] = { kind, level, count: before.count + count };
    else items.push({ kind, level, count });
  }
  return items;
}
