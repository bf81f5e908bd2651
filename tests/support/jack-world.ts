/** Simulated readers of unmarked jacks: what is known beforehand, a meter of its own kind, and readings with noise and slips. */
import { compileCircuit } from '../../src/core/circuit/compile.ts';
import type { Element } from '../../src/core/circuit/elements.ts';
import { solveOperatingPoint } from '../../src/core/circuit/operating-point.ts';
import type { Evidence, MenuFact } from '../../src/core/readings/evidence.ts';
import type { Reading } from '../../src/core/readings/reading.ts';
import type { JackReading } from '../../src/core/readings/subjects.ts';
import { contactsOf } from '../../src/core/wiring/connectors.ts';
import type { Connector } from '../../src/core/wiring/connectors.ts';
import { drawJack } from './world-jacks.ts';
import type { Standing, WorldJack } from './world-jacks.ts';
import { seededRandom } from './random.ts';
import type { Random } from './random.ts';

/** A device with one jack, and the reader's meter. `name` is what the finder should call the jack. */
interface World {
  readonly name: string;
  readonly evidence: Evidence;
  readonly read: (at: JackReading) => Reading;
}

/** A meter as it is: its diode test ends anywhere from 2 to 4 V. */
interface Meter {
  readonly profile: 'usual' | 'pocket';
  readonly voltsOhms: number;
  readonly diodeAmperes: number;
  readonly diodeVolts: number;
  readonly ohmsVolts: number;
  readonly ohmsBehind: number;
  readonly ohmsMost: number;
  /** The reader's resistor, said to be of 1 kohm: one of 5 %. */
  readonly loadOhms: number;
  /** What each function is off by, as a factor; the same in every reading. */
  readonly gain: Readonly<Record<'volts' | 'ohms' | 'diode', number>>;
}

/** Readings in which a probe does not touch: overload, or no volts. */
const SLIPS = 0.003;

/** Share of the time that clock at 120 beats a minute holds the line active (4 bits of 32 us in each of 48 bytes a second). */
const CLOCK_SHARE = 48 * 4 * 32e-6;

/** Connectors as often as they are met (a guess, as the shares of the jacks are). */
const CONNECTORS_MET = [
  ...(['din5', 'din5', 'din5', 'trs-6.35', 'trs-6.35', 'trs-6.35'] as const),
  ...(['trs-3.5', 'trs-3.5', 'trs-3.5', 'trs-3.5', 'trs-3.5', 'trs-3.5'] as const),
  ...(['trs-2.5', 'ts-6.35', 'ts-3.5'] as const),
];

/** Draw a jack and its reader. */
export function drawWorld(random: Random): World {
  const connector = random.pick(CONNECTORS_MET);
  const jack = drawJack(random, connector);
  const meter = drawMeter(random);
  const canSwitchOn = random.chance(0.95);
  const evidence: Evidence = {
    connector,
    marked: markingOf(random, jack.name),
    menu: menuOf(random, jack.name),
    meter: random.chance(0.5) ? meter.profile : 'not-known',
    canSwitchOn,
    canStreamClock: canSwitchOn && random.chance(0.5),
  };
  return { name: jack.name, evidence, read: (at) => read(random, jack, connector, meter, at) };
}

/** The first seeds from here on whose world is as asked for. */
export function worldSeeds(first: number, count: number, asked: (evidence: Evidence) => boolean): number[] {
  const seeds: number[] = [];
  for (let seed = first; seeds.length < count; seed++)
    if (asked(drawWorld(seededRandom(seed)).evidence)) seeds.push(seed);
  return seeds;
}

/** Half of all control jacks have IN or OUT beside them, one in a hundred of these wrongly. */
function markingOf(random: Random, name: string): Evidence['marked'] {
  const [direction] = name.split(' ');
  if ((direction !== 'in' && direction !== 'out') || random.chance(0.5)) return 'nothing';
  return random.chance(0.01) ? (direction === 'in' ? 'out' : 'in') : direction;
}

/** What a menu names, half the time where there is anything to name. */
function menuOf(random: Random, name: string): readonly MenuFact[] {
  const facts: readonly (readonly [start: string, fact: MenuFact])[] = [
    ['footswitch', 'footswitch'],
    ['expression', 'expression'],
    ['control-voltage', 'control-voltage'],
  ];
  return facts.flatMap(([start, fact]) => (name.startsWith(start) && random.chance(0.5) ? [fact] : []));
}

