import { describe, expect, test } from 'vitest';
import type { SchematicInput } from '../../src/draw/schematic.ts';
import { SCHEMATIC_DRIVERS, drawSchematic } from '../../src/draw/schematic.ts';
import { textBox } from '../../src/draw/text.ts';
import { boxesOverlap, distanceToBox, pointsAlong } from './paths.ts';

const ACTIVE: SchematicInput = {
  width: 1080,
  driver: 'driver-5v',
  state: 'active',
  connected: { source: true, sink: true, shield: true, crossed: false },
  amperes: { source: 5.38e-3, sink: 5.38e-3, led: 5.38e-3, protection: 0, shield: 0 },
  values: { supply: '3.3 V', sourceResistor: '220 Ω', sinkResistor: '220 Ω', receiverResistor: '220 Ω' },
  contacts: {
    driver: { source: 'pin 4', sink: 'pin 5', shield: 'pin 2' },
    receiver: { source: 'ring', sink: 'tip', shield: 'sleeve' },
  },
};

/** Every driver, state and lead at both widths. */
const ALL: SchematicInput[] = [342, 859, 860].flatMap((width) =>
  SCHEMATIC_DRIVERS.flatMap((driver) =>
    (['idle', 'active'] as const).flatMap((state) =>
      Array.from({ length: 16 }, (_, bits) => ({
        ...ACTIVE,
        width,
        driver,
        state,
        connected: {
          source: (bits & 1) === 0,
          sink: (bits & 2) === 0,
          shield: (bits & 4) === 0,
          crossed: (bits & 8) !== 0,
        },
      })),
    ),
  ),
);

describe('in every driver, state and lead, at every width', () => {
  test('no two pieces of text overlap, and all of them stand on the sheet', () => {
    const bad: string[] = [];
    for (const input of ALL) {
      const drawing = drawSchematic(input);
      const boxes = drawing.text.map((line) => ({ text: line.text, box: textBox(line) }));
      boxes.forEach((a, i) => {
        const { x, y, width, height } = a.box;
        if (x < 0 || y < 0 || x + width > drawing.width || y + height > drawing.height)
          bad.push(`${input.width}: ${a.text} leaves the sheet`);
        for (const b of boxes.slice(i + 1))
          if (boxesOverlap(a.box, b.box)) bad.push(`${input.width}: ${a.text} over ${b.text}`);
      });
    }
    expect([...new Set(bad)]).toEqual([]);
  });

  test('no wire runs through a piece of text', () => {
    const bad: string[] = [];
    for (const input of ALL) {
      const { wires, text } = drawSchematic(input);
      const boxes = text.map((words) => ({ text: words.text, box: textBox(words) }));
      for (const { d, line, weight } of wires) {
        const points = pointsAlong(d, 4);
        for (const { text: words, box } of boxes) {
          if (points.some((point) => distanceToBox(point, box) < weight / 2)) {
            bad.push(`${input.width}: ${line} through ${words}`);
          }
        }
      }
    }
    expect([...new Set(bad)]).toEqual([]);
  });
});

test('a narrow sheet runs from top to bottom and a wide one from left to right', () => {
  expect(drawSchematic({ ...ACTIVE, width: 342 }).layout).toBe('stack');
  expect(drawSchematic(ACTIVE).layout).toBe('row');
});

test('a wire without current has no arrowhead, and an unsolved diagram has none at all', () => {
  const arrows = (input: SchematicInput) => drawSchematic(input).wires.flatMap((wire) => wire.arrows).length;
  const still = { source: 0, sink: 0, led: 0, protection: 0, shield: 0 };
  expect(arrows(ACTIVE)).toBeGreaterThan(0);
  expect(arrows({ ...ACTIVE, amperes: still })).toBe(0);
  expect(arrows({ ...ACTIVE, amperes: null })).toBe(0);
});

test('an unjoined line is said so on the sheet and in the text alternative', () => {
  const drawing = drawSchematic({ ...ACTIVE, connected: { ...ACTIVE.connected, sink: false } });
  expect(drawing.text.map(({ text }) => text)).toContain('sink not joined');
  expect(drawing.textAlternative).toContain('The lead does not join sink.');
});

test('the text alternative follows the loop and gives the currents', () => {
  expect(drawSchematic({ ...ACTIVE, values: { ...ACTIVE.values, supply: '5 V' } }).textAlternative).toBe(
    'Driver: 5 V supply, 220 Ω to the source contact; push-pull output stage and 220 Ω on the sink contact; shield at its ground. ' +
      'The lead joins source, sink and shield. ' +
      'Receiver: 220 Ω, then the LED with a protection diode the other way round; shield open. ' +
      'Active: source 5.4 mA, LED 5.4 mA, protection diode 0 mA, sink 5.4 mA.',
  );
});
