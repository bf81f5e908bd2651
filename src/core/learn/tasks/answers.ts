/** Answers as they are typed or pressed, read into one way of writing each. */
import { contactsOf, wires, words } from '../../wiring/index.ts';
import type { Conductor, Jack } from '../../wiring/index.ts';
import { UNIT_ROWS, type Form, type Unit } from './task.ts';

/** What a reader said: an answer in its one way of writing, or why it cannot be read. */
type Said = { readonly answer: string } | { readonly problem: string };

/** The answer that no plain lead can. */
export const NO_LEAD = 'none';

const problem = (expected: string, got: string): Said => ({
  problem:
    got === ''
      ? `There is no answer yet. Needed: ${expected}.`
      : `Needed: ${expected}. '${got}' cannot be read.`,
});

/** Read an answer in the form of its task. */
export function readAnswer(form: Form, text: string): Said {
  const said = text.trim();
  switch (form.form) {
    case 'choice':
      return isPlace(said, form.options)
        ? { answer: String(Number(said)) }
        : problem('one of the answers', said);
    case 'several':
      return readSeveral(said, form.options);
    case 'order':
      return readOrder(said, form.items);
    case 'number':
      return readNumber(said, form.unit);
    case 'bytes':
      return readBytes(said);
    case 'rubric':
      return readRubric(said, form.points);
    case 'lead':
      return readLead(said, form);
  }
}

function isPlace(text: string, list: readonly string[]): boolean {
  return /^\d{1,3}$/.test(text) && Number(text) < list.length;
}

function readSeveral(said: string, options: readonly string[]): Said {
  if (said === '-') return { answer: '-' };
  const places = said.split(/\s+/);
  if (!places.every((one) => isPlace(one, options)))
    return problem("the ones that are so, or '-' for none", said);
  return { answer: [...new Set(places.map(Number))].sort((a, b) => a - b).join(' ') };
}

function readOrder(said: string, items: readonly string[]): Said {
  const places = said
    .split(/\s+/)
    .filter((one) => isPlace(one, items))
    .map(Number);
  return new Set(places).size === items.length && places.length === items.length
    ? { answer: places.join(' ') }
    : problem(`all ${items.length} in an order`, said);
}

/** Units that are counted and not measured: they need not be typed. */
const COUNTED: ReadonlySet<Unit> = new Set(['links', 'leads', 'coins', 'bytes', 'readings']);

/** A number in the unit of the task; a unit of the same kind is worked out: '0.0054 A' for 5.4 mA. */
function readNumber(said: string, unit: Unit): Said {
  const found = /^([+-]?(?:\d+[.,]?\d*|[.,]\d+)(?:e[+-]?\d+)?)\s*(.*)$/i.exec(said);
  if (!found) return problem(COUNTED.has(unit) ? 'a number' : `a number in ${unit}`, said);
  const [, digits = '', typed = ''] = found;
  const number = Number(digits.replace(',', '.'));
  const row: Readonly<Record<string, number>> = UNIT_ROWS.find((one) => unit in one) ?? {};
  const name = unitName(typed);
  if (name === '') return { answer: String(number) };
  const size = row[name] ?? (COUNTED.has(unit) && name === unit.slice(0, -1) ? 1 : undefined);
  const own = row[unit] ?? 1;
  return size === undefined
    ? problem(`a number in ${unit}`, said)
    : { answer: String((number * size) / own) };
}

/** A unit as it may be typed, in the one way that it is written here; the two letters for micro are one. */
function unitName(typed: string): string {
  return typed
    .trim()
    .replace(/^(k?)\s*(?:\u03a9|\u2126|ohms?)$/i, (_, kilo: string) => `${kilo.toLowerCase()}ohm`)
    .replace(/^[u\u03bc](?=[sA]$)/, '\u00b5');
}

function readBytes(said: string): Said {
  const signs = said
    .replaceAll(/0x/gi, '')
    .split(/[\s,]+/)
    .filter((one) => one !== '');
  if (signs.length === 0 || !signs.every((one) => /^[0-9a-f]{1,2}$/i.test(one)))
    return problem("bytes in hex such as 'C0 04'", said);
  return { answer: signs.map((one) => one.toUpperCase().padStart(2, '0')).join(' ') };
}

/** Words of a reader's own text at least: two short sentences. */
const LEAST_WORDS = 8;
/** Signs of such a text at most: a result that is handed in holds an answer of 300. */
export const MOST_SIGNS = 280;

/** Between the points that a text holds and the text. */
const POINTS_END = ' | ';

/** A reader's own text and the points that it holds, as an answer. */
export function answerOfText(points: readonly number[], text: string): string {
  return `${points.toSorted((a, b) => a - b).join(' ') || '-'}${POINTS_END}${text}`;
}

/** Whether a text is long enough to be held against a rubric. */
export function isLongEnough(text: string): boolean {
  return text.split(/\s+/).filter((one) => one !== '').length >= LEAST_WORDS;
}

/** The points that a text holds by its answer: '0 2'. */
export function pointsOf(answer: string): string {
  return answer.slice(0, answer.indexOf(POINTS_END));
}

function readRubric(said: string, points: readonly string[]): Said {
  const [ticks = '', ...rest] = said.split(POINTS_END.trim());
  const text = rest.join(POINTS_END.trim()).replaceAll(/\s+/g, ' ').trim().slice(0, MOST_SIGNS);
  const held = readSeveral(ticks.trim(), points);
  return 'problem' in held || !isLongEnough(text)
    ? problem('two sentences of your own, and then a tick for each point that they hold', said)
    : { answer: `${held.answer}${POINTS_END}${text}` };
}

const CONDUCTOR = /^(\w+)-(\w+)$/;

function readLead(said: string, { output, input }: Extract<Form, { form: 'lead' }>): Said {
  if (said === NO_LEAD) return { answer: NO_LEAD };
  const pairs = said.split(/\s+/).filter((one) => one !== '');
  const has = ({ connector }: Jack, name = ''): boolean => contactsOf(connector).some((one) => one === name);
  if (pairs.length === 0)
    return problem(
      `a lead from ${words(output.connector)} to ${words(input.connector)}, or that none can`,
      said,
    );
  for (const pair of pairs) {
    const found = CONDUCTOR.exec(pair);
    if (!found || !has(output, found[1]) || !has(input, found[2]))
      return problem("conductors such as '4-ring 5-tip'", pair);
  }
  return { answer: [...new Set(pairs)].sort().join(' ') };
}

/** The conductors of a lead that was read by `readAnswer`. */
export function conductorsOf(answer: string): readonly Conductor[] {
  return answer === NO_LEAD ? [] : wires(...answer.split(' '));
}

/** Conductors as an answer. */
export function answerOfLead(conductors: readonly Conductor[]): string {
  return conductors
    .map(({ from, to }) => `${from}-${to}`)
    .sort()
    .join(' ');
}
