/** What stands around the bytes of a line in a log: times, counts, places in a dump. */

const UNIT = String.raw`(?:ms|s|sec|seconds|us|µs)\b`;
/** What may stand before the bytes of a line, one after another: a date, a time of day, a moment, a count, a place in a dump. */
const BEFORE: readonly RegExp[] = [
  /^\s*[[(]?\d{4}-\d\d-\d\d[T\s]*/,
  /^\s*[[(]?\d{1,2}:\d{2}(?::\d{2})?(?:[.,:]\d+)?Z?[\])]?(?=[\s\-:|,;"\]]|$)\s*[-:|,;]?/,
  new RegExp(String.raw`^\s*[[(]?[+@]?\d+(?:\.\d+|,\d{3,}(?=\s))\s*(?:${UNIT})?[\])]?\s*[-:|,;]?`),
  new RegExp(String.raw`^\s*[[(]?[+@]?\d+\s*${UNIT}[\])]?\s*[-:|,;]?`),
  /^\s*#\d+\b[.):]?/,
  /^\s*\d+\s*[.):]\s+/,
];
/** A place in a dump: four or eight digits of hex; its letters stand between two strokes at the end. */
const DUMP = /^\s*(?:0x)?[0-9a-f]{4}(?:[0-9a-f]{4})?(?::\s|\s{2,})(.*?)(?:\|[^|]*\|\s*)?$/i;
/** A moment by its name, or behind the bytes. */
const MOMENTS: readonly RegExp[] = [
  /["']?\b(?:time|timestamp|delta|ts|dt)\b["']?\s*[:=]\s*[\d.]+\s*(?:ms|s)?/gi,
  new RegExp(String.raw`\s[@+]\s*\d+(?:[.,]\d+)?\s*(?:${UNIT})?\s*$`),
];
/** Marks that may stand before anything else. */
const QUOTED = /^\s*["'|]+\s*/;

/** A line without what stands around its bytes or its message. */
export function barePart(line: string): string {
  let rest = DUMP.exec(line)?.[1] ?? line;
  for (const moment of MOMENTS) rest = rest.replace(moment, ' ');
  for (let before = ''; before !== rest;) {
    before = rest;
    rest = rest.replace(QUOTED, '');
    for (const one of BEFORE) rest = rest.replace(one, ' ');
  }
  return rest;
}

/** A byte that is marked: a star, a shout, or words behind it. */
const MARKED = /\s*\(?\b(framing([\s_-]*error)?|frame error|break)\b\)?/gi;
/** Pairs of hex digits that a stroke or nothing parts: with a letter or three of them, for a plain number may count milliseconds. */
const JOINED = /^(?:0x)?(?=.*[a-f-]|.{6})[89a-f][0-9a-f](?:-?[0-9a-f]{2})+$/i;

/** The words and numbers of a line; a run of hex digits that begins with a status byte is parted into its bytes. */
export function tokensOf(line: string): readonly string[] {
  return line
    .replace(MARKED, '* ')
    .replace(/\s+\*/g, '*')
    .split(/[\s,;|[\]<>{}"'()]+/)
    .filter((one) => /[^\W_]/.test(one))
    .flatMap((one) => (JOINED.test(one) ? (one.replace(/^0x/i, '').match(/[0-9a-f]{2}/gi) ?? []) : [one]));
}
