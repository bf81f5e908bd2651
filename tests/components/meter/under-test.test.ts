/** What the meter's page puts under the meter, from its few choices; and what it keeps of the jack finder's. */
import { describe, expect, test } from 'vitest';
import { FINDER_KIND, FRESH } from '../../../components/meter/finder-state.ts';
import type { FinderState } from '../../../components/meter/finder-state.ts';
import { FIRST_SETTING, measure, powerOn } from '../../../components/meter/measured.ts';
import { probesOn } from '../../../components/meter/probes.ts';
import {
  FIRST_CHOICES,
  LEADS,
  leadStates,
  suits,
  underTest,
  withEnd,
  withHand,
  withSort,
} from '../../../components/meter/under-test.ts';
import type { Choices } from '../../../components/meter/under-test.ts';
import { safeReadings } from '../../../src/core/readings/index.ts';
import { checkLink } from '../../../src/core/verdict/index.ts';
import { CONNECTORS, OTHER_JACKS, makeJack, makeLead, wires } from '../../../src/core/wiring/index.ts';
import type { Link } from '../../../src/core/wiring/index.ts';

/** The link under the meter. */
function linkOf(choices: Choices): Link {
  const under = underTest({ ...choices, thing: 'link' });
  if (under.kind !== 'link') throw new Error(`needs a link, got ${under.kind}`);
  return under.link;
}

describe('A lead under the meter', () => {
  const of = (lead: Choices['lead']): Link => linkOf({ ...FIRST_CHOICES, lead });

  test('works when it is right, and fails in the way that was chosen', () => {
    expect(checkLink(of('right')).outcome).toBe('flows');
    expect(checkLink(of('swapped')).outcome).toBe('backwards');
    expect(checkLink(of('open')).outcome).toBe('no-path');
    // 500 ohm more in a loop of 660: by Ohm's law well under what the input gets from a right lead.
    const [right, joint] = [of('right'), of('joint')].map((link) => checkLink(link).inputs[0]?.active ?? 0);
    expect(joint).toBeLessThan((right ?? 0) * 0.75);
    expect(of('short').branches[0]?.leads[0]?.faults[0]?.kind).toBe('short');
  });

  test('is one lead alone when that is asked for', () => {
    const under = underTest({ ...FIRST_CHOICES, thing: 'lead', lead: 'open' });
    expect(under).toMatchObject({ kind: 'lead', lead: { faults: [{ kind: 'open', side: 'to' }] } });
  });
});

describe('What is in hand', () => {
  const output = makeJack('out', 'din5', 'din');
  const input = makeJack('in', 'trs-3.5', 'type-b');
  const lead = makeLead('din5', 'trs-3.5', wires('4-tip'), { name: 'mine' });
  const held = withHand(FIRST_CHOICES, output, input, [lead]);

  test('is put under the meter as it is', () => {
    expect([held.thing, held.lead]).toEqual(['link', 'hand']);
    expect(linkOf(held)).toEqual({ output, branches: [{ input, leads: [lead] }] });
    expect(leadStates(held)).toEqual(Object.keys(LEADS));
  });

  test('is not offered where nothing is, or where its lead has no wire', () => {
    const bare = withHand(FIRST_CHOICES, output, input, [{ ...lead, conductors: [] }]);
    expect([bare.lead, bare.hand]).toEqual(['right', []]);
    expect(leadStates(bare)).not.toContain('hand');
  });

  test('stays with the jacks it was made for: another part leaves it, another style or connector takes it away', () => {
    expect(withEnd(held, 'input', { part: 'PC900V' }).lead).toBe('hand');
    expect(withEnd(held, 'input', { style: 'type-a' })).toMatchObject({ lead: 'right', hand: [] });
    expect(withEnd(held, 'output', { connector: 'trs-3.5' })).toMatchObject({ lead: 'right', hand: [] });
  });
});

