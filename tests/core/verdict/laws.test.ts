import { nodesOf } from '../../../src/core/circuit/index.ts';
import { checkLink, lineByLine } from '../../../src/core/verdict/index.ts';
import { prepareLink, solveState } from '../../../src/core/verdict/prepare.ts';
import { CURRENT_TO_SPEAK_OF } from '../../../src/core/wiring/optocouplers.ts';
import {
  GROUNDINGS,
  STATES,
  contactsOf,
  linkCircuit,
  makeLead,
  turnLead,
} from '../../../src/core/wiring/index.ts';
import type {
  Conductor,
  Connector,
  Contact,
  Fault,
  Jack,
  Lead,
  Link,
} from '../../../src/core/wiring/index.ts';
import { seededRandom } from '../../support/random.ts';
import type { Random } from '../../support/random.ts';
import { bare, inputsOn, leadFor, oneLink, outputsOn } from './build.ts';
import { describe, expect, it } from 'vitest';

const CONNECTORS: readonly Connector[] = ['din5', 'trs-3.5', 'ts-3.5'];
const OUTPUTS = outputsOn(CONNECTORS);
const INPUTS = inputsOn(CONNECTORS);

/** A plug that goes into the jack: its own kind, or now and then the other kind of phone plug. */
function plugFor(random: Random, jack: Jack): Connector {
  if (jack.connector === 'din5' || random.chance(0.75)) return jack.connector;
  return jack.connector === 'trs-3.5' ? 'ts-3.5' : 'trs-3.5';
}

function randomFault(random: Random, lead: Lead): Fault {
  const side = random.pick(['from', 'to'] as const);
  const contacts = contactsOf(lead[side].connector);
  const contact = random.pick(contacts);
  switch (random.integer(0, 2)) {
    case 0:
      return { kind: 'open', side, contact };
    case 1:
      return { kind: 'joint', side, contact, ohms: random.decades(0.1, 1e5) };
    default:
      return {
        kind: 'short',
        side,
        between: [contact, random.pick(contacts.filter((one) => one !== contact))],
      };
  }
}

/** Any lead between two jacks: any conductors, contacts shared or not, of any length, with faults now and then. */
function randomLead(random: Random, output: Jack, input: Jack): Lead {
  const from = plugFor(random, output);
  const to = plugFor(random, input);
  const wanted = random.integer(1, 5);
  const conductors: Conductor[] = [];
  for (let at = 0; at < wanted; at++) {
    const one = { from: random.pick(contactsOf(from)), to: random.pick(contactsOf(to)) };
    if (!conductors.some((other) => other.from === one.from && other.to === one.to)) conductors.push(one);
  }
  const lead = makeLead(from, to, conductors, {
    lengthMetres: random.decades(0.05, 50),
    gauge: random.pick([22, 24, 26, 28, 30]),
    contactOhms: random.chance(0.2) ? 0 : random.decades(0.001, 5),
  });
  const faults = random.chance(0.4) ? [randomFault(random, lead), randomFault(random, lead)] : [];
  return { ...lead, faults };
}

function randomLink(random: Random): Link {
  const output = random.pick(OUTPUTS);
  const branches = Array.from({ length: random.chance(0.2) ? 2 : 1 }, () => {
    const input = random.pick(INPUTS);
    return { input, leads: [randomLead(random, output, input)] };
  });
  return { output, branches };
}

const shuffled = <Item>(random: Random, items: readonly Item[]): readonly Item[] =>
  items
    .map((item) => ({ item, key: random.next() }))
    .sort((a, b) => a.key - b.key)
    .map(({ item }) => item);

