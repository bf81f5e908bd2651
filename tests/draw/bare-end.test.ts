import { describe, expect, test } from 'vitest';
import { CUP_METRES, PIN_GAP_METRES } from '../../src/core/making/index.ts';
import { drawBareEnd } from '../../src/draw/bare-end.ts';

/** How far to the right of its start a reach ends, pixels: 'Mx yA...x y'. */
function reachOf(bareMetres: number): number {
  const numbers = (drawBareEnd({ bareMetres }).reach ?? '').match(/-?\d+(?:\.\d+)?/g)?.map(Number) ?? [];
  return (numbers.at(-2) ?? NaN) - (numbers[0] ?? NaN);
}

describe('The drawing of a bare end', () => {
  test('has no reach while all the metal is in the cup', () => {
    expect(drawBareEnd({ bareMetres: CUP_METRES }).reach).toBeUndefined();
    expect(drawBareEnd({ bareMetres: CUP_METRES / 2 }).reach).toBeUndefined();
  });

  test('reaches as far as the metal above the cup is long, at 28 pixels a millimetre', () => {
    expect(reachOf(CUP_METRES + 1e-3)).toBeCloseTo(28, 6);
    expect(reachOf(CUP_METRES + PIN_GAP_METRES)).toBeCloseTo(PIN_GAP_METRES * 28e3, 6);
  });
});
