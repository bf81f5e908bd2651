/** Conductors written as a person would write them. */
import { CONTACTS, DIN_TO_TYPE_A, STRAIGHT_DIN, contactsOf, words } from '../wiring/index.ts';
import type { Conductor, Contact, End } from '../wiring/index.ts';

/** Conductors in words, as they are read back: '4 to ring, 5 to tip'. */
export function sayConductors(conductors: readonly Conductor[]): string {
  return conductors.map(({ from, to }) => `${from} to ${to}`).join(', ');
}

/**
 * Conductors as a person writes them, a pair for each: '4-ring 5-tip 2-sleeve', or '4 to ring, 5 to tip'.
 * Returns what is wrong with the first pair that cannot be, with the contacts there are.
 */
export function readConductors(text: string, from: End, to: End): readonly Conductor[] | string {
  const pairs = text
    .toLowerCase()
    .replace(/\b(pin|and)\b/g, ' ')
    .replace(/\s*(-|–|\bto\b)\s*/g, '-')
    .split(/[\s,;]+/)
    .filter((pair) => pair !== '');
  if (pairs.length === 0) return `conductors: expected at least one pair such as 'tip-tip', got nothing`;
  const read: Conductor[] = [];
  for (const pair of pairs) {
    const [a = '', b = '', ...more] = pair.split('-');
    if (b === '' || more.length > 0) return `conductors: expected pairs such as 'tip-tip', got '${pair}'`;
    for (const [contact, { connector }] of [
      [a, from],
      [b, to],
    ] as const) {
      if (!isContact(contact) || !contactsOf(connector).includes(contact))
        return `conductors: expected a contact of ${words(connector)} (${contactsOf(connector).join(', ')}), got '${contact}' in '${pair}'`;
    }
    const conductor = { from: a as Contact, to: b as Contact };
    if (read.some((one) => one.from === conductor.from && one.to === conductor.to))
      return `conductors: expected each pair once, got '${pair}' twice`;
    read.push(conductor);
  }
  return read;
}

function isContact(text: string): text is Contact {
  return (CONTACTS as readonly string[]).includes(text);
}

/** The same contact to the same contact where both ends have it, the shell left out; DIN to phone as Type A. */
export function usualConductors(
  { connector: from }: Pick<End, 'connector'>,
  { connector: to }: Pick<End, 'connector'>,
): readonly Conductor[] {
  if (from.startsWith('din') && to.startsWith('din')) return STRAIGHT_DIN;
  const [here, there] = [contactsOf(from), contactsOf(to)];
  const same = here.filter((one) => one !== 'shell' && there.includes(one));
  if (same.length > 0) return same.map((one) => ({ from: one, to: one }));
  const map = from.startsWith('din')
    ? DIN_TO_TYPE_A
    : DIN_TO_TYPE_A.map((one) => ({ from: one.to, to: one.from }));
  return map.filter((one) => here.includes(one.from) && there.includes(one.to));
}
