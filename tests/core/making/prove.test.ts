/** The proof of a lead against a search written another way, and against the solved circuit. */
import { describe, expect, it } from 'vitest';
import { meterProfile } from '../../../src/core/readings/instruments.ts';
import { faultsOf, madeLead, mirrorOf, placedEnds } from '../../../src/core/making/lead-faults.ts';
import type { LeadFault } from '../../../src/core/making/lead-faults.ts';
import { HOLDS, fullTable, leadContacts, leadPairs, tableOf } from '../../../src/core/making/lead-table.ts';
import type { Beep, Hold, ProofReading } from '../../../src/core/making/lead-table.ts';
import { proveLead } from '../../../src/core/making/prove.ts';
import { readLead } from '../../../src/core/readings/subjects.ts';
import type { LeadContact } from '../../../src/core/readings/subjects.ts';
import { contactsOf } from '../../../src/core/wiring/connectors.ts';
import type { Connector, Contact } from '../../../src/core/wiring/connectors.ts';
import { makeLead, wires } from '../../../src/core/wiring/link.ts';
import type { Lead } from '../../../src/core/wiring/link.ts';
import { conductorMaps, wiredContacts } from '../../../src/core/verdict/maps.ts';
import { seededRandom } from '../../support/random.ts';

/** Whether two faults cannot be in one set: both say where the same end of the same conductor goes. */
const conflict = (a: LeadFault, b: LeadFault): boolean =>
  placedEnds(b).some((end) => placedEnds(a).includes(end));

const name = ({ side, contact }: LeadContact): string => `${side}${contact}`;

/** Continuity by flooding a matrix of contacts: written apart from the core's union of groups. */
function flood(lead: Lead, faults: readonly LeadFault[], hold: Hold): boolean[][] {
  const all = leadContacts(lead).map(name);
  const joined = all.map((_, at) => all.map((_other, to) => at === to));
  const touch = (a: string, b: string): void => {
    const [x, y] = [all.indexOf(a), all.indexOf(b)];
    (joined[x] as boolean[])[y] = true;
    (joined[y] as boolean[])[x] = true;
  };
  lead.conductors.forEach((plan, number) => {
    const place = (side: 'from' | 'to'): string => {
      let contact: Contact = plan[side];
      for (const fault of faults) {
        if (fault.kind === 'wrong-contact' && fault.side === side && fault.conductor === number)
          contact = fault.contact;
        if (fault.kind === 'swapped' && fault.side === side && fault.conductors.includes(number)) {
          const other = fault.conductors.find((one) => one !== number) as number;
          contact = (lead.conductors[other] as { from: Contact; to: Contact })[side];
        }
      }
      const mirrored = faults.some((fault) => fault.kind === 'mirrored' && fault.side === side);
      const swap: Record<string, string> = { '1': '3', '3': '1', '4': '5', '5': '4', '6': '7', '7': '6' };
      return side + (mirrored ? (swap[contact] ?? contact) : contact);
    };
    const open = faults.some((fault) => fault.kind === 'open' && fault.conductor === number);
    const cold = faults.some(
      (fault) => fault.kind === 'cold-joint' && fault.conductor === number && fault.side === hold,
    );
    if (!open && !cold) touch(place('from'), place('to'));
  });
  for (const fault of faults)
    if (fault.kind === 'short') touch(fault.side + fault.between[0], fault.side + fault.between[1]);
  for (let k = 0; k < all.length; k++)
    for (let i = 0; i < all.length; i++)
      if (joined[i]?.[k])
        for (let j = 0; j < all.length; j++) if (joined[k]?.[j]) (joined[i] as boolean[])[j] = true;
  return joined;
}

/** The whole table as one text, by flooding. */
function tableText(
  lead: Lead,
  faults: readonly LeadFault[],
  pairs: readonly (readonly [number, number])[],
): string {
  const still = flood(lead, faults, 'still');
  const cold = faults.some(({ kind }) => kind === 'cold-joint');
  return HOLDS.map((hold) => {
    const now = hold === 'still' || !cold ? still : flood(lead, faults, hold);
    return pairs.map(([x, y]) => (!still[x]?.[y] ? 's' : now[x]?.[y] ? 'b' : 'f')).join('');
  }).join('|');
}

