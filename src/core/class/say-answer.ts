/** Answers and right answers in words, for keys and tables. */
import { gradeAnswer } from '../learn/index.ts';
import type { Task } from '../learn/index.ts';
import { solveMaps, works } from '../verdict/index.ts';
import { wires, wiringWords } from '../wiring/index.ts';
import type { Jack } from '../wiring/index.ts';

const NO_LEAD = 'none';

/** An answer that can be read, in words; any other as it was written. */
export function sayAnswer(task: Pick<Task, 'form' | 'right' | 'slips' | 'steps'>, answer: string): string {
  if (!gradeAnswer(task, answer).readable) return answer;
  const { form } = task;
  const chosen = (list: readonly string[]): readonly string[] =>
    answer
      .trim()
      .split(/\s+/)
      .map((at) => list[Number(at)] ?? at);
  switch (form.form) {
    case 'choice':
      return chosen(form.options).join('');
    case 'several':
      return answer.trim() === '-' ? 'none of them' : chosen(form.options).join('; ');
    case 'order':
      return chosen(form.items)
        .map((one, at) => `${at + 1}. ${one}`)
        .join(' ');
    case 'number':
      return /^[\d.,+-]+$/.test(answer.trim()) ? `${answer.trim()} ${form.unit}` : answer.trim();
    case 'bytes':
      return answer.trim().toUpperCase();
    case 'rubric': {
      const [held = '', ...text] = answer.split('|');
      const points =
        held.trim() === '-'
          ? 'none of the points'
          : held
              .trim()
              .split(/\s+/)
              .map((at) => form.points[Number(at)] ?? at)
              .join('; ');
      return `${text.join('|').trim()} (marked by the writer as holding: ${points})`;
    }
    case 'lead':
      return answer.trim() === NO_LEAD
        ? 'no plain lead can'
        : wiringWords(wires(...answer.trim().split(/\s+/)));
  }
}

/** The leads that are right between two jacks: those that carry only lines, in words, and how many more there are with wires on spare contacts. */
interface RightLeads {
  readonly leads: readonly string[];
  readonly withSpares: number;
}

const found = new Map<string, RightLeads>();

/** Every possible wiring between two jacks is solved, once for each pair of jacks. */
function rightLeads(output: Jack, input: Jack): RightLeads {
  const key = JSON.stringify([output, input]);
  const known = found.get(key);
  if (known) return known;
  const working = solveMaps(output, input).candidates.filter(works);
  const plain = working
    .filter(({ spares }) => spares === 0)
    .toSorted((one, other) => other.conductors.length - one.conductors.length);
  const made = {
    leads: plain.map(({ conductors }) => wiringWords(conductors)),
    withSpares: working.length - plain.length,
  };
  found.set(key, made);
  return made;
}

/**
 * Every right answer in words, the one that is worked out first: a number with how far off it may be, a lead with all others that
 * work.
 */
export function sayRight(task: Task): readonly string[] {
  const { form, right } = task;
  const first = sayAnswer(task, right);
  if (form.form === 'number' && form.share > 0)
    return [`${first} (up to ${Number((form.share * 100).toPrecision(2))} % off)`];
  if (form.form !== 'lead' || right === NO_LEAD) return [first];
  const { leads, withSpares } = rightLeads(form.output, form.input);
  const others = leads.filter((one) => !sameLead(one, first));
  const more =
    withSpares > 0
      ? [`any of these with more wires on contacts that carry nothing (${withSpares} ways)`]
      : [];
  return [first, ...others, ...more];
}

const sameLead = (one: string, other: string): boolean =>
  one.split(', ').sort().join() === other.split(', ').sort().join();
