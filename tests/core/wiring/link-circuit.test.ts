import { describe, expect, it } from 'vitest';
import {
  DEFAULT_TIMING,
  GROUNDINGS,
  OUTPUT_GROUND,
  STRAIGHT_DIN,
  STRAIGHT_TRS,
  inputGround,
  linkCircuit,
  makeJack,
  makeLead,
  partEntry,
  spreadName,
} from '../../../src/core/wiring/index.ts';
import type { Grounding, Jack, Link, LinkCircuit, Rival, Spread } from '../../../src/core/wiring/index.ts';
import { seriesAmperes, solvedParts } from './by-hand.ts';

const OUT = makeJack('out', 'din5', 'din');
const IN = makeJack('in', 'din5', 'din');
const LOGIC = makeJack('in', 'trs-3.5', 'ring-signal', { circuit: 'receiver-logic' });
const GROUND_OUT = makeJack('out', 'trs-3.5', 'ring-signal');
/** A lead too short and thick to count: 10 mm of 20 AWG, clean contacts. */
const BARE = { lengthMetres: 0.01, gauge: 20, contactOhms: 0 };
const DIN_LEAD = makeLead('din5', 'din5', STRAIGHT_DIN, BARE);
const TRS_LEAD = makeLead('trs-3.5', 'trs-3.5', STRAIGHT_TRS, BARE);

const link = (...inputs: readonly Jack[]): Link => ({
  output: OUT,
  branches: inputs.map((input) => ({ input, leads: [DIN_LEAD] })),
});
const rival = (...branches: Rival['branches']): Rival => ({ output: OUT, branches });

/** LED currents in milliamperes, the outputs in the states given. */
function litBy(model: LinkCircuit, ...states: readonly ('idle' | 'active')[]): readonly number[] {
  const values = [model.switching, ...model.rivals].flatMap(
    (switching, at) => switching[states[at] ?? 'idle'],
  );
  const point = solvedParts(model.circuit.elements, values);
  return model.senses.map((sense) => (sense.kind === 'current' ? point.amperes(sense.led) * 1e3 : NaN));
}

const groundsOf = (model: LinkCircuit): readonly string[] =>
  model.parts.flatMap(({ element, owner }) =>
    owner.place === 'world' && element.kind === 'switch' ? [`${element.a} = ${element.b}`] : [],
  );

describe('a link as a circuit', () => {
  it('gives each of two inputs what the facts sheet gives it, and three still less', () => {
    // Facts sheet, section 7, 5 V by 220 and 220 ohm, 6N138: 3.25 mA each of two, 2.33 each of three. By hand: n equal branches of
    // 220 ohm and an LED are one of 220 / n, so I = the series current of 440 n + 220 ohm.
    for (const [inputs, milliamperes] of [
      [1, 5.38],
      [2, 3.25],
      [3, 2.33],
    ] as const) {
      const lit = litBy(linkCircuit(link(...Array.from({ length: inputs }, () => IN)), 'separate'), 'active');
      for (const one of lit) {
        expect(one).toBeCloseTo(milliamperes, 1.7);
        expect(one).toBeCloseTo(seriesAmperes(5, 440 * inputs + 220, partEntry('6N138').led) * 1e3, 2);
      }
      expect(lit).toHaveLength(inputs);
    }
  });

  it('does not care in what order its inputs stand', () => {
    const parts = ['6N138', 'PC900V', 'H11L1'] as const;
    const inputs = parts.map((part) => makeJack('in', 'din5', 'din', { part }));
    const forth = litBy(linkCircuit(link(...inputs), 'separate'), 'active');
    const back = litBy(linkCircuit(link(...inputs.toReversed()), 'separate'), 'active');
    back.toReversed().forEach((one, at) => expect(one).toBeCloseTo(forth[at] ?? NaN, 9));
  });

  it('is the same circuit for isolated inputs however grounds are joined', () => {
    const [apart, joined] = GROUNDINGS.map((grounding) => linkCircuit(link(IN, IN), grounding));
    expect(joined?.circuit).toEqual(apart?.circuit);
    expect(apart?.groundMatters).toBe(false);
  });

  it('joins the grounds of those inputs that have one', () => {
    const mixed: Link = {
      output: GROUND_OUT,
      branches: [IN, LOGIC, LOGIC].map((input) => ({ input, leads: [TRS_LEAD] })),
    };
    expect(linkCircuit(mixed, 'separate')).toMatchObject({ groundMatters: true });
    expect(groundsOf(linkCircuit(mixed, 'separate'))).toEqual([]);
    expect(groundsOf(linkCircuit(mixed, 'joined'))).toEqual([
      `${OUTPUT_GROUND} = ${inputGround(1)}`,
      `${OUTPUT_GROUND} = ${inputGround(2)}`,
    ]);
  });

  it('leaves an input dark that no lead reaches, and says what does not fit', () => {
    const model = linkCircuit({ output: OUT, branches: [{ input: IN, leads: [] }] }, 'separate');
    expect(model.misfits).toEqual([{ branch: 0, at: 0, reason: 'two jacks meet here; a jack needs a plug' }]);
    expect(litBy(model, 'active')[0]).toBeCloseTo(0, 9);
  });
});

