/** What the command line says of work on a Set: a row for each task, and at the end what the class has not understood. */
import { MARK_WORDS, markResults, sayMistake } from '../core/class/index.ts';
import type { HandedIn } from '../core/class/index.ts';
import { writeTaskId } from '../core/learn/index.ts';
import { NOTHING } from './rows.ts';
import type { Row } from './rows.ts';
import { quoted, sayPath, shown } from './say.ts';

/** Mistakes of one Set that are named at the end. */
const MISTAKES_NAMED = 5;

/** A row for each task of one piece of work, or one that says why it cannot be marked. */
export function taskRows(handedIn: HandedIn): readonly Row[] {
  const [row] = markResults([handedIn]).rows;
  if (row === undefined || !('result' in row))
    return [
      { ...NOTHING, file: handedIn.source, number: null, name: '', read: false, why: row?.problem ?? '' },
    ];
  const { number, name } = row.result;
  return row.tasks.map(({ task, mark, misses }) => ({
    ...NOTHING,
    file: row.source,
    number,
    name,
    read: true,
    task: writeTaskId(task.id),
    sameTask: mark !== 'changed',
    right: mark === 'right' || mark === 'helped',
    why: [task.title, MARK_WORDS[mark], ...(mark === 'wrong' ? [misses.at(-1)?.sentence ?? ''] : [])].join(
      ': ',
    ),
  }));
}

/** The end of a run over work on Sets: the commonest mistakes of each, and what stands out in a piece of work. */
export function classSummary(all: readonly HandedIn[]): readonly string[] {
  const { rows, sets } = markResults(all);
  return [
    ...sets.flatMap(({ set, students, mistakes }) => [
      `${quoted(set.title)}: ${students} handed in.`,
      ...mistakes.slice(0, MISTAKES_NAMED).map((mistake) => `  ${shown(sayMistake(mistake))}`),
    ]),
    ...rows.flatMap((row) =>
      'notes' in row ? row.notes.map((note) => `${sayPath(row.source)}: ${shown(note)}`) : [],
    ),
  ];
}
