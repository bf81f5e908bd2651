/**
 * Jacks of simulated devices, for judging the jack finder by what its own model did not draw: circuits put together here part by
 * part, from values that span what builders use. All ranges are invented (common practice, no source); none is the finder's.
 */
import type { DiodeModel, Element } from '../../src/core/circuit/elements.ts';
import { OTHER_JACKS, otherJackSuits } from '../../src/core/wiring/other-jacks.ts';
import { DIRECTIONS, stylesFor } from '../../src/core/wiring/link.ts';
import type { Connector, Contact } from '../../src/core/wiring/connectors.ts';
import { styleEntry } from '../../src/core/wiring/styles.ts';
import type { Style } from '../../src/core/wiring/styles.ts';
import type { Random } from './random.ts';

/** How the device stands: switched off, on and at rest, or on while a 0 is sent. */
export type Standing = 'off' | 'idle' | 'active';

/** A jack: what a reader would call it, and its parts. Contacts are nodes by their names, the device's ground is 'ground'. */
export interface WorldJack {
  readonly name: string;
  readonly parts: (standing: Standing) => readonly Element[];
}

/** No such kind is known to the finder: a name for it would be wrong. */
export const FOREIGN = 'foreign';

/** A share of jacks that are of no kind known to the finder. */
const FOREIGN_SHARE = 0.02;

/** A builder at work: parts by value, each with a name of its own. */
class Builder {
  readonly #made: Element[] = [];
  readonly standing: Standing;
  constructor(standing: Standing) {
    this.standing = standing;
  }
  get parts(): readonly Element[] {
    return this.#made;
  }
  #name(): string {
    return `part ${this.#made.length}`;
  }
  ohms(a: string, b: string, ohms: number): void {
    this.#made.push({ kind: 'resistor', name: this.#name(), a, b, ohms });
  }
  diode(anode: string, cathode: string, model: DiodeModel): void {
    this.#made.push({ kind: 'diode', name: this.#name(), anode, cathode, ...model });
  }
  volts(plus: string, volts: number): void {
    this.#made.push({ kind: 'voltage', name: this.#name(), plus, minus: 'ground', volts });
  }
  /** A supply: a voltage while the device is on, whatever bleeds its rail while it is off. */
  rail(node: string, volts: number, bleed: number): void {
    if (this.standing === 'off') this.ohms(node, 'ground', bleed);
    else this.volts(node, volts);
  }
}

/** How often each kind is met, as numbers to one another: invented, a guess at what lies on a table. */
const STYLE_SHARES: Readonly<Record<Style, number>> = {
  din: 1,
  'type-a': 5,
  'type-b': 3,
  'both-ways': 0.6,
  'two-contact': 0.3,
  'two-contact-turned': 0.3,
  'tip-signal': 0.7,
  'ring-signal': 0.6,
};
const OTHER_SHARES: Readonly<Record<(typeof OTHER_JACKS)[number], number>> = {
  footswitch: 2,
  'footswitch-double': 2,
  'expression-ring': 2,
  'expression-tip': 2,
  headphone: 2,
  line: 1,
  'control-voltage': 1,
};

/** Share of phone jacks that are no control jacks. */
const OTHER_SHARE = 0.25;

/** Draw a jack with this connector. */
export function drawJack(random: Random, connector: Connector): WorldJack {
  if (random.chance(FOREIGN_SHARE)) return { name: FOREIGN, parts: foreign(random, connector) };
  const others = OTHER_JACKS.filter((other) => otherJackSuits(other, connector));
  if (others.length > 0 && random.chance(OTHER_SHARE)) {
    const other = weighed(random, others, (one) => OTHER_SHARES[one]);
    return { name: other, parts: otherJack(random, other, connector) };
  }
  const names = DIRECTIONS.flatMap((direction) =>
    stylesFor(direction, connector).map((style) => ({ direction, style })),
  );
  const { direction, style } = weighed(random, names, (one) => STYLE_SHARES[one.style]);
  const level = styleEntry(style).family === 'ground-referenced';
  const draw = direction === 'out' ? (level ? levelOutput : loopOutput) : level ? levelInput : loopInput;
  return { name: `${direction} ${style}`, parts: draw(random, style) };
}

function weighed<Item>(random: Random, items: readonly Item[], shareOf: (item: Item) => number): Item {
  let left = random.next() * items.reduce((sum, item) => sum + shareOf(item), 0);
  return items.find((item) => (left -= shareOf(item)) < 0) ?? random.pick(items);
}

type Draw = (standing: Standing) => readonly Element[];

