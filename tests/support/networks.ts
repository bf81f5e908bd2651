/**
 * Random networks to set our solver against the SPICE engine.
 *
 * Made so that both have one answer to find. A tree of resistors and sources reaches every node, so that no node hangs on
 * diodes alone (the engine rounds there), no source of volts closes a loop of its kind, and every current has a way out. Between
 * two sources of volts there are always at least 10 ohm, as in every circuit that is not on fire: with tens of amperes the engine
 * leaves errors of a microampere. A part of the network may float: our solver must see to that itself.
 */
import type { Circuit, DiodeModel, Element } from '../../src/core/circuit/elements.ts';
import type { Random } from './random.ts';

/**
 * Diodes of real parts: LED fits of the 6N138, H11L1, PC900V and 6N137 input, two widely used cards of the 1N4148, a red LED.
 * None has RS = 0: the engine loses accuracy there.
 */
const REAL_DIODES: readonly DiodeModel[] = [
  { saturationAmperes: 7.91e-20, emission: 1.44, seriesOhms: 1 },
  { saturationAmperes: 1.11e-12, emission: 1.99, seriesOhms: 2 },
  { saturationAmperes: 6.61e-16, emission: 1.44, seriesOhms: 1 },
  { saturationAmperes: 4.23e-20, emission: 1.44, seriesOhms: 1 },
  { saturationAmperes: 2.52e-9, emission: 1.752, seriesOhms: 0.568 },
  { saturationAmperes: 2.682e-9, emission: 1.836, seriesOhms: 0.5664 },
  { saturationAmperes: 1e-18, emission: 1.93, seriesOhms: 3 },
];

/** Ohms of a good contact: the least between nodes that no source holds. */
const CONTACT_OHMS = 0.03;
/** Ohms of the smallest resistor that an output is built with: the least beside a node that a source holds. */
const OUTPUT_OHMS = 10;
/** Ohms of an instrument input: the most. */
const INPUT_OHMS = 1e6;
/** Volts of the sources: to twice the supply of a pedal, either way round. */
const MOST_VOLTS = 18;
/** A current source raises at most 10 V over the largest resistor, amperes. */
const LEAST_FORCED_AMPERES = 1e-8;
const MOST_FORCED_AMPERES = 1e-5;

/** One side of a network that holds together: nodes that anything may join, and nodes that a source holds. */
interface Side {
  readonly open: string[];
  readonly held: string[];
  /** Least ohms between open nodes. */
  readonly least: number;
}

/** A network, and the node that stands for the voltage of its floating part, if it has one. */
export interface Network {
  readonly circuit: Circuit;
  readonly floating: string | undefined;
}

/**
 * Draw a network of `count` nodes, ground not counted. The same numbers draw the same network.
 * Throws when there is less than one node.
 */
export function randomNetwork(random: Random, count: number): Network {
  if (!(count >= 1)) throw new Error(`random network: needs at least 1 node, got ${count}`);
  const elements: Element[] = [];
  const add = (part: (name: string) => Element): void => void elements.push(part(`part${elements.length}`));
  const resistor = (a: string, b: string, least: number): void =>
    add((name) => ({ kind: 'resistor', name, a, b, ohms: random.decades(least, INPUT_OHMS) }));
  const main: Side = { open: ['ground'], held: [], least: CONTACT_OHMS };
  // A contact of 0.03 ohm and the tie of a floating part in one equation cost the engine too many digits.
  const apart: Side = { open: [], held: [], least: OUTPUT_OHMS };
  const floatsFrom = count > 2 && random.chance(0.2) ? random.integer(2, count - 1) : count + 1;

  for (let index = 1; index <= count; index += 1) {
    const here = `node${index}`;
    const { open, held, least } = index >= floatsFrom ? apart : main;
    const draw = random.next();
    if (open.length === 0) {
      open.push(here);
    } else if (draw < 0.2) {
      const minus = random.chance(0.8) ? (open[0] ?? here) : random.pick(open);
      add((name) => ({
        kind: 'voltage',
        name,
        plus: here,
        minus,
        volts: (random.next() * 2 - 1) * MOST_VOLTS,
      }));
      held.push(here);
    } else if (draw < 0.3 && held.length > 0) {
      // A clamped input: a diode to a supply, and nothing else but resistors large enough for it.
      const supply = random.pick(held);
      resistor(here, random.pick(open), OUTPUT_OHMS);
      add((name) => ({ kind: 'diode', name, anode: here, cathode: supply, ...random.pick(REAL_DIODES) }));
    } else if (draw < 0.6 && held.length > 0) {
      resistor(here, random.pick(held), OUTPUT_OHMS);
      open.push(here);
    } else {
      resistor(here, random.pick(open), least);
      open.push(here);
    }
  }

  const sides = [main, apart].filter(({ open }) => open.length > 1);
  const extra = sides.length === 0 ? 0 : random.integer(count, 2 * count);
  for (let index = 0; index < extra; index += 1) {
    const { open, held, least } = random.pick(sides);
    const a = random.pick(open);
    const b = random.pick(open.filter((other) => other !== a));
    if (held.length > 0 && random.chance(0.2)) resistor(a, random.pick(held), OUTPUT_OHMS);
    else add((name) => openPart(random, name, a, b, least));
  }
  return { circuit: { ground: 'ground', elements }, floating: apart.open[0] };
}

function openPart(random: Random, name: string, a: string, b: string, least: number): Element {
  const draw = random.next();
  if (draw < 0.6) return { kind: 'diode', name, anode: a, cathode: b, ...random.pick(REAL_DIODES) };
  if (draw < 0.8) return { kind: 'resistor', name, a, b, ohms: random.decades(least, INPUT_OHMS) };
  if (draw < 0.9) {
    return {
      kind: 'current',
      name,
      from: a,
      to: b,
      amperes: random.decades(LEAST_FORCED_AMPERES, MOST_FORCED_AMPERES),
    };
  }
  if (draw < 0.95)
    return { kind: 'switch', name, a, b, closed: least === CONTACT_OHMS && random.chance(0.5) };
  return { kind: 'capacitor', name, a, b, farads: random.decades(1e-11, 1e-6) };
}
