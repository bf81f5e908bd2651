import { describe, expect, it } from 'vitest';
import {
  CIRCUITS,
  CONNECTORS,
  DIRECTIONS,
  PARTS,
  STYLES,
  circuitEntry,
  circuitsFor,
  hasLed,
  jackProblem,
  layConductor,
  linkCircuit,
  makeJack,
  makeLead,
  partEntry,
  stylesFor,
  turnLead,
  valueAt,
  valuesOf,
  wireOhmsPerMetre,
  wires,
} from '../../../src/core/wiring/index.ts';
import { wireDiameterMetres } from '../../../src/core/wiring/wire.ts';
import type { Lead } from '../../../src/core/wiring/index.ts';

describe('a lead as data', () => {
  const lead = makeLead('din5', 'trs-3.5', wires('4-ring', '5-tip'));

  it('takes one more conductor and gives a new lead, the old one unchanged', () => {
    const more = layConductor(lead, '2', 'sleeve');
    expect(more.conductors).toEqual(wires('4-ring', '5-tip', '2-sleeve'));
    expect(lead.conductors).toHaveLength(2);
  });

  it('is the same when a conductor is laid twice', () => {
    expect(layConductor(lead, '4', 'ring')).toBe(lead);
  });

  it('refuses a contact that its end does not have, naming lead, connector and contact', () => {
    expect(() => layConductor(lead, 'tip', 'ring')).toThrow("lead 'lead': a din5 has no contact 'tip'");
    expect(() => layConductor(lead, '4', '5')).toThrow("lead 'lead': a trs-3.5 has no contact '5'");
  });

  it('turned twice is the lead it was, faults and ends included', () => {
    const faulty: Lead = {
      ...lead,
      to: { connector: 'trs-3.5', form: 'jack' },
      faults: [
        { kind: 'open', side: 'from', contact: '4' },
        { kind: 'joint', side: 'to', contact: 'tip', ohms: 12 },
        { kind: 'short', side: 'to', between: ['tip', 'ring'] },
      ],
    };
    const turned = turnLead(faulty);
    expect(turned.from).toEqual({ connector: 'trs-3.5', form: 'jack' });
    expect(turned.conductors).toEqual(wires('ring-4', 'tip-5'));
    expect(turned.faults.map(({ side }) => side)).toEqual(['to', 'from', 'from']);
    expect(turnLead(turned)).toEqual(faulty);
  });
});

describe('copper wire', () => {
  it('has the diameter and resistance of the printed table', () => {
    // ASTM B258 formula (by a secondary page) and a printed table of ohms per kilometre.
    for (const [gauge, millimetres, ohmsPerKilometre] of [
      [24, 0.511, 84.2],
      [26, 0.405, 133.9],
      [28, 0.321, 212.9],
      [30, 0.255, 338.5],
    ] as const) {
      expect(wireDiameterMetres(gauge) * 1e3).toBeCloseTo(millimetres, 3);
      expect(wireOhmsPerMetre(gauge) * 1e3).toBeCloseTo(ohmsPerKilometre, 0);
    }
  });
});