describe('A jack alone', () => {
  test('is of the sort that was chosen, with a connector that suits it', () => {
    for (const other of OTHER_JACKS)
      for (const otherConnector of CONNECTORS) {
        const choices = withSort({ ...FIRST_CHOICES, otherConnector }, other);
        expect(suits(other, choices.otherConnector), `${other} ${otherConnector}`).toBe(true);
        expect(underTest(choices)).toEqual({
          kind: 'jack',
          jack: { kind: 'other', other, connector: choices.otherConnector },
        });
      }
  });

  test('turned to an input keeps its connector and gets a circuit that suits', () => {
    const turned = withSort(FIRST_CHOICES, 'in');
    expect(turned.jack).toMatchObject({ direction: 'in', connector: 'trs-3.5', style: 'type-a' });
    expect(turned.jack.circuit.startsWith('receiver')).toBe(true);
    expect(underTest(turned)).toEqual({ kind: 'jack', jack: { kind: 'control', jack: turned.jack } });
  });
});

describe('What the jack finder keeps', () => {
  const evidence: FinderState['evidence'] = { ...FRESH.evidence, connector: 'trs-6.35', canSwitchOn: true };
  const taken: FinderState['taken'] = safeReadings(evidence).map((at, place) => ({
    at,
    reading:
      place % 2 === 0 || (at.meter !== 'ohms' && at.meter !== 'diode')
        ? { meter: at.meter, shows: 'value', value: place + 0.5 }
        : { meter: at.meter, shows: 'overload' },
  })) as FinderState['taken'];

  test('comes back reading by reading', () => {
    expect(taken.length).toBeGreaterThan(3);
    const state: FinderState = { evidence, taken };
    expect(FINDER_KIND.read(FINDER_KIND.write(state))).toEqual({ value: state });
  });

  test('takes probes the other way round too, and a device that can no longer be switched on', () => {
    const turned = taken.map(({ at, reading }) => ({ at: { ...at, red: at.black, black: at.red }, reading }));
    const off: FinderState = { evidence: { ...evidence, canSwitchOn: false }, taken: turned };
    expect(FINDER_KIND.read(FINDER_KIND.write(off)).value?.taken).toHaveLength(taken.length);
  });

  test('leaves out what is no reading, and says that it did', () => {
    const [first] = taken;
    const spoiled = [
      first,
      { at: { ...first?.at, meter: 'amperes' }, reading: first?.reading },
      { at: first?.at, reading: { meter: 'clock', shows: 'value', value: 1 } },
      { at: first?.at, reading: { ...first?.reading, value: 'much' } },
      'nonsense',
    ];
    const { value, problem } = FINDER_KIND.read(JSON.stringify({ evidence, taken: spoiled }));
    expect(value?.taken).toEqual([first]);
    expect(problem).toBe('some of it is not known here');
  });

  test('is as on a first visit where it says nothing', () => {
    expect(FINDER_KIND.read('{}').value).toEqual(FRESH);
    expect(FINDER_KIND.read('nothing').problem).toBeDefined();
  });
});

describe('A measurement', () => {
  test('at first is on the source line of a Type A output, which is at its supply while nothing is sent', () => {
    const under = underTest(FIRST_SETTING.choices);
    const { reading, why } = measure(FIRST_SETTING, under, probesOn(under, FIRST_SETTING.probes));
    // Type A on 3.5 mm has its source on the ring; a 3.3 V or 5 V supply stands behind it (MMA RP-054).
    expect(reading).toMatchObject({ meter: 'volts', shows: 'value' });
    expect(reading.meter === 'volts' && reading.shows === 'value' ? reading.value : 0).toBeGreaterThan(3);
    expect(why).not.toBe('');
  });

  test('of a lead is taken without power, with each probe on a contact that the lead has', () => {
    const under = underTest({ ...FIRST_CHOICES, thing: 'lead' });
    expect([under.kind, powerOn(under, 'idle')]).toEqual(['lead', 'off']);
    expect(probesOn(under, FIRST_SETTING.probes)).toEqual({
      red: { side: 'to', contact: 'ring' },
      black: { side: 'to', contact: 'sleeve' },
    });
  });
});
