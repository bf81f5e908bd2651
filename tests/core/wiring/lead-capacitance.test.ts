import { describe, expect, it } from 'vitest';
import { nodesOf } from '../../../src/core/circuit/index.ts';
import {
  addLeads,
  collector,
  leadNode,
  makeJack,
  makeLead,
  turnLead,
  wires,
} from '../../../src/core/wiring/index.ts';
import type { Contact, Lead } from '../../../src/core/wiring/index.ts';

/** What a lead adds in time: picofarads between two of its contacts at one end, 0 where there is none. */
function capacitors(lead: Lead) {
  const into = collector();
  const branch = { input: makeJack('in', 'din5', 'din'), leads: [lead] };
  addLeads(into, makeJack('out', 'din5', 'din'), branch, 0, true);
  return into.parts.flatMap(({ element }) =>
    element.kind === 'capacitor' ? [{ nodes: nodesOf(element), picofarads: element.farads * 1e12 }] : [],
  );
}

function between(lead: Lead, side: 'from' | 'to', a: Contact, b: Contact): number {
  const [first, second] = [leadNode(0, 0, side, a), leadNode(0, 0, side, b)];
  return capacitors(lead)
    .filter(({ nodes }) => nodes.includes(first) && nodes.includes(second))
    .reduce((sum, { picofarads }) => sum + picofarads, 0);
}

const total = (lead: Lead): number => capacitors(lead).reduce((sum, { picofarads }) => sum + picofarads, 0);

describe('the capacitance of a lead', () => {
  const metre = makeLead('din5', 'din5', wires('4-4', '5-5', '2-2'));

  it('makes a pair of 100 pF/m: 40 core to core, and the 120 of each core to the shield in series', () => {
    // Facts sheet, sections 4 and 11: pair 40 + 120 x 120 / (120 + 120) = 100; a core to all else 40 + 120 = 160.
    const both = (a: Contact, b: Contact) => between(metre, 'from', a, b) + between(metre, 'to', a, b);
    const [coreToCore, toShield] = [both('4', '5'), both('4', '2')];
    expect(coreToCore + (toShield * both('5', '2')) / (toShield + both('5', '2'))).toBeCloseTo(100, 9);
    expect(coreToCore + toShield).toBeCloseTo(160, 9);
  });

  it('stands half at each end', () => {
    for (const [a, b] of [
      ['4', '5'],
      ['4', '2'],
      ['5', '2'],
    ] as const)
      expect(between(metre, 'from', a, b)).toBe(between(metre, 'to', a, b));
  });

  it('grows with the length and with nothing else', () => {
    const long = { ...metre, lengthMetres: 15, gauge: 30, contactOhms: 1 };
    expect(total(long)).toBeCloseTo(15 * total(metre), 6);
    // 15 m at 100 pF/m is 1.5 nF (facts sheet, section 4): the pair's share of the whole.
    expect(total(metre)).toBeCloseTo(40 + 120 + 120, 9);
  });

  it('is the same when the lead is turned end for end', () => {
    const mixed = makeLead('din5', 'trs-3.5', wires('4-ring', '5-tip', '2-sleeve'), { lengthMetres: 3 });
    expect(total(turnLead(mixed))).toBeCloseTo(total(mixed), 9);
    expect(between(turnLead(mixed), 'to', '4', '2')).toBe(between(mixed, 'from', '4', '2'));
  });

  it('takes for the shield the conductor on the most shield contacts, the first of equals', () => {
    // Shell to shell and pin 2 to pin 2 are equal: the first is the shield, the other a core like the rest.
    const two = makeLead('din5', 'din5', wires('4-4', '2-2', 'shell-shell'));
    expect(between(two, 'from', '4', '2')).toBeCloseTo(60, 9);
    expect(between(two, 'from', '4', 'shell')).toBeCloseTo(20, 9);
    // One shield contact loses to two.
    const crossed = makeLead('din5', 'din5', wires('4-2', '2-2'));
    expect(between(crossed, 'from', '4', '2')).toBeCloseTo(60, 9);
    const half = makeLead('din5', 'din5', wires('2-4', '5-5', '2-2'));
    expect(between(half, 'from', '5', '2')).toBeCloseTo(20 + 60, 9);
  });

  it('knows no shield among conductors that touch none of its contacts', () => {
    const bare = makeLead('din5', 'din5', wires('4-4', '5-5', '1-1'));
    expect(total(bare)).toBeCloseTo(3 * 40, 9);
  });

  it('is none for one conductor alone, and none between two conductors that meet at one contact', () => {
    expect(capacitors(makeLead('din5', 'din5', wires('4-4')))).toEqual([]);
    expect(capacitors(makeLead('din5', 'din5', []))).toEqual([]);
    const fork = makeLead('din5', 'din5', wires('4-4', '4-5'));
    expect(between(fork, 'from', '4', '4')).toBe(0);
    expect(total(fork)).toBeCloseTo(20, 9);
  });

  it('stands behind a bad joint, where the wire is, not at the plug', () => {
    const open: Lead = { ...metre, faults: [{ kind: 'open', side: 'from', contact: '4' }] };
    expect(between(open, 'from', '4', '5')).toBe(0);
    expect(between(open, 'to', '4', '5')).toBeCloseTo(20, 9);
    expect(total(open)).toBeCloseTo(total(metre), 9);
  });
});
