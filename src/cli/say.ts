/** Text of others made safe to print: names and files may hold line breaks, codes of the terminal and marks that turn a line round. */

/** Control characters, marks without width, those that turn the direction, and what breaks a line. */
const UNSEEN = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu;

/** Characters that a path is made of when it can be told from the words around it without quotes. */
const PLAIN_PATH = /^[\p{L}\p{N}_./\\+-]+$/u;

/** A text with everything in it that a terminal would not show as it is written as a code: a line break becomes '\u000a'. */
export function shown(text: string): string {
  return text.replace(UNSEEN, (one) =>
    one
      .split('')
      .map((unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`)
      .join(''),
  );
}

/** A name in single quotes, those within it and the backslash marked by a backslash. */
export function quoted(name: string): string {
  return `'${shown(name.replace(/[\\']/g, '\\$&'))}'`;
}

/** A path as it is where it cannot be mistaken for words of ours, else quoted. */
export function sayPath(path: string): string {
  return PLAIN_PATH.test(path) ? path : quoted(path);
}

/** Data as JSON text that holds no character a terminal could act on: JSON takes the codes of `shown` for the characters. */
export function jsonText(value: unknown): string {
  return JSON.stringify(value, undefined, 2).split('\n').map(shown).join('\n');
}
