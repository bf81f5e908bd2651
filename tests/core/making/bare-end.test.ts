import { describe, expect, test } from 'vitest';
import {
  BARE_END_METRES,
  CUP_METRES,
  PIN_GAP_METRES,
  bareEnd,
  sayBareEnd,
} from '../../../src/core/making/index.ts';
import { DIN_MILLIMETRES, dinPin } from '../../../src/draw/din.ts';

describe('A bare end in a DIN cup', () => {
  test('the gap between two pins is the one of the drawing', () => {
    const plug = { connector: 'din5', form: 'plug', view: 'solder' } as const;
    const [a, b] = [dinPin(plug, '4'), dinPin(plug, '2')];
    const apart = (DIN_MILLIMETRES.pitchRadius * Math.hypot(a.x - b.x, a.y - b.y)) / Math.hypot(a.x, a.y);
    expect(PIN_GAP_METRES * 1e3).toBeCloseTo(apart - 2 * DIN_MILLIMETRES.pinRadius, 6);
    // 2 x 3.5 mm x sin 22.5 degrees - 1.45 mm.
    expect(PIN_GAP_METRES * 1e3).toBeCloseTo(1.229, 3);
  });

  test('3 mm fills the cup, less holds by the rim, and more than the gap beyond it can touch', () => {
    expect(CUP_METRES).toBe(0.003);
    expect([0.001, 0.002, 0.003, 0.004, 0.0045].map((metres) => bareEnd(metres).fit)).toEqual([
      'too short',
      'too short',
      'right',
      'too long',
      'can touch',
    ]);
    expect(sayBareEnd(bareEnd(0.005))).toBe(
      'It can touch: 2.0 mm stays bare, and the next pin is only 1.2 mm away.',
    );
  });

  test('a length that nobody strips is refused', () => {
    expect(() => bareEnd(0.02)).toThrow('bare end: length must be from 0.001 m to 0.006 m, got 0.02 m');
    expect(() => bareEnd(NaN)).toThrow('got NaN m');
    expect(bareEnd(BARE_END_METRES.most).fit).toBe('can touch');
  });
});