// Hundreds of links solved at all their corners: seconds, and more on a busy machine.
describe('laws that every link keeps, on seeded random leads', { timeout: 60_000 }, () => {
  it('the currents into every contact of every jack and lead end sum to zero', () => {
    const random = seededRandom(1845);
    let contacts = 0;
    for (let run = 0; run < 300; run++) {
      const link = randomLink(random);
      for (const grounding of GROUNDINGS) {
        const prepared = prepareLink(link, grounding);
        for (const state of STATES) {
          const point = solveState(prepared, state);
          if (!point.ok) throw new Error(`run ${run}: ${point.reason}`);
          const sums = new Map<string, { net: number; most: number }>();
          for (const { element } of linkCircuit(link, grounding).parts) {
            const amperes = point.amperes(element.name);
            const [from, to] = nodesOf(element);
            for (const [node, sign] of [
              [from, -1],
              [to, 1],
            ] as const) {
              const sum = sums.get(node) ?? { net: 0, most: 0 };
              sums.set(node, {
                net: sum.net + sign * amperes,
                most: Math.max(sum.most, Math.abs(amperes)),
              });
            }
          }
          for (const [node, { net, most }] of sums) {
            if (!/ (\d|shell|tip|ring|sleeve)( joint)?$/.test(node)) continue;
            contacts++;
            // The volts of a contact are known to some 1e-15 V; over the least contact of 0.1 mohm that is 10 pA.
            expect(Math.abs(net), `run ${run}, ${state}, ${node}`).toBeLessThan(1e-9 + 1e-6 * most);
          }
        }
      }
    }
    expect(contacts).toBeGreaterThan(5000);
  });

  it('the order of conductors and of faults changes nothing', () => {
    const random = seededRandom(42);
    for (let run = 0; run < 40; run++) {
      const link = randomLink(random);
      const other: Link = {
        output: link.output,
        branches: link.branches.map(({ input, leads }) => ({
          input,
          leads: leads.map((lead) => ({
            ...lead,
            conductors: shuffled(random, lead.conductors),
            faults: shuffled(random, lead.faults),
          })),
        })),
      };
      const [one, two] = [checkLink(link), checkLink(other)];
      expect(two.outcome).toBe(one.outcome);
      expect(two.byGrounding).toEqual(one.byGrounding);
      expect(two.notes.map(({ kind }) => kind)).toEqual(one.notes.map(({ kind }) => kind));
      one.inputs.forEach((input, at) => {
        expect(two.inputs[at]?.active).toBeCloseTo(input.active, 8);
        expect(two.inputs[at]?.idle).toBeCloseTo(input.idle, 8);
      });
    }
  });

  it('a lead turned end for end joins what it joined, seen from the other end', () => {
    const random = seededRandom(7);
    const joins = (link: Link): readonly string[] =>
      checkLink(link)
        .reach.flatMap(({ contact, inputs }) => inputs.map((one) => [contact, one.contact] as const))
        .map(([from, to]) => `${from}-${to}`)
        .sort();
    const mirrored = (pairs: readonly string[]): readonly string[] =>
      pairs
        .map((pair) => {
          const [from, to] = pair.split('-');
          return `${to}-${from}`;
        })
        .sort();
    for (let run = 0; run < 40; run++) {
      const output = random.pick(OUTPUTS.filter(({ style }) => style !== 'ring-signal'));
      // An input of the same connector, so that either end goes into either jack.
      const input = random.pick(INPUTS.filter(({ connector }) => connector === output.connector));
      const lead = randomLead(random, output, input);
      const same = { ...lead, to: lead.from, conductors: lead.conductors.filter(fits(lead.from.connector)) };
      const usable: Lead = {
        ...same,
        faults: same.faults.filter((fault) =>
          (fault.kind === 'short' ? fault.between : [fault.contact]).every((one) =>
            contactsOf(lead.from.connector).includes(one),
          ),
        ),
      };
      expect(joins(oneLink(output, input, turnLead(usable)))).toEqual(
        mirrored(joins(oneLink(output, input, usable))),
      );
      expect(turnLead(turnLead(usable))).toEqual(usable);
    }
  });

  it('a lead wired the same from both ends gives the same currents when turned', () => {
    const random = seededRandom(8);
    for (let run = 0; run < 40; run++) {
      const output = random.pick(OUTPUTS);
      const input = random.pick(INPUTS.filter(({ connector }) => connector === output.connector));
      const lead = randomLead(random, output, input);
      const pairs = lead.conductors.filter(fits(lead.from.connector));
      const both = [...pairs, ...pairs.map(({ from, to }) => ({ from: to, to: from }))];
      const conductors = both.filter(
        (one, at) => both.findIndex((other) => other.from === one.from && other.to === one.to) === at,
      );
      const symmetric: Lead = { ...lead, to: lead.from, conductors, faults: [] };
      const [one, two] = [symmetric, turnLead(symmetric)].map((each) =>
        checkLink(oneLink(output, input, each)),
      );
      expect(two?.outcome).toBe(one?.outcome);
      expect(two?.inputs[0]?.active).toBeCloseTo(one?.inputs[0]?.active ?? NaN, 9);
      expect(two?.inputs[0]?.idle).toBeCloseTo(one?.inputs[0]?.idle ?? NaN, 9);
    }
  });

  it('idle is dark in every link that flows', () => {
    const random = seededRandom(99);
    let flowing = 0;
    for (let run = 0; run < 80; run++) {
      const output = random.pick(OUTPUTS.filter(({ circuit }) => circuit !== 'driver-off'));
      const input = random.pick(INPUTS);
      const extra = random.chance(0.5) ? randomLead(random, output, input).conductors.slice(0, 1) : [];
      const lead = leadFor(output, input, lineByLine(output, input));
      const known = extra.filter(
        ({ from, to }) =>
          contactsOf(lead.from.connector).includes(from) &&
          contactsOf(lead.to.connector).includes(to) &&
          !lead.conductors.some((one) => one.from === from && one.to === to),
      );
      const verdict = checkLink(
        oneLink(output, input, { ...lead, conductors: [...lead.conductors, ...known] }),
      );
      if (verdict.outcome !== 'flows') continue;
      flowing++;
      for (const { kind, worstIdle, off } of verdict.inputs) {
        if (kind === 'current') expect(worstIdle).toBeLessThan(off);
        else expect(worstIdle).toBeGreaterThanOrEqual(off);
      }
    }
    expect(flowing).toBeGreaterThan(10);
  });

  it('with one receiver and one path, added resistance never adds current', () => {
    const random = seededRandom(220);
    const loops = OUTPUTS.filter(({ circuit }) => circuit !== 'driver-off' && circuit !== 'driver-ground');
    const receivers = INPUTS.filter(
      ({ circuit }) => circuit === 'receiver-isolated' || circuit === 'receiver-both-ways',
    );
    for (let run = 0; run < 120; run++) {
      const output = random.pick(loops);
      const input = random.pick(receivers);
      const lead = bare(output, input);
      const path = pathOf(output, input, random.chance(0.5));
      let last = Infinity;
      for (const ohms of [0.01, 1, 10, 100, 1e3, 1e4, 1e6]) {
        const faults: readonly Fault[] = [
          { kind: 'joint', side: 'to', contact: path[0]?.to as Contact, ohms },
        ];
        const link = oneLink(output, input, { ...lead, conductors: path, faults });
        const point = solveState(prepareLink(link, 'separate'), 'active');
        if (!point.ok) throw new Error(point.reason);
        const carried = Math.abs(point.amperes('in0 resistor'));
        expect(carried).toBeLessThanOrEqual(last + 1e-12);
        last = carried;
      }
      expect(last).toBeLessThan(CURRENT_TO_SPEAK_OF);
    }
  });
});

const fits =
  (connector: Connector) =>
  ({ from, to }: Conductor): boolean =>
    contactsOf(connector).includes(from) && contactsOf(connector).includes(to);

/** Source and sink of one to source and sink of the other, straight or crossed: one path and no other. */
function pathOf(output: Jack, input: Jack, crossed: boolean): readonly Conductor[] {
  const out = contactsWithLine(output);
  const into = contactsWithLine(input);
  return crossed
    ? [
        { from: out.source, to: into.sink },
        { from: out.sink, to: into.source },
      ]
    : [
        { from: out.source, to: into.source },
        { from: out.sink, to: into.sink },
      ];
}

function contactsWithLine(jack: Jack): { source: Contact; sink: Contact } {
  switch (jack.style) {
    case 'din':
      return { source: '4', sink: '5' };
    case 'type-a':
    case 'both-ways':
      return { source: 'ring', sink: 'tip' };
    case 'type-b':
      return { source: 'tip', sink: 'ring' };
    case 'two-contact':
      return { source: 'tip', sink: 'sleeve' };
    case 'two-contact-turned':
      return { source: 'sleeve', sink: 'tip' };
    default:
      throw new Error(`style ${jack.style} has no loop`);
  }
}
