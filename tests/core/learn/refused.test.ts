import { describe, expect, test } from 'vitest';
import {
  firstLead,
  linkFrom,
  pileFrom,
  proofOf,
  underTestFrom,
  type AuthoredLink,
} from '../../../src/core/learn/index.ts';

const DIN = { connector: 'din5', style: 'din' } as const;
const LINK: AuthoredLink = {
  output: DIN,
  input: { connector: 'trs-3.5', style: 'type-a' },
  leads: [{ ends: ['din5', 'trs-3.5'], wires: ['4-ring', '5-tip', '2-sleeve'] }],
  outcome: 'flows',
};

describe('What an author cannot write is refused by name', () => {
  test('a jack with a style that it cannot have', () => {
    expect(() => underTestFrom({ direction: 'in', connector: 'din5', style: 'type-a' })).toThrow(
      "lesson jack: style 'type-a' does not suit a din5 jack",
    );
    expect(() => underTestFrom({ other: 'footswitch-double', connector: 'ts-6.35' })).toThrow(
      /^lesson jack: a .* cannot be on a ts-6\.35$/,
    );
    expect(() => linkFrom({ ...LINK, output: { connector: 'din5', style: 'type-a' } })).toThrow(
      "lesson link: style 'type-a' does not suit a din5 jack",
    );
  });

  test('a conductor on a contact that is not there, and a link without a lead', () => {
    expect(() => linkFrom({ ...LINK, leads: [{ ends: ['din5', 'trs-3.5'], wires: ['5-4'] }] })).toThrow(
      "a trs-3.5 has no contact '4'",
    );
    expect(() => firstLead({ ...LINK, leads: [] })).toThrow('lesson link: needs a lead, got none');
  });

  test('a reading at a contact that the plug lacks', () => {
    expect(() => proofOf(firstLead(LINK), [{ from: 'out.tip', to: 'in.tip', says: 'beep' }])).toThrow(
      "lesson proof: a din5 has no contact 'tip', got 'out.tip'",
    );
  });

  test('a suspect or a look that the board does not have', () => {
    expect(() => pileFrom({ board: 'link', suspects: ['lead 2: open'], looks: [] })).toThrow(
      "lesson suspects: the board 'link' has no fault 'lead 2: open'",
    );
    expect(() => pileFrom({ board: 'link', suspects: ['lead 1: open'], looks: ['thru menu'] })).toThrow(
      "lesson suspects: the board 'link' has no observation 'thru menu'",
    );
  });
});
