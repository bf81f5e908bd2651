/** What a class handed in: a few lines at the end, and the whole as a table for a spreadsheet. */
import { csvText } from '../core/board/index.ts';
import { sayReceived } from '../core/signal/index.ts';
import { linkWords, noteLabel } from '../core/verdict/index.ts';
import type { Row } from './rows.ts';
import { shown } from './say.ts';

/** Milliamperes in an ampere. */
const MILLI = 1e3;

/** The end of a run over several plans: how many are right, and what the others do, the commonest first. */
export function summaryOf(rows: readonly Row[]): readonly string[] {
  const plans = [...Map.groupBy(rows, ({ file }) => file).values()];
  if (plans.length < 2) return [];
  const read = plans.filter((one) => one.every((row) => row.read));
  const reasons = read.flatMap((one) => {
    const first = one.find((row) => !row.right);
    return first ? [reasonOf(first)] : [];
  });
  const counts = [...Map.groupBy(reasons, (reason) => reason)]
    .map(([reason, all]) => ({ reason, count: all.length }))
    .sort((one, other) => other.count - one.count);
  const parts = [
    `${read.length - reasons.length} right`,
    `${reasons.length} not right`,
    ...(read.length < plans.length ? [`${plans.length - read.length} not read`] : []),
  ];
  return [
    `${plans.length} handed in: ${parts.join(', ')}.`,
    ...(counts.length > 0
      ? [`Not right: ${counts.map(({ reason, count }) => `${count} ${reason}`).join(', ')}.`]
      : []),
  ];
}

/** Why a row is not right, in a word or two. */
function reasonOf({ sameTask, task, link, outcome, danger, lostBits }: Row): string {
  if (sameTask === false) return 'Changed task';
  if (task !== null) return 'Wrong or no answer';
  if (link === null || outcome === null) return 'No link';
  if (lostBits !== undefined) return 'Bits lost';
  return linkWords({ outcome, danger: danger ?? undefined }).label;
}

/** Every row as a line of a table, in words and units for people; codes stand for what a terminal acts on. */
export function csvOf(rows: readonly Row[]): string {
  return csvText(
    rows.map(
      ({ file, number, name, link, task, read, sameTask, right, outcome, danger, notes, why, ...row }) => ({
        number: number ?? '',
        name: shown(name),
        file: shown(file),
        link: shown(link ?? ''),
        task: task ?? '',
        right: yesNo(right),
        'same task': yesNo(sameTask),
        outcome: read && outcome !== null ? linkWords({ outcome, danger: danger ?? undefined }).label : '',
        'mA at rest': milli(row.idleAmperes),
        'mA active': milli(row.activeAmperes),
        'mA at worst': milli(row.worstAmperes),
        notes: notes.map(noteLabel).join('; '),
        why: shown(row.lostBits === undefined ? why : `${why} ${row.lostBits}`),
        ...(row.received ? { heard: sayReceived(row.received) } : {}),
      }),
    ),
  );
}

const yesNo = (value: boolean | null): string => (value === null ? '' : value ? 'yes' : 'no');

const milli = (amperes: number | null): number | '' => (amperes === null ? '' : amperes * MILLI);