/** Brute force: every set of up to two faults by its whole table. Tables are made once a lead. */
function bruteForce(lead: Lead): (text: string) => { size: number; sets: Set<string> } | undefined {
  const faults = faultsOf(lead);
  const all = leadContacts(lead).map(name);
  const pairs = leadPairs(lead).map(([a, b]) => [all.indexOf(name(a)), all.indexOf(name(b))] as const);
  const bySize: Map<string, Set<string>>[] = [new Map(), new Map(), new Map()];
  const put = (set: readonly LeadFault[]): void => {
    const text = tableText(lead, set, pairs);
    const into = bySize[set.length] as Map<string, Set<string>>;
    if (!into.has(text)) into.set(text, new Set());
    into.get(text)?.add(nameSet(set));
  };
  put([]);
  faults.forEach((fault) => put([fault]));
  faults.forEach((first, at) =>
    faults.slice(at + 1).forEach((second) => conflict(first, second) || put([first, second])),
  );
  return (text) => {
    const size = bySize.findIndex((sets) => sets.has(text));
    return size < 0 ? undefined : { size, sets: bySize[size]?.get(text) ?? new Set() };
  };
}

const nameSet = (set: readonly LeadFault[]): string =>
  set
    .map((fault) => JSON.stringify(fault))
    .sort()
    .join(' ');

const LETTER: Readonly<Record<Beep, string>> = { beep: 'b', silent: 's', flickers: 'f' };

/** Compare the proof with brute force for one lead made with some faults; the whole table is read. */
function agree(lead: Lead, brute: ReturnType<typeof bruteForce>, truth: readonly LeadFault[]): void {
  const says = tableOf(madeLead(lead, truth));
  const readings: ProofReading[] = fullTable(lead).map((place) => ({ ...place, says: says(place) }));
  const pairs = leadPairs(lead).length;
  const text = HOLDS.map((_, at) =>
    readings
      .slice(at * pairs, (at + 1) * pairs)
      .map((one) => LETTER[one.says])
      .join(''),
  ).join('|');
  const expected = brute(text);
  const proof = proveLead(lead, readings);
  if (!expected) return expect(proof.state).toBe('not-explained');
  expect(proof.state).toBe(expected.size === 0 ? 'as-planned' : 'faults');
  if (expected.size > 0) expect(new Set(proof.sets.map(nameSet))).toEqual(expected.sets);
}

function draw<Item>(random: ReturnType<typeof seededRandom>, from: readonly Item[], count: number): Item[] {
  return Array.from({ length: count }, () => random.pick(from));
}

describe('the proof equals brute force over all sets of up to two faults', () => {
  // Every way to lay three conductors between two TRS plugs, a DIN and a TRS plug, and two DIN plugs on pins 2, 4 and 5.
  const three = (from: readonly Contact[], to: readonly Contact[]) =>
    conductorMaps(from, to).filter((map) => map.length === 3);
  const leads: [string, Connector, Connector, ReturnType<typeof three>][] = [
    [
      'TRS to TRS',
      'trs-3.5',
      'trs-3.5',
      three(wiredContacts({ connector: 'trs-3.5' }), ['tip', 'ring', 'sleeve']),
    ],
    ['DIN to TRS', 'din5', 'trs-3.5', three(['1', '2', '3', '4', '5'], ['tip', 'ring', 'sleeve'])],
    ['DIN to DIN', 'din5', 'din5', three(['2', '4', '5'], ['2', '4', '5'])],
  ];

  it.each(leads)(
    'on every three-conductor lead, %s',
    (_words, from, to, maps) => {
      expect(maps.length).toBeGreaterThanOrEqual(6);
      const random = seededRandom(31);
      for (const conductors of maps) {
        const lead = makeLead(from, to, conductors);
        const brute = bruteForce(lead);
        const faults = faultsOf(lead);
        agree(lead, brute, []);
        for (const truth of [
          ...draw(random, faults, 2).map((one) => [one]),
          draw(random, faults, 2),
          draw(random, faults, 3),
        ])
          if (!truth.some((a, at) => truth.slice(at + 1).some((b) => a === b || conflict(a, b))))
            agree(lead, brute, truth);
      }
    },
    300_000,
  );

  it('on 200 other leads, drawn by seed', () => {
    const random = seededRandom(32);
    for (let at = 0; at < 200; at++) {
      const [from, to] = [
        random.pick(['din5', 'trs-3.5', 'ts-6.35', 'trs-2.5'] as const),
        random.pick(['trs-6.35', 'ts-3.5', 'din5', 'trs-3.5'] as const),
      ];
      const count = random.integer(1, 4);
      const conductors = wires(
        ...new Set(
          Array.from(
            { length: count },
            () => `${random.pick(contactsOf(from))}-${random.pick(contactsOf(to))}`,
          ),
        ),
      );
      const lead = makeLead(from, to, conductors);
      const faults = faultsOf(lead);
      const truth = draw(random, faults, random.integer(0, 2)).filter(
        (a, place, all) => !all.slice(place + 1).some((b) => a === b || conflict(a, b)),
      );
      agree(lead, bruteForce(lead), truth);
    }
  }, 300_000);
});

