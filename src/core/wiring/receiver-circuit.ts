/** What stands behind an input jack, and how to tell whether it is on. */
import { THERMAL_VOLTS } from '../circuit/index.ts';
import type { Bench, Collector } from './build.ts';
import { inputGround, inputNode, spreadWith } from './build.ts';
import { valuesOf } from './circuits.ts';
import { ACTIVITY_LED, ACTIVITY_LED_AMPERES, PROTECTION_DIODE } from './diodes.ts';
import { RECTIFIER_DIODE, SCHOTTKY_DIODE } from './diodes.ts';
import { hasExtra, linesInside } from './extras.ts';
import { addForeign, foreignOn } from './foreign-supply.ts';
import type { Jack } from './link.ts';
import { valueAt } from './link.ts';
import { partEntry } from './optocouplers.ts';
import { ledThresholds } from './output-stage.ts';
import type { LedThresholds } from './output-stage.ts';
import type { ValueName } from './values.ts';

/**
 * How an input is read. `current`: the LED's amperes; with the currents that decide it; `reverse` names the part that carries current the wrong way, if there is one. `level`: volts at `node` over `ground`; on below `lowVolts`.
 */
export type Sense =
  | ({
      readonly kind: 'current';
      readonly led: string;
      readonly reverse: string | undefined;
    } & LedThresholds)
  | {
      readonly kind: 'level';
      readonly node: string;
      readonly ground: string;
      readonly lowVolts: number;
      readonly highVolts: number;
    };

/** An input under construction: names, values and nodes of its parts. */
interface Input {
  readonly into: Collector;
  readonly bench: Bench;
  readonly jack: Jack;
  readonly sink: string;
  readonly name: (part: string) => string;
  readonly at: (value: ValueName) => number;
}

/** Whether an input's loop stands apart from its device. */
export function isIsolated({ circuit }: Jack): boolean {
  return circuit === 'receiver-isolated' || circuit === 'receiver-both-ways';
}

/** Whether an input has anything at its device's ground, so that it matters how grounds are joined. */
export function hasGround(jack: Jack): boolean {
  if (!isIsolated(jack)) return true;
  return hasExtra(jack, 'shield-tied') || foreignOn(jack).some(({ minus }) => minus === 'ground');
}

/** Add the parts of input number `branch`. */
export function addReceiver(into: Collector, jack: Jack, branch: number): Sense {
  const { source, sink, shield } = linesInside(jack);
  const name = (part: string): string => `in${branch} ${part}`;
  const input: Input = {
    into,
    bench: into.at({ place: 'input', branch }),
    jack,
    sink: sink === undefined ? name('sink') : inputNode(branch, sink),
    name,
    at: (value) => valueAt(jack, value),
  };
  const ground = inputGround(branch);
  const start = source === undefined ? name('source') : inputNode(branch, source);
  addForeign(input.bench, `in${branch}`, jack, {
    source: source && start,
    sink: sink && input.sink,
    ground,
  });
  const isolated = isIsolated(jack);
  if (shield !== undefined && (!isolated || hasExtra(jack, 'shield-tied')))
    input.bench.tie(name('shield tie'), inputNode(branch, shield), ground);
  if (isolated) return addIsolated(input, start);
  const rail = name('rail');
  input.bench.supply(name('supply'), rail, ground, input.at('supplyVolts'));
  spreadWith(into, jack, 'supplyVolts', [name('supply')], 'receiver supply');
  if (jack.circuit === 'receiver-logic') return addLogic(input, rail, ground);
  addSeries(input, rail, name('anode'));
  return addLed(input, name('anode'), input.sink);
}

/** Add the resistor before the LED, and that of a second input in series as far as its LED. */
function addSeries({ into, bench, jack, name, at }: Input, a: string, b: string): void {
  const rating = { watts: at('seriesWatts') };
  bench.resistor('series-resistor', name('resistor'), a, b, at('seriesOhms'), rating);
  const second = hasExtra(jack, 'second-in-series') ? [name('second resistor')] : [];
  spreadWith(into, jack, 'seriesOhms', [name('resistor'), ...second]);
}

function addIsolated(input: Input, source: string): Sense {
  const { bench, jack, sink, name } = input;
  const [entry, anode, cathode] = [name('entry'), name('anode'), name('cathode')];
  addActivity(input, source);
  addSeries(input, addSecond(input, addLit(input, source)), entry);
  if (jack.circuit === 'receiver-isolated') {
    const sense = addLed(input, entry, sink);
    return { ...sense, reverse: addProtection(input, entry) };
  }
  bench.diode('bridge-diode', name('bridge diode 1'), entry, anode);
  bench.diode('bridge-diode', name('bridge diode 2'), sink, anode);
  bench.diode('bridge-diode', name('bridge diode 3'), cathode, entry);
  bench.diode('bridge-diode', name('bridge diode 4'), cathode, sink);
  return addLed(input, anode, cathode);
}

