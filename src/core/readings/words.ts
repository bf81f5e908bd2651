/** Jacks under test and readings in words: the same on the page, for a screen reader and on paper. */
import { circuitEntry, hasLed } from '../wiring/index.ts';
import { contactWords } from '../wiring/index.ts';
import type { Contact } from '../wiring/index.ts';
import { OTHER_JACKS, otherJackEntry } from '../wiring/index.ts';
import { STYLES, styleEntry } from '../wiring/index.ts';
import { sayPower } from './power.ts';
import { sayFunction } from './reading.ts';
import type { JackReading, JackUnderTest } from './subjects.ts';

/** A jack in words: 'Type A out, 5 V output', 'Type A in, isolated input with 6N138', 'headphone output'. */
export function sayUnderTest(under: JackUnderTest): string {
  if (under.kind === 'other') return otherJackEntry(under.other).label;
  const { direction, style, circuit, part } = under.jack;
  const with6 = hasLed(circuit) ? ` with ${part}` : '';
  return `${styleEntry(style).label} ${direction}, ${circuitEntry(circuit).label}${with6}`;
}

/** A name of the finder in words: 'Type A out', 'headphone output'. */
export function sayName(name: string): string {
  const other = OTHER_JACKS.find((kind) => kind === name);
  if (other) return otherJackEntry(other).label;
  const [direction = '', ...style] = name.split(' ');
  const known = STYLES.find((one) => one === style.join(' '));
  return known ? `${styleEntry(known).label} ${direction}` : name;
}

/** Where the probes are: 'red probe on tip, black probe on sleeve'. */
function sayProbes(red: Contact, black: Contact): string {
  return `red probe on ${contactWords(red)}, black probe on ${contactWords(black)}`;
}

/** How a reading is taken: 'diode test, power off, red probe on tip, black probe on sleeve'. */
export function sayJackReading({ meter, power, red, black }: JackReading): string {
  return `${sayFunction(meter)}, ${sayPower(power)}, ${sayProbes(red, black)}`;
}
