import { describe, expect, test } from 'vitest';
import { valuesOf } from '../../../src/core/wiring/circuits.ts';
import { BESIDE_VALUES } from '../../../src/core/wiring/values.ts';
import {
  EXTRAS,
  diodeOf,
  extraEntry,
  extraSuits,
  linesInside,
  sayExtra,
  sayOnContacts,
  withExtra,
} from '../../../src/core/wiring/extras.ts';
import { jackProblem, makeJack, settleJack } from '../../../src/core/wiring/link.ts';

const dinIn = makeJack('in', 'din5', 'din');
const trsOut = makeJack('out', 'trs-3.5', 'type-a');

describe('what may be inside a jack', () => {
  test('suits the jacks that have a place for it', () => {
    const suiting = (jack: typeof dinIn): readonly string[] => EXTRAS.filter((one) => extraSuits(one, jack));
    expect(suiting(dinIn)).toEqual(EXTRAS.filter((one) => one !== 'shield-untied'));
    expect(suiting(trsOut)).toEqual(['activity-in-series', 'crossed-inside', 'shield-untied']);
    expect(suiting(makeJack('out', 'ts-3.5', 'two-contact'))).not.toContain('shield-untied');
    expect(suiting(makeJack('in', 'ts-3.5', 'two-contact'))).not.toContain('shield-tied');
    expect(suiting(makeJack('in', 'ts-3.5', 'tip-signal'))).toEqual([]);
  });

  test('is refused by name where it does not, twice, or with a second diode', () => {
    expect(jackProblem({ ...dinIn, extras: ['no-diode', 'shield-tied'] })).toBeUndefined();
    expect(jackProblem({ ...trsOut, extras: ['no-diode'] })).toBe(
      "extras: 'no-diode' does not suit a trs-3.5 jack with circuit 'driver-5v'",
    );
    expect(jackProblem({ ...dinIn, extras: ['no-diode', 'no-diode'] })).toBe(
      'extras: each must be there once, got no-diode, no-diode',
    );
    expect(jackProblem({ ...dinIn, extras: ['no-diode', 'turned-diode'] })).toBe(
      'extras: must have one diode at most, got no-diode, turned-diode',
    );
  });

  test('goes when the jack becomes one that it does not suit', () => {
    const jack = { ...dinIn, extras: ['no-diode', 'crossed-inside'] } as const;
    expect(settleJack({ ...jack, connector: 'ts-3.5' }).extras).toEqual(['no-diode']);
    expect(settleJack(dinIn)).not.toHaveProperty('extras');
    expect(settleJack({ ...dinIn, extras: [] })).not.toHaveProperty('extras');
  });

  test('gives way to another diode, and to nothing else', () => {
    expect(withExtra(['shield-tied', 'no-diode'], 'turned-diode', true)).toEqual([
      'shield-tied',
      'turned-diode',
    ]);
    expect(withExtra(['shield-tied', 'no-diode'], 'no-diode', false)).toEqual(['shield-tied']);
    expect(diodeOf({ extras: ['shield-tied', 'no-diode'] })).toBe('no-diode');
    expect(diodeOf(dinIn)).toBeUndefined();
  });

  test('moves the lines where two contacts are exchanged', () => {
    const lines = (jack: typeof dinIn): unknown => linesInside({ ...jack, extras: ['crossed-inside'] });
    expect(lines(dinIn)).toEqual({ source: '5', sink: '4', shield: '2' });
    expect(lines(trsOut)).toEqual({ source: 'sleeve', sink: 'tip', shield: 'ring' });
    expect(linesInside(dinIn)).toEqual({ source: '4', sink: '5', shield: '2' });
  });

  test('is told with the contacts of its jack', () => {
    expect(sayExtra('crossed-inside', trsOut)).toBe('ring and sleeve exchanged inside');
    expect(sayExtra('shield-tied', dinIn)).toBe("pin 2 tied to this device's ground");
    expect(sayExtra('shield-untied', trsOut)).toBe('sleeve tied to nothing inside');
    const labels = (jack: typeof dinIn): readonly string[] =>
      valuesOf(jack.circuit, jack.part)
        .filter(({ name }) => BESIDE_VALUES.includes(name))
        .map(({ label }) => sayOnContacts(label, jack));
    expect(labels(trsOut)).toEqual([
      'load from ring to ground, 0 for none',
      'output stage swings to, 0 for the supply',
      'foreign supply on ring against tip, 0 for none',
      'foreign supply on ring against ground, 0 for none',
      'foreign supply on tip against ground, 0 for none',
      'resistor of the foreign supply',
    ]);
  });

  test('is told in words that differ', () => {
    expect(new Set(EXTRAS.map((one) => extraEntry(one).label)).size).toBe(EXTRAS.length);
  });
});