const bleedOf = (random: Random): number => random.decades(300, 1e6);
const supplyOf = (random: Random): number => random.pick([3.3, 5]) * (0.96 + 0.08 * random.next());
const resistor = (random: Random, usual: number, least: number, most: number): number =>
  random.chance(0.85) ? usual * (0.95 + 0.1 * random.next()) : random.decades(least, most);

/** A silicon diode or, this often, a Schottky one: 0.6 V and 0.25 V at 1 mA, give or take. */
function diodeOf(random: Random, schottky = 0.04): DiodeModel {
  const emission = 1 + 0.9 * random.next();
  const volts = random.chance(schottky) ? 0.2 + 0.1 * random.next() : 0.52 + 0.16 * random.next();
  return { saturationAmperes: 1e-3 * Math.exp(-volts / (emission * 0.02586)), emission, seriesOhms: 0.5 };
}

/** An infrared LED: 1.0 to 1.35 V at 1 mA. */
function ledOf(random: Random): DiodeModel {
  const emission = 1.4 + 0.6 * random.next();
  const volts = 1 + 0.35 * random.next();
  return { saturationAmperes: 1e-3 * Math.exp(-volts / (emission * 0.02586)), emission, seriesOhms: 1.5 };
}

/** What an analog switch or a filter adds to a line, ohms; mostly nothing. */
const inLine = (random: Random): number => (random.chance(0.25) ? random.decades(5, 150) : 0.05);

/** A stage: push-pull with clamp diodes to rail and ground, or an open collector with one to ground or none. */
function stageOf(random: Random, node: string): (build: Builder, rail: string) => void {
  const [ohms, model] = [random.decades(3, 60), diodeOf(random)];
  const open = random.chance(0.2);
  const clamps = open ? (random.chance(0.6) ? 1 : 0) : 2;
  return (build, rail) => {
    if (clamps > 0) build.diode('ground', node, model);
    if (clamps > 1) build.diode(node, rail, model);
    if (build.standing === 'active') build.ohms(node, 'ground', ohms);
    if (build.standing === 'idle' && !open) build.ohms(node, rail, ohms);
    build.ohms(node, 'ground', 1e9);
  };
}

function loopOutput(random: Random, style: Style): Draw {
  const { source, sink, shield } = styleEntry(style).lines;
  const [volts, bleed] = [supplyOf(random), bleedOf(random)];
  const five = volts > 4;
  const up = resistor(random, five ? 220 : 33, five ? 100 : 10, five ? 470 : 100) + inLine(random);
  const down = resistor(random, five ? 220 : 10, five ? 100 : 4.7, five ? 470 : 100) + inLine(random);
  const stage = stageOf(random, 'drive');
  return (standing) => {
    const build = new Builder(standing);
    build.rail('rail', volts, bleed);
    build.ohms('rail', source ?? '', up);
    build.ohms(sink ?? '', 'drive', down);
    stage(build, 'rail');
    if (shield) build.ohms(shield, 'ground', 0.05);
    return build.parts;
  };
}

function loopInput(random: Random, style: Style): Draw {
  const { source = '', sink = '', shield } = styleEntry(style).lines;
  const [ohms, led, guard] = [
    resistor(random, 220, 100, 470) + inLine(random),
    ledOf(random),
    diodeOf(random, 0.15),
  ];
  const [guarded, across, tied] = [random.chance(0.92), random.chance(0.3), random.chance(0.15)];
  return (standing) => {
    const build = new Builder(standing);
    build.ohms(source, 'anode', ohms);
    if (tied && shield) build.ohms(shield, 'ground', 0.05);
    if (style === 'both-ways') {
      build.diode('anode', 'plus', guard);
      build.diode(sink, 'plus', guard);
      build.diode('minus', 'anode', guard);
      build.diode('minus', sink, guard);
      build.diode('plus', 'minus', led);
      return build.parts;
    }
    build.diode('anode', sink, led);
    if (guarded) build.diode(sink, across ? source : 'anode', guard);
    return build.parts;
  };
}

function levelOutput(random: Random, style: Style): Draw {
  const { sink = '' } = styleEntry(style).lines;
  const [volts, bleed, ohms] = [supplyOf(random), bleedOf(random), random.decades(33, 1000)];
  const model = diodeOf(random);
  return (standing) => {
    const build = new Builder(standing);
    build.rail('rail', volts, bleed);
    build.ohms(sink, 'drive', ohms);
    build.diode('ground', 'drive', model);
    build.diode('drive', 'rail', model);
    if (standing !== 'off') build.ohms('drive', standing === 'idle' ? 'rail' : 'ground', 25);
    build.ohms('sleeve', 'ground', 0.05);
    return build.parts;
  };
}

