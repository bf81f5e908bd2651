/**
 * `npm run speed`: print a table of figures with the goal beside each; with --json, {"figures": [...]}; with --short, fewer cases where a
 * part takes minutes; with --jacks=4501-10000, those of the meter's simulated jacks alone, so that a long run can be taken in pieces.
 */
import { reaches } from './figures.ts';
import type { Figure } from './figures.ts';

/** Each part of the bench is a file beside this one that exports `figures()`. */
const PARTS = [
  'operating-point',
  'maps',
  'transient',
  'links',
  'events',
  'board',
  'files',
  'meter',
  'tasks',
  'class',
  'arrived',
  'pages',
] as const;

const json = process.argv.includes('--json');
const short = process.argv.includes('--short');
const chosen = process.argv.slice(2).filter((word) => !word.startsWith('--'));
const jacks = jacksAsked(process.argv.find((word) => word.startsWith('--jacks='))?.slice('--jacks='.length));
const unknown = chosen.filter((name) => !(PARTS as readonly string[]).includes(name));
if (unknown.length > 0) {
  console.error(`bench: expected some of ${PARTS.join(', ')}, got ${unknown.join(', ')}`);
  process.exit(2);
}

const figures: Figure[] = [];
for (const part of PARTS) {
  if (chosen.length > 0 && !chosen.includes(part)) continue;
  const { figures: measure } = (await import(`./${part}.ts`)) as {
    figures: (of: {
      readonly short: boolean;
      readonly jacks: readonly [first: number, last: number] | undefined;
    }) => Promise<readonly Figure[]>;
  };
  const found = await measure({ short, jacks });
  figures.push(...found);
  if (!json) for (const figure of found) console.log(row(figure));
}
if (json) console.log(JSON.stringify({ figures }, undefined, 2));

/** The first and the last simulated jack, counted from 1. */
function jacksAsked(text: string | undefined): readonly [number, number] | undefined {
  if (text === undefined) return undefined;
  const [first = NaN, last = NaN] = text.split('-').map(Number);
  if (Number.isInteger(first) && Number.isInteger(last) && first >= 1 && last >= first) return [first, last];
  console.error(`bench: --jacks: expected two counts from 1, as in 4501-10000, got '${text}'`);
  process.exit(2);
}

function row(figure: Figure): string {
  const { name, value, unit, atLeast, atMost, beside = '' } = figure;
  const shown = `${value >= 100 ? value.toFixed(0) : value.toPrecision(3)} ${unit}`;
  const goal =
    atLeast !== undefined
      ? `at least ${atLeast} ${unit}`
      : atMost !== undefined
        ? `at most ${atMost} ${unit}`
        : '';
  const mark = goal === '' ? '' : reaches(figure) ? 'reached' : 'NOT REACHED';
  return `${name.padEnd(58)} ${shown.padStart(12)}   ${goal.padEnd(20)} ${mark.padEnd(12)} ${beside}`.trimEnd();
}
