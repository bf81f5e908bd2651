import { describe, expect, it } from 'vitest';
import { sheetStanding } from '../../../src/core/making/sheet-standing.ts';
import { makeJack, makeLead, wires } from '../../../src/core/wiring/link.ts';
import type { Jack, Lead, Link } from '../../../src/core/wiring/link.ts';

const STRAIGHT = ['4-4', '5-5', '2-2'];

/** A DIN link with what is said of its two jacks and its lead. */
function linkOf(
  { out = {}, into = {}, lead = {} }: { out?: Partial<Jack>; into?: Partial<Jack>; lead?: Partial<Lead> },
  pairs: readonly string[] = STRAIGHT,
): Link {
  return {
    output: makeJack('out', 'din5', 'din', out),
    branches: [
      {
        input: makeJack('in', 'din5', 'din', into),
        leads: [makeLead('din5', 'din5', wires(...pairs), lead)],
      },
    ],
  };
}

describe('what the sheet of a lead says of its link', () => {
  it('is one word for a lead that works, and nothing to read before cutting', () => {
    expect(sheetStanding(linkOf({}))).toEqual({ words: 'Works', problems: [] });
  });

  it('is a warning before anything is cut where the lead would not work', () => {
    expect(sheetStanding(linkOf({}, ['4-5', '5-4', '2-2']))).toEqual({
      words: 'Reversed',
      problems: ['Between its jacks this lead was solved. Reversed.'],
    });
    expect(sheetStanding(linkOf({}, ['4-4', '2-2'])).words).toBe('No path');
    expect(sheetStanding(linkOf({ into: { part: '4N35' } })).problems).toEqual([
      'Between its jacks this lead was solved. Marginal.',
    ]);
  });

  it('leaves out faults of the lead that was made: this sheet makes another', () => {
    const open = { kind: 'open', side: 'to', contact: '5' } as const;
    expect(sheetStanding(linkOf({ lead: { faults: [open] } }))).toEqual({ words: 'Works', problems: [] });
  });

  it('tells the shield on a shell, a tied pin 2, and values that are not the standard’s, behind a lead that works', () => {
    const told = (...given: Parameters<typeof linkOf>): readonly string[] => {
      const { words, problems } = sheetStanding(linkOf(...given));
      expect(words).toBe('Works');
      return problems.map((one) => one.split(':')[0] ?? '');
    };
    expect(told({}, ['4-4', '5-5', '2-2', '2-shell'])).toEqual(['Pin 2 on the shell']);
    expect(told({ into: { extras: ['shield-tied'] } })).toEqual(['Pin 2 tied at the input']);
    expect(told({ out: { values: { sourceOhms: 0.1 } } })).toEqual([
      "A resistor of another value than the standard's",
    ]);
    expect(told({ out: { values: { supplyVolts: 9 } } })).toEqual(["A supply outside the standard's"]);
  });

  it('has a part over its rating first: 9 V behind 33 ohm into 10 and 220 ohm', () => {
    // 7.5 V over 263 ohm is 29 mA; a 6N138 takes 20 mA in this workbook, as the lower of two sheets has it.
    const values = { supplyVolts: 9, sourceOhms: 33, sinkOhms: 10 };
    const { words, problems } = sheetStanding(linkOf({ out: { values } }));
    expect(words).toMatch(/^Do not connect: /);
    expect(problems[0]).toMatch(/^Between its jacks this lead was solved\. Do not connect: /);
  });
});
