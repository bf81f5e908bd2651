import { expect, test } from 'vitest';
import { METER_FUNCTIONS, METER_PROFILES, meterProfile } from '../../../src/core/readings/instruments.ts';
import { POWERS } from '../../../src/core/readings/power.ts';
import { jacksWith } from '../../../src/core/readings/catalogue.ts';
import {
  displayText,
  explainReading,
  probePlaces,
  readUnder,
  sayProbePlace,
} from '../../../src/core/readings/probing.ts';
import type { Probing, UnderTest } from '../../../src/core/readings/probing.ts';
import type { Contact } from '../../../src/core/wiring/connectors.ts';
import type { Side } from '../../../src/core/wiring/link.ts';
import { makeJack, makeLead, wires } from '../../../src/core/wiring/link.ts';

const usual = meterProfile('usual');
const at = (
  meter: Probing['meter'],
  power: Probing['power'],
  red: Contact,
  black: Contact,
  sides: readonly [Side, Side] = ['from', 'from'],
): Probing => ({
  meter,
  power,
  red: { side: sides[0], contact: red },
  black: { side: sides[1], contact: black },
});
const typeAOut: UnderTest = {
  kind: 'jack',
  jack: { kind: 'control', jack: makeJack('out', 'trs-3.5', 'type-a') },
};
const typeAIn: UnderTest = {
  kind: 'jack',
  jack: { kind: 'control', jack: makeJack('in', 'trs-3.5', 'type-a') },
};
const lead = makeLead('din5', 'trs-3.5', wires('4-ring', '5-tip', '2-sleeve'));

test('a Type A output at rest has its 5 V on ring against sleeve, and with the probes swapped a minus', () => {
  // MMA CA-033, fig. 1: the source is the ring, behind 220 ohm; 10 Mohm take almost nothing of 5 V.
  expect(displayText(readUnder(typeAOut, at('volts', 'idle', 'ring', 'sleeve'), usual))).toBe('5.00 V');
  const swapped = at('volts', 'idle', 'sleeve', 'ring');
  expect(displayText(readUnder(typeAOut, swapped, usual))).toBe('−5.00 V');
  expect(explainReading(typeAOut, swapped, usual)).toMatch(/minus sign/);
});

test('the LED of an input and the diode across it each conduct one way, and neither opens at 0.5 V', () => {
  const forward = at('diode', 'off', 'ring', 'tip');
  // 1N914 at 1 mA about 0.59 V, and 1 mA through 220 ohm 0.22 V: 0.81 V the way in which the LED blocks.
  expect(explainReading(typeAIn, forward, usual)).toBe(
    'The test current flows at this voltage, and the other way at 0.81 V: the two directions take different paths.',
  );
  expect(explainReading(typeAIn, at('ohms', 'off', 'ring', 'tip'), usual)).toMatch(
    /through a diode or an LED/,
  );
});

test('a resistance range on a powered contact is said to say nothing', () => {
  expect(explainReading(typeAOut, at('ohms', 'idle', 'ring', 'sleeve'), usual)).toMatch(
    /^With the power on there are 5\.00 V here already/,
  );
  // Ring and tip both rest at 5 V: what joins them is the supply, 220 ohm on each side of it.
  const overSupply = at('ohms', 'idle', 'ring', 'tip');
  expect(displayText(readUnder(typeAOut, overSupply, usual))).toBe('440 ohm');
  expect(explainReading(typeAOut, overSupply, usual)).toMatch(/by way of the supply/);
});

test('a lead alone beeps from a contact to the one it is joined to, and has no voltage even when power is asked for', () => {
  const under: UnderTest = { kind: 'lead', lead };
  expect(displayText(readUnder(under, at('continuity', 'off', '4', 'ring', ['from', 'to']), usual))).toBe(
    'beep',
  );
  expect(displayText(readUnder(under, at('continuity', 'off', '4', 'tip', ['from', 'to']), usual))).toBe(
    'silent',
  );
  expect(displayText(readUnder(under, at('ohms', 'off', '4', '5'), usual))).toBe('OL');
  expect(explainReading(under, at('volts', 'clock', '4', 'ring', ['from', 'to']), usual)).toBe(
    'A lead alone has no supply, so there is no voltage to show.',
  );
  expect(sayProbePlace(under, { side: 'to', contact: 'ring' })).toBe('ring of the input plug');
});

test('clock pulls the mean of a sink line down by less than a hundredth of its 5 V, and the sentence says so', () => {
  const clock = at('volts', 'clock', 'tip', 'sleeve');
  const reading = readUnder(typeAOut, clock, usual);
  if (reading.shows !== 'value') throw new Error('volts always show a value');
  // Active 0.6144 % of the time, and then near 0 V.
  expect(reading.value).toBeGreaterThan(4.96);
  expect(reading.value).toBeLessThan(4.98);
  expect(explainReading(typeAOut, clock, usual)).toMatch(/the mean/);
});

test('every reading of every kind of thing has one sentence that says why', () => {
  const input = makeJack('in', 'trs-3.5', 'type-a');
  const link = { output: makeJack('out', 'din5', 'din'), branches: [{ input, leads: [lead] }] };
  const things: readonly UnderTest[] = [
    ...jacksWith('trs-3.5')
      .filter((_, place) => place % 4 === 0)
      .map((jack): UnderTest => ({ kind: 'jack', jack })),
    { kind: 'lead', lead },
    { kind: 'link', link, grounding: 'separate' },
    { kind: 'link', link, grounding: 'joined' },
  ];
  for (const under of things) {
    const [first, ...others] = probePlaces(under).filter(({ side }) => side === 'from');
    if (!first) throw new Error('everything has contacts');
    for (const meter of METER_FUNCTIONS)
      for (const power of POWERS)
        for (const name of METER_PROFILES)
          for (const black of others) {
            const sentence = explainReading(under, { meter, power, red: first, black }, meterProfile(name));
            expect(sentence).toMatch(/^[A-Z].*\.$/);
            expect(sentence).not.toMatch(/NaN|undefined|Infinity/);
          }
  }
});
