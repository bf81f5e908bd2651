/** What stands behind an output jack. */
import { LEAST_OHMS } from '../circuit/index.ts';
import type { Bench, Collector } from './build.ts';
import { OUTPUT_GROUND, outputNode, spreadWith } from './build.ts';
import { ACTIVITY_LED, ACTIVITY_LED_AMPERES } from './diodes.ts';
import { hasExtra, linesInside } from './extras.ts';
import { addForeign } from './foreign-supply.ts';
import type { Jack } from './link.ts';
import { valueAt } from './link.ts';
import type { ValueName } from './values.ts';

/** The two states of a link: the line rests, or a 0 is sent. */
export const STATES = ['idle', 'active'] as const;
/** A state of a link. */
export type State = (typeof STATES)[number];

/** Values of the output stage's parts in each state: 1 or 0 for a switch closed or open, volts of a source. */
export type Switching = Readonly<Record<State, readonly (readonly [name: string, value: number])[]>>;

/** The source that stands for a push-pull stage in time, and the switches that stand for a stage at rest. */
const STAGE_DRIVE = 'out stage drive';
const STAGE_LOW = 'out stage low';
const STAGE_HIGH = 'out stage high';
/** The supply of a stage that has one of its own. */
const STAGE_SUPPLY = 'out stage supply';

/**
 * Add the parts of an output and tell how its stage switches. The rail is node 'out rail'.
 * @param inTime whether a push-pull stage is a source that moves between 0 V and the supply, instead of two switches: both
 * come to the same at rest, but only the source has edges.
 */
export function addDriver(into: Collector, jack: Jack, inTime = false): Switching {
  const { circuit } = jack;
  const { source, sink, shield } = linesInside(jack);
  const out = into.at({ place: 'output' });
  const at = (name: ValueName): number => valueAt(jack, name);
  if (shield !== undefined && !hasExtra(jack, 'shield-untied'))
    out.tie('out shield tie', outputNode(shield), OUTPUT_GROUND);
  if (circuit === 'driver-off')
    out.resistor('rail', 'out rail load', 'out rail', OUTPUT_GROUND, at('railOhms'));
  else out.supply('out supply', 'out rail', OUTPUT_GROUND, at('supplyVolts'), { amperes: at('railAmperes') });
  if (circuit !== 'driver-ground' && source !== undefined) addSource(out, jack, outputNode(source));
  const loop = circuit !== 'driver-off' && circuit !== 'driver-ground';
  if (loop && source !== undefined && at('tapOhms') > 0)
    out.resistor('tap', 'out tap', outputNode(source), OUTPUT_GROUND, at('tapOhms'));
  const sinkNode = sink === undefined ? 'out sink' : outputNode(sink);
  out.resistor('sink-resistor', 'out sink resistor', sinkNode, 'out stage', at('sinkOhms'), {
    watts: at('sinkWatts'),
  });
  const driven = inTime && circuit !== 'driver-3v3' && circuit !== 'driver-off';
  const mixed = stageVoltsOf(jack);
  const drive = driven ? [STAGE_DRIVE] : [];
  if (mixed === undefined) spreadWith(into, jack, 'supplyVolts', ['out supply', ...drive]);
  else {
    if (!driven) out.supply(STAGE_SUPPLY, 'out stage rail', OUTPUT_GROUND, mixed);
    spreadWith(into, jack, 'supplyVolts', ['out supply']);
    spreadWith(into, jack, 'stageVolts', driven ? drive : [STAGE_SUPPLY], 'supply of the output stage');
  }
  spreadWith(into, jack, 'railOhms', ['out rail load']);
  spreadWith(into, jack, 'sourceOhms', ['out source resistor']);
  spreadWith(into, jack, 'sinkOhms', ['out sink resistor']);
  addForeign(out, 'out', jack, {
    source: source && outputNode(source),
    sink: sink && sinkNode,
    ground: OUTPUT_GROUND,
  });
  return addStage(out, jack, driven);
}

/** The source resistor, and the activity LED behind it where there is one. */
function addSource(out: Bench, jack: Jack, contact: string): void {
  const lit = hasExtra(jack, 'activity-in-series');
  const end = lit ? 'out activity anode' : contact;
  const rating = { watts: valueAt(jack, 'sourceWatts') };
  out.resistor(
    'source-resistor',
    'out source resistor',
    'out rail',
    end,
    valueAt(jack, 'sourceOhms'),
    rating,
  );
  if (lit)
    out.add(
      'activity-led',
      { kind: 'diode', name: 'out activity LED', anode: end, cathode: contact, ...ACTIVITY_LED },
      { amperes: ACTIVITY_LED_AMPERES },
    );
}

/** The voltage that a push-pull stage swings to where that is not the supply of the source line. */
function stageVoltsOf(jack: Jack): number | undefined {
  const mixable = jack.circuit === 'driver-5v' || jack.circuit === 'driver-3v3-push-pull';
  const volts = mixable ? valueAt(jack, 'stageVolts') : 0;
  return volts > 0 ? volts : undefined;
}

function addStage(out: Bench, jack: Jack, driven: boolean): Switching {
  if (jack.circuit === 'driver-off') {
    out.diode('clamp', 'out clamp to rail', 'out stage', 'out rail');
    out.diode('clamp', 'out clamp to ground', OUTPUT_GROUND, 'out stage');
    return { idle: [], active: [] };
  }
  const rating = { amperes: valueAt(jack, 'stageAmperes') };
  const ohms = valueAt(jack, 'stageOhms');
  const drive = ohms >= LEAST_OHMS ? 'out drive' : 'out stage';
  if (ohms >= LEAST_OHMS) out.resistor('stage-resistor', 'out stage resistance', 'out stage', drive, ohms);
  if (driven) {
    const volts = stageVoltsOf(jack) ?? valueAt(jack, 'supplyVolts');
    out.add(
      'stage-drive',
      { kind: 'voltage', name: STAGE_DRIVE, plus: drive, minus: OUTPUT_GROUND, volts },
      rating,
    );
    return { idle: [[STAGE_DRIVE, volts]], active: [[STAGE_DRIVE, 0]] };
  }
  out.add(
    'stage-low',
    { kind: 'switch', name: STAGE_LOW, a: drive, b: OUTPUT_GROUND, closed: false },
    rating,
  );
  const low: Switching = { idle: [[STAGE_LOW, 0]], active: [[STAGE_LOW, 1]] };
  if (jack.circuit === 'driver-3v3') return low;
  out.add(
    'stage-high',
    {
      kind: 'switch',
      name: STAGE_HIGH,
      a: stageVoltsOf(jack) === undefined ? 'out rail' : 'out stage rail',
      b: drive,
      closed: true,
    },
    rating,
  );
  return { idle: [...low.idle, [STAGE_HIGH, 1]], active: [...low.active, [STAGE_HIGH, 0]] };
}
