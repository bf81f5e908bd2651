import { describe, expect, it } from 'vitest';
import {
  CONNECTORS,
  FORMS,
  GOODS,
  contactsJoined,
  contactsOf,
  inputNode,
  makeJack,
  makeLead,
  mate,
  outputNode,
  seriesBetween,
  turnLead,
  addLeads,
  collector,
  OUTPUT_GROUND,
} from '../../../src/core/wiring/index.ts';
import type { Connector, End, Lead } from '../../../src/core/wiring/index.ts';
import { seededRandom } from '../../support/random.ts';
import type { Random } from '../../support/random.ts';
import { resistor, solvedParts } from './by-hand.ts';

const UNLIMITED = GOODS.map(() => Infinity);
const JACK = (connector: Connector): End => ({ connector, form: 'jack' });

function joins(one: End, other: End): boolean {
  if (one.form === other.form) return false;
  const [plug, jack] = one.form === 'plug' ? [one, other] : [other, one];
  return mate(plug.connector, jack.connector).fits;
}

/** The same question by trying everything: every word of up to `most` leads, each either way, kept where all its ends join. */
function byTrying(
  leads: readonly Lead[],
  counts: readonly number[],
  from: Connector,
  to: Connector,
  most: number,
) {
  const letters = leads.flatMap((lead, number) => [
    { number, lead },
    { number, lead: turnLead(lead) },
  ]);
  let wordsSoFar: (typeof letters)[] = [[]];
  const all: (typeof letters)[] = [];
  for (let length = 1; length <= most; length++) {
    wordsSoFar = wordsSoFar.flatMap((word) => letters.map((letter) => [...word, letter]));
    all.push(...wordsSoFar);
  }
  return all.filter((word) => {
    const ends = [JACK(from), ...word.flatMap(({ lead }) => [lead.from, lead.to]), JACK(to)];
    const meet = word.every((_, at) => joins(ends[2 * at] as End, ends[2 * at + 1] as End));
    const last = joins(ends.at(-2) as End, ends.at(-1) as End);
    return (
      meet &&
      last &&
      leads.every((_, at) => word.filter(({ number }) => number === at).length <= (counts[at] ?? 0))
    );
  });
}

/** An end that goes into the one given, of the same connector. */
const against = ({ connector, form }: End): End => ({ connector, form: form === 'plug' ? 'jack' : 'plug' });

function anyLead(
  random: Random,
  from: End = { connector: random.pick(CONNECTORS), form: random.pick(FORMS) },
): Lead {
  const to: End = { connector: random.pick(CONNECTORS), form: random.pick(FORMS) };
  const conductors = Array.from({ length: random.integer(1, 6) }, () => ({
    from: random.pick(contactsOf(from.connector)),
    to: random.pick(contactsOf(to.connector)),
  })).filter(
    (one, at, all) => all.findIndex((other) => other.from === one.from && other.to === one.to) === at,
  );
  return makeLead(from.connector, to.connector, conductors, { from, to });
}

