/** What stands behind an input jack, and how to tell whether it is on. */
import type { DiodeModel } from '../circuit/index.ts';
import { THERMAL_VOLTS } from '../circuit/index.ts';
import type { Collector, Owner } from './build.ts';
import { factorSpread, inputGround, inputNode } from './build.ts';
import { OFF_SHARE, PROTECTION_DIODE, partEntry, valuesOf } from './circuits.ts';
import type { ValueName } from './circuits.ts';
import type { Jack } from './link.ts';
import { valueAt } from './link.ts';
import { styleEntry } from './styles.ts';

/**
 * How an input is read. `current`: the LED's amperes; on from `onAmperes`, off below `offAmperes`; `reverse` names the
 * part that carries current the wrong way, if there is one. `level`: volts at `node` over `ground`; on below `lowVolts`.
 */
export type Sense =
  | {
      readonly kind: 'current';
      readonly led: string;
      readonly reverse: string | undefined;
      readonly onAmperes: number;
      readonly offAmperes: number;
    }
  | {
      readonly kind: 'level';
      readonly node: string;
      readonly ground: string;
      readonly lowVolts: number;
      readonly highVolts: number;
    };

/** Add the parts of input number `branch`. */
export function addReceiver(into: Collector, jack: Jack, branch: number): Sense {
  const owner: Owner = { place: 'input', branch };
  const { lines } = styleEntry(jack.style);
  const name = (part: string): string => `in${branch} ${part}`;
  const at = (value: ValueName): number => valueAt(jack, value);
  const sink = lines.sink === undefined ? name('sink') : inputNode(branch, lines.sink);
  if (jack.circuit === 'receiver-isolated' || jack.circuit === 'receiver-both-ways') {
    const source = lines.source === undefined ? name('source') : inputNode(branch, lines.source);
    into.add(
      owner,
      'series-resistor',
      { kind: 'resistor', name: name('resistor'), a: source, b: name('entry'), ohms: at('seriesOhms') },
      { watts: at('seriesWatts') },
    );
    spreadResistor('seriesOhms', 'resistor');
    if (jack.circuit === 'receiver-isolated') {
      addLed(name('entry'), sink);
      into.add(owner, 'protection', {
        kind: 'diode',
        name: name('protection diode'),
        anode: sink,
        cathode: name('entry'),
        ...PROTECTION_DIODE,
      });
      return sense(name('protection diode'));
    }
    const bridge: readonly [string, string, string][] = [
      ['bridge diode 1', name('entry'), name('anode')],
      ['bridge diode 2', sink, name('anode')],
      ['bridge diode 3', name('cathode'), name('entry')],
      ['bridge diode 4', name('cathode'), sink],
    ];
    for (const [part, anode, cathode] of bridge) {
      into.add(owner, 'bridge-diode', {
        kind: 'diode',
        name: name(part),
        anode,
        cathode,
        ...PROTECTION_DIODE,
      });
    }
    addLed(name('anode'), name('cathode'));
    return sense(undefined);
  }
  const ground = inputGround(branch);
  const rail = name('rail');
  if (lines.shield !== undefined) {
    into.add(owner, 'grounds', {
      kind: 'switch',
      name: name('shield tie'),
      a: inputNode(branch, lines.shield),
      b: ground,
      closed: true,
    });
  }
  into.add(owner, 'supply', {
    kind: 'voltage',
    name: name('supply'),
    plus: rail,
    minus: ground,
    volts: at('supplyVolts'),
  });
  const supply = valuesOf(jack.circuit, jack.part).find((one) => one.name === 'supplyVolts');
  if (supply?.spread)
    into.spreads.push(
      factorSpread(
        'receiver supply',
        name('supply'),
        at('supplyVolts'),
        supply.spread.low,
        supply.spread.high,
      ),
    );
  if (jack.circuit === 'receiver-led') {
    into.add(
      owner,
      'series-resistor',
      { kind: 'resistor', name: name('resistor'), a: rail, b: name('anode'), ohms: at('seriesOhms') },
      { watts: at('seriesWatts') },
    );
    spreadResistor('seriesOhms', 'resistor');
    addLed(name('anode'), sink);
    return sense(undefined);
  }
  into.add(owner, 'input-resistor', {
    kind: 'resistor',
    name: name('resistor'),
    a: sink,
    b: name('gate'),
    ohms: at('inputOhms'),
  });
  into.add(owner, 'pull-up', {
    kind: 'resistor',
    name: name('pull-up'),
    a: rail,
    b: name('gate'),
    ohms: at('pullUpOhms'),
  });
  into.add(owner, 'clamp', {
    kind: 'diode',
    name: name('clamp to rail'),
    anode: name('gate'),
    cathode: rail,
    ...PROTECTION_DIODE,
  });
  into.add(owner, 'clamp', {
    kind: 'diode',
    name: name('clamp to ground'),
    anode: ground,
    cathode: name('gate'),
    ...PROTECTION_DIODE,
  });
  spreadResistor('inputOhms', 'resistor');
  spreadResistor('pullUpOhms', 'pull-up');
  return { kind: 'level', node: name('gate'), ground, lowVolts: at('lowVolts'), highVolts: at('highVolts') };

  function spreadResistor(value: ValueName, part: string): void {
    const entry = valuesOf(jack.circuit, jack.part).find((one) => one.name === value);
    if (entry?.spread)
      into.spreads.push(
        factorSpread(entry.label, name(part), at(value), entry.spread.low, entry.spread.high),
      );
  }

  function addLed(anode: string, cathode: string): void {
    const model = partEntry(jack.part).led;
    const shift = at('ledShiftVolts');
    const shifted = (volts: number): number => shiftedSaturation(model, shift + volts);
    into.add(
      owner,
      'led',
      { kind: 'diode', name: name('LED'), anode, cathode, ...model, saturationAmperes: shifted(0) },
      { amperes: at('ledAmperes'), reverseVolts: at('ledReverseVolts') },
    );
    const entry = valuesOf(jack.circuit, jack.part).find((one) => one.name === 'ledShiftVolts');
    if (entry?.spread) {
      const { low, high } = entry.spread;
      into.spreads.push({
        name: 'LED voltage',
        parts: [name('LED')],
        nominal: [shifted(0)],
        low: [shifted(low)],
        high: [shifted(high)],
      });
    }
  }

  function sense(reverse: string | undefined): Sense {
    const onAmperes = at('turnOnAmperes');
    return { kind: 'current', led: name('LED'), reverse, onAmperes, offAmperes: onAmperes * OFF_SHARE };
  }
}

/**
 * A voltage added in series with a diode is the same as its IS times exp(-V / (N VT)): the current is the same at every
 * forward voltage moved by V, and no extra node is needed.
 */
function shiftedSaturation(model: DiodeModel, volts: number): number {
  return model.saturationAmperes * Math.exp(-volts / (model.emission * THERMAL_VOLTS));
}
