/** What is believed of an unmarked jack before any reading: shares add up, and each piece of evidence moves them its own way. */
import { describe, expect, it } from 'vitest';
import { MARKINGS, MENU_FACTS } from '../../../src/core/readings/index.ts';
import type { Evidence } from '../../../src/core/readings/index.ts';
import { FINDER_WEIGHTS, candidatesFor, nameOf } from '../../../src/core/readings/evidence.ts';
import { CONNECTORS, stylesFor } from '../../../src/core/wiring/index.ts';
import { jackEvidence } from '../../support/evidence.ts';

/** Shares by name. */
function shares(more: Partial<Evidence> = {}): ReadonlyMap<string, number> {
  const sums = new Map<string, number>();
  for (const { under, prior } of candidatesFor(jackEvidence(more)))
    sums.set(nameOf(under), (sums.get(nameOf(under)) ?? 0) + prior);
  return sums;
}
const share = (name: string, more: Partial<Evidence> = {}): number => shares(more).get(name) ?? 0;

describe('what is believed before a reading', () => {
  it('adds up to one with the share of a jack in no catalogue, whatever is known', () => {
    for (const connector of CONNECTORS)
      for (const marked of MARKINGS)
        for (const menu of [[], ...MENU_FACTS.map((fact) => [fact]), [...MENU_FACTS]]) {
          const sum = candidatesFor(jackEvidence({ connector, marked, menu })).reduce(
            (all, { prior }) => all + prior,
            0,
          );
          expect(sum + FINDER_WEIGHTS.none, `${connector} ${marked} ${menu.join()}`).toBeCloseTo(1, 9);
        }
  });

  it('has every type that the connector can carry, and gives none of them nothing', () => {
    for (const connector of CONNECTORS) {
      const names = shares({ connector });
      for (const direction of ['out', 'in'] as const)
        for (const style of stylesFor(direction, connector))
          expect(names.get(`${direction} ${style}`), `${connector} ${direction} ${style}`).toBeGreaterThan(0);
    }
  });

  it('stands between types as their invented weights do', () => {
    for (const style of ['type-b', 'two-contact', 'ring-signal'] as const)
      expect(share(`out ${style}`) / share('out type-a')).toBeCloseTo(
        FINDER_WEIGHTS.style[style] / FINDER_WEIGHTS.style['type-a'],
        9,
      );
    expect(share('headphone') / share('out type-a')).toBeCloseTo(FINDER_WEIGHTS.otherJack, 9);
  });

  it('trusts a marking, but not wholly, and not at all where a menu turns the jack round', () => {
    expect(share('in type-a', { marked: 'in' })).toBeGreaterThan(share('in type-a'));
    expect(share('out type-a', { marked: 'in' }) / share('in type-a', { marked: 'in' })).toBeCloseTo(
      FINDER_WEIGHTS.markedWrong,
      9,
    );
    const menu = ['in-or-out'] as const;
    expect(share('out type-a', { marked: 'in', menu })).toBeCloseTo(
      share('in type-a', { marked: 'in', menu }),
      12,
    );
  });

  it('takes a marked jack for something else less readily', () => {
    expect(share('headphone', { marked: 'out' })).toBeLessThan(share('headphone'));
  });

  it('believes a menu: each entry lifts its own jack and no other', () => {
    const lifted = (menu: Evidence['menu'], name: string, against: string): number =>
      share(name, { menu }) / share(against, { menu }) / (share(name) / share(against));
    const W = FINDER_WEIGHTS.menu;
    expect(lifted(['expression'], 'expression-tip', 'headphone')).toBeCloseTo(W, 9);
    expect(lifted(['expression'], 'expression-ring', 'line')).toBeCloseTo(W, 9);
    expect(lifted(['footswitch'], 'footswitch-double', 'headphone')).toBeCloseTo(W, 9);
    expect(lifted(['control-voltage'], 'control-voltage', 'headphone')).toBeCloseTo(W, 9);
    expect(lifted(['type-a-or-b'], 'out type-a', 'out ring-signal')).toBeCloseTo(W, 9);
    expect(lifted(['type-a-or-b'], 'in type-b', 'out ring-signal')).toBeCloseTo(W, 9);
    expect(lifted(['expression'], 'footswitch-double', 'headphone')).toBeCloseTo(1, 9);
  });

  it('calls a footswitch input what no meter tells from it: an input with its signal on the tip', () => {
    expect(nameOf({ kind: 'other', other: 'footswitch', connector: 'trs-3.5' })).toBe('in tip-signal');
    expect(shares().has('footswitch')).toBe(false);
  });
});