function drawMeter(random: Random): Meter {
  const profile = random.pick(['usual', 'usual', 'usual', 'pocket'] as const);
  const off = (): number => 0.985 + 0.03 * random.next();
  return {
    profile,
    voltsOhms: (profile === 'pocket' ? 1e6 : 10e6) * (0.9 + 0.2 * random.next()),
    diodeAmperes: profile === 'pocket' ? random.decades(0.3e-3, 0.7e-3) : random.decades(0.7e-3, 1.5e-3),
    diodeVolts: 2 + 2 * random.next(),
    ohmsVolts: random.decades(0.3, 0.8),
    ohmsBehind: random.decades(500, 3e3),
    ohmsMost: profile === 'pocket' ? 2e6 : random.pick([20e6, 40e6]),
    loadOhms: 1e3 * (0.95 + 0.1 * random.next()),
    gain: { volts: off(), ohms: off(), diode: off() },
  };
}

function read(random: Random, jack: WorldJack, connector: Connector, meter: Meter, at: JackReading): Reading {
  if (at.meter === 'continuity' || at.meter === 'led')
    throw new Error(`jack world: no reading by ${at.meter}`);
  const slipped = random.chance(SLIPS);
  const volts = at.meter === 'volts' || at.meter === 'loaded';
  const exact = slipped ? (volts ? 0 : Infinity) : measured(jack, connector, meter, at);
  const dial = at.meter === 'loaded' ? 'volts' : at.meter;
  const grain = { volts: 2e-3, diode: 2e-3, ohms: 0.3 }[dial];
  const value =
    exact * meter.gain[dial] * (1 + 0.005 * (2 * random.next() - 1)) + grain * (2 * random.next() - 1);
  if (at.meter === 'volts' || at.meter === 'loaded') return { meter: at.meter, shows: 'value', value };
  if (at.meter === 'diode')
    return value <= meter.diodeVolts
      ? { meter: 'diode', shows: 'value', value }
      : { meter: 'diode', shows: 'overload' };
  return exact >= 0 && value <= meter.ohmsMost
    ? { meter: 'ohms', shows: 'value', value: Math.max(0, value) }
    : { meter: 'ohms', shows: 'overload' };
}

/** Volts at the probes or ohms between them; a slow meter shows the mean while clock streams. */
function measured(jack: WorldJack, connector: Connector, meter: Meter, at: JackReading): number {
  const inStanding = (standing: Standing): number => solved(jack, connector, meter, at, standing);
  if (at.power === 'off') return inStanding('off');
  const idle = inStanding('idle');
  if (at.power === 'idle') return idle;
  return (1 - CLOCK_SHARE) * idle + CLOCK_SHARE * inStanding('active');
}

function solved(
  jack: WorldJack,
  connector: Connector,
  meter: Meter,
  at: JackReading,
  standing: Standing,
): number {
  // A test lead with a touch at each end, and a leak so that no contact hangs in the air.
  const leads: Element[] = [at.red, at.black].map((contact, side) => ({
    kind: 'resistor',
    name: `lead ${side}`,
    a: contact,
    b: side === 0 ? 'red' : 'black',
    ohms: 0.15,
  }));
  const leaks: Element[] = contactsOf(connector).map((contact) => ({
    kind: 'resistor',
    name: `leak ${contact}`,
    a: contact,
    b: 'ground',
    ohms: 1e10,
  }));
  const elements = [...jack.parts(standing), ...leads, ...leaks, ...probe(meter, at.meter)];
  const answer = solveOperatingPoint(compileCircuit({ ground: 'black', elements }));
  if (!answer.ok) throw new Error(`jack world: ${jack.name}, ${at.meter} ${standing}: ${answer.reason}`);
  const volts = answer.volts('red');
  if (at.meter !== 'ohms') return volts;
  const amperes = (meter.ohmsVolts - volts) / meter.ohmsBehind;
  return amperes > 0 ? volts / amperes : Infinity;
}

function probe(meter: Meter, set: JackReading['meter']): readonly Element[] {
  const across = (ohms: number): Element => ({ kind: 'resistor', name: 'input', a: 'red', b: 'black', ohms });
  switch (set) {
    case 'volts':
      return [across(meter.voltsOhms)];
    case 'loaded':
      return [across(meter.loadOhms)];
    case 'diode':
      return [
        across(20e6),
        { kind: 'current', name: 'test', from: 'black', to: 'red', amperes: meter.diodeAmperes },
      ];
    default:
      return [
        { kind: 'voltage', name: 'cell', plus: 'cell', minus: 'black', volts: meter.ohmsVolts },
        { kind: 'resistor', name: 'behind', a: 'cell', b: 'red', ohms: meter.ohmsBehind },
      ];
  }
}