/** Add the protection diode as it is fitted. @returns its name where it carries current the wrong way. */
function addProtection({ bench, jack, sink, name }: Input, entry: string): string | undefined {
  const diode = name('protection diode');
  if (hasExtra(jack, 'no-diode')) return undefined;
  if (hasExtra(jack, 'turned-diode')) {
    bench.diode('turned-diode', diode, entry, sink);
    return undefined;
  }
  const model = hasExtra(jack, 'rectifier-diode')
    ? RECTIFIER_DIODE
    : hasExtra(jack, 'schottky-diode')
      ? SCHOTTKY_DIODE
      : PROTECTION_DIODE;
  bench.diode('protection', diode, sink, entry, model);
  return diode;
}

/** Add the LED that shows activity, across the loop behind its own resistor, where there is one. */
function addActivity({ bench, sink, name, at }: Input, source: string): void {
  const ohms = at('activityOhms');
  if (ohms === 0) return;
  const anode = name('activity anode');
  bench.resistor('activity-resistor', name('activity resistor'), source, anode, ohms);
  const led = { kind: 'diode', name: name('activity LED'), anode, cathode: sink, ...ACTIVITY_LED } as const;
  bench.add('activity-led', led, { amperes: ACTIVITY_LED_AMPERES });
}

/** Add the LED that shows activity in series with the loop, where there is one. @returns the node the loop goes on from. */
function addLit({ bench, jack, name }: Input, source: string): string {
  if (!hasExtra(jack, 'activity-in-series')) return source;
  const cathode = name('lit');
  const led = { kind: 'diode', name: name('series LED'), anode: source, cathode, ...ACTIVITY_LED } as const;
  bench.add('activity-led', led, { amperes: ACTIVITY_LED_AMPERES });
  return cathode;
}

/** Add a second input of the same kind in series, where there is one. @returns the node the loop goes on from. */
function addSecond(input: Input, from: string): string {
  const { bench, jack, name, at } = input;
  if (!hasExtra(jack, 'second-in-series')) return from;
  const [entry, end] = [name('second entry'), name('between')];
  const rating = { watts: at('seriesWatts') };
  bench.resistor('second-resistor', name('second resistor'), from, entry, at('seriesOhms'), rating);
  addLamp(input, 'second-led', entry, end);
  bench.diode('second-protection', name('second protection diode'), end, entry);
  return end;
}

function addLogic({ into, bench, jack, sink, name, at }: Input, rail: string, ground: string): Sense {
  const gate = name('gate');
  bench.resistor('input-resistor', name('resistor'), sink, gate, at('inputOhms'));
  bench.resistor('pull-up', name('pull-up'), rail, gate, at('pullUpOhms'));
  bench.diode('clamp', name('clamp to rail'), gate, rail);
  bench.diode('clamp', name('clamp to ground'), ground, gate);
  spreadWith(into, jack, 'inputOhms', [name('resistor')]);
  spreadWith(into, jack, 'pullUpOhms', [name('pull-up')]);
  return { kind: 'level', node: gate, ground, lowVolts: at('lowVolts'), highVolts: at('highVolts') };
}

/** Add the LED that decides the input. */
function addLed(input: Input, anode: string, cathode: string): Extract<Sense, { kind: 'current' }> {
  const { into, jack, name } = input;
  addLamp(input, 'led', anode, cathode);
  const spread = valuesOf(jack.circuit, jack.part).find((one) => one.name === 'ledShiftVolts')?.spread;
  const parts = [name('LED'), ...(hasExtra(jack, 'second-in-series') ? [name('second LED')] : [])];
  const each = (volts: number): readonly number[] => parts.map(() => saturationOf(jack, volts));
  if (spread)
    into.spreads.push({
      name: 'LED voltage',
      parts,
      nominal: each(0),
      low: each(spread.low),
      high: each(spread.high),
    });
  return { kind: 'current', led: name('LED'), reverse: undefined, ...ledThresholds(jack) };
}

/** Add an LED of the jack's optocoupler. */
function addLamp(
  { bench, jack, name, at }: Input,
  role: 'led' | 'second-led',
  anode: string,
  cathode: string,
): void {
  const model = { ...partEntry(jack.part).led, saturationAmperes: saturationOf(jack, 0) };
  const led = name(role === 'led' ? 'LED' : 'second LED');
  bench.add(
    role,
    { kind: 'diode', name: led, anode, cathode, ...model },
    { amperes: at('ledAmperes'), reverseVolts: at('ledReverseVolts') },
  );
}

/**
 * The IS of an LED whose forward voltage is moved by the jack's own shift and by `volts` more, amperes. A voltage added in
 * series with a diode is the same as its IS times exp(-V / (N VT)): the current is the same at every forward voltage moved
 * by V, and no extra node is needed.
 */
function saturationOf(jack: Jack, volts: number): number {
  const { saturationAmperes, emission } = partEntry(jack.part).led;
  return saturationAmperes * Math.exp(-(valueAt(jack, 'ledShiftVolts') + volts) / (emission * THERMAL_VOLTS));
}
