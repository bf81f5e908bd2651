import { describe, expect, test } from 'vitest';
import { referenceTable, shortConductor, shortType, typesOf } from '../../../src/core/answer/index.ts';
import { STYLES, styleEntry, wires } from '../../../src/core/wiring/index.ts';
import type { Line, Style } from '../../../src/core/wiring/index.ts';

const TABLE = referenceTable();
const cell = (outputType: Style, inputType: Style) => {
  const found = TABLE.find((one) => one.outputType === outputType && one.inputType === inputType);
  if (found === undefined) throw new Error(`expected a cell for ${outputType} to ${inputType}`);
  return found;
};
const short = (outputType: Style, inputType: Style) =>
  cell(outputType, inputType).conductors?.map(shortConductor).sort().join(' ');

/** Types with a source and a sink line of their own: any two of them can be joined line by line. */
const LOOP = ['din', 'type-a', 'type-b'] as const;

describe('The card of leads between every two types', () => {
  test('has one cell for each output and each input, and no output that takes both directions', () => {
    expect(TABLE).toHaveLength(typesOf('out').length * typesOf('in').length);
    expect(new Set(TABLE.map((one) => `${one.outputType} ${one.inputType}`)).size).toBe(TABLE.length);
    expect(typesOf('in')).toEqual([...STYLES]);
    expect(typesOf('out')).toEqual(STYLES.filter((style) => style !== 'both-ways'));
  });

  test('joins line with line between the types of the standard', () => {
    // MMA CA-033: pin 4 source, 5 sink, 2 shield; RP-054: ring, tip, sleeve; Type B: tip, ring, sleeve.
    expect(short('din', 'din')).toBe('2-2 4-4 5-5');
    expect(short('din', 'type-a')).toBe('2-S 4-R 5-T');
    expect(short('din', 'type-b')).toBe('2-S 4-T 5-R');
    expect(short('type-a', 'din')).toBe('R-4 S-2 T-5');
    expect(short('type-a', 'type-a')).toBe('R-R S-S T-T');
    expect(short('type-a', 'type-b')).toBe('R-T S-S T-R');
    expect(short('type-b', 'type-a')).toBe('R-T S-S T-R');
  });

  test('has the same conductors back as forth, each turned round', () => {
    const turned = (words: string | undefined): string | undefined =>
      words
        ?.split(' ')
        .map((one) => one.split('-').toReversed().join('-'))
        .sort()
        .join(' ');
    for (const one of LOOP)
      for (const other of LOOP) expect(short(one, other), `${one} ${other}`).toBe(turned(short(other, one)));
  });

  test('works between any two loops, and joins each line of the output with the same line of the input', () => {
    for (const one of LOOP)
      for (const other of LOOP) {
        const { grade, conductors } = cell(one, other);
        expect(grade).toBe('works');
        for (const { from, to } of conductors ?? []) {
          const lineOf = (style: Style, contact: string): Line | undefined =>
            (['source', 'sink', 'shield'] as const).find((line) => styleEntry(style).lines[line] === contact);
          expect(lineOf(one, from)).toBeDefined();
          expect(lineOf(one, from)).toBe(lineOf(other, to));
        }
      }
  });

  test('asks a shop for what it sells, and for nothing where none sells it', () => {
    expect(cell('din', 'din').ask).toBe('a 5-pin DIN lead');
    expect(cell('din', 'type-a').ask).toBe('a 5-pin DIN to 3.5 mm TRS lead, Type A');
    expect(cell('type-b', 'din').ask).toBe('a 5-pin DIN to 3.5 mm TRS lead, Type B');
    expect(cell('type-a', 'type-b').ask).toBe('a 3.5 mm TRS lead, Type A to Type B');
    expect(cell('type-a', 'type-a').ask).toBe('a straight TRS lead, 3.5 mm');
    for (const { ask, conductors } of TABLE) if (conductors === undefined) expect(ask).toBeUndefined();
  });

  test('has no lead from an output that only has a signal to an isolated input', () => {
    // Product rule: a ground-referenced output into an isolated input needs a powered converter.
    for (const output of ['ring-signal', 'tip-signal'] as const)
      for (const input of [...LOOP, 'both-ways'] as const)
        expect(cell(output, input)).toMatchObject({ conductors: undefined, grade: 'nothing' });
  });

  test('takes either direction at an input that takes both, by one straight lead, with little to spare', () => {
    // Two bridge diodes more: (3.3 - 1.44 - 1.3) V / 263 ohm = 2.1 mA is enough for 1.6 mA; (3.135 - 1.7 - 1.3) V / 276 ohm is not.
    for (const output of ['type-a', 'type-b'] as const) {
      expect(cell(output, 'both-ways').grade).toBe('marginal');
      expect(cell(output, 'both-ways').ask).toBe('a straight TRS lead, 3.5 mm');
    }
  });
});

describe('The short words of the card', () => {
  test('name each type apart', () => {
    expect(STYLES.map(shortType)).toEqual(['DIN', 'A', 'B', 'TS 4', 'TS 5', 'A+B', 'ring', 'tip']);
  });

  test('write a conductor by pin, or by the first letter of its contact', () => {
    expect(wires('4-tip', '5-ring', '2-sleeve', 'shell-shell').map(shortConductor)).toEqual([
      '4-T',
      '5-R',
      '2-S',
      'S-S',
    ]);
  });
});
