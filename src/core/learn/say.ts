/** What a lesson prints of its links, asked of the core when the site is built. */
import { sayAmperes, sayOhms, sayVolts } from '../verdict/index.ts';
import { valuesOf } from '../wiring/index.ts';
import type { CircuitKind, Part, Role, ValueName } from '../wiring/index.ts';
import type { LinkVerdict } from '../verdict/index.ts';
import { solve, type AuthoredLink } from './links.ts';

type Input = LinkVerdict['inputs'][number];

/** What of a solved link may be printed in a lesson, in words, by the input that decides; `unit` says amperes or volts, as it counts. */
const QUANTITIES = {
  idle: (input, unit) => unit(input.idle),
  active: (input, unit) => unit(input.active),
  worst: (input, unit) => unit(input.worstActive),
  needed: (input, unit) => unit(input.on),
  'high from': (input, unit) => unit(input.off),
  backwards: (input) => sayAmperes(input.reverseAmperes.active),
  'backwards at rest': (input) => sayAmperes(input.reverseAmperes.idle),
  'LED volts': (_, __, verdict) => sayVolts(partOf(verdict, 'led').volts),
  'source resistor': (_, __, verdict) => sayAmperes(partOf(verdict, 'source-resistor').amperes),
  rail: (_, __, verdict) => sayAmperes(verdict.readings.active.supplyAmperes),
} as const satisfies Readonly<
  Record<string, (input: Input, unit: (value: number) => string, verdict: LinkVerdict) => string>
>;
/** One of them. */
export type Quantity = keyof typeof QUANTITIES;

/** One quantity of a solved link in words: '5.38 mA'. */
export function say(authored: AuthoredLink, quantity: Quantity): string {
  const verdict = solve(authored);
  const input = verdict.inputs[verdict.decides];
  if (input === undefined) throw new Error('lesson link: needs an input, got none');
  return QUANTITIES[quantity](input, input.kind === 'current' ? sayAmperes : sayVolts, verdict);
}

function partOf(verdict: LinkVerdict, role: Role): LinkVerdict['readings']['active']['parts'][number] {
  const found = verdict.readings.active.parts.find(({ part }) => part.role === role);
  if (found === undefined) throw new Error(`lesson link: has no part '${role}' to print`);
  return found;
}

/** Values in words, by their unit. */
const UNITS = {
  ohm: sayOhms,
  A: sayAmperes,
  V: (volts: number) => `${volts} V`,
  W: (watts: number) => `${watts} W`,
  s: (seconds: number) => `${seconds * 1e6} µs`,
  '%': (share: number) => `${share * 100} %`,
};

/** A value of a circuit as it stands by default: '220 ohm', '5 V'. @throws when the circuit has no such value. */
export function sayValue(circuit: CircuitKind, name: ValueName, part: Part = '6N138'): string {
  const entry = valuesOf(circuit, part).find((one) => one.name === name);
  if (entry === undefined) throw new Error(`lesson: circuit '${circuit}' has no value '${name}'`);
  return UNITS[entry.unit](entry.value);
}

/** Keeps a number and its unit on one line. */
export function unbroken(words: string): string {
  return words.replaceAll(' ', '\u00a0');
}

/** So many of a thing whose plural ends in s: '1 link', '2 links'. */
export function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
