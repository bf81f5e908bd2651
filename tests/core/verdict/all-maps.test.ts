import {
  OUTCOMES,
  checkLink,
  findLead,
  lineByLine,
  shopWords,
  someMapWorks,
  solveMaps,
} from '../../../src/core/verdict/index.ts';
import { conductorMaps, wiredContacts } from '../../../src/core/verdict/maps.ts';
import { works } from '../../../src/core/verdict/outcomes.ts';
import type { Outcome } from '../../../src/core/verdict/index.ts';
import { makeJack, wires } from '../../../src/core/wiring/index.ts';
import type { Conductor, Jack } from '../../../src/core/wiring/index.ts';
import { seededRandom } from '../../support/random.ts';
import { inputsOn, leadFor, oneLink, outputsOn, verdictFor } from './build.ts';
import { describe, expect, it } from 'vitest';

const CONNECTORS = ['din5', 'trs-3.5', 'ts-3.5'] as const;
const said = (conductors: readonly Conductor[]): string =>
  conductors
    .map(({ from, to }) => `${from}-${to}`)
    .sort()
    .join(' ');

describe('the maps of conductors between two jacks', () => {
  it('are as many as there are ways to pair off contacts, none at all included', () => {
    // The sum over k of C(n,k) C(m,k) k!: 136 for 5 and 3, 34 for 3 and 3, 1546 for 5 and 5, 7 for 2 and 2.
    const count = (from: (typeof CONNECTORS)[number], to: (typeof CONNECTORS)[number]): number =>
      conductorMaps(wiredContacts({ connector: from }), wiredContacts({ connector: to })).length;
    expect(count('din5', 'trs-3.5')).toBe(136);
    expect(count('trs-3.5', 'din5')).toBe(136);
    expect(count('trs-3.5', 'trs-3.5')).toBe(34);
    expect(count('din5', 'din5')).toBe(1546);
    expect(count('ts-3.5', 'ts-3.5')).toBe(7);
    expect(count('trs-3.5', 'ts-3.5')).toBe(13);
    expect(count('din5', 'ts-3.5')).toBe(31);
  });

  it('are all different, and use each contact at most once', () => {
    const maps = conductorMaps(wiredContacts({ connector: 'din5' }), wiredContacts({ connector: 'trs-3.5' }));
    expect(new Set(maps.map(said)).size).toBe(maps.length);
    for (const map of maps) {
      expect(new Set(map.map(({ from }) => from)).size).toBe(map.length);
      expect(new Set(map.map(({ to }) => to)).size).toBe(map.length);
    }
  });
});

// Some 40 000 maps, most of them sharing a circuit with others: some seconds, more on a busy machine.
describe('every map of every pair of jacks', { timeout: 120_000 }, () => {
  const outputs = outputsOn(CONNECTORS);
  const inputs = inputsOn(CONNECTORS, ['6N138', 'unknown']);
  const pairs: { output: Jack; input: Jack; best: Outcome | undefined }[] = [];
  const name = (output: Jack, input: Jack): string =>
    `${output.connector} ${output.style} ${output.circuit} to ${input.connector} ${input.style} ${input.circuit} ${input.part}`;

  it('has exactly one outcome, and where line by line does not work nothing does', () => {
    const totals = new Map<Outcome, number>(OUTCOMES.map((outcome) => [outcome, 0]));
    let maps = 0;
    let circuits = 0;
    for (const output of outputs) {
      for (const input of inputs) {
        const found = solveMaps(output, input);
        const outcomes = found.candidates.map(({ outcome }) => outcome);
        for (const outcome of outcomes) totals.set(outcome, (totals.get(outcome) ?? NaN) + 1);
        maps += found.candidates.length;
        circuits += found.circuits;
        const safe = found.candidates.filter(works).map(({ outcome }) => outcome);
        const best = (['flows', 'weak'] as const).find((outcome) => safe.includes(outcome));
        expect(someMapWorks(output, input), name(output, input)).toBe(best !== undefined);
        const plain = said(lineByLine(output, input));
        const proposed = found.candidates.find(({ conductors }) => said(conductors) === plain);
        if (best)
          expect([proposed?.outcome, proposed?.danger], name(output, input)).toEqual([best, undefined]);
        else expect(proposed && works(proposed), name(output, input)).not.toBe(true);
        pairs.push({ output, input, best });
      }
    }
    expect([...totals.keys()]).toEqual([...OUTCOMES]);
    expect([...totals.values()].reduce((sum, count) => sum + count, 0)).toBe(maps);
    for (const [outcome, count] of totals)
      expect(count > 0, `${outcome}: ${count}`).toBe(outcome !== 'unsolved');
    console.log(
      `${outputs.length} outputs x ${inputs.length} inputs, ${maps} maps, ${circuits} circuits: ${[...totals].flat().join(' ')}`,
    );
  });

  it('is answered alike by the search and by the words of what to change, on a seeded draw of pairs', () => {
    expect(pairs).toHaveLength(outputs.length * inputs.length);
    const random = seededRandom(136);
    for (let run = 0; run < 80; run++) {
      const { output, input, best } = random.pick(pairs);
      const pair = name(output, input);
      const verdict = checkLink(oneLink(output, input, leadFor(output, input, lineByLine(output, input))));
      const found = findLead(output, input);
      expect(found.answer, pair).toBe(
        best === 'flows' ? 'lead' : best === 'weak' ? 'weak-only' : 'no-passive-lead',
      );
      const hopeless = /^(Do not connect it as it is\. )?No passive lead can/;
      const expected = output.circuit !== 'driver-off' && best === undefined;
      expect(hopeless.test(verdict.change), `${pair}: ${verdict.change}`).toBe(expected);
      expect(hopeless.test(found.sentence), `${pair}: ${found.sentence}`).toBe(expected);
      expect(
        found.leads.every(({ outcome }) => outcome === best),
        pair,
      ).toBe(true);
      expect(
        OUTCOMES.reduce((sum, outcome) => sum + found.counts[outcome], 0),
        pair,
      ).toBe(found.maps);
    }
  });
});

