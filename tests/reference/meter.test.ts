/** Predicted readings of every jack of the catalogue against a SPICE engine that solves decks written from the sources. */
import { describe, expect, test } from 'vitest';
import { jacksWith } from '../../src/core/meter/catalogue.ts';
import { LED_TESTER, METER_FUNCTIONS, meterProfile } from '../../src/core/meter/instruments.ts';
import { POWERS } from '../../src/core/meter/power.ts';
import { measureJack, probedContacts, readJack } from '../../src/core/meter/subjects.ts';
import type { JackUnderTest } from '../../src/core/meter/subjects.ts';
import { sayUnderTest } from '../../src/core/meter/words.ts';
import type { Connector } from '../../src/core/wiring/connectors.ts';
import { isWired, jackDeck } from '../support/jack-decks.ts';
import type { DeckReading, DeckState } from '../support/jack-decks.ts';
import { runOperatingPoint } from '../support/spice.ts';

const PROFILE = meterProfile('usual');

/** Longest time for one jack on a busy machine: some hundred short runs of the engine. */
const ENGINE_MILLISECONDS = 120_000;

/** 48 bytes of F8 a second, each with a start bit and three zeros of 32 us: worked by hand. */
const CLOCK_SHARE = 48 * 4 * 32e-6;

/** What the workbook promises: 1 % of the reading or 2 mV; the tester's current may be 0.1 uA off instead. */
const SHARE = 0.01;
const VOLTS = 2e-3;

/** The usual meter, by hand: volts at the probes to what it shows. */
function shownOf(meter: DeckReading['meter'], value: number): number | string {
  const ohms = (value / (0.5 - value)) * 1e3;
  const blocked = !(value < 0.5);
  switch (meter) {
    case 'volts':
      return value;
    case 'diode':
      return value > 3 ? 'overload' : value;
    case 'ohms':
      return blocked || ohms < 0 || ohms > 20e6 ? 'overload' : ohms;
    case 'continuity':
      return !blocked && ohms >= 0 && ohms < 50 ? 'beep' : 'silent';
    case 'led':
      return value > 0.3e-3 ? 'glows' : 'dark';
  }
}

/** A probe on a contact with nothing behind it, by hand: the meter's own open circuit. */
const OPEN = { volts: 0, ohms: 0.5, continuity: 0.5, diode: 1e4, led: 0 } as const;

async function engineOf(
  under: JackUnderTest,
  state: DeckState,
  readings: readonly DeckReading[],
): Promise<readonly number[]> {
  const values: number[] = readings.map(({ meter }) => OPEN[meter]);
  const live = readings.filter((one) => isWired(under, one.red) && isWired(under, one.black));
  const decks = METER_FUNCTIONS.flatMap((meter) => {
    const those = live.filter((one) => one.meter === meter);
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

async function compare(
  under: JackUnderTest,
  connector: Connector,
): Promise<{ count: number; wrong: string[] }> {
  const contacts = probedContacts(connector);
  const readings = METER_FUNCTIONS.flatMap((meter) =>
    contacts.flatMap((red) =>
      contacts.filter((black) => black !== red).map((black) => ({ meter, red, black })),
    ),
  );
  const off = await engineOf(under, 'off', readings);
  const idle = await engineOf(under, 'idle', readings);
  const active = await engineOf(under, 'active', readings);
  const wrong: string[] = [];
  let count = 0;
  for (const power of POWERS) {
    readings.forEach((reading, at) => {
      const { meter } = reading;
      const ceiling = (value: number): number => (meter === 'diode' && value > 3 ? Infinity : value);
      const value =
        power === 'off'
          ? (off[at] as number)
          : power === 'idle'
            ? (idle[at] as number)
            : (1 - CLOCK_SHARE) * ceiling(idle[at] as number) + CLOCK_SHARE * ceiling(active[at] as number);
      const theirs = shownOf(meter, value);
      const ours = readJack(under, { ...reading, power }, PROFILE);
      const show = ours.shows === 'value' ? ours.value : ours.shows;
      count++;
      const near =
        typeof show === 'number' && typeof theirs === 'number'
          ? Math.abs(show - theirs) <= Math.max(SHARE * Math.abs(theirs), meter === 'ohms' ? 1e-2 : VOLTS)
          : show === theirs;
      if (!near)
        wrong.push(
          `${sayUnderTest(under)}, ${power}, ${meter} ${reading.red} to ${reading.black}: ours ${show}, engine ${theirs}`,
        );
      if (meter === 'led') {
        const amperes = measureJack(under, { ...reading, power }, PROFILE);
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
      '%s reads as the engine says, between every two contacts, in every function, off, idle and with clock',
      async (_words, under) => {
        const { count, wrong } = await compare(under, connector);
        const contacts = probedContacts(connector).length;
        expect(count).toBe(METER_FUNCTIONS.length * POWERS.length * contacts * (contacts - 1));
        expect(wrong).toEqual([]);
      },
      ENGINE_MILLISECONDS,
    );
  },
);

test('the tester is judged by the current that the sources state', () => {
  expect(LED_TESTER.glowAmperes).toBe(0.3e-3);
});
