/** How a series of leads does between two types of jack, whatever usual circuit stands behind each: solved for every one of them. */
import { checkLink } from '../verdict/index.ts';
import type { MapMemory } from '../verdict/index.ts';
import { contactsJoined, lineAt, styleEntry } from '../wiring/index.ts';
import type { Contact, Jack, Lead, Style } from '../wiring/index.ts';
import { circuitsOfType, jackOfType, jacksOfType, otherHalf } from './told.ts';
import type { ToldJack } from './told.ts';

/**
 * Best first. 'works': with every usual circuit, at every corner. 'marginal': right at typical values with every one. 'depends': with some
 * and not with others. 'nothing': with none. 'harm': with some circuit a part is driven over its rating.
 */
const GRADES = ['works', 'marginal', 'depends', 'nothing', 'harm'] as const;
/** One of them. */
export type TalkGrade = (typeof GRADES)[number];

/** What was solved, by what it hangs on; a caller that asks often keeps one. */
export interface TalkMemory {
  readonly grades: Map<string, TalkGrade>;
  readonly maps: MapMemory;
}

/** A memory with nothing in it. */
export function talkMemory(): TalkMemory {
  return { grades: new Map(), maps: new Map() };
}

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
export function gradeOf(pair: TypedPair, leads: readonly Lead[], memory = talkMemory()): TalkGrade {
  if (meetsOtherHalf(pair, leads)) return worstGrade(['depends', solvedGrade(pair, leads, memory)]);
  return solvedGrade(pair, leads, memory);
}

/**
 * Whether leads join the other half of an in-and-out jack to a line of the far jack. What then flows depends on what that half does meanwhile,
 * which nobody told, so no such series is ever called good.
 */
function meetsOtherHalf(pair: TypedPair, leads: readonly Lead[]): boolean {
  const { output, input, outputType, inputType } = pair;
  const [out, into] = [jackOfType(output, outputType), jackOfType(input, inputType)];
  const halves = [
    `out ${otherHalf(output, outputType) ?? 'none'}`,
    `in ${otherHalf(input, inputType) ?? 'none'}`,
  ];
  return contactsJoined(out.connector, leads, into.connector)
    .map((group) => group.split(', '))
    .some(
      (group) =>
        group.some((one) => halves.includes(one)) &&
        (group.every((one) => halves.includes(one))
          ? group.length > 1
          : linesIn(group.join(', '), out, into).length > 0),
    );
}

function solvedGrade(pair: TypedPair, leads: readonly Lead[], memory: TalkMemory): TalkGrade {
  const key = gradeKey(pair, leads);
  const known = memory.grades.get(key);
  if (known !== undefined) return known;
  const grade = solve(pair, leads);
  memory.grades.set(key, grade);
  return grade;
}

/**
 * All that a grade hangs on, wire resistance left aside: the circuits behind the two types, and which of their lines the leads join.
 * Type A into Type A through a straight lead is the same circuit as DIN into DIN, whatever the size of the jacks.
 */
function gradeKey({ output, input, outputType, inputType }: TypedPair, leads: readonly Lead[]): string {
  const jacks = [jackOfType(output, outputType), jackOfType(input, inputType)] as const;
  const [out, into] = jacks;
  const joined = contactsJoined(out.connector, leads, into.connector)
    .map((group) => linesIn(group, out, into))
    .filter((lines) => lines.length > 1)
    .map((lines) => lines.join('+'))
    .sort();
  const behind = ([output, input] as const).map((told, at) => {
    const { style } = jacks[at] as Jack;
    return [circuitsOfType(told, style), Object.keys(styleEntry(style).lines).sort(), told.part];
  });
  return JSON.stringify([behind, joined]);
}

/** The lines in a group of joined contacts, 'out source' or 'in sink'; a contact with nothing behind it is left out, a shell is not. */
function linesIn(group: string, out: Jack, into: Jack): readonly string[] {
  return group
    .split(', ')
    .flatMap((one) => {
      const [side, contact] = one.split(' ') as ['out' | 'in', Contact];
      const line = lineAt((side === 'out' ? out : into).style, contact);
      return line !== undefined ? [`${side} ${line}`] : contact === 'shell' ? [one] : [];
    })
    .sort();
}

function solve(pair: TypedPair, leads: readonly Lead[]): TalkGrade {
  const verdicts = jacksOfType(pair.output, pair.outputType).flatMap((output) =>
    jacksOfType(pair.input, pair.inputType).map((input) =>
      checkLink({ output, branches: [{ input, leads }] }, 'outcome'),
    ),
  );
  if (verdicts.some(({ danger }) => danger !== undefined)) return 'harm';
  const flows = verdicts.filter(({ outcome }) => outcome === 'flows').length;
  const right = flows + verdicts.filter(({ outcome }) => outcome === 'weak').length;
  if (right === 0) return 'nothing';
  if (right < verdicts.length) return 'depends';
  return flows === verdicts.length ? 'works' : 'marginal';
}
