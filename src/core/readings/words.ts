/** Jacks under test and readings in words: the same on the page, for a screen reader and on paper. */
import {
  OTHER_JACKS,
  STYLES,
  circuitEntry,
  contactWords,
  otherJackEntry,
  styleEntry,
} from '../wiring/index.ts';
import { sayPower } from './power.ts';
import { sayFunction } from './reading.ts';
import type { JackReading, JackUnderTest } from './subjects.ts';

/** A jack in words: 'Type A out, 5 V output', 'Type A in, isolated input', 'headphone output'. */
export function sayUnderTest(under: JackUnderTest): string {
  if (under.kind === 'other') return otherJackEntry(under.other).label;
  const { direction, style, circuit } = under.jack;
  return `${styleEntry(style).label} ${direction}, ${circuitEntry(circuit).label}`;
}

/** A name of the finder in words: 'Type A out', 'headphone output'. */
export function sayName(name: string): string {
  if (name === 'in tip-signal') return `${styleEntry('tip-signal').label} in, or a footswitch input`;
  const other = OTHER_JACKS.find((kind) => kind === name);
  if (other) return otherJackEntry(other).label;
  const [direction = '', ...style] = name.split(' ');
  const known = STYLES.find((one) => one === style.join(' '));
  return known ? `${styleEntry(known).label} ${direction}` : name;
}

/** How a reading is taken: 'diode test, power off, red probe on tip, black probe on sleeve'. */
export function sayJackReading({ meter, power, red, black }: JackReading): string {
  const probes = `red probe on ${contactWords(red)}, black probe on ${contactWords(black)}`;
  return `${sayFunction(meter)}, ${sayPower(power)}, ${probes}`;
}
