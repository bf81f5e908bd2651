/** What stands behind an input jack, and how to tell whether it is on. */
import { THERMAL_VOLTS } from '../circuit/index.ts';
import type { DiodeModel } from '../circuit/index.ts';
import type { Bench, Collector } from './build.ts';
import { inputGround, inputNode, spreadWith } from './build.ts';
import { valuesOf } from './circuits.ts';
import type { Jack } from './link.ts';
import { valueAt } from './link.ts';
import { partEntry } from './optocouplers.ts';
import { ledThresholds } from './output-stage.ts';
import type { LedThresholds } from './output-stage.ts';
import { styleEntry } from './styles.ts';
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

/** Add the parts of input number `branch`. */
export function addReceiver(into: Collector, jack: Jack, branch: number): Sense {
  const { source, sink, shield } = styleEntry(jack.style).lines;
  const name = (part: string): string => `in${branch} ${part}`;
  const input: Input = {
    into,
    bench: into.at({ place: 'input', branch }),
    jack,
    sink: sink === undefined ? name('sink') : inputNode(branch, sink),
    name,
    at: (value) => valueAt(jack, value),
  };
  if (jack.circuit === 'receiver-isolated' || jack.circuit === 'receiver-both-ways')
    return addIsolated(input, source === undefined ? name('source') : inputNode(branch, source));
  const ground = inputGround(branch);
  const rail = name('rail');
  if (shield !== undefined) input.bench.tie(name('shield tie'), inputNode(branch, shield), ground);
  input.bench.supply(name('supply'), rail, ground, input.at('supplyVolts'));
  spreadWith(into, jack, 'supplyVolts', [name('supply')], 'receiver supply');
  if (jack.circuit === 'receiver-logic') return addLogic(input, rail, ground);
  addSeries(input, rail, name('anode'));
  return addLed(input, name('anode'), input.sink);
}

function addSeries({ into, bench, jack, name, at }: Input, a: string, b: string): void {
  bench.resistor('series-resistor', name('resistor'), a, b, at('seriesOhms'), { watts: at('seriesWatts') });
  spreadWith(into, jack, 'seriesOhms', [name('resistor')]);
}

function addIsolated(input: Input, source: string): Sense {
  const { bench, sink, name } = input;
  const [entry, anode, cathode] = [name('entry'), name('anode'), name('cathode')];
  addActivity(input, source);
  addSeries(input, source, entry);
  if (input.jack.circuit === 'receiver-isolated') {
    const sense = addLed(input, entry, sink, name('protection diode'));
    bench.diode('protection', name('protection diode'), sink, entry);
    return sense;
  }
  bench.diode('bridge-diode', name('bridge diode 1'), entry, anode);
  bench.diode('bridge-diode', name('bridge diode 2'), sink, anode);
  bench.diode('bridge-diode', name('bridge diode 3'), cathode, entry);
  bench.diode('bridge-diode', name('bridge diode 4'), cathode, sink);
  return addLed(input, anode, cathode);
}

/** A red LED: 1.8 V at 5 mA (common practice, no source). */
const ACTIVITY_LED: DiodeModel = { saturationAmperes: 1e-18, emission: 1.93, seriesOhms: 3 };

/** Add the LED that shows activity, across the loop behind its own resistor, where there is one. */
function addActivity({ bench, sink, name, at }: Input, source: string): void {
  const ohms = at('activityOhms');
  if (ohms === 0) return;
  const anode = name('activity anode');
  bench.resistor('activity-resistor', name('activity resistor'), source, anode, ohms);
  bench.add('activity-led', {
    kind: 'diode',
    name: name('activity LED'),
    anode,
    cathode: sink,
    ...ACTIVITY_LED,
  });
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

/**
 * Add the LED; `reverse` names the part beside it that carries current the wrong way. A voltage added in series with a diode
 * is the same as its IS times exp(-V / (N VT)): the current is the same at every forward voltage moved by V, and no extra
 * node is needed.
 */
function addLed(input: Input, anode: string, cathode: string, reverse?: string): Sense {
  const { into, bench, jack, at } = input;
  const led = input.name('LED');
  const model = partEntry(jack.part).led;
  const saturationAt = (volts: number): number =>
    model.saturationAmperes * Math.exp(-(at('ledShiftVolts') + volts) / (model.emission * THERMAL_VOLTS));
  bench.add(
    'led',
    { kind: 'diode', name: led, anode, cathode, ...model, saturationAmperes: saturationAt(0) },
    { amperes: at('ledAmperes'), reverseVolts: at('ledReverseVolts') },
  );
  const spread = valuesOf(jack.circuit, jack.part).find(({ name }) => name === 'ledShiftVolts')?.spread;
  if (spread)
    into.spreads.push({
      name: 'LED voltage',
      parts: [led],
      nominal: [saturationAt(0)],
      low: [saturationAt(spread.low)],
      high: [saturationAt(spread.high)],
    });
  return { kind: 'current', led, reverse, ...ledThresholds(jack) };
}
