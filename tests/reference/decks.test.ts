/** The reference decks prove themselves: the engine finds the currents that their headers derive by hand. */
import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { DECK_STATES, claimsOf, deckIn } from '../support/deck-text.ts';
import { runOperatingPoint } from '../support/spice.ts';

const DECKS = new URL('../support/decks/', import.meta.url);
const FILES = readdirSync(DECKS).filter((name) => name.endsWith('.cir'));
const textOf = (file: string): string => readFileSync(new URL(file, DECKS), 'utf8');

test('there are at least twelve decks written by hand', () => {
  expect(FILES.length).toBeGreaterThanOrEqual(12);
});

describe.each(FILES)('%s', (file) => {
  test.each(DECK_STATES)('the engine finds the currents derived by hand in %s', async (state) => {
    const text = textOf(file);
    const { amperes } = await runOperatingPoint(deckIn(state, text));
    const claims = claimsOf(text).filter((claim) => claim.state === state);
    expect(claims.length).toBeGreaterThan(0);
    for (const { part, amperes: expected, tolerance } of claims) {
      expect(Math.abs((amperes.get(part) ?? NaN) - expected), `${part} in ${state}`).toBeLessThanOrEqual(
        tolerance,
      );
    }
  });
});
