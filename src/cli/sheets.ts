/** What one file hands in: a plan or work on a Set, or one for each link in it. */
import type { HandedIn } from '../core/class/index.ts';
import { readPlanText, readSharedLink, sayProblems, studentOfFile } from '../core/plan/index.ts';
import type { Plan, PlanReading, Student } from '../core/plan/index.ts';

/** One piece of work: where it stands, whose it is, and the plan or why there is none. */
export interface Sheet {
  /** Path of the file, with the line where it holds links. */
  readonly place: string;
  readonly student: Student;
  readonly plan?: Plan;
  readonly problem?: string;
  /** Work on a Set in place of a plan. */
  readonly work?: HandedIn;
}

/** A plan in an address, as every page of the workbook shares one. */
const LINK = /#plan=([\w-]+)/;

/** Work on a Set: a file of it, or an address with it. */
const WORK = /"five-milliamps-result"|#result=/;

/** What a text hands in: a file's plan or work, else a sheet for each of its lines with a link. */
export async function sheetsOf(file: string, text: string): Promise<readonly Sheet[]> {
  const student = studentOfFile(file);
  if (WORK.test(text)) {
    // The tasks are many files to load, and plans need none of them.
    const { resultsIn } = await import('../core/class/index.ts');
    return (await resultsIn(file, text)).map((work) => ({ place: work.source, student, work }));
  }
  const lines = text.split(/\r?\n/).map((line, at) => ({ line, place: `${file} line ${at + 1}` }));
  const linked = lines.filter(({ line }) => LINK.test(line));
  if (linked.length === 0 || text.trimStart().startsWith('{'))
    return [sheet(file, student, readPlanText(text))];
  return Promise.all(
    linked.map(async ({ line, place }) => {
      const reading = await readSharedLink(LINK.exec(line)?.[1] ?? '');
      return linked.length === 1
        ? sheet(file, studentOnLine(line, student), reading)
        : sheet(place, studentOnLine(line, { number: 0, name: '' }), reading);
    }),
  );
}

/** The student whom the words before the address speak of, as in '7 Ann: http...'; `otherwise` where there are none. */
function studentOnLine(line: string, otherwise: Student): Student {
  const before = line.slice(0, line.search(/\S+#plan=/)).replace(/^\s*URL=/, '');
  return before.trim() === '' ? otherwise : studentOfFile(`${before.replaceAll(/[./\\]/g, ' ')}.`);
}

function sheet(place: string, student: Student, reading: PlanReading): Sheet {
  if (!reading.ok) return { place, student, problem: sayProblems(reading.problems) };
  const number = reading.plan.student ?? 0;
  return { place, student: number > 0 ? { ...student, number } : student, plan: reading.plan };
}