describe('what may stand behind a jack', () => {
  it('is a circuit of the same direction and family, and an input of either direction has only its own', () => {
    for (const direction of DIRECTIONS) {
      for (const style of STYLES) {
        for (const circuit of circuitsFor(direction, style)) {
          expect(circuit.startsWith('driver-')).toBe(direction === 'out');
          expect(circuitEntry(circuit).family).toBe(styleEntryFamily(style));
        }
      }
    }
    expect(circuitsFor('in', 'both-ways')).toEqual(['receiver-both-ways']);
    expect(circuitsFor('out', 'both-ways')).toEqual([]);
    expect(stylesFor('out', 'trs-3.5')).not.toContain('both-ways');
    expect(stylesFor('in', 'trs-3.5')).toContain('both-ways');
  });

  function styleEntryFamily(style: (typeof STYLES)[number]): string {
    return style === 'ring-signal' || style === 'tip-signal' ? 'ground-referenced' : 'loop';
  }

  it('makes a circuit without fault for every style on every connector it suits, both directions, every circuit', () => {
    let made = 0;
    for (const connector of CONNECTORS) {
      for (const outStyle of stylesFor('out', connector)) {
        for (const circuit of circuitsFor('out', outStyle)) {
          const output = makeJack('out', connector, outStyle, { circuit });
          expect(jackProblem(output)).toBeUndefined();
          for (const inStyle of stylesFor('in', connector)) {
            for (const receiver of circuitsFor('in', inStyle)) {
              const input = makeJack('in', connector, inStyle, { circuit: receiver });
              expect(jackProblem(input)).toBeUndefined();
              const link = { output, branches: [{ input, leads: [makeLead(connector, connector, [])] }] };
              for (const grounding of ['separate', 'joined'] as const) {
                const model = linkCircuit(link, grounding);
                expect(model.misfits).toEqual([]);
                expect(new Set(model.parts.map(({ element }) => element.name)).size).toBe(model.parts.length);
                made++;
              }
            }
          }
        }
      }
    }
    expect(made).toBeGreaterThan(1000);
  });

  it('gives a message for a style on the wrong connector, a wrong circuit, a part without LED', () => {
    expect(jackProblem({ ...makeJack('out', 'din5', 'din'), connector: 'trs-3.5' })).toBe(
      "style 'din' does not suit a trs-3.5 jack",
    );
    expect(jackProblem({ ...makeJack('out', 'din5', 'din'), circuit: 'driver-ground' })).toBe(
      "circuit must be one of driver-5v, driver-3v3, driver-3v3-push-pull, driver-off; got 'driver-ground'",
    );
    expect(
      jackProblem(makeJack('in', 'trs-3.5', 'tip-signal', { circuit: 'receiver-logic', part: 'H11L1' })),
    ).toBe("part: circuit 'receiver-logic' has no optocoupler, got 'H11L1'");
    expect(jackProblem({ ...makeJack('in', 'trs-3.5', 'both-ways'), direction: 'out' })).toBe(
      "circuit must be one of none: this style has no output; got 'receiver-both-ways'",
    );
    expect(() => makeJack('out', 'trs-3.5', 'both-ways')).toThrow(
      "jack: style 'both-ways' has no circuit for 'out'",
    );
  });

  it('gives a message that names value, bounds and unit for a value out of range', () => {
    const jack = makeJack('out', 'din5', 'din');
    expect(jackProblem({ ...jack, values: { sourceOhms: -5 } })).toBe(
      'values.sourceOhms: must be at least 0.1 ohm and at most 1000000 ohm, got -5 ohm',
    );
    expect(jackProblem({ ...jack, values: { supplyVolts: NaN } })).toBe(
      'values.supplyVolts: must be at least 0.5 V and at most 24 V, got NaN V',
    );
    // What the solver cannot tell from none is neither none nor a resistance.
    expect([0, 1e-6].map((stageOhms) => jackProblem({ ...jack, values: { stageOhms } }))).toEqual([
      undefined,
      undefined,
    ]);
    expect(jackProblem({ ...jack, values: { tapOhms: 5e-324 } })).toBe(
      'values.tapOhms: must be 0 ohm or at least 0.000001 ohm, got 5e-324 ohm',
    );
    expect(jackProblem({ ...jack, values: { seriesOhms: 220 } })).toBe(
      "values: circuit 'driver-5v' has no 'seriesOhms'; it has supplyVolts, sourceOhms, sourceWatts, sinkOhms, sinkWatts, stageOhms, stageAmperes, railAmperes, tapOhms, stageVolts, foreignAcrossVolts, foreignSourceVolts, foreignSinkVolts, foreignOhms",
    );
    expect(() => valueAt(jack, 'seriesOhms')).toThrow("jack: circuit 'driver-5v' has no value 'seriesOhms'");
    expect(valueAt({ ...jack, values: { sourceOhms: 330 } }, 'sourceOhms')).toBe(330);
  });

  it('gives a message for a level input whose low is not below its high', () => {
    const input = makeJack('in', 'trs-3.5', 'tip-signal', { circuit: 'receiver-logic' });
    expect(jackProblem({ ...input, values: { lowVolts: 2.5 } })).toBe(
      'values.lowVolts: must be less than highVolts, 2 V, got 2.5 V',
    );
    expect(jackProblem({ ...input, values: { lowVolts: 2.5, highVolts: 3 } })).toBeUndefined();
  });
});

