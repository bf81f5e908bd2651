/** Predicted readings of every jack of the catalogue against a SPICE engine that solves decks written from the sources. */
import { describe, expect, test } from 'vitest';
import { jacksWith } from '../../src/core/readings/catalogue.ts';
import {
  LED_TESTER,
  METER_FUNCTIONS,
  METER_PROFILES,
  meterProfile,
} from '../../src/core/readings/instruments.ts';
import { POWERS } from '../../src/core/readings/power.ts';
import { measure, setUp } from '../../src/core/readings/measure.ts';
import { PROBE_LEAD_OHMS, jackSubject, probedContacts, readJack } from '../../src/core/readings/subjects.ts';
import type { JackUnderTest } from '../../src/core/readings/subjects.ts';
import { sayUnderTest } from '../../src/core/readings/words.ts';
import type { Connector, Contact } from '../../src/core/wiring/connectors.ts';
import { METERS, isWired, jackDeck } from '../support/jack-decks.ts';
import type { DeckReading, DeckState, MeterName } from '../support/jack-decks.ts';
import { seededRandom } from '../support/random.ts';
import { runOperatingPoint } from '../support/spice.ts';

/** Longest time for one jack on a busy machine: some hundred short runs of the engine. */
const ENGINE_MILLISECONDS = 120_000;

/** 48 bytes of F8 a second, each with a start bit and three zeros of 32 us: worked by hand. */
const CLOCK_SHARE = 48 * 4 * 32e-6;

/** 90 3C 40 once in a fifth of a second: start bits and zeros are 7, 5 and 8 of 32 us, worked by hand. */
const NOTE_SHARE = (20 * 32e-6) / 0.2;

/** What the workbook promises: 1 % of the reading or 2 mV; the tester's current may be 0.1 uA off instead. */
const SHARE = 0.01;
const VOLTS = 2e-3;

/** A meter, by hand: volts at the probes to what it shows. */
function shownOf({ meter, name = 'usual' }: DeckReading, value: number): number | string {
  const { diodeVolts, mostOhms } = METERS[name];
  const ohms = (value / (0.5 - value)) * 1e3;
  const blocked = !(value < 0.5);
  switch (meter) {
    case 'volts':
    case 'loaded':
      return value;
    case 'diode':
      return value > diodeVolts ? 'overload' : value;
    case 'ohms':
      return blocked || ohms < 0 || ohms > mostOhms ? 'overload' : ohms;
    case 'continuity':
      return !blocked && ohms >= 0 && ohms < 50 ? 'beep' : 'silent';
    case 'led':
      return value >= 0.3e-3 ? 'glows' : value >= 10e-6 ? 'faint' : 'dark';
  }
}

/** A probe on a contact with nothing behind it, by hand: the meter's own open circuit. */
const OPEN = { volts: 0, ohms: 0.5, continuity: 0.5, diode: 1e4, led: 0, loaded: 0 } as const;

async function engineOf(
  under: JackUnderTest,
  state: DeckState,
  readings: readonly DeckReading[],
): Promise<readonly number[]> {
  const values: number[] = readings.map(({ meter }) => OPEN[meter]);
  const live = readings.filter((one) => isWired(under, one.red) && isWired(under, one.black));
  const decks = METER_FUNCTIONS.flatMap((meter) => {
    const those = live.filter((one) => one.meter === meter);
    if (those.length === 0) return [];
    // The engine's iteration breaks down on many forced currents at once, so each diode test has a deck of its own.
    return meter === 'diode' ? those.map((one) => [one]) : [those];
  });
  for (const deck of decks) {
    const title = `${sayUnderTest(under)}, ${state}, ${deck[0]?.meter ?? ''}`;
    const point = await runOperatingPoint(jackDeck(title, under, state, deck));
    deck.forEach((reading, number) => {
      values[readings.indexOf(reading)] =
        (reading.meter === 'led' ? point.amperes.get(`rmx${number}`) : point.volts.get(`red${number}`)) ??
        NaN;
    });
  }
  return values;
}

/** Every reading between every two contacts of a jack, with the usual meter. */
function everyReading(connector: Connector): readonly DeckReading[] {
  const contacts = probedContacts(connector);
  return METER_FUNCTIONS.flatMap((meter) =>
    contacts.flatMap((red) =>
      contacts.filter((black) => black !== red).map((black) => ({ meter, red, black })),
    ),
  );
}

/** One reading with each other meter in each function, on contacts drawn by seed that have something behind them. */
function otherMeters(under: JackUnderTest, connector: Connector, seed: number): readonly DeckReading[] {
  const random = seededRandom(seed);
  const wired = probedContacts(connector).filter((contact) => isWired(under, contact));
  return (Object.keys(METERS) as MeterName[])
    .filter((name) => name !== 'usual')
    .flatMap((name) =>
      METER_FUNCTIONS.filter((meter) => meter !== 'led').map((meter) => {
        const red = random.pick(wired);
        return { meter, name, red, black: random.pick(wired.filter((one) => one !== red)) };
      }),
    );
}

