import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { contrast, readColours } from '../support/colours.ts';

const colours = readColours(readFileSync('src/styles/tokens.css', 'utf8'));

/** Least contrast of text and of lines: WCAG 2.2, success criteria 1.4.3 and 1.4.11. */
const TEXT = 4.5;
const LINE = 3;

const PAPERS = ['paper', 'sheet'];
/** The edge of a control or a drawing; a hairline between two blocks says nothing that is not said by the room between them. */
const LINES = ['edge'];
const HAIRLINES = ['rule'];
const TEXTS = [...colours.keys()].filter((name) => ![...PAPERS, ...LINES, ...HAIRLINES].includes(name));
const LEAST = [
  ...TEXTS.map((name) => ({ name, least: TEXT })),
  ...LINES.map((name) => ({ name, least: LINE })),
];

describe('Contrast', () => {
  test('is 21 between black and white, and 1 between a colour and itself', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
    expect(contrast('#8a3b12', '#8a3b12')).toBe(1);
  });

  test('is 4.48 between white and #777777, the grey that just fails as text', () => {
    // 0x77 = 119: ((119/255 + 0.055) / 1.055)^2.4 = 0.1845; 1.05 / 0.2345 = 4.478.
    expect(contrast('#ffffff', '#777777')).toBeCloseTo(4.478, 2);
  });

  test('every colour that the workbook uses is declared for both papers', () => {
    expect([...colours.keys()].sort()).toEqual([
      'accent',
      'bad',
      'doubtful',
      'edge',
      'faint',
      'good',
      'ink',
      'paper',
      'rule',
      'sheet',
      'shield',
      'sink',
      'source',
    ]);
  });

  const cases = LEAST.flatMap(({ name, least }) =>
    PAPERS.flatMap((under) => (['light', 'dark'] as const).map((scheme) => ({ name, least, under, scheme }))),
  );
  test.each(cases)('of $name on $under in $scheme is at least $least', ({ name, least, under, scheme }) => {
    const [over, below] = [colours.get(name), colours.get(under)];
    if (over === undefined || below === undefined)
      throw new Error(`colour '${name}' or '${under}': needs a value`);
    expect(contrast(over[scheme], below[scheme])).toBeGreaterThanOrEqual(least);
  });
});
