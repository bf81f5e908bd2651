/**
 * A lead as a short code to type: connectors, conductors, length and the styles of its jacks, as one number spelt in 32
 * letters with two check letters. Nothing is stored anywhere: the code is the lead.
 */
import {
  CONNECTORS,
  FORMS,
  GAUGES,
  LENGTH_METRES,
  STYLES,
  contactsOf,
  makeJack,
  makeLead,
  stylesFor,
} from '../wiring/index.ts';
import type { Conductor, End, Jack, Lead, Link } from '../wiring/index.ts';
import { planOfLink, sayProblem } from '../plan/index.ts';
import type { Plan, Problem } from '../plan/index.ts';
import { CODE_LETTERS, MOST_LETTERS, checkLetters, withChecks } from './check-letters.ts';
import { jacksFor } from './one-lead.ts';

/** Version of the code. The closed sets it numbers may only grow at their ends, as for the shared link. */
const VERSION = 0;

/** How many values each field has room for: more than there are today, where a set may grow. */
const ROOM = {
  version: 4,
  connector: 16,
  form: 2,
  style: 16,
  gauge: 8,
  centimetres: 16_384,
  conductors: 16,
} as const;

/** Letters in a group, as printed. */
const GROUP = 4;

/** A lead read from a code, as a plan of that lead alone, or why there is none. */
type CodeReading =
  | { readonly ok: true; readonly plan: Plan }
  | { readonly ok: false; readonly problem: string };

/** The code of a lead: 'ABCD-EFGH-…', or undefined when it does not fit into one (a lead in series, or too many conductors). */
export function leadCode(lead: Lead, link: Link | undefined): string | undefined {
  const jacks = jacksFor(lead, link);
  if (!jacks || lead.conductors.length >= ROOM.conductors) return undefined;
  const [output, input] = jacks;
  const fields: (readonly [value: number, room: number])[] = [
    [VERSION, ROOM.version],
    ...[lead.from, lead.to].flatMap(({ connector, form }): (readonly [number, number])[] => [
      [CONNECTORS.indexOf(connector), ROOM.connector],
      [FORMS.indexOf(form), ROOM.form],
    ]),
    [STYLES.indexOf(output.style), ROOM.style],
    [STYLES.indexOf(input.style), ROOM.style],
    [GAUGES.findIndex((one) => one === lead.gauge), ROOM.gauge],
    [Math.round(lead.lengthMetres * 100), ROOM.centimetres],
    [lead.conductors.length, ROOM.conductors],
    ...lead.conductors.map((one): readonly [number, number] => [
      placeOf(lead, one),
      roomOf(lead.from, lead.to),
    ]),
  ];
  if (fields.some(([value, room]) => !(value >= 0 && value < room))) return undefined;
  let whole = 0n;
  for (const [value, room] of fields.toReversed()) whole = whole * BigInt(room) + BigInt(value);
  const letters: number[] = [];
  for (let rest = whole; rest > 0n; rest /= 32n) letters.unshift(Number(rest % 32n));
  if (letters.length + 2 > MOST_LETTERS) return undefined;
  return spell(withChecks(letters));
}

/** Read what a person typed: small letters, gaps and dashes do not matter, and O, I and L count as 0 and 1. */
export function readLeadCode(typed: string): CodeReading {
  const plain = typed
    .toUpperCase()
    .replace(/[\s\u2010-\u2015.-]/g, '')
    .replace(/O/g, '0')
    .replace(/[IL]/g, '1');
  const strange = [...plain].find((letter) => !CODE_LETTERS.includes(letter));
  if (plain === '') return bad('the code', 'the letters under the drawing of a sheet', 'nothing');
  if (strange !== undefined) return bad('the code', 'digits and letters', `'${strange}'`);
  const code = [...plain].map((letter) => CODE_LETTERS.indexOf(letter));
  const checked = checkLetters(code);
  switch (checked.kind) {
    case 'right':
      return unpack(code.slice(0, -2));
    case 'slip':
      return bad(
        placeWords(checked.at),
        `'${CODE_LETTERS[checked.letter]}' if nothing else is wrong`,
        `'${plain[checked.at]}'`,
      );
    case 'swap':
      return bad(
        placeWords(checked.at),
        `'${plain
          .slice(checked.at, checked.at + 2)
          .split('')
          .reverse()
          .join('')}': it and the next seem to have changed places`,
        `'${plain.slice(checked.at, checked.at + 2)}'`,
      );
    case 'wrong':
      return bad(
        'the code',
        'one whose check letters agree',
        `one with a letter missing, or with more than one wrong`,
      );
  }
}