async function compare(
  under: JackUnderTest,
  readings: readonly DeckReading[],
): Promise<{ count: number; wrong: string[] }> {
  const off = await engineOf(under, 'off', readings);
  const idle = await engineOf(under, 'idle', readings);
  const active = await engineOf(under, 'active', readings);
  const wrong: string[] = [];
  let count = 0;
  for (const power of POWERS) {
    readings.forEach((reading, at) => {
      const { meter, name = 'usual' } = reading;
      const profile = meterProfile(name);
      const place = { meter, power, red: reading.red as Contact, black: reading.black as Contact };
      const ceiling = (value: number): number =>
        meter === 'diode' && value > METERS[name].diodeVolts ? Infinity : value;
      const mean = (share: number): number =>
        (1 - share) * ceiling(idle[at] as number) + share * ceiling(active[at] as number);
      const value =
        power === 'off'
          ? (off[at] as number)
          : power === 'idle'
            ? (idle[at] as number)
            : mean(power === 'clock' ? CLOCK_SHARE : NOTE_SHARE);
      const theirs = shownOf(reading, value);
      const ours = readJack(under, place, profile);
      const show = ours.shows === 'value' ? ours.value : ours.shows;
      count++;
      const near =
        typeof show === 'number' && typeof theirs === 'number'
          ? Math.abs(show - theirs) <= Math.max(SHARE * Math.abs(theirs), meter === 'ohms' ? 1e-2 : VOLTS)
          : show === theirs;
      if (!near)
        wrong.push(
          `${sayUnderTest(under)}, ${name}, ${power}, ${meter} ${reading.red} to ${reading.black}: ours ${show}, engine ${theirs}`,
        );
      if (meter === 'led') {
        const subject = jackSubject(under);
        const nodes = { ...place, red: subject.node(place.red), black: subject.node(place.black) };
        const amperes = measure(setUp(subject, nodes, profile, PROBE_LEAD_OHMS));
        if (!(Math.abs(amperes - value) <= Math.max(SHARE * Math.abs(value), 1e-7)))
          wrong.push(
            `${sayUnderTest(under)}, ${power}, tester ${reading.red} to ${reading.black}: ours ${amperes} A, engine ${value} A`,
          );
      }
    });
  }
  return { count, wrong };
}

describe.each(['din5', 'trs-3.5', 'ts-6.35'] as const)(
  'every jack of the catalogue with a %s connector',
  (connector) => {
    test.each(jacksWith(connector).map((under) => [sayUnderTest(under), under] as const))(
      '%s reads as the engine says, between every two contacts, in every function, off, at rest, with clock and with notes',
      async (_words, under) => {
        const { count, wrong } = await compare(under, everyReading(connector));
        const contacts = probedContacts(connector).length;
        expect(count).toBe(METER_FUNCTIONS.length * POWERS.length * contacts * (contacts - 1));
        expect(wrong).toEqual([]);
      },
      ENGINE_MILLISECONDS,
    );
  },
);

describe('the other meters', () => {
  test('have the constants that the decks are written with', () => {
    for (const [name, { voltsMegohms, diodeMilliamperes, diodeVolts, mostOhms }] of Object.entries(METERS))
      expect(meterProfile(name as MeterName)).toMatchObject({
        voltsOhms: voltsMegohms * 1e6,
        diodeAmperes: diodeMilliamperes / 1e3,
        diodeVolts,
        ohmsMost: mostOhms,
      });
    expect(Object.keys(METERS)).toEqual([...METER_PROFILES]);
  });

  test.each(
    (['din5', 'trs-3.5', 'ts-6.35'] as const).flatMap((connector) =>
      jacksWith(connector).map((under, at) => [sayUnderTest(under), connector, under, at + 1] as const),
    ),
  )(
    'read %s with a %s connector as the engine says, in every function, off, at rest, with clock and with notes',
    async (_words, connector, under, seed) => {
      const readings = otherMeters(under, connector, seed);
      const { count, wrong } = await compare(under, readings);
      // Two meters, five functions, four states of the power.
      expect(count).toBe(2 * 5 * 4);
      expect(wrong).toEqual([]);
    },
    ENGINE_MILLISECONDS,
  );
});

test('the tester is judged by the current that the sources state', () => {
  // 0.01 mcd is seen at half a metre; 10 mcd at 10 mA is 0.01 mcd at 10 uA. Thirty times that is plain.
  expect(LED_TESTER.seenAmperes).toBe(10e-6);
  expect(LED_TESTER.plainAmperes).toBe(0.3e-3);
});
