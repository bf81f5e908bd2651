/**
 * Decks written by hand from the published circuits (MMA CA-033, figs. 1 and 2; common practice for ground-referenced jacks),
 * solved by the SPICE engine, against what the deck's header derives by hand and against the link that the core builds itself.
 */
import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, test, vi } from 'vitest';
import { compileCircuit, setValue } from '../../src/core/circuit/compile.ts';
import { solveOperatingPoint } from '../../src/core/circuit/operating-point.ts';
import { DRIVERS } from '../../src/core/wiring/drivers.ts';
import { RECEIVERS } from '../../src/core/wiring/receivers.ts';
import { linkCircuit } from '../../src/core/wiring/link-circuit.ts';
import { VOLTS_ALLOWED, compareAmperes, compareVolts, said, worstOf } from '../support/agreement.ts';
import type { Comparison } from '../support/agreement.ts';
import { DECK_LINKS } from '../support/deck-links.ts';
import type { DeckLink } from '../support/deck-links.ts';
import { DECK_STATES, claimsOf, deckIn } from '../support/deck-text.ts';
import type { DeckState } from '../support/deck-text.ts';
import { runOperatingPoint } from '../support/spice.ts';
import type { EnginePoint } from '../support/spice.ts';

const DECKS = new URL('../support/decks/', import.meta.url);
const NAMES = readdirSync(DECKS)
  .filter((file) => file.endsWith('.cir'))
  .map((file) => file.slice(0, -'.cir'.length));

// The first run starts the engine, which takes a second, and longer on a busy machine.
vi.setConfig({ testTimeout: 60_000 });

/**
 * How far apart voltages may be where a node hangs on nothing but a diode that blocks, volts. No current flows, so the node
 * stands where its diode begins; the engine rounds the picoamperes there, and is off by half a millivolt.
 */
const HANGING_VOLTS = 1e-3;

/**
 * Not compared: where the decks have two ideal sources for supply and stage, the core has one supply and a switch, so that
 * their currents are shared out another way. What flows in the resistors around them is compared.
 */
const OUTPUT_SOURCES: readonly string[] = ['vsupply', 'vout', 'vsupply2', 'vout2'];

test('there are at least twelve decks written by hand, and each has its link', () => {
  expect(NAMES.length).toBeGreaterThanOrEqual(12);
  expect([...NAMES].sort()).toEqual(Object.keys(DECK_LINKS).sort());
});

test('every driver meets every receiver in some deck', () => {
  const met = Object.values(DECK_LINKS).flatMap(({ link }) =>
    link.branches.map(({ input }) => `${link.output.circuit} ${input.circuit}`),
  );
  for (const driver of DRIVERS)
    for (const receiver of RECEIVERS) expect(met).toContain(`${driver} ${receiver}`);
});

describe.each(NAMES)('%s', (name) => {
  const text = readFileSync(new URL(`${name}.cir`, DECKS), 'utf8');

  test.each(DECK_STATES)('the engine finds the currents derived by hand in %s', async (state) => {
    const { amperes } = await runOperatingPoint(deckIn(state, text));
    const claims = claimsOf(text).filter((claim) => claim.state === state);
    expect(claims.length).toBeGreaterThan(0);
    for (const { part, amperes: expected, tolerance } of claims) {
      expect(Math.abs((amperes.get(part) ?? NaN) - expected), part).toBeLessThanOrEqual(tolerance);
    }
  });

  test.each(DECK_STATES)(
    'the link that we build agrees at every node and in every part in %s',
    async (state) => {
      const deckLink = DECK_LINKS[name];
      if (deckLink === undefined) throw new Error(`deck '${name}': no link is given for it`);
      const worst = worstOf(compareLink(deckLink, state, await runOperatingPoint(deckIn(state, text))));
      expect(worst.excess, said(worst)).toBeLessThanOrEqual(1);
    },
  );
});

function compareLink(
  { link, grounding, nodes, parts, hanging = [] }: DeckLink,
  state: DeckState,
  engine: EnginePoint,
): readonly Comparison[] {
  const { circuit, switching, misfits } = linkCircuit(link, grounding);
  expect(misfits).toEqual([]);
  const compiled = compileCircuit(circuit);
  for (const [part, position] of switching[state]) setValue(compiled, part, position);
  const ours = solveOperatingPoint(compiled);
  if (!ours.ok) throw new Error(`link: ${ours.reason}`);
  return [
    ...[...engine.volts].map(([node, volts]) => {
      const found = ours.volts(nodes[node] ?? `deck node ${node}`);
      const loose = state === 'idle' && hanging.includes(node);
      return compareVolts(node, found, volts, loose ? HANGING_VOLTS : VOLTS_ALLOWED);
    }),
    ...[...engine.amperes]
      .filter(([part]) => !OUTPUT_SOURCES.includes(part))
      .map(([part, amperes]) => {
        const name = parts[part] ?? `deck part ${part}`;
        const turned = name.startsWith('-');
        const found = ours.amperes(turned ? name.slice(1) : name);
        return compareAmperes(part, turned ? -found : found, amperes);
      }),
  ];
}
