/** What a lesson prints of its links, asked of the core when the site is built. */
import { sayAmperes, sayOhms, sayVolts } from '../verdict/index.ts';
import { valuesOf } from '../wiring/index.ts';
import type { CircuitKind, Part, Role, ValueName } from '../wiring/index.ts';
import type { LinkVerdict } from '../verdict/index.ts';
import { solve, type AuthoredLink } from './links.ts';

/** What of a solved link may be printed in a lesson. */
export type Quantity =
  | 'idle'
  | 'active'
  | 'worst'
  | 'needed'
  | 'backwards'
  | 'backwards at rest'
  | 'LED volts'
  | 'source resistor'
  | 'rail'
  | 'high from';

/** One quantity of a solved link in words: '5.38 mA'. */
export function say(authored: AuthoredLink, quantity: Quantity): string {
  const verdict = solve(authored);
  const input = verdict.inputs[verdict.decides];
  if (input === undefined) throw new Error('lesson link: needs an input, got none');
  const unit = input.kind === 'current' ? sayAmperes : sayVolts;
  switch (quantity) {
    case 'idle':
      return unit(input.idle);
    case 'active':
      return unit(input.active);
    case 'worst':
      return unit(input.worstActive);
    case 'needed':
      return unit(input.on);
    case 'high from':
      return unit(input.off);
    case 'backwards':
      return sayAmperes(input.reverseAmperes.active);
    case 'backwards at rest':
      return sayAmperes(input.reverseAmperes.idle);
    case 'LED volts':
      return sayVolts(partOf(verdict, 'led').volts);
    case 'source resistor':
      return sayAmperes(partOf(verdict, 'source-resistor').amperes);
    case 'rail':
      return sayAmperes(verdict.readings.active.supplyAmperes);
  }
}

function partOf(verdict: LinkVerdict, role: Role): LinkVerdict['readings']['active']['parts'][number] {
  const found = verdict.readings.active.parts.find(({ part }) => part.role === role);
  if (found === undefined) throw new Error(`lesson link: has no part '${role}' to print`);
  return found;
}

/** A value of a circuit as it stands by default: '220 ohm', '5 V'. @throws when the circuit has no such value. */
export function sayValue(circuit: CircuitKind, name: ValueName, part: Part = '6N138'): string {
  const entry = valuesOf(circuit, part).find((one) => one.name === name);
  if (entry === undefined) throw new Error(`lesson: circuit '${circuit}' has no value '${name}'`);
  switch (entry.unit) {
    case 'ohm':
      return sayOhms(entry.value);
    case 'A':
      return sayAmperes(entry.value);
    case 'V':
      return `${entry.value} V`;
    case 'W':
      return `${entry.value} W`;
    case 's':
      return `${entry.value * 1e6} µs`;
    case '%':
      return `${entry.value * 100} %`;
  }
}

/** Keeps a number and its unit on one line. */
export function unbroken(words: string): string {
  return words.replaceAll(' ', '\u00a0');
}

/** So many of a thing whose plural ends in s: '1 link', '2 links'. */
export function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
