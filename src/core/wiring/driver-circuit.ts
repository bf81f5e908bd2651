/** What stands behind an output jack. */
import type { Collector } from './build.ts';
import { OUTPUT_GROUND, factorSpread, outputNode } from './build.ts';
import { PROTECTION_DIODE, valuesOf } from './circuits.ts';
import type { ValueName } from './circuits.ts';
import type { Jack } from './link.ts';
import { valueAt } from './link.ts';
import { styleEntry } from './styles.ts';

/** The two states of a link: the line rests, or a 0 is sent. */
export const STATES = ['idle', 'active'] as const;
export type State = (typeof STATES)[number];

/** Values of the output stage's parts in each state: 1 or 0 for a switch closed or open, volts of a source. */
export type Switching = Readonly<Record<State, readonly (readonly [name: string, value: number])[]>>;

const OUT = { place: 'output' } as const;

/**
 * Add the parts of an output and tell how its stage switches. The rail is node 'out rail'.
 * @param inTime whether a push-pull stage is a source that moves between 0 V and the supply, instead of two switches: both
 * come to the same at rest, but only the source has edges.
 */
export function addDriver(into: Collector, jack: Jack, inTime = false): Switching {
  const { lines } = styleEntry(jack.style);
  const at = (name: ValueName): number => valueAt(jack, name);
  const sink = lines.sink === undefined ? 'out sink' : outputNode(lines.sink);
  if (lines.shield !== undefined) {
    into.add(OUT, 'grounds', {
      kind: 'switch',
      name: 'out shield tie',
      a: outputNode(lines.shield),
      b: OUTPUT_GROUND,
      closed: true,
    });
  }
  if (jack.circuit === 'driver-off') {
    into.add(OUT, 'rail', {
      kind: 'resistor',
      name: 'out rail load',
      a: 'out rail',
      b: OUTPUT_GROUND,
      ohms: at('railOhms'),
    });
  } else {
    into.add(
      OUT,
      'supply',
      {
        kind: 'voltage',
        name: 'out supply',
        plus: 'out rail',
        minus: OUTPUT_GROUND,
        volts: at('supplyVolts'),
      },
      { amperes: at('railAmperes') },
    );
  }
  if (jack.circuit !== 'driver-ground' && lines.source !== undefined) {
    into.add(
      OUT,
      'source-resistor',
      {
        kind: 'resistor',
        name: 'out source resistor',
        a: 'out rail',
        b: outputNode(lines.source),
        ohms: at('sourceOhms'),
      },
      { watts: at('sourceWatts') },
    );
  }
  into.add(
    OUT,
    'sink-resistor',
    { kind: 'resistor', name: 'out sink resistor', a: sink, b: 'out stage', ohms: at('sinkOhms') },
    { watts: at('sinkWatts') },
  );
  addSpreads(into, jack, inTime && isPushPull(jack));
  return addStage(into, jack, inTime);
}

function isPushPull({ circuit }: Jack): boolean {
  return circuit !== 'driver-3v3' && circuit !== 'driver-off';
}

function addSpreads(into: Collector, jack: Jack, driven: boolean): void {
  const parts: Partial<Record<ValueName, string>> = {
    supplyVolts: 'out supply',
    sourceOhms: 'out source resistor',
    sinkOhms: 'out sink resistor',
    railOhms: 'out rail load',
  };
  for (const { name, label, spread } of valuesOf(jack.circuit, jack.part)) {
    const part = parts[name];
    if (!part || !spread) continue;
    const nominal = valueAt(jack, name);
    const low = nominal * spread.low;
    const high = nominal * spread.high;
    if (driven && part === 'out supply') {
      into.spreads.push({
        name: label,
        parts: [part, STAGE_DRIVE],
        nominal: [nominal, nominal],
        low: [low, low],
        high: [high, high],
      });
    } else into.spreads.push(factorSpread(label, part, nominal, spread.low, spread.high));
  }
}

/** The source that stands for a push-pull stage in time. */
const STAGE_DRIVE = 'out stage drive';

function addStage(into: Collector, jack: Jack, inTime: boolean): Switching {
  if (jack.circuit === 'driver-off') {
    into.add(OUT, 'clamp', {
      kind: 'diode',
      name: 'out clamp to rail',
      anode: 'out stage',
      cathode: 'out rail',
      ...PROTECTION_DIODE,
    });
    into.add(OUT, 'clamp', {
      kind: 'diode',
      name: 'out clamp to ground',
      anode: OUTPUT_GROUND,
      cathode: 'out stage',
      ...PROTECTION_DIODE,
    });
    return { idle: [], active: [] };
  }
  const rating = { amperes: valueAt(jack, 'stageAmperes') };
  const stageOhms = valueAt(jack, 'stageOhms');
  let drive = 'out stage';
  if (stageOhms > 0) {
    drive = 'out drive';
    into.add(OUT, 'stage-resistor', {
      kind: 'resistor',
      name: 'out stage resistance',
      a: 'out stage',
      b: drive,
      ohms: stageOhms,
    });
  }
  if (inTime && isPushPull(jack)) {
    const volts = valueAt(jack, 'supplyVolts');
    into.add(
      OUT,
      'stage-drive',
      { kind: 'voltage', name: STAGE_DRIVE, plus: drive, minus: OUTPUT_GROUND, volts },
      rating,
    );
    return { idle: [[STAGE_DRIVE, volts]], active: [[STAGE_DRIVE, 0]] };
  }
  into.add(
    OUT,
    'stage-low',
    { kind: 'switch', name: 'out stage low', a: drive, b: OUTPUT_GROUND, closed: false },
    rating,
  );
  if (jack.circuit === 'driver-3v3') return { idle: [['out stage low', 0]], active: [['out stage low', 1]] };
  into.add(
    OUT,
    'stage-high',
    { kind: 'switch', name: 'out stage high', a: 'out rail', b: drive, closed: true },
    rating,
  );
  return {
    idle: [
      ['out stage low', 0],
      ['out stage high', 1],
    ],
    active: [
      ['out stage low', 1],
      ['out stage high', 0],
    ],
  };
}
