/** The circuit diagram of a solved link: what it joins, and that it shows the solved currents. */
import { describe, expect, test } from 'vitest';
import { checkLink } from '../../src/core/verdict/index.ts';
import { makeJack, makeLead, wires } from '../../src/core/wiring/index.ts';
import type { Conductor, Link } from '../../src/core/wiring/index.ts';
import { drawSchematic } from '../../src/draw/schematic.ts';
import { loopDiagram } from '../../src/draw/loop-diagram.ts';

const input = makeJack('in', 'trs-3.5', 'type-a', { part: 'H11L1' });
const link = (conductors: readonly Conductor[]): Link => ({
  output: makeJack('out', 'din5', 'din'),
  branches: [{ input, leads: [makeLead('din5', 'trs-3.5', conductors)] }],
});
const RIGHT = link(wires('4-ring', '5-tip', '2-sleeve'));
const diagram = (one: Link, state: 'idle' | 'active' = 'active') =>
  loopDiagram(one, checkLink(one), state, 900);

const currents = (one: Link, state: 'idle' | 'active') => {
  const { amperes } = diagram(one, state);
  if (amperes === null) throw new Error('diagram: needs currents, got none');
  return amperes;
};

describe('A circuit diagram', () => {
  test('joins what the lead joins: all lines, crossed ones, and none', () => {
    expect(diagram(RIGHT).connected).toEqual({ source: true, sink: true, shield: true, crossed: false });
    expect(diagram(link(wires('4-tip', '5-ring', '2-sleeve'))).connected).toEqual({
      source: true,
      sink: true,
      shield: true,
      crossed: true,
    });
    expect(diagram(link(wires('5-tip'))).connected).toEqual({
      source: false,
      sink: true,
      shield: false,
      crossed: false,
    });
  });

  test('shows one current all around the loop while a 0 is sent, and next to none at rest', () => {
    const amperes = currents(RIGHT, 'active');
    const solved = checkLink(RIGHT).inputs[0]?.active ?? 0;
    for (const part of ['source', 'led'] as const)
      expect(Math.abs(amperes[part] - solved) / solved, part).toBeLessThan(0.01);
    // Kirchhoff: what leaves by the source line comes back by sink line and shield.
    expect(amperes.sink + amperes.shield).toBeCloseTo(amperes.source, 6);
    expect(Math.abs(currents(RIGHT, 'idle').led)).toBeLessThan(1e-6);
  });

  test('names the contacts of both jacks and the usual values, and can be drawn', () => {
    const made = diagram(RIGHT);
    expect(made.contacts).toEqual({
      driver: { source: 'pin 4', sink: 'pin 5', shield: 'pin 2' },
      receiver: { source: 'ring', sink: 'tip', shield: 'sleeve' },
    });
    expect(made.values).toMatchObject({ supply: '5 V', sourceResistor: '220 ohm' });
    expect(drawSchematic(made).width).toBe(900);
  });

  test('is not made of a link that it cannot show', () => {
    const two: Link = { ...RIGHT, branches: [...RIGHT.branches, ...RIGHT.branches] };
    expect(() => diagram(two)).toThrow('loop diagram: needs a loop output, one lead and one isolated input');
  });
});
