/** Marked results as a table for a spreadsheet. */
import { csvText } from '../board/index.ts';
import type { Mark, MarkedTask } from './mark.ts';
import type { Marked, MarkedRow } from './marked.ts';

/** What a mark is called. */
export const MARK_WORDS: Readonly<Record<Mark, string>> = {
  right: 'right',
  helped: 'right with help',
  self: 'marked by the student',
  wrong: 'wrong',
  none: 'no answer',
  changed: 'changed task',
};

/** How many tasks of a row stand so. */
export function countOf(tasks: readonly MarkedTask[], ...marks: readonly Mark[]): number {
  return tasks.filter(({ mark }) => marks.includes(mark)).length;
}

const sayTask = ({ mark, misses }: MarkedTask): string => {
  const mistake = misses.at(-1)?.mistake;
  return mark === 'wrong' && mistake !== undefined ? `wrong: ${mistake}` : MARK_WORDS[mark];
};

/** Marked results as CSV: a row for every input, those that cannot be marked too. No cell of it begins a formula. */
export function resultsCsv({ rows }: Marked): string {
  const most = Math.max(0, ...rows.map((row) => ('result' in row ? row.tasks.length : 0)));
  return csvText(rows.map((row) => csvRow(row, most)));
}

function csvRow(row: MarkedRow, most: number): object {
  const marked = 'result' in row ? row : undefined;
  const count = (...marks: readonly Mark[]): number | '' => (marked ? countOf(marked.tasks, ...marks) : '');
  return {
    'handed in as': row.source,
    number: marked?.result.number ?? '',
    name: marked?.result.name ?? '',
    title: marked?.result.set.title ?? '',
    tasks: marked?.tasks.length ?? '',
    right: count('right', 'helped'),
    'right at once': count('right'),
    wrong: count('wrong'),
    'no answer': count('none'),
    changed: count('changed'),
    'marked by the student': count('self'),
    notes: marked?.notes.join(' ') ?? '',
    'not marked because': 'problem' in row ? row.problem : '',
    ...Object.fromEntries(
      Array.from({ length: most }, (_, at) => {
        const task = marked?.tasks[at];
        return [`task ${at + 1}`, task ? sayTask(task) : ''];
      }),
    ),
  };
}
