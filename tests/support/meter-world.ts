/** Simulated devices for the jack finder: jacks with parts somewhere in their tolerances or in no catalogue, read with noise. */
import { setValue } from '../../src/core/circuit/compile.ts';
import { jacksWith } from '../../src/core/readings/catalogue.ts';
import type { Evidence } from '../../src/core/readings/evidence.ts';
import { nameOf } from '../../src/core/readings/evidence.ts';
import { METER_PARTS, METER_PROFILES, meterProfile } from '../../src/core/readings/instruments.ts';
import type { MeterProfile } from '../../src/core/readings/instruments.ts';
import { measure, setUp } from '../../src/core/readings/measure.ts';
import { shown } from '../../src/core/readings/reading.ts';
import type { Reading } from '../../src/core/readings/reading.ts';
import { PROBE_LEAD_OHMS, jackSubject } from '../../src/core/readings/subjects.ts';
import type { JackReading, JackUnderTest } from '../../src/core/readings/subjects.ts';
import type { Random } from './random.ts';

/** A device with one jack, and the reader's meter. */
interface World {
  readonly name: string;
  readonly under: JackUnderTest;
  readonly outside: boolean;
  readonly evidence: Evidence;
  readonly read: (at: JackReading) => Reading;
}

/** A number from the standard normal distribution, by Box and Muller. */
function normal(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random.next())) * Math.cos(2 * Math.PI * random.next());
}

/** Values of parts that no entry of the catalogue has. */
function outsideOf(under: JackUnderTest, random: Random): JackUnderTest {
  if (under.kind === 'other') {
    const values = {
      footswitch: { ohms: random.pick([4.7e3, 22e3, 47e3, 100e3]), volts: random.pick([3.3, 5]) },
      'footswitch-double': { ohms: random.pick([4.7e3, 22e3, 47e3]), volts: random.pick([3.3, 5]) },
      'expression-ring': {
        ohms: random.pick([470, 2.2e3]),
        volts: random.pick([3.3, 5]),
        senseOhms: random.pick([22e3, 1e6]),
      },
      'expression-tip': {
        ohms: random.pick([470, 2.2e3]),
        volts: random.pick([3.3, 5]),
        senseOhms: random.pick([22e3, 1e6]),
      },
      headphone: { ohms: random.pick([10, 68, 100]) },
      line: { ohms: random.pick([10e3, 47e3, 220e3, 2.2e6]) },
      'control-voltage': { ohms: random.pick([100, 470, 2.2e3]), volts: random.pick([0, 1, 5, 8]) },
    }[under.other];
    return { ...under, values };
  }
  const { jack } = under;
  const ohms = random.pick([100, 150, 330, 470]);
  switch (jack.circuit) {
    case 'driver-5v':
    case 'driver-3v3':
    case 'driver-3v3-push-pull':
      return {
        kind: 'control',
        jack: { ...jack, values: { sourceOhms: ohms, sinkOhms: ohms, stageOhms: random.pick([0, 30]) } },
      };
    case 'driver-ground':
      return {
        kind: 'control',
        jack: { ...jack, values: { sinkOhms: ohms, supplyVolts: random.pick([3.3, 5]) } },
      };
    case 'receiver-logic':
      return {
        kind: 'control',
        jack: { ...jack, values: { pullUpOhms: random.pick([4.7e3, 22e3, 47e3]), supplyVolts: 5 } },
      };
    default:
      return {
        kind: 'control',
        jack: { ...jack, values: { seriesOhms: ohms, ledShiftVolts: random.pick([-0.15, 0.1, 0.25]) } },
      };
  }
}

/** Draw a world. `outsideShare` of all jacks have parts in no catalogue; a third of phone jacks are no control jacks. */
export function drawWorld(random: Random, outsideShare: number): World {
  const connector = random.pick([
    'din5',
    'trs-3.5',
    'trs-3.5',
    'trs-6.35',
    'trs-2.5',
    'ts-6.35',
    'ts-3.5',
  ] as const);
  const all = jacksWith(connector);
  const others = all.filter(({ kind }) => kind === 'other');
  const from =
    others.length > 0 && random.chance(1 / 3) ? others : all.filter(({ kind }) => kind === 'control');
  const outside = random.chance(outsideShare);
  const listed = random.pick(from);
  const under = outside ? outsideOf(listed, random) : listed;
  const direction = under.kind === 'control' ? under.jack.direction : undefined;
  const marked =
    direction === undefined || random.chance(0.5)
      ? 'nothing'
      : random.chance(0.01)
        ? direction === 'in'
          ? 'out'
          : 'in'
        : direction;
  const profile = meterProfile(random.pick(METER_PROFILES));
  const canSwitchOn = random.chance(0.9);
  const evidence: Evidence = {
    connector,
    marked,
    menu: [],
    meter: random.chance(0.5) ? profile.name : 'not-known',
    canSwitchOn,
    canStreamClock: canSwitchOn && random.chance(0.5),
  };
  const places = new Map<string, number>();
  const diodes = Math.exp(0.5 * normal(random));
  const current = 1 + 0.05 * normal(random);
  const read = (at: JackReading): Reading => {
    const value = measured(under, at, profile, places, random, diodes, current);
    const noisy = Number.isFinite(value)
      ? value * (1 + 0.02 * normal(random)) + (at.meter === 'ohms' ? 0.5 : 3e-3) * normal(random)
      : value;
    return shown(
      { meter: at.meter, value: at.meter === 'ohms' && value >= 0 ? Math.max(0, noisy) : noisy },
      profile,
      0,
    );
  };
  return { name: nameOf(listed), under, outside, evidence, read };
}

/** Measure with every part at a place of its own in its tolerance, the same for every reading of one device. */
function measured(
  under: JackUnderTest,
  at: JackReading,
  profile: MeterProfile,
  places: Map<string, number>,
  random: Random,
  diodes: number,
  current: number,
): number {
  const subject = jackSubject(under);
  const placement = { ...at, red: subject.node(at.red), black: subject.node(at.black) };
  const bench = setUp(subject, placement, profile, PROBE_LEAD_OHMS);
  const { elements } = bench.compiled.circuit;
  for (const spread of subject.spreads) {
    const place = places.get(spread.name) ?? 2 * random.next() - 1;
    places.set(spread.name, place);
    spread.parts.forEach((part, index) => {
      const element = elements.find(({ name }) => name === part);
      if (
        !element ||
        (part === 'out supply' && element.kind === 'resistor') ||
        part.endsWith(' supply') !== (element.kind === 'voltage')
      )
        return;
      const [low, mid, high] = [spread.low[index], spread.nominal[index], spread.high[index]] as [
        number,
        number,
        number,
      ];
      const far = place < 0 ? low : high;
      const share = Math.abs(place);
      setValue(
        bench.compiled,
        part,
        element.kind === 'diode' ? mid * (far / mid) ** share : mid + (far - mid) * share,
      );
    });
  }
  for (const element of elements) {
    if (element.kind === 'diode' && !element.name.endsWith('LED'))
      setValue(bench.compiled, element.name, element.saturationAmperes * diodes);
    if (element.kind === 'current' && element.name === METER_PARTS.source)
      setValue(bench.compiled, element.name, element.amperes * current);
  }
  return measure(bench);
}
