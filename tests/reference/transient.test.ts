/**
 * Solutions in time beside a SPICE engine run at reltol=1e-5 with a small step, over 18 seeded links, the links of decks that have
 * something round the loop, and 12 seeded networks.
 * Allowed: 1 % of the swing away from edges, 50 ns at edges, 0.1 % where things have settled (of the value or of
 * the swing, whichever is more), 0.5 % of currents at
 * rest. Where a quantity hardly moves, its swing is taken as no less than 10 mV or 10 uA.
 */
import { expect, test } from 'vitest';
import { compileCircuit } from '../../src/core/circuit/compile.ts';
import { spiceDeck } from '../../src/core/circuit/spice-deck.ts';
import type { SpiceDeck } from '../../src/core/circuit/spice-deck.ts';
import type { Transient } from '../../src/core/circuit/transient.ts';
import { sendBytes } from '../../src/core/signal/frames.ts';
import { linkDrives, restDeck, timeDeck } from '../../src/core/signal/link-deck.ts';
import { driveLine } from '../../src/core/signal/line.ts';
import { prepareTimeLink } from '../../src/core/signal/time-link.ts';
import { prepareLink, solveState } from '../../src/core/verdict/prepare.ts';
import { STATES } from '../../src/core/wiring/driver-circuit.ts';
import type { Link } from '../../src/core/wiring/link.ts';
import { linkCircuit } from '../../src/core/wiring/link-circuit.ts';
import { DECK_LINKS } from '../support/deck-links.ts';
import { seededRandom } from '../support/random.ts';
import { solveTransient } from '../support/solve-transient.ts';
import { runOperatingPoint, runTransient } from '../support/spice.ts';
import type { EngineTrace } from '../support/spice.ts';
import { timedLink, timedNetwork } from '../support/timed.ts';

/** An edge and its tail: after so many seconds a lead of up to 30 m has settled to a per cent. */
const EDGE_SECONDS = 8e-6;
/** Just before a corner everything the corner before set off has had its time. */
const BEFORE_CORNER_SECONDS = 0.2e-6;
const LEAST_VOLTS = 10e-3;
const LEAST_AMPERES = 10e-6;
/** Nodes of a random network may move by 10 mV only, of which 1 % is asked. */
const FOR_MILLIVOLTS = { volts: 2e-5, share: 1e-4 };
const LONG = 120_000;

interface Pair {
  readonly what: string;
  readonly ours: (seconds: number) => number;
  readonly theirs: readonly number[];
  readonly least: number;
}

function at(seconds: readonly number[], values: readonly number[], when: number): number {
  let high = seconds.findIndex((one) => one >= when);
  if (high < 0) high = seconds.length - 1;
  if (high === 0) return values[0] ?? NaN;
  const from = seconds[high - 1] ?? NaN;
  const share = (when - from) / ((seconds[high] ?? NaN) - from);
  return (values[high - 1] ?? NaN) * (1 - share) + (values[high] ?? NaN) * share;
}

/** When a quantity crosses the middle of its range between two moments, found on a grid of 5 ns. */
function crossing(value: (seconds: number) => number, from: number, to: number, middle: number): number {
  const rising = value(from) < middle;
  for (let when = from; when < to; when += 5e-9) if (value(when) < middle !== rising) return when;
  return to;
}

function compare(trace: EngineTrace, corners: readonly number[], pair: Pair): void {
  const { seconds } = trace;
  const low = Math.min(...pair.theirs);
  const high = Math.max(...pair.theirs);
  const swing = Math.max(high - low, pair.least);
  const edge = (when: number): boolean =>
    corners.some((corner) => when > corner - 1e-9 && when < corner + EDGE_SECONDS);
  seconds.forEach((when, index) => {
    if (edge(when)) return;
    const off = Math.abs(pair.ours(when) - (pair.theirs[index] ?? NaN)) / swing;
    expect(off, `${pair.what} at ${when} s`).toBeLessThan(0.01);
  });
  const theirs = (when: number): number => at(seconds, pair.theirs, when);
  corners.forEach((corner, index) => {
    const next = corners[index + 1] ?? seconds.at(-1) ?? NaN;
    if (next - corner > 20e-6) {
      const when = next - BEFORE_CORNER_SECONDS;
      const whole = Math.max(swing, Math.abs(theirs(when)));
      expect(Math.abs(pair.ours(when) - theirs(when)) / whole, `${pair.what} settled`).toBeLessThan(1e-3);
    }
    const before = theirs(corner);
    const after = theirs(Math.min(next, corner + EDGE_SECONDS));
    if (Math.abs(after - before) < swing / 2 || high - low < pair.least) return;
    const middle = (before + after) / 2;
    const until = Math.min(next, corner + EDGE_SECONDS);
    const late = crossing(pair.ours, corner, until, middle) - crossing(theirs, corner, until, middle);
    expect(Math.abs(late), `${pair.what}: edge at ${corner} s`).toBeLessThanOrEqual(50e-9);
  });
}