/** An input that reads a voltage: a gate with a pull-up and mostly clamps, or an LED from the supply. */
function levelInput(random: Random, style: Style): Draw {
  const { sink = '' } = styleEntry(style).lines;
  const [volts, bleed] = [supplyOf(random), bleedOf(random)];
  const lit = random.chance(1 / 3);
  const [led, ohms] = [ledOf(random), random.decades(150, 1000)];
  const fed = pulledUp(random, sink, random.decades(1e3, 100e3), 0.85);
  return (standing) => {
    const build = new Builder(standing);
    build.rail('rail', volts, bleed);
    build.ohms('sleeve', 'ground', 0.05);
    if (lit) {
      build.ohms('rail', 'anode', ohms);
      build.diode('anode', sink, led);
    } else fed(build);
    return build.parts;
  };
}

/** A contact with a pull-up to the rail, a resistor into the gate and, by this chance, clamp diodes there. */
function pulledUp(random: Random, contact: string, ohms: number, clamped: number): (build: Builder) => void {
  const [series, clamps, model] = [random.decades(1, 10e3), random.chance(clamped), diodeOf(random)];
  const atContact = random.chance(0.5);
  const gate = `${contact} gate`;
  return (build) => {
    build.ohms(contact, gate, series);
    build.ohms('rail', atContact ? contact : gate, ohms);
    build.ohms(gate, 'ground', 1e9);
    if (!clamps) return;
    build.diode('ground', gate, model);
    build.diode(gate, 'rail', model);
  };
}

function otherJack(random: Random, other: (typeof OTHER_JACKS)[number], connector: Connector): Draw {
  const [volts, bleed] = [random.chance(0.1) ? 9 : supplyOf(random), bleedOf(random)];
  const pull = random.decades(1e3, 220e3);
  const tip = pulledUp(random, 'tip', pull, 0.5);
  const ring = pulledUp(random, 'ring', pull * (0.99 + 0.02 * random.next()), 0.5);
  const [fed, wiper] = other === 'expression-ring' ? ['ring', 'tip'] : ['tip', 'ring'];
  const [feed, sense, model] = [random.decades(47, 2200), random.decades(10e3, 1e6), diodeOf(random)];
  const clamped = random.chance(0.5);
  const [low, high] = [random.decades(4, 120), random.decades(10e3, 2.2e6)];
  const balanced = random.chance(0.3) && !connector.startsWith('ts-');
  const held = random.chance(0.5)
    ? 0.04 * random.next() - 0.02
    : random.chance(0.7)
      ? 5 * random.next()
      : 15 * random.next() - 5;
  const output = random.decades(100, 2200);
  return (standing) => {
    const build = new Builder(standing);
    build.ohms('sleeve', 'ground', 0.05);
    switch (other) {
      case 'footswitch':
      case 'footswitch-double':
        build.rail('rail', volts, bleed);
        tip(build);
        if (other === 'footswitch-double') ring(build);
        break;
      case 'expression-ring':
      case 'expression-tip':
        build.rail('rail', volts, bleed);
        build.ohms('rail', fed, feed);
        build.ohms(wiper, 'ground', sense);
        if (clamped) build.diode(wiper, 'rail', model);
        break;
      case 'headphone':
        build.ohms('tip', 'ground', low);
        build.ohms('ring', 'ground', low * 1.01);
        break;
      case 'line':
        build.ohms('tip', 'ground', high);
        if (balanced) build.ohms('ring', 'ground', high * 0.99);
        break;
      case 'control-voltage':
        build.ohms('tip', 'amplifier', output);
        build.diode('ground', 'amplifier', model);
        if (standing === 'off') build.ohms('amplifier', 'ground', bleed);
        else build.volts('amplifier', held);
        break;
    }
    return build.parts;
  };
}

/** What a plug may meet besides: a supply, a loudspeaker's winding, or nothing at all. */
function foreign(random: Random, connector: Connector): Draw {
  const hot: Contact = connector.startsWith('din') ? '4' : 'tip';
  const cold: Contact = connector.startsWith('din') ? '2' : 'sleeve';
  const kind = random.pick(['supply', 'winding', 'nothing'] as const);
  const volts = random.pick([9, 12]);
  return (standing) => {
    const build = new Builder(standing);
    if (kind === 'nothing') return [];
    build.ohms(cold, 'ground', 0.05);
    if (kind === 'winding') build.ohms(hot, 'ground', random.decades(3, 600));
    else {
      build.rail('rail', volts, 2200);
      build.ohms('rail', hot, 10);
    }
    return build.parts;
  };
}
