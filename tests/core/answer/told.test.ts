import { describe, expect, test } from 'vitest';
import { SOCKETS, circuitsOfType, jackOfType, openTypes } from '../../../src/core/answer/index.ts';
import { jacksOfType } from '../../../src/core/answer/told.ts';
import { PARTS, STYLES, jackProblem, styleEntry, stylesFor } from '../../../src/core/wiring/index.ts';
import type { ToldJack } from '../../../src/core/answer/index.ts';

const told = (more: Partial<ToldJack> = {}): ToldJack => ({
  direction: 'in',
  socket: 'trs-3.5',
  type: undefined,
  ...more,
});

describe('The types that a told jack may have', () => {
  test('are one where it is told, and every type of its socket where nothing is', () => {
    expect(openTypes(told({ type: 'type-b' }))).toEqual(['type-b']);
    expect(openTypes(told({ socket: 'din5' }))).toEqual(['din']);
    expect(openTypes(told())).toEqual(stylesFor('in', 'trs-3.5'));
    expect(stylesFor('in', 'trs-3.5')).toContain('both-ways');
    expect(stylesFor('out', 'trs-3.5')).not.toContain('both-ways');
  });

  test('are those that the words leave open, whatever their order, and no type that the socket cannot have', () => {
    expect(openTypes(told({ could: ['tip-signal', 'type-a'] }))).toEqual(['type-a', 'tip-signal']);
    expect(openTypes(told({ could: ['din', 'type-a'] }))).toEqual(['type-a']);
  });

  test('are all of the socket again where what is told cannot be', () => {
    expect(openTypes(told({ socket: 'din5', type: 'type-a' }))).toEqual(['din']);
    expect(openTypes(told({ socket: 'din5', could: ['type-a', 'type-b'] }))).toEqual(['din']);
    expect(openTypes(told({ could: [] }))).toEqual(stylesFor('in', 'trs-3.5'));
  });

  test('are settled by a type that is told, whatever its words left open', () => {
    expect(openTypes(told({ type: 'type-a', could: ['type-a', 'type-b'] }))).toEqual(['type-a']);
  });
});

describe('The circuits behind a told jack', () => {
  test('are every usual one of its type, without an output whose supply is off', () => {
    expect(circuitsOfType(told({ direction: 'out' }), 'type-a')).toEqual([
      'driver-5v',
      'driver-3v3',
      'driver-3v3-push-pull',
    ]);
    expect(circuitsOfType(told(), 'tip-signal')).toEqual(['receiver-logic', 'receiver-led']);
    expect(circuitsOfType(told(), 'both-ways')).toEqual(['receiver-both-ways']);
  });

  test('are the one that is told, where its type can have it', () => {
    expect(circuitsOfType(told({ direction: 'out', circuit: 'driver-3v3' }), 'din')).toEqual(['driver-3v3']);
    expect(circuitsOfType(told({ circuit: 'receiver-led' }), 'type-a')).toEqual(
      circuitsOfType(told(), 'type-a'),
    );
    expect(circuitsOfType(told({ direction: 'out', circuit: 'driver-off' }), 'din')).toEqual(
      circuitsOfType(told({ direction: 'out' }), 'din'),
    );
  });
});

describe('The jacks that a told jack may stand for', () => {
  test('can all be, one for each circuit, for every socket, direction, type and part', () => {
    for (const direction of ['out', 'in'] as const)
      for (const socket of SOCKETS)
        for (const style of stylesFor(direction, socket))
          for (const part of [undefined, ...PARTS.slice(0, 4)]) {
            const jack = told({ direction, socket, part });
            const jacks = jacksOfType(jack, style);
            expect(jacks.map(({ circuit }) => circuit)).toEqual(circuitsOfType(jack, style));
            for (const one of jacks) expect(jackProblem(one)).toBeUndefined();
            expect(jackOfType(jack, style)).toEqual(jacks[0]);
          }
  });

  test('have two contacts where the type has two and there is such a plug of the size', () => {
    const connector = (socket: ToldJack['socket'], style: (typeof STYLES)[number]) =>
      jackOfType(told({ socket }), style).connector;
    expect(connector('trs-6.35', 'two-contact')).toBe('ts-6.35');
    expect(connector('trs-3.5', 'two-contact-turned')).toBe('ts-3.5');
    // There is no 2.5 mm plug of two contacts among the connectors.
    expect(connector('trs-2.5', 'two-contact')).toBe('trs-2.5');
    expect(connector('trs-3.5', 'tip-signal')).toBe('trs-3.5');
  });

  test('carry the part that is told only where there is an optocoupler', () => {
    const parts = jacksOfType(told({ part: 'H11L1' }), 'tip-signal').map(({ circuit, part }) => [
      circuit,
      part,
    ]);
    expect(parts).toEqual([
      ['receiver-logic', '6N138'],
      ['receiver-led', 'H11L1'],
    ]);
  });

  test('are refused where a type has no circuit in that direction', () => {
    expect(() => jackOfType(told({ direction: 'out' }), 'both-ways')).toThrow(
      "jack: style 'both-ways' has no circuit for 'out'",
    );
    for (const style of STYLES.filter((one) => styleEntry(one).forOutput))
      expect(
        jackOfType(told({ direction: 'out', socket: style === 'din' ? 'din5' : 'trs-3.5' }), style).style,
      ).toBe(style);
  });
});
