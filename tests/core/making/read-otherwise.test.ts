/** A test that differs from the plan: another lead as shops sell it, or a plug held the other way. Joined contacts by hand. */
import { describe, expect, test } from 'vitest';
import {
  fullTable,
  madeLead,
  proveLead,
  readsLike,
  readsMirrored,
  sayContacts,
  tableOf,
} from '../../../src/core/making/index.ts';
import type { Proof } from '../../../src/core/making/index.ts';
import { makeLead, wires } from '../../../src/core/wiring/index.ts';
import type { Conductor } from '../../../src/core/wiring/index.ts';

const TYPE_B = wires('4-tip', '5-ring', '2-sleeve');
const PLANNED = makeLead('din5', 'trs-3.5', TYPE_B);

/** What the full table of a lead wired so says, proved against the plan. */
function prove(wired: readonly Conductor[]): Proof {
  const lead = makeLead('din5', 'trs-3.5', wired);
  const says = tableOf(madeLead(lead, []));
  return proveLead(
    PLANNED,
    fullTable(lead).map((place) => ({ ...place, says: says(place) })),
  );
}

describe('A lead that differs from its plan', () => {
  test('is named where shops sell it, and a plug read from its other side is thought of', () => {
    // Type A has pin 5 on the tip (MMA CA-033). Seen from behind, a plug is the mirror image of its front: pins 4 and 5 change places.
    const bought = prove(wires('5-tip', '4-ring', '2-sleeve'));
    expect(readsLike(PLANNED, bought)?.name).toBe('5-pin DIN to 3.5 mm TRS lead, Type A');
    expect(readsMirrored(bought)).toBe(true);
  });

  test('is neither where the shield is on a line, where a wire is open, or where all is as planned', () => {
    for (const wired of [wires('2-tip', '5-ring', '4-sleeve'), wires('4-tip', '5-ring'), TYPE_B]) {
      const proof = prove(wired);
      expect([readsLike(PLANNED, proof), readsMirrored(proof)]).toEqual([undefined, false]);
    }
  });

  test('is neither as long as readings leave other faults: a silent wire may be open as well', () => {
    const [a, b] = [{ side: 'from', contact: '4' } as const, { side: 'to', contact: 'tip' } as const];
    const proof = proveLead(PLANNED, [{ a, b, hold: 'still', says: 'silent' }]);
    expect(proof.state).toBe('faults');
    expect([readsLike(PLANNED, proof), readsMirrored(proof)]).toEqual([undefined, false]);
  });

  test('has its contacts told in the order of the rows', () => {
    expect(sayContacts(PLANNED)).toBe(
      'pin 1, pin 2, pin 3, pin 4, pin 5, shell at the output end, then tip, ring, sleeve at the input end',
    );
  });
});
