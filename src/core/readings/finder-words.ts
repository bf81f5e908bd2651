/** What the finder says: one sentence on how the answer stands, and what to do. */
import { sayList } from '../verdict/index.ts';
import type { Finding } from './finder.ts';
import { sayName, sayUnderTest } from './words.ts';

/** A probability in words that do not pretend to more than they know: 'more than 99 %', '72 %', 'less than 1 %'. */
export function sayProbability(probability: number): string {
  if (probability > 0.99) return 'more than 99 %';
  if (probability < 0.01) return 'less than 1 %';
  return `${Math.round(probability * 100)} %`;
}

/** Names said one by one in a sentence; more are counted, for the list shows them. */
const MOST_NAMED = 4;

/** Names still likely enough to be named in a sentence. */
const WORTH_NAMING = 0.05;

/**
 * How the answer stands, in words.
 * @param canGoOn whether there is a reading left that would tell more; without one, 'not sure' becomes 'cannot tell'.
 */
export function sayFinding(finding: Finding, canGoOn: boolean): string {
  const [top] = finding.ranked;
  if (!top) return 'No jack is known with this connector.';
  const likely = finding.ranked
    .filter(({ probability }) => probability >= WORTH_NAMING)
    .map(({ name }) => sayName(name));
  const set = asideWords(finding.doubtful) + oddWords(finding.odd);
  switch (finding.state) {
    case 'sure':
      return `This is ${sayName(top.name)}, ${sayProbability(top.probability)}; most likely ${sayUnderTest(top.best)}.${set}`;
    case 'fits-nothing':
      return 'These readings fit no jack that the workbook knows. Take the last reading again with clean contacts; test the lead once more; then look in the manual or ask the maker. Do not plug anything in on a guess.';
    case 'not-sure':
      if (canGoOn && likely.length === 0) return `Not sure yet: no kind of jack fits so far.${set}`;
      if (canGoOn && likely.length === 1)
        return `Probably ${likely[0]}, ${sayProbability(top.probability)}; one more reading will tell.${set}`;
      if (canGoOn && likely.length <= MOST_NAMED)
        return `Not sure yet. Still likely: ${sayList(likely)}.${set}`;
      if (canGoOn) return `Not sure yet: ${likely.length} kinds of jack are still likely.${set}`;
      if (likely.length < 2)
        return `Probably ${sayName(top.name)}, ${sayProbability(top.probability)}, but no safe reading is left that would make sure. Look in the manual, or ask the maker.${set}`;
      return `A meter cannot tell: ${sayList(likely)} read the same in every safe way. Look in the manual, or ask the maker.${set}`;
  }
}

function oddWords(odd: readonly number[]): string {
  if (odd.length === 0) return '';
  return ` Readings ${sayList(odd.map((number) => String(number + 1)))} agree, but do not fit the others: something in this device is unusual.`;
}

function asideWords(doubtful: readonly number[]): string {
  if (doubtful.length === 0) return '';
  const numbers = sayList(doubtful.map((number) => String(number + 1)));
  return doubtful.length === 1
    ? ` Reading ${numbers} does not fit the others and is set aside as doubtful: take it again.`
    : ` Readings ${numbers} do not fit the others and are set aside as doubtful: take them again.`;
}