function unpack(letters: readonly number[]): CodeReading {
  let rest = letters.reduce((sum, letter) => sum * 32n + BigInt(letter), 0n);
  const take = (room: number): number => {
    const value = Number(rest % BigInt(room));
    rest /= BigInt(room);
    return value;
  };
  const version = take(ROOM.version);
  if (version !== VERSION)
    return bad('the code', `version ${VERSION}`, `version ${version}, made by a later workbook`);
  const ends = [0, 1].map(() => ({
    connector: CONNECTORS[take(ROOM.connector)],
    form: FORMS[take(ROOM.form)],
  }));
  const styles = [0, 1].map(() => STYLES[take(ROOM.style)]);
  const gauge = GAUGES[take(ROOM.gauge)];
  const lengthMetres = take(ROOM.centimetres) / 100;
  const [from, to] = ends;
  const spoilt = bad('the code', 'one that stands for a lead', 'one that does not');
  if (!isEnd(from) || !isEnd(to) || gauge === undefined) return spoilt;
  if (!(lengthMetres >= LENGTH_METRES[0] && lengthMetres <= LENGTH_METRES[1])) return spoilt;
  const conductors: Conductor[] = Array.from({ length: take(ROOM.conductors) }, () => {
    const place = take(roomOf(from, to));
    const there = contactsOf(to.connector);
    return {
      from: contactsOf(from.connector)[Math.floor(place / there.length)] as Conductor['from'],
      to: there[place % there.length] as Conductor['to'],
    };
  });
  const output = jackOf('out', from, styles[0]);
  const input = jackOf('in', to, styles[1]);
  if (!output || !input || rest !== 0n) return spoilt;
  const lead = makeLead(from.connector, to.connector, conductors, { from, to, lengthMetres, gauge });
  return { ok: true, plan: planOfLink(output, input, [lead]) };
}

function isEnd(end: { readonly [key in keyof End]: End[key] | undefined } | undefined): end is End {
  return end?.connector !== undefined && end.form !== undefined;
}

function jackOf(
  direction: Jack['direction'],
  { connector }: End,
  style: Jack['style'] | undefined,
): Jack | undefined {
  if (style === undefined || !stylesFor(direction, connector).includes(style)) return undefined;
  return makeJack(direction, connector, style);
}

function roomOf(from: End, to: End): number {
  return contactsOf(from.connector).length * contactsOf(to.connector).length;
}

function placeOf(lead: Lead, { from, to }: Conductor): number {
  const there = contactsOf(lead.to.connector);
  const [first, second] = [contactsOf(lead.from.connector).indexOf(from), there.indexOf(to)];
  return first < 0 || second < 0 ? -1 : first * there.length + second;
}

function spell(code: readonly number[]): string {
  const plain = code.map((letter) => CODE_LETTERS[letter]).join('');
  return (plain.match(new RegExp(`.{1,${GROUP}}`, 'g')) ?? []).join('-');
}

/** 'letter 2 of group 3'. */
function placeWords(at: number): string {
  return `the code, letter ${(at % GROUP) + 1} of group ${Math.floor(at / GROUP) + 1}`;
}

function bad(place: string, expected: string, got: string): CodeReading {
  return { ok: false, problem: sayProblem({ place, expected, got } satisfies Problem) };
}