describe('the proof of a DIN to TRS lead', () => {
  const lead = makeLead('din5', 'trs-3.5', wires('4-ring', '5-tip', '2-sleeve'));
  const read = (faults: readonly LeadFault[]): readonly ProofReading[] =>
    fullTable(lead).map((place) => ({ ...place, says: tableOf(madeLead(lead, faults))(place) }));

  it('is as planned when the whole table agrees, and says how much is left when it is not read', () => {
    expect(proveLead(lead, read([])).sentence).toBe(
      'The lead is as planned: every reading of the full table agrees.',
    );
    // 6 contacts with the shell and 3: 36 pairs, three ways to hold.
    expect(proveLead(lead, []).sentence).toBe(
      'So far the lead is as planned; 108 places of the full table are not read.',
    );
  });

  it('cannot tell a mirrored DIN from swapped wires at either end, and says so', () => {
    const proof = proveLead(lead, read([{ kind: 'mirrored', side: 'from' }]));
    expect(proof.sets.map(([fault]) => fault?.kind).sort()).toEqual(['mirrored', 'swapped', 'swapped']);
    expect(proof.alike).toEqual([[0, 1, 2]]);
    expect(proof.sentence).toMatch(/read alike everywhere: look inside the plug/);
  });

  it('finds the end of a cold joint when one plug is moved at a time', () => {
    const cold = { kind: 'cold-joint', side: 'to', conductor: 0 } as const;
    expect(proveLead(lead, read([cold])).sets).toEqual([[cold]]);
  });

  it('asks for the reading that parts what is left', () => {
    const silent = read([{ kind: 'open', conductor: 0 }]).filter(
      ({ a, b, hold }) => hold === 'still' && a.contact === '4' && b.contact === 'ring',
    );
    const proof = proveLead(lead, silent);
    expect(proof.sets.length).toBeGreaterThan(3);
    expect(proof.next).toBeDefined();
    expect(proof.sentence).toMatch(/ Next: /);
  });

  it('gives up, and says what to do, when the readings fit no two faults', () => {
    const odd = read([]).map((reading) => ({
      ...reading,
      says: reading.says === 'beep' ? ('silent' as const) : ('beep' as const),
    }));
    expect(proveLead(lead, odd).state).toBe('not-explained');
  });

  it('mirrors pins 1 and 3, 4 and 5, and leaves pin 2 and the shell', () => {
    expect((['1', '2', '3', '4', '5', 'shell'] as const).map(mirrorOf)).toEqual([
      '3',
      '2',
      '1',
      '5',
      '4',
      'shell',
    ]);
  });

  it('agrees with the solved circuit: a continuity meter beeps where the table says so', () => {
    const random = seededRandom(33);
    for (let at = 0; at < 25; at++) {
      const truth = draw(random, faultsOf(lead), 2).filter(
        (a, place, all) => !all.slice(place + 1).some((b) => a === b || conflict(a, b)),
      );
      const made = madeLead(lead, truth);
      const says = tableOf(made);
      const wired = {
        ...lead,
        conductors: made.conductors.filter(({ whole }) => whole).map(({ from, to }) => ({ from, to })),
      };
      const unique = wired.conductors.filter(
        (one, place, all) => !all.slice(0, place).some(({ from, to }) => from === one.from && to === one.to),
      );
      const solid: Lead = {
        ...wired,
        conductors: unique,
        faults: made.shorts.map((one) => ({ kind: 'short', ...one })),
      };
      for (const [a, b] of leadPairs(lead))
        expect(readLead(solid, 'continuity', a, b, meterProfile('usual')).shows).toBe(
          says({ a, b, hold: 'still' }),
        );
    }
  });
});
