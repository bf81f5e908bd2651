/** Answers as they are typed or pressed, read into one way of writing each. */
import { contactsOf, wires, words } from '../../wiring/index.ts';
import type { Conductor, Jack } from '../../wiring/index.ts';
import { UNIT_ROWS, type Form, type Unit } from './task.ts';

/** What a reader said: an answer in its one way of writing, or why it cannot be read. */
type Said = { readonly answer: string } | { readonly problem: string };

/** The answer that no plain lead can. */
export const NO_LEAD = 'none';

const problem = (expected: string, got: string): Said => ({
  problem: `answer: expected ${expected}, got '${got}'`,
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

/** A number in the unit of the task; a unit of the same kind is worked out: '0.0054 A' for 5.4 mA. */
function readNumber(said: string, unit: Unit): Said {
  const found = /^([+-]?(?:\d+[.,]?\d*|[.,]\d+)(?:e[+-]?\d+)?)\s*(.*)$/i.exec(said);
  if (!found) return problem(`a number${unit === 'links' ? '' : ` in ${unit}`}`, said);
  const [, digits = '', typed = ''] = found;
  const number = Number(digits.replace(',', '.'));
  const row: Readonly<Record<string, number>> = UNIT_ROWS.find((one) => unit in one) ?? {};
  const name = unitName(typed);
  if (name === '') return { answer: String(number) };
  const size = row[name] ?? (name === unit.replace(/s$/, '') ? 1 : undefined);
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