describe('leads in series', () => {
  it('are those that are found by trying every row of leads, each either way round', () => {
    const random = seededRandom(71);
    const key = (series: readonly { number: number; lead: Lead }[]): string =>
      JSON.stringify(series.map(({ number, lead }) => [number, lead.from, lead.to, lead.conductors]));
    let found = 0;
    for (let turn = 0; turn < 80; turn++) {
      const leads = [...[0, 0, 0].map(() => random.pick(GOODS).lead), anyLead(random)];
      const counts = leads.map(() => random.pick([0, 1, 2, Infinity]));
      const [from, to] = [random.pick(CONNECTORS.slice(0, 4)), random.pick(CONNECTORS.slice(0, 4))];
      const series = seriesBetween(leads, counts, from, to, 3);
      const tried = byTrying(leads, counts, from, to, 3);
      expect(series.map(key).sort()).toEqual(tried.map(key).sort());
      found += series.length;
    }
    expect(found).toBeGreaterThan(40);
  });

  it('stand shortest first', () => {
    const leads = GOODS.map(({ lead }) => lead);
    const lengths = seriesBetween(leads, UNLIMITED, 'din5', 'trs-6.35', 3).map(({ length }) => length);
    expect(lengths).toEqual([...lengths].sort((one, other) => one - other));
    expect(lengths[0]).toBe(1);
    expect(lengths.at(-1)).toBe(3);
  });

  it('are none of no leads, none of leads that are used up, and none of length nought', () => {
    const leads = GOODS.map(({ lead }) => lead);
    expect(seriesBetween([], [], 'din5', 'din5', 3)).toEqual([]);
    expect(
      seriesBetween(
        leads,
        leads.map(() => 0),
        'din5',
        'din5',
        3,
      ),
    ).toEqual([]);
    expect(seriesBetween(leads, UNLIMITED, 'din5', 'din5', 0)).toEqual([]);
  });

  it('need an adapter between two plugs: DIN lead, then the socket that it goes into', () => {
    const named = (...ids: readonly string[]) =>
      ids.map((id) => GOODS.find((one) => one.id === id)?.lead as Lead);
    const leads = named('din', 'adapter-a');
    const series = seriesBetween(leads, [1, 1], 'din5', 'trs-3.5', 2);
    // The DIN lead either way round; the adapter only with its socket towards the lead.
    expect(series.map((one) => one.map(({ number }) => number))).toEqual([
      [0, 1],
      [0, 1],
    ]);
    expect(series.every((one) => one[1]?.lead.from.form === 'jack')).toBe(true);
  });

  it('are as many with the two jacks changed about', () => {
    const leads = GOODS.map(({ lead }) => lead);
    for (const [one, other] of [
      ['din5', 'trs-3.5'],
      ['trs-6.35', 'trs-3.5'],
      ['ts-6.35', 'trs-2.5'],
    ] as const)
      expect(seriesBetween(leads, UNLIMITED, one, other, 2)).toHaveLength(
        seriesBetween(leads, UNLIMITED, other, one, 2).length,
      );
  });
});

describe('the contacts that a series joins', () => {
  it('are written as groups, from jack to jack', () => {
    const adapter = GOODS.find(({ id }) => id === 'din-small-a')?.lead as Lead;
    expect(contactsJoined('din5', [adapter], 'trs-3.5')).toEqual([
      'in ring, out 4',
      'in sleeve, out 2',
      'in tip, out 5',
    ]);
    expect(contactsJoined('din5', [], 'din5')).toEqual([]);
  });

  it('show the ring and sleeve that a TS plug joins, at both jacks', () => {
    const guitar = GOODS.find(({ id }) => id === 'ts-large')?.lead as Lead;
    expect(contactsJoined('trs-6.35', [guitar], 'trs-6.35')).toEqual([
      'in ring, in sleeve, out ring, out sleeve',
      'in tip, out tip',
    ]);
  });

  it('are the contacts between which an ohmmeter finds a way', () => {
    const random = seededRandom(72);
    let joined = 0;
    for (let turn = 0; turn < 60; turn++) {
      const from = random.pick(CONNECTORS);
      const leads: Lead[] = [];
      let end = JACK(from);
      for (let number = random.integer(1, 3); number > 0; number--) {
        // Now and then two ends that do not go together.
        const lead = anyLead(random, random.chance(0.1) ? undefined : against(end));
        leads.push(lead);
        end = lead.to;
      }
      const to = random.chance(0.1) ? random.pick(CONNECTORS) : end.connector;
      const groups = contactsJoined(from, leads, to);
      const into = collector();
      addLeads(
        into,
        { ...makeJack('out', 'din5', 'din'), connector: from },
        { input: { ...makeJack('in', 'din5', 'din'), connector: to }, leads },
        0,
      );
      const places = [
        ...contactsOf(from).map((one) => ({ name: `out ${one}`, node: outputNode(one) })),
        ...contactsOf(to).map((one) => ({ name: `in ${one}`, node: inputNode(0, one) })),
      ];
      const bleed = places.map(({ node }) => resistor(`bleed ${node}`, node, OUTPUT_GROUND, 1e7));
      for (const red of places.slice(0, 3)) {
        const point = solvedParts([
          ...into.parts.map(({ element }) => element),
          ...bleed,
          { kind: 'current', name: 'probe', from: OUTPUT_GROUND, to: red.node, amperes: 1e-6 },
        ]);
        for (const black of places) {
          const one = groups.find((group) => group.split(', ').includes(red.name));
          const together = red === black || (one?.split(', ').includes(black.name) ?? false);
          // A contact that is joined follows the probe to within 1 uA times a few ohms; any other stays at 0 V.
          expect(Math.abs(point.volts(black.node)) > 0.1, `${red.name} ${black.name}`).toBe(together);
          joined += Number(together && red !== black);
        }
      }
    }
    expect(joined).toBeGreaterThan(10);
  });
});
