/**
 * Two check letters for codes that people type. Letters are numbers of 0 to 31 in the field of 32 elements, and a code is right
 * when the plain sum of its letters and the sum weighted by place both vanish: every single slip and every two letters that
 * changed places are caught, and a single slip is found too (the textbook construction of Reed and Solomon, 1960).
 */

/** The letters, in order: digits and capitals without I, L, O and U, which are read as others or as words. */
export const CODE_LETTERS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';

/** Longest code whose places all have weights of their own: 31 letters, check letters included. */
export const MOST_LETTERS = 31;

/** Powers of the generator x modulo x^5 + x^2 + 1, and the power that each element is. */
const POWERS: readonly number[] = Array.from({ length: MOST_LETTERS }).reduce<number[]>((made) => {
  const doubled = (made.at(-1) ?? 0) << 1;
  return [...made, made.length === 0 ? 1 : doubled & 0x20 ? doubled ^ 0x25 : doubled];
}, []);
const power = (exponent: number): number => POWERS[exponent % MOST_LETTERS] as number;
const logOf = (element: number): number => POWERS.indexOf(element);

function times(a: number, b: number): number {
  return a === 0 || b === 0 ? 0 : power(logOf(a) + logOf(b));
}

function over(a: number, b: number): number {
  return a === 0 ? 0 : power(logOf(a) - logOf(b) + MOST_LETTERS);
}

/** Both sums of a code; places count from its end. */
function sums(code: readonly number[]): readonly [plain: number, weighted: number] {
  let plain = 0;
  let weighted = 0;
  code.forEach((letter, at) => {
    plain ^= letter;
    weighted ^= times(letter, power(code.length - 1 - at));
  });
  return [plain, weighted];
}

/** The letters with two check letters behind them. @throws when they are too many or no letters. */
export function withChecks(letters: readonly number[]): readonly number[] {
  if (letters.length + 2 > MOST_LETTERS)
    throw new RangeError(
      `code: must have at most ${MOST_LETTERS - 2} letters before its checks, got ${letters.length}`,
    );
  const [plain, weighted] = sums([...letters, 0, 0]);
  // The last place weighs 1 and the one before it x: last + before = plain, last + x before = weighted.
  const before = over(plain ^ weighted, 1 ^ power(1));
  return [...letters, before, plain ^ before];
}

/** What the check letters say. `slip`: the place of the one wrong letter and what it must be; `swap`: where two neighbours changed places. */
type CheckAnswer =
  | { readonly kind: 'right' }
  | { readonly kind: 'slip'; readonly at: number; readonly letter: number }
  | { readonly kind: 'swap'; readonly at: number }
  | { readonly kind: 'wrong' };

/** Check a code. More than one slip may look like one slip elsewhere, so an answer is a hint, never a repair. */
export function checkLetters(code: readonly number[]): CheckAnswer {
  if (code.length < 3 || code.length > MOST_LETTERS) return { kind: 'wrong' };
  const [plain, weighted] = sums(code);
  if (plain === 0 && weighted === 0) return { kind: 'right' };
  if (plain !== 0 && weighted !== 0) {
    const at = code.length - 1 - logOf(over(weighted, plain));
    if (at >= 0) return { kind: 'slip', at, letter: (code[at] as number) ^ plain };
  }
  if (plain === 0) {
    const at = code.findIndex((letter, place) => {
      const next = code[place + 1];
      return (
        next !== undefined &&
        times(letter ^ next, power(code.length - 2 - place) ^ power(code.length - 1 - place)) === weighted
      );
    });
    if (at >= 0) return { kind: 'swap', at };
  }
  return { kind: 'wrong' };
}
