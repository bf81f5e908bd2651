/** A board and a number in the address of the page of faults. */
import { describe, expect, it } from 'vitest';
import { faultHash, faultInHash } from '../../../components/faults/address.ts';

describe('the address of a hidden fault', () => {
  it('names a board and a number, and reads back as both', () => {
    expect(faultHash('chain', 5)).toBe('#board=chain&number=5');
    for (const number of [1, 42, 9999])
      expect(faultInHash(faultHash('link', number))).toEqual({ board: 'link', number });
  });

  it('may name either alone, or neither where it is of something else', () => {
    expect(faultInHash('#board=chain')).toEqual({ board: 'chain' });
    expect(faultInHash('#number=7')).toEqual({ number: 7 });
    for (const hash of ['', '#nothing-arrives', '#task=lay-lead.2.7F3K'])
      expect(faultInHash(hash)).toEqual({});
  });

  it('says what was expected where it names no board or no number of the bench', () => {
    expect(faultInHash('#board=shed&number=7')).toEqual({
      problem: "Address: expected a board of link or chain, got 'shed'.",
    });
    for (const given of ['0', '10000', '1.5', '-3', 'seven', ''])
      expect(faultInHash(`#board=link&number=${given}`)).toEqual({
        problem: `Address: expected a number from 1 to 9999, got '${given}'.`,
      });
  });
});