function pairsOf(
  deck: SpiceDeck,
  trace: EngineTrace,
  ours: Transient,
  resistors: readonly string[],
): readonly Pair[] {
  const column = (
    from: ReadonlyMap<string, readonly number[]>,
    name: string | undefined,
  ): readonly number[] => {
    const found = from.get(name ?? '');
    if (!found) throw new Error(`engine: nothing is called '${String(name)}'`);
    return found;
  };
  const nodes = [...deck.nodes].filter(([, name]) => name !== '0');
  return [
    ...nodes.map(([node, name]) => ({
      what: node,
      ours: (when: number) => ours.volts(node, when),
      theirs: column(trace.volts, name),
      least: LEAST_VOLTS,
    })),
    ...resistors.map((part) => ({
      what: part,
      ours: (when: number) => ours.amperes(part, when),
      theirs: column(trace.amperes, deck.parts.get(part)),
      least: LEAST_AMPERES,
    })),
  ];
}

/** A byte through a link, beside the engine's run of the deck that we export of it. */
async function followByte(link: Link, byte: number): Promise<void> {
  const { wave } = sendBytes([byte], { startSeconds: 20e-6 });
  const deck = timeDeck(link, 'separate', wave, 380e-6);
  const trace = await runTransient(deck.text);
  const time = prepareTimeLink(link);
  const line = driveLine(time, wave);
  const resistors = time.model.parts
    .filter(({ element, role }) => element.kind === 'resistor' && role !== 'contact' && role !== 'conductor')
    .map(({ element }) => element.name);
  const corners = wave.edges.map(({ seconds }) => seconds);
  const shifted: EngineTrace = {
    ...trace,
    seconds: trace.seconds.map((one) => Math.max(one, line.fromSeconds)),
  };
  for (const pair of pairsOf(deck, shifted, line.transient, resistors)) compare(shifted, corners, pair);
  expect(linkDrives(time.model, wave, time.timing).length).toBe(time.model.switching.idle.length);
}

test.each(Array.from({ length: 18 }, (_, seed) => seed))(
  'a byte through seeded link %i runs as the engine runs its exported deck',
  async (seed) => {
    const random = seededRandom(seed);
    const link = timedLink(random);
    await followByte(link, random.integer(0, 255));
  },
  LONG,
);

/** Links of decks written by hand that have something inside a jack, or a foreign supply on it. */
const AROUND = Object.entries(DECK_LINKS).filter(([, { link }]) =>
  [link.output, ...link.branches.map(({ input }) => input)].some(
    ({ extras = [], values }) =>
      extras.length > 0 || Object.keys(values).some((name) => /^(foreign|activity|tap)/.test(name)),
  ),
);

test.each(AROUND)(
  'a byte through the link of %s runs as the engine runs its exported deck',
  (_, { link }) => followByte(link, 0x55),
  LONG,
);

test.each(Array.from({ length: 12 }, (_, seed) => 100 + seed))(
  'seeded network %i runs as the engine runs its exported deck',
  async (seed) => {
    const { circuit, drives, toSeconds } = timedNetwork(seededRandom(seed));
    const deck = spiceDeck(circuit, {
      title: `network ${seed}`,
      inTime: { drives, toSeconds, stepSeconds: 0.1e-6, mostStepSeconds: 0.05e-6 },
    });
    const trace = await runTransient(deck.text);
    const ours = solveTransient(compileCircuit(circuit), drives, toSeconds, { tolerance: FOR_MILLIVOLTS });
    if (!ours.ok) throw new Error(ours.reason);
    const resistors = circuit.elements.filter(({ kind }) => kind === 'resistor').map(({ name }) => name);
    const corners = (drives[0]?.points ?? []).map(({ seconds }) => seconds);
    for (const pair of pairsOf(deck, trace, ours, resistors)) compare(trace, corners, pair);
  },
  LONG,
);

test.each(Array.from({ length: 18 }, (_, seed) => seed))(
  'the exported decks of seeded link %i at rest give our currents within 0.5 %',
  async (seed) => {
    const link = timedLink(seededRandom(seed));
    for (const grounding of ['separate', 'joined'] as const) {
      const prepared = prepareLink(link, grounding);
      for (const state of STATES) {
        const deck = restDeck(link, grounding, state);
        const { amperes } = await runOperatingPoint(deck.text);
        const ours = solveState(prepared, state);
        if (!ours.ok) throw new Error(ours.reason);
        for (const { name, kind } of linkCircuit(link, grounding).circuit.elements) {
          const theirs = amperes.get(deck.parts.get(name) ?? '');
          if (theirs === undefined || kind === 'capacitor') continue;
          expect(Math.abs(ours.amperes(name) - theirs), `${state}: ${name}`).toBeLessThanOrEqual(
            5e-3 * Math.abs(theirs) + 2e-9,
          );
        }
      }
    }
  },
  LONG,
);