describe('the capacitor that the 2014 update allows from pin 2 to ground', () => {
  const timing = { ...DEFAULT_TIMING, pin2Farads: 100e-9 };
  const capacitor = (input: Jack, grounding: Grounding, given = timing) =>
    linkCircuit(link(input), grounding, given).parts.find(
      ({ element }) => element.name === 'in0 shield capacitor',
    )?.element;

  it('stands between the shield contact and the ground of its own device, and nowhere at rest', () => {
    expect(capacitor(IN, 'separate')).toEqual({
      kind: 'capacitor',
      name: 'in0 shield capacitor',
      a: 'in0 2',
      b: inputGround(0),
      farads: 100e-9,
    });
    expect(capacitor(IN, 'separate', DEFAULT_TIMING)).toBeUndefined();
    expect(linkCircuit(link(IN), 'separate').parts.some(({ element }) => element.kind === 'capacitor')).toBe(
      false,
    );
  });

  it('gives the input a ground, which can then be joined to that of the output', () => {
    expect(groundsOf(linkCircuit(link(IN), 'joined', timing))).toEqual([
      `${OUTPUT_GROUND} = ${inputGround(0)}`,
    ]);
    expect(groundsOf(linkCircuit(link(IN), 'joined', DEFAULT_TIMING))).toEqual([]);
  });

  it('is left out where there is no shield line, and where the shield is on ground already', () => {
    const twoContact = makeJack('in', 'ts-3.5', 'two-contact');
    expect(capacitor(twoContact, 'separate')).toBeUndefined();
    expect(capacitor(LOGIC, 'separate')).toBeUndefined();
    expect(capacitor(makeJack('in', 'trs-3.5', 'both-ways'), 'separate')).toMatchObject({ a: 'in0 sleeve' });
  });
});

