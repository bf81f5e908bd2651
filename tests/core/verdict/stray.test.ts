import { expect, test } from 'vitest';
import { checkLink, strayAmperes } from '../../../src/core/verdict/index.ts';
import { makeJack, makeLead, wires } from '../../../src/core/wiring/index.ts';

const OUTPUT = makeJack('out', 'din5', 'din');
const INPUT = makeJack('in', 'trs-3.5', 'type-a');
const verdictOf = (...map: string[]) =>
  checkLink({
    output: OUTPUT,
    branches: [{ input: INPUT, leads: [makeLead('din5', 'trs-3.5', wires(...map))] }],
  });

test('a source shorted to the shield draws 5 V through the 220 ohm source resistor, past the input', () => {
  const stray = strayAmperes(verdictOf('4-sleeve', '2-sleeve'), 'active');
  // 5 V / 220 ohm = 22.7 mA; the wires and touches of the lead take less than 1 % of it.
  expect(stray).toBeGreaterThan(0.0224);
  expect(stray).toBeLessThan(5 / 220);
});

test('a lead that works, and one that joins nothing, lose no current', () => {
  expect(strayAmperes(verdictOf('4-ring', '5-tip', '2-sleeve'), 'active')).toBe(0);
  expect(strayAmperes(verdictOf('4-ring', '5-tip', '2-sleeve'), 'idle')).toBe(0);
  expect(strayAmperes(verdictOf('4-ring'), 'active')).toBe(0);
});
