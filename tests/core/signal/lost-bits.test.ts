/** Bits lost behind an LED that gets its current: the public cases, which the simulation was held against, told in a sentence. */
import { describe, expect, test } from 'vitest';
import { sayLostBits } from '../../../src/core/signal/lost-bits.ts';
import { makeJack } from '../../../src/core/wiring/link.ts';
import type { Jack } from '../../../src/core/wiring/link.ts';
import { PARTS } from '../../../src/core/wiring/parts.ts';
import type { Part } from '../../../src/core/wiring/parts.ts';

/** The usual loop: none at rest, 5.4 mA while a 0 is sent. */
const USUAL = { dark: 0, bright: 5.4e-3 };
const lost = (part: Part, values: Jack['values'], lit = USUAL): string | undefined =>
  sayLostBits(makeJack('in', 'din5', 'din', { part, values }), lit);

describe('what an input loses behind its LED', () => {
  test('is nothing with any part and its usual values in the usual loop', () => {
    for (const part of PARTS) expect(lost(part, {}), part).toBeUndefined();
  });

  test('is a byte where a pull-up is far too weak (forum: a CNY17-1 on 20 to 35 kohm, a 4N35 on 4.7 kohm)', () => {
    expect(lost('CNY17-1', { loadOhms: 25_000 })).toContain('loses bits: 00 was lost in a break');
    expect(lost('4N35', { loadOhms: 4700 })).toContain('loses bits: 00 was lost in a break');
  });

  test('is a bit where a pull-up is somewhat too weak (forum: a CNY17-2 on 2.7 kohm loses single 1s)', () => {
    expect(lost('CNY17-2', { loadOhms: 2700 })).toMatch(/loses bits: .*its pulse shrank/);
  });

  test('is everything where a part is asked for more current than its gain has, and nothing on a load that it can pull', () => {
    // 220 ohm at 5 V asks 23 mA; a CNY17-1 has 0.6 of 5.4 mA at most.
    expect(lost('CNY17-1', { loadOhms: 220 })).toContain('never arrived');
    expect(lost('6N138', { loadOhms: 220 })).toBeUndefined();
  });

  test('may hang on the sender: a CNY17-2 that keeps all at 5.4 mA hears nothing at 3 mA', () => {
    expect(lost('CNY17-2', {})).toBeUndefined();
    expect(lost('CNY17-2', {}, { dark: 0, bright: 3e-3 })).toContain('never arrived');
  });

  test('is not looked for where nobody chose what follows the LED, however little current there is', () => {
    expect(lost('H11L1', {}, { dark: 0, bright: 1e-5 })).toBeUndefined();
    const level = makeJack('in', 'trs-3.5', 'tip-signal', { circuit: 'receiver-logic' });
    expect(sayLostBits(level, USUAL)).toBeUndefined();
  });

  test('says with which clocks and which receiver it was counted, and that this is our reading', () => {
    expect(lost('CNY17-1', { loadOhms: 25_000 })).toMatch(
      /^The LED of the input gets its current, but with both clocks 1 % off .* The receiver looks once a bit here, by our reading\./,
    );
  });
});