describe('the default circuits', () => {
  const values = (kind: (typeof CIRCUITS)[number], part: (typeof PARTS)[number] = '6N138'): object =>
    Object.fromEntries(valuesOf(kind, part).map(({ name, value }) => [name, value]));

  it('hold the values of the 2014 electrical update for outputs of 5 V and 3.3 V', () => {
    // MMA CA-033, fig. 1: 5 V 220 and 220 ohm; 3.3 V 33 ohm 0.5 W and 10 ohm 0.25 W. Stage ratings: common practice.
    const stage = { stageOhms: 0, stageAmperes: 0.025, railAmperes: 0.05 };
    const foreign = {
      foreignAcrossVolts: 0,
      foreignSourceVolts: 0,
      foreignSinkVolts: 0,
      foreignOhms: 1,
    };
    expect(values('driver-5v')).toEqual({
      supplyVolts: 5,
      sourceOhms: 220,
      sourceWatts: 0.25,
      sinkOhms: 220,
      sinkWatts: 0.25,
      ...stage,
      tapOhms: 0,
      stageVolts: 0,
      ...foreign,
    });
    for (const kind of ['driver-3v3', 'driver-3v3-push-pull'] as const) {
      expect(values(kind)).toEqual({
        supplyVolts: 3.3,
        sourceOhms: 33,
        sourceWatts: 0.5,
        sinkOhms: 10,
        sinkWatts: 0.25,
        ...stage,
        tapOhms: 0,
        ...(kind === 'driver-3v3-push-pull' ? { stageVolts: 0 } : {}),
        ...foreign,
      });
    }
  });

  it('turn on at the currents of their parts', () => {
    // 6N138: test current of its sheet. H11L1: 1.6 mA at most. PC900V: 4 mA (MMA CA-033, p. 4). Not known: the worst of them.
    expect(PARTS.slice(0, 4).map((part) => partEntry(part).turnOnAmperes)).toEqual([
      1.6e-3, 1.6e-3, 4e-3, 4e-3,
    ]);
    // 6N136, by hand: 3.5 V over 4.7 kohm, 26 %: 2.86 mA. CNY17-3: 3.5 mA at 1 kohm, 150 %; 10 mA x (3.5 / 15)^(1 / 1.3): 3.27 mA.
    expect(partEntry('6N136').turnOnAmperes * 1e3).toBeCloseTo(3.5 / 4.7 / 0.26, 6);
    expect(partEntry('CNY17-3').turnOnAmperes * 1e3).toBeCloseTo(10 * (0.35 / 1.5) ** (1 / 1.3), 6);
    expect(partEntry('unknown').led).toEqual(partEntry('6N138').led);
  });

  it('have values that lie inside their own bounds, with a source and a spread that brackets them', () => {
    for (const kind of CIRCUITS) {
      for (const part of hasLed(kind) ? PARTS : (['6N138'] as const)) {
        for (const { name, value, least, most, spread, source } of valuesOf(kind, part)) {
          expect(value, `${kind} ${name}`).toBeGreaterThanOrEqual(least);
          expect(value, `${kind} ${name}`).toBeLessThanOrEqual(most);
          expect(source.length).toBeGreaterThan(0);
          if (!spread) continue;
          const middle = spread.kind === 'factor' ? 1 : 0;
          expect(spread.low).toBeLessThan(middle);
          expect(spread.high).toBeGreaterThan(middle);
        }
      }
    }
  });
});
