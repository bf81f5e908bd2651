/** How a series of leads does between two types of jack, whatever usual circuit stands behind each: solved for every one of them. */
import { checkLink } from '../verdict/index.ts';
import { contactsJoined } from '../wiring/index.ts';
import type { Lead, Style } from '../wiring/index.ts';
import { jacksOfType } from './told.ts';
import type { ToldJack } from './told.ts';

/**
 * Best first. 'works': with every usual circuit, at every corner. 'marginal': right at typical values with every one. 'depends': with some
 * and not with others. 'nothing': with none. 'harm': with some circuit a part is driven over its rating.
 */
const GRADES = ['works', 'marginal', 'depends', 'nothing', 'harm'] as const;
/** One of them. */
export type TalkGrade = (typeof GRADES)[number];

/** Grades by what they hang on; a caller that asks often keeps one. */
export type GradeMemory = Map<string, TalkGrade>;

/** Two jacks as told, each taken as one of its open types. */
export interface TypedPair {
  readonly output: ToldJack;
  readonly input: ToldJack;
  readonly outputType: Style;
  readonly inputType: Style;
}

/** The worse of grades. An empty list is 'nothing'. */
export function worstGrade(grades: readonly TalkGrade[]): TalkGrade {
  const [first, ...more] = grades.map((grade) => GRADES.indexOf(grade)).sort((one, other) => other - one);
  return first === undefined ? 'nothing' : (GRADES[Math.max(first, ...more)] as TalkGrade);
}

/** Solve a series of leads between two types, for every usual circuit behind each. */
export function gradeOf(pair: TypedPair, leads: readonly Lead[], memory: GradeMemory = new Map()): TalkGrade {
  const jacks = [pair.output, pair.input].map(({ socket, circuit, part }) => [socket, circuit, part]);
  const joined = contactsJoined(pair.output.socket, leads, pair.input.socket);
  const key = JSON.stringify([jacks, pair.outputType, pair.inputType, joined]);
  const known = memory.get(key);
  if (known !== undefined) return known;
  const grade = solve(pair, leads);
  memory.set(key, grade);
  return grade;
}

function solve(pair: TypedPair, leads: readonly Lead[]): TalkGrade {
  const verdicts = jacksOfType(pair.output, pair.outputType).flatMap((output) =>
    jacksOfType(pair.input, pair.inputType).map((input) =>
      checkLink({ output, branches: [{ input, leads }] }, 'notes'),
    ),
  );
  if (verdicts.some(({ notes }) => notes.some(({ kind }) => kind === 'over-rating'))) return 'harm';
  const flows = verdicts.filter(({ outcome }) => outcome === 'flows').length;
  const right = flows + verdicts.filter(({ outcome }) => outcome === 'weak').length;
  if (right === 0) return 'nothing';
  if (right < verdicts.length) return 'depends';
  return flows === verdicts.length ? 'works' : 'marginal';
}