describe('a rival output', () => {
  const alone = litBy(linkCircuit(link(IN), 'separate'), 'active')[0] ?? NaN;
  const shared: Link = { ...link(IN), rivals: [rival({ input: IN, leads: [DIN_LEAD], shares: 0 })] };

  it('that sends at the same time feeds the shared input twice over: two equal sources in parallel', () => {
    // 5 V behind 440 ohm twice is 5 V behind 220 ohm, then the 220 ohm of the input.
    const model = linkCircuit(shared, 'separate');
    expect(litBy(model, 'active', 'active')[0]).toBeCloseTo(
      seriesAmperes(5, 440, partEntry('6N138').led) * 1e3,
      2,
    );
  });

  it('that rests takes the loop current of the other on its way: the input gets less', () => {
    const resting = litBy(linkCircuit(shared, 'joined'), 'active', 'idle')[0] ?? NaN;
    expect(resting).toBeLessThan(alone - 1);
    expect(resting).toBeGreaterThan(0);
  });

  it('of the same kind is as good as the first: which of the two sends makes no odds', () => {
    for (const grounding of GROUNDINGS) {
      const model = linkCircuit(shared, grounding);
      expect(litBy(model, 'active', 'idle')[0]).toBeCloseTo(litBy(model, 'idle', 'active')[0] ?? NaN, 6);
    }
  });

  it('brings inputs of its own, numbered on from those that are there', () => {
    const own = makeJack('in', 'din5', 'din', { part: 'H11L1' });
    const model = linkCircuit(
      {
        ...link(IN),
        rivals: [rival({ input: IN, leads: [DIN_LEAD], shares: 0 }, { input: own, leads: [DIN_LEAD] })],
      },
      'separate',
    );
    expect(model.senses.map((sense) => (sense.kind === 'current' ? sense.led : ''))).toEqual([
      'in0 LED',
      'in1 LED',
    ]);
    const names = model.parts.map(({ element }) => element.name);
    expect(new Set(names).size).toBe(names.length);
    expect(names.filter((name) => name.endsWith(' LED'))).toEqual(['in0 LED', 'in1 LED']);
    expect(names).toContain('out2 supply');
  });

  it('belongs to itself, and its leads to branches that no other output has', () => {
    const owners = linkCircuit(shared, 'separate').parts.map(({ owner }) => owner);
    expect(owners.filter((owner) => owner.place === 'output' && owner.rival === 2).length).toBeGreaterThan(3);
    const branches = new Set(owners.flatMap((owner) => (owner.place === 'lead' ? [owner.branch] : [])));
    expect([...branches]).toEqual([0, 2000]);
  });

  it('is tied to the ground of the first where grounds are joined, and always lets the grounding matter', () => {
    const two: Link = {
      ...link(IN),
      rivals: [1, 2].map(() => rival({ input: IN, leads: [DIN_LEAD], shares: 0 })),
    };
    expect(groundsOf(linkCircuit(two, 'joined'))).toEqual([
      `${OUTPUT_GROUND} = out2 ground`,
      `${OUTPUT_GROUND} = out3 ground`,
    ]);
    expect(groundsOf(linkCircuit(two, 'separate'))).toEqual([]);
    expect(linkCircuit(two, 'separate').groundMatters).toBe(true);
  });

  it('has spreads of its own name, but for those of the inputs that it brings', () => {
    const own = rival({ input: IN, leads: [DIN_LEAD] });
    const names = linkCircuit({ ...link(IN), rivals: [own] }, 'separate').spreads.map(({ name }) => name);
    expect(names.filter((name) => name.endsWith(' of output 2'))).toEqual([
      'supply of output 2',
      'source resistor of output 2',
      'sink resistor of output 2',
      'contacts of output 2',
      'wire of output 2',
    ]);
    expect(names.filter((name) => name === 'LED voltage')).toHaveLength(2);
    const sharing = linkCircuit(shared, 'separate').spreads.map(({ name }) => name);
    expect(sharing.filter((name) => name === 'LED voltage')).toHaveLength(1);
  });
});

describe('the names of tolerances', () => {
  it('tell the input only where several have one of the name', () => {
    const { spreads } = linkCircuit(link(IN, IN), 'separate');
    const names = spreads.map((spread) => spreadName(spreads, spread));
    expect(names).toContain('LED voltage of input 1');
    expect(names).toContain('LED voltage of input 2');
    expect(names).toContain('supply');
    const alone = linkCircuit(link(IN), 'separate').spreads;
    expect(alone.map((spread) => spreadName(alone, spread))).toEqual([
      'supply',
      'source resistor',
      'sink resistor',
      'receiver resistor',
      'LED voltage',
      'contacts',
      'wire',
    ]);
  });

  it('move every touch together from clean to worn, and every wire by a twentieth', () => {
    const lead = makeLead('din5', 'din5', STRAIGHT_DIN, { lengthMetres: 10, contactOhms: 0.2 });
    const { spreads } = linkCircuit({ output: OUT, branches: [{ input: IN, leads: [lead] }] }, 'separate');
    const named = (name: string): Spread => spreads.find((one) => one.name === name) as Spread;
    const contacts = named('contacts');
    expect(new Set(contacts.low)).toEqual(new Set([1e-4]));
    // A touch that is worse than worn already stays as it is.
    expect(new Set(contacts.high)).toEqual(new Set([0.2]));
    expect(contacts.parts).toHaveLength(6);
    const wire = named('wire');
    // Facts sheet: 26 AWG has 0.1339 ohm/m.
    expect(wire.nominal[0]).toBeCloseTo(1.339, 3);
    expect(wire.low[0]).toBeCloseTo(1.339 * 0.95, 3);
    expect(wire.high[0]).toBeCloseTo(1.339 * 1.05, 3);
  });
});
