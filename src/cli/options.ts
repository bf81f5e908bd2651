/** What was typed behind `npm run verdict --`. */

/** What to do with which files. */
interface Options {
  /** Lines for people, an array of JSON, or a table for a spreadsheet. */
  readonly print: 'lines' | 'json' | 'csv';
  readonly against?: string;
  readonly send?: readonly number[];
  readonly files: readonly string[];
}

/** The name that stands for the standard input. */
export const STANDARD_INPUT = '-';

/** The options, `'help'` where that is asked for, or in `wrong` what is wrong with what was typed. */
export function readOptions(given: readonly string[]): Options | 'help' | { readonly wrong: string } {
  const found: { print: Options['print']; against?: string; send?: readonly number[]; files: string[] } = {
    print: 'lines',
    files: [],
  };
  const words = [...given];
  for (let word = words.shift(); word !== undefined; word = words.shift()) {
    if (word === '--') found.files.push(...words.splice(0));
    else if (word === '--help') return 'help';
    else if (word === '--json' || word === '--csv') {
      if (found.print !== 'lines')
        return { wrong: `${word}: expected one of --json and --csv, once, got more` };
      found.print = word === '--json' ? 'json' : 'csv';
    } else if (word === '--against') {
      const file = words.shift();
      if (file === undefined) return { wrong: '--against: expected a file, got nothing' };
      found.against = file;
    } else if (word === '--send') {
      const text = words.shift() ?? '';
      const bytes = bytesIn(text);
      if (!bytes)
        return {
          wrong: `--send: expected bytes of two hex digits each, as in "90 88 00", got '${text}'`,
        };
      found.send = bytes;
    } else if (word.startsWith('-') && word !== STANDARD_INPUT)
      return {
        wrong: `${word}: expected --json, --csv, --against, --send, --help or --, got an option that does not exist`,
      };
    else found.files.push(word);
  }
  if (found.files.length === 0) return { wrong: 'expected at least one file, got none' };
  const inputs = [found.against, ...found.files].filter((file) => file === STANDARD_INPUT);
  return inputs.length > 1
    ? { wrong: `-: expected once, got ${inputs.length}: the standard input can be read only once` }
    : found;
}

function bytesIn(text: string): readonly number[] | undefined {
  const bytes = text.split(/[\s,]+/).filter((one) => one !== '');
  return bytes.length > 0 && bytes.every((one) => /^[0-9a-f]{2}$/i.test(one))
    ? bytes.map((one) => Number.parseInt(one, 16))
    : undefined;
}
