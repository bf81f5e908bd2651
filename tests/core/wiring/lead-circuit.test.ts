import { describe, expect, it } from 'vitest';
import {
  LINES,
  OUTPUT_GROUND,
  addLeads,
  collector,
  inputNode,
  makeJack,
  makeLead,
  outputNode,
  turnLead,
  wires,
} from '../../../src/core/wiring/index.ts';
import type { Connector, Contact, End, Fault, Jack, Lead, Misfit } from '../../../src/core/wiring/index.ts';
import { resistor, solvedParts } from './by-hand.ts';

const DIN_OUT = makeJack('out', 'din5', 'din');
const DIN_IN = makeJack('in', 'din5', 'din');
const STRAIGHT = wires('4-4', '5-5', '2-2');
/** Ohms of 1 m of 26 AWG by the facts sheet, and of a touch of plug on jack. */
const METRE = 0.1339;
const TOUCH = 0.03;

/** Ohms between two nodes of the run of leads between two jacks: 1 uA is sent through, volts are read; Infinity where there is no way. */
function ohmsBetween(a: string, b: string, leads: readonly Lead[], output = DIN_OUT, input = DIN_IN): number {
  const into = collector();
  addLeads(into, output, { input, leads }, 0);
  const point = solvedParts([
    ...into.parts.map(({ element }) => element),
    { kind: 'current', name: 'probe', from: b, to: a, amperes: 1e-6 },
    resistor('held', b, OUTPUT_GROUND, 1),
    resistor('no way', a, OUTPUT_GROUND, 1e10),
  ]);
  const ohms = (point.volts(a) - point.volts(b)) / 1e-6;
  return ohms > 1e6 ? Infinity : ohms;
}

const din = (more: Partial<Lead> = {}): Lead => makeLead('din5', 'din5', STRAIGHT, more);
const straight = (contact: Contact, ...leads: readonly Lead[]): number =>
  ohmsBetween(outputNode(contact), inputNode(0, contact), leads);

describe('the ohms of a lead', () => {
  it('are its wire and a touch at each end', () => {
    expect(straight('4', din())).toBeCloseTo(METRE + 2 * TOUCH, 3);
    expect(straight('4', din({ lengthMetres: 15 }))).toBeCloseTo(15 * METRE + 2 * TOUCH, 3);
    expect(straight('4', din({ contactOhms: 0.5 }))).toBeCloseTo(METRE + 1, 3);
  });

  it('add up in series: an adapter brings two touches of its own', () => {
    const socket: End = { connector: 'din5', form: 'jack' };
    const extension = din({ from: socket, contactOhms: 0.1 });
    // Output jack, plug, wire, plug in socket (the worse of the two touches, 0.1), wire, plug in input jack (0.1).
    expect(straight('4', din(), extension)).toBeCloseTo(TOUCH + METRE + 0.1 + METRE + 0.1, 3);
  });

  it('halve where two wires run side by side from one contact to another contact that the plugs join', () => {
    const both = makeLead('ts-3.5', 'ts-3.5', wires('tip-tip', 'sleeve-sleeve'), { contactOhms: 0.1 });
    const out = makeJack('out', 'trs-3.5', 'type-a');
    const into = makeJack('in', 'trs-3.5', 'type-a');
    // The long sleeve touches ring and sleeve: from ring to sleeve of one jack are two touches and no wire.
    expect(ohmsBetween(outputNode('ring'), outputNode('sleeve'), [both], out, into)).toBeCloseTo(0.2, 3);
    expect(ohmsBetween(outputNode('ring'), inputNode(0, 'sleeve'), [both], out, into)).toBeCloseTo(
      0.1 + METRE + 0.1,
      3,
    );
  });

  it('never have a touch of no ohms: worn or clean, it is at least 0.1 mohm', () => {
    const into = collector();
    addLeads(into, DIN_OUT, { input: DIN_IN, leads: [din({ contactOhms: 0 })] }, 0);
    expect(into.touches.map(({ ohms }) => ohms)).toEqual(Array.from({ length: 6 }, () => 1e-4));
  });

  it('do not change when the lead is turned end for end', () => {
    const odd = makeLead('din5', 'din5', wires('4-5', '5-4', '2-2', '1-1'), {
      lengthMetres: 7,
      faults: [
        { kind: 'joint', side: 'from', contact: '4', ohms: 12 },
        { kind: 'short', side: 'to', between: ['1', '2'] },
      ],
    });
    for (const a of ['1', '2', '4', '5'] as const)
      for (const b of ['1', '2', '4', '5'] as const)
        expect(ohmsBetween(outputNode(a), inputNode(0, b), [odd])).toBeCloseTo(
          ohmsBetween(outputNode(b), inputNode(0, a), [turnLead(odd)]),
          6,
        );
  });
});

