import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { harms } from '../../../src/core/learn/harms.ts';

test('what is over its rating is named with its own rating, in each case that a caution warns of', () => {
  const said = new Map(harms().map(({ what, danger }) => [what, danger]));
  // The ring spring lies on the sleeve: 3.3 V over 33 ohm and two contacts of 30 mohm.
  expect(said.get('A 3.3 V Type A output on a TS lead, into an input that listens on its tip')).toBe(
    'the 3.3 V supply of the output: 100 mA, rated 50 mA',
  );
  // 12 V less an LED of 1.6 V over 220 ohm: 47 mA, and 0.49 W in a resistor of a quarter watt.
  expect(said.get('12 V from source to sink of an input')).toMatch(
    /^the 220 ohm resistor of the input: 0\.49 W, rated 0\.25 W and the LED of the optocoupler: 47 mA, rated 25 mA$/,
  );
  // 17 V over 220 ohm: 77 mA and 1.3 W, published.
  expect(said.get('12 V below ground on the source line of a 5 V output')).toMatch(
    /the 220 ohm source resistor: 1\.3\d W, rated 0\.25 W/,
  );
});

test('each case stands under a caution of the reference', () => {
  const cautions = JSON.parse(
    readFileSync(new URL('../../../content/reference/cautions.json', import.meta.url), 'utf8'),
  ) as readonly { readonly id: string }[];
  for (const { caution } of harms()) expect(cautions.map(({ id }) => id)).toContain(caution);
});