describe('maps that differ only in conductors that carry nothing', { timeout: 60_000 }, () => {
  it('share a solution, which is the one that each of them has by itself', () => {
    const random = seededRandom(1546);
    const outputs = outputsOn(['din5', 'trs-3.5']);
    const inputs = inputsOn(['din5', 'trs-3.5'], ['6N138']);
    for (let run = 0; run < 20; run++) {
      const output = random.pick(outputs);
      const input = random.pick(inputs);
      const { candidates } = solveMaps(output, input);
      for (let draw = 0; draw < 3; draw++) {
        const { conductors, outcome } = random.pick(candidates);
        expect(checkLink(oneLink(output, input, leadFor(output, input, conductors))).outcome).toBe(outcome);
      }
    }
  });
});

describe('which lead?', () => {
  const dinOut = makeJack('out', 'din5', 'din');

  it('puts the lead that the standard wants first', () => {
    const found = findLead(dinOut, makeJack('in', 'trs-3.5', 'type-a'));
    expect(found.answer).toBe('lead');
    expect(said(found.leads[0]?.conductors ?? [])).toBe('2-sleeve 4-ring 5-tip');
    expect(found.leads[0]).toMatchObject({ shieldJoined: true, spares: 0, outcome: 'flows' });
    expect(found.maps).toBe(136);
  });

  it('crosses tip and ring between Type A and Type B', () => {
    const output = makeJack('out', 'trs-3.5', 'type-a');
    const input = makeJack('in', 'trs-3.5', 'type-b');
    const first = findLead(output, input).leads[0]?.conductors ?? [];
    expect(said(first)).toBe('ring-tip sleeve-sleeve tip-ring');
    expect(shopWords(output, input, first)).toBe('crossed: tip and ring change places');
  });

  it('names an adapter by its wiring, whichever end the DIN is at', () => {
    const typeA = makeJack('in', 'trs-3.5', 'type-a');
    expect(shopWords(dinOut, typeA, wires('4-ring', '5-tip', '2-sleeve'))).toBe(
      'wired as Type A: pin 5 on tip, pin 4 on ring, pin 2 on sleeve',
    );
    expect(
      shopWords(
        makeJack('out', 'trs-3.5', 'type-b'),
        makeJack('in', 'din5', 'din'),
        wires('tip-4', 'ring-5', 'sleeve-2'),
      ),
    ).toBe('wired as Type B: pin 4 on tip, pin 5 on ring, pin 2 on sleeve');
    expect(shopWords(dinOut, makeJack('in', 'trs-3.5', 'type-b'), wires('4-tip', '5-ring'))).toBe(
      'wired as Type B: pin 4 on tip, pin 5 on ring',
    );
    expect(shopWords(dinOut, makeJack('in', 'din5', 'din'), wires('4-4', '5-5', '2-2'))).toBe(
      'straight: each contact to the same contact',
    );
  });

  it('ranks best first, and gives each near miss the reason of its own verdict', () => {
    const input = makeJack('in', 'din5', 'din');
    const found = findLead(dinOut, input);
    const [first, ...others] = found.leads;
    for (const other of others)
      expect(Number(other.shieldJoined)).toBeLessThanOrEqual(Number(first?.shieldJoined));
    expect(found.leads).toHaveLength(found.counts.flows);
    for (const { candidate, reason } of found.nearMisses) {
      expect(candidate.outcome).not.toBe('flows');
      expect(reason).toBe(
        checkLink(oneLink(dinOut, input, leadFor(dinOut, input, candidate.conductors))).sentence,
      );
    }
  });

  it('has an answer for a part that is not known', () => {
    const found = findLead(dinOut, makeJack('in', 'din5', 'din', { part: 'unknown' }));
    expect(found.answer).toBe('lead');
    expect(found.sentence).toContain('The part in the receiver is not known: each usual one was solved.');
    // A bridge takes two diodes' worth: 3.46 mA, and the least sensitive part needs 4 mA.
    const bridged = findLead(dinOut, makeJack('in', 'trs-3.5', 'both-ways', { part: 'unknown' }));
    expect(bridged.answer).toBe('no-passive-lead');
  });

  it('says that no passive lead can, or that the output is off', () => {
    const isolated = makeJack('in', 'trs-3.5', 'type-a');
    expect(findLead(makeJack('out', 'trs-3.5', 'ring-signal'), isolated).sentence).toBe(
      'No passive lead can: none of 34 possible wirings works between signal on ring, to ground out and Type A in. It needs a powered converter, or another output.',
    );
    expect(findLead(makeJack('out', 'trs-3.5', 'type-a', { circuit: 'driver-off' }), isolated).sentence).toBe(
      'No lead can do anything while the output has no supply: switch it on first.',
    );
  });

  it('lets an isolated input be lit by a two-contact output over two wires', () => {
    expect(
      verdictFor(makeJack('out', 'ts-3.5', 'two-contact'), makeJack('in', 'din5', 'din'), 'tip-4', 'sleeve-5')
        .outcome,
    ).toBe('flows');
  });
});