describe('what is wrong inside a lead', () => {
  const withFaults = (...faults: readonly Fault[]): Lead => din({ faults });

  it('is an open joint, at either end: no way through', () => {
    for (const side of ['from', 'to'] as const)
      expect(straight('5', withFaults({ kind: 'open', side, contact: '5' }))).toBe(Infinity);
  });

  it('is a bad joint, which adds its ohms; several at one joint add up, and an open one wins', () => {
    const joint = (ohms: number): Fault => ({ kind: 'joint', side: 'to', contact: '4', ohms });
    const good = straight('4', din());
    expect(straight('4', withFaults(joint(100)))).toBeCloseTo(good + 100, 3);
    expect(straight('4', withFaults(joint(100), joint(47)))).toBeCloseTo(good + 147, 3);
    const open: Fault = { kind: 'open', side: 'to', contact: '4' };
    expect(straight('4', withFaults(joint(100), open))).toBe(Infinity);
    expect(straight('4', withFaults(open, joint(100)))).toBe(Infinity);
  });

  it('is a bridge between two contacts, of 10 mohm', () => {
    const bridged = withFaults({ kind: 'short', side: 'from', between: ['4', '5'] });
    expect(ohmsBetween(outputNode('4'), outputNode('5'), [bridged])).toBeCloseTo(0.01 + 2 * TOUCH, 3);
    expect(ohmsBetween(outputNode('4'), outputNode('5'), [din()])).toBe(Infinity);
  });

  it('is a bridge onto a contact without a wire, which then touches its jack', () => {
    const stray = withFaults({ kind: 'short', side: 'to', between: ['5', '3'] });
    expect(ohmsBetween(outputNode('5'), inputNode(0, '3'), [stray])).toBeCloseTo(METRE + 0.01 + 2 * TOUCH, 3);
  });

  it('leaves every other conductor as it was', () => {
    const faulty = withFaults({ kind: 'open', side: 'from', contact: '4' });
    for (const contact of ['5', '2'] as const)
      expect(straight(contact, faulty)).toBeCloseTo(straight(contact, din()), 6);
  });
});

describe('what does not go together', () => {
  const misfitsOf = (output: Connector, leads: readonly Lead[], input: Connector): readonly Misfit[] => {
    const jack = (direction: 'out' | 'in', connector: Connector): Jack => ({
      ...makeJack(direction, 'din5', 'din'),
      connector,
    });
    return addLeads(collector(), jack('out', output), { input: jack('in', input), leads }, 4);
  };

  it('is a plug of another size, told with its place along the branch', () => {
    expect(misfitsOf('trs-3.5', [makeLead('trs-6.35', 'din5', [])], 'din5')).toEqual([
      { branch: 4, at: 0, reason: 'a 6.35 mm TRS plug does not fit a 3.5 mm TRS jack: the sizes differ' },
    ]);
    expect(misfitsOf('din5', [din(), din()], 'din5')).toEqual([
      { branch: 4, at: 1, reason: 'two plugs meet here; a plug needs a jack' },
    ]);
  });

  it('is a jack that meets a jack, with no lead between them or by the wrong end of an adapter', () => {
    expect(misfitsOf('din5', [], 'din5')).toEqual([
      { branch: 4, at: 0, reason: 'two jacks meet here; a jack needs a plug' },
    ]);
    const socket: End = { connector: 'din5', form: 'jack' };
    expect(misfitsOf('din5', [din({ from: socket, to: socket })], 'din5').map(({ at }) => at)).toEqual([
      0, 1,
    ]);
  });

  it('leaves nothing between the two ends that do not meet', () => {
    const into = collector();
    addLeads(into, DIN_OUT, { input: DIN_IN, leads: [makeLead('trs-3.5', 'din5', wires('tip-4'))] }, 0);
    expect(into.parts.map(({ element }) => element.name)).toEqual(['wire0.0 tip 4', 'touch0.1 4 4']);
  });
});

describe('the parts of a lead', () => {
  it('have a touch only where a wire stands behind it, or one metal part lies on two contacts', () => {
    const names = (lead: Lead, jack: Jack) => {
      const into = collector();
      addLeads(into, jack, { input: { ...jack, direction: 'in' }, leads: [lead] }, 0);
      return into.parts.filter(({ role }) => role === 'contact').map(({ element }) => element.name);
    };
    expect(names(makeLead('din5', 'din5', wires('4-4')), DIN_OUT)).toEqual(['touch0.0 4 4', 'touch0.1 4 4']);
    const trs = makeJack('out', 'trs-3.5', 'type-a');
    expect(names(makeLead('ts-3.5', 'ts-3.5', wires('tip-tip')), trs)).toEqual([
      'touch0.0 tip tip',
      'touch0.0 sleeve sleeve',
      'touch0.0 sleeve ring',
      'touch0.1 tip tip',
      'touch0.1 sleeve sleeve',
      'touch0.1 sleeve ring',
    ]);
  });

  it('belong to the lead that they are part of, the last touch to the last lead', () => {
    const into = collector();
    const socket: End = { connector: 'din5', form: 'jack' };
    addLeads(into, DIN_OUT, { input: DIN_IN, leads: [din(), din({ from: socket })] }, 0);
    const owners = into.parts
      .filter(({ role }) => role === 'contact')
      .map(({ owner }) => (owner.place === 'lead' ? owner.lead : -1));
    // Three lines at each of three meetings: jack and first lead, first and second, second and jack.
    expect(owners).toEqual([0, 1, 1].flatMap((lead) => LINES.map(() => lead)));
  });
});
