import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { claimsOf, deckIn, readDeck } from '../support/deck-text.ts';
import { runOperatingPoint, runTransient } from '../support/spice.ts';

/** A deck whose answer is known without any engine: 10 V over 1 kohm and 2 kohm. */
const DIVIDER = 'divider\nV1 Top 0 10\nR1 Top Mid 1k\nR2 Mid 0 2k\n.op\n';

// The first run starts the engine, which takes a second, and longer on a busy machine.
vi.setConfig({ testTimeout: 60_000 });

beforeEach(() => {
  // The engine prints every complaint; here complaints are what is asked for.
  vi.spyOn(console, 'error').mockImplementation(() => undefined);
});
afterEach(() => {
  vi.restoreAllMocks();
});

test('the engine solves a divider, and signs currents from first node to second', async () => {
  const { volts, amperes } = await runOperatingPoint(DIVIDER);
  expect([...volts.keys()].sort()).toEqual(['mid', 'top']);
  expect(volts.get('mid')).toBeCloseTo(20 / 3, 9);
  expect(amperes.get('r1')).toBeCloseTo(10 / 3000, 12);
  expect(amperes.get('v1')).toBeCloseTo(-10 / 3000, 12);
});

test.each([
  [
    'a part without its model',
    'bad\nV1 Top 0 10\nR1 Top Mid 1k\nD1 Mid 0 nothing\n.op\n',
    /could not find a valid modelname/,
  ],
  ['a value that is no number', 'bad\nV1 Top 0 10\nR1 Top Mid much\nR2 Mid 0 2k\n.op\n', /not parsed/],
  [
    'two sources that contradict',
    'bad\nV1 Top 0 10\nV2 Top 0 9\nR1 Top Mid 1k\nR2 Mid 0 2k\n.op\n',
    /aborted/,
  ],
  ['a current with nowhere to go', 'bad\nI1 0 Top 1m\nR1 Top Mid 1k\nC1 Mid 0 1n\n.op\n', /singular matrix/],
])(
  'a deck with %s is refused, not answered with the numbers of the deck before',
  async (_what, deck, complaint) => {
    await runOperatingPoint(DIVIDER);
    await expect(runOperatingPoint(deck)).rejects.toThrow(complaint);
    expect((await runOperatingPoint(DIVIDER)).volts.get('mid')).toBeCloseTo(20 / 3, 9);
  },
);

test('an engine that dies of a deck is noticed, and the next deck gets a fresh one', async () => {
  const twice = 'bad\nV1 Top 0 10\nR1 Top 0 1k\n.tran 1u 5u 0 much\n';
  await expect(runTransient(twice)).rejects.toThrow(/SPICE engine/);
  const unknown = 'bad\nV1 Top 0 10\nD1 Top 0 led\n.model led d is=1e-14 strange=3\n.op\n';
  await expect(runOperatingPoint(unknown)).rejects.toThrow(/SPICE engine: stopped: .*fatal/);
  expect((await runOperatingPoint(DIVIDER)).volts.get('mid')).toBeCloseTo(20 / 3, 9);
});

test('runs started together are kept apart', async () => {
  const decks = [1, 2, 3, 4].map((volts) => `source of ${volts} V\nV1 Top 0 ${volts}\nR1 Top 0 1k\n.op\n`);
  const points = await Promise.all(decks.map(runOperatingPoint));
  expect(points.map(({ volts }) => volts.get('top'))).toEqual([1, 2, 3, 4]);
});

test('a capacitor charges to 63.212 % in one time constant, as 1 - 1/e says', async () => {
  const trace = await runTransient(
    'step\nV1 in 0 PULSE(0 1 0 1n 1n 1 1)\nR1 in out 1k\nC1 out 0 1u\n.tran 10u 1m 0 1u\n',
  );
  const out = trace.volts.get('out') ?? [];
  expect(trace.seconds.at(-1)).toBeCloseTo(1e-3, 9);
  expect(Math.abs((out.at(-1) ?? NaN) - (1 - Math.exp(-1)))).toBeLessThan(1e-5);
});

test('decks that could mislead are refused by name, need and value', () => {
  expect(() => readDeck('t\nQ1 a b c\n.op')).toThrow(
    "SPICE deck: needs a part (r, d, c, v, i, b) and two nodes, got 'Q1 a b c'",
  );
  expect(() => readDeck('t\nR1 a 0 1k\nr1 b 0 1k\n.op')).toThrow(
    "SPICE deck 't': two parts have the same name",
  );
  expect(() => readDeck('t\nR1 a 0 1k\n.options reltol=1\n.op')).toThrow(
    "SPICE deck 't': needs .model, .op or .tran, got .options reltol=1",
  );
  expect(() => readDeck('t\nR1 a 0 1k')).toThrow("SPICE deck 't': needs one analysis, got 0");
  expect(() => readDeck('t\nR1 a 0 1k\n.tran 1u 10u')).toThrow(
    "SPICE deck 't': .tran needs step, stop, start and maximum step, got .tran 1u 10u",
  );
});

test('a deck for two states gives each its own lines', () => {
  const text = 'two states\n*idle* V1 a 0 5\n*active* V1 a 0 0\nR1 a 0 1k\n* expect idle r1 5.00 mA\n.op';
  expect(readDeck(deckIn('idle', text)).lines).toEqual(['V1 a 0 5', 'R1 a 0 1k', '.op']);
  expect(readDeck(deckIn('active', text)).lines).toEqual(['V1 a 0 0', 'R1 a 0 1k', '.op']);
  const [claim] = claimsOf(text);
  expect(claim).toMatchObject({ state: 'idle', part: 'r1' });
  expect(claim?.amperes).toBeCloseTo(5e-3, 15);
  expect(claim?.tolerance).toBeCloseTo(5e-6, 15);
  expect(() => claimsOf('t\n* expect idle r1 5 mA')).toThrow(
    "SPICE deck: needs '* expect idle|active PART NUMBER mA', got '* expect idle r1 5 mA'",
  );
});
