/** A meter put on whatever lies on the table: a jack, a lead, or a link; what it shows, and why, in one sentence. */
import { SIDES, contactWords, contactsOf } from '../wiring/index.ts';
import type { Connector, Grounding, Lead, Link } from '../wiring/index.ts';
import type { MeterFunction, MeterProfile } from './instruments.ts';
import type { Power } from './power.ts';
import { sayMeterVolts, sayReading } from './reading.ts';
import type { Reading } from './reading.ts';
import { connectorOf, probedContacts, readJack, readLead, readLink } from './subjects.ts';
import type { JackUnderTest, LeadContact } from './subjects.ts';

/** What is under test. A link has one input and one lead, whose plugs are opened so that their solder side can be probed. */
export type UnderTest =
  | { readonly kind: 'jack'; readonly jack: JackUnderTest }
  | { readonly kind: 'lead'; readonly lead: Lead }
  | { readonly kind: 'link'; readonly link: Link; readonly grounding: Grounding };

/** How a reading is taken. On a jack both probes are on the free plug, which counts as side 'from'. */
export interface Probing {
  readonly meter: MeterFunction;
  readonly power: Power;
  readonly red: LeadContact;
  readonly black: LeadContact;
}

/** The connectors whose contacts can be probed: the free plug of a jack, or both plugs of a lead. */
export function probedEnds(
  under: UnderTest,
): readonly { readonly side: LeadContact['side']; readonly connector: Connector }[] {
  if (under.kind === 'jack') return [{ side: 'from', connector: connectorOf(under.jack) }];
  const lead = leadOf(under);
  return SIDES.map((side) => ({ side, connector: lead[side].connector }));
}

/** Every contact that a probe can be put on. */
export function probePlaces(under: UnderTest): readonly LeadContact[] {
  return probedEnds(under).flatMap(({ side, connector }) =>
    (under.kind === 'jack' ? probedContacts(connector) : contactsOf(connector)).map((contact) => ({
      side,
      contact,
    })),
  );
}

/** Whether two places are one. */
export function samePlace(one: LeadContact, other: LeadContact): boolean {
  return one.side === other.side && one.contact === other.contact;
}

/** A place in words: 'tip', or with two plugs 'tip of the input plug'. */
export function sayProbePlace(under: UnderTest, { side, contact }: LeadContact): string {
  if (under.kind === 'jack') return contactWords(contact);
  return `${contactWords(contact)} of the ${plugWords(side)}`;
}

/** The name of a plug of a lead: 'output plug' is the one nearer the output. */
export function plugWords(side: LeadContact['side']): string {
  return side === 'from' ? 'output plug' : 'input plug';
}

/** What the instrument shows. A lead alone has no power, whatever is asked. @throws when both probes are on one contact. */
export function readUnder(under: UnderTest, at: Probing, profile: MeterProfile): Reading {
  switch (under.kind) {
    case 'jack':
      return readJack(under.jack, { ...at, red: at.red.contact, black: at.black.contact }, profile);
    case 'lead':
      return readLead(under.lead, at.meter, at.red, at.black, profile);
    case 'link': {
      const spot = ({ side, contact }: LeadContact) =>
        ({ place: 'lead', branch: 0, lead: 0, side, contact }) as const;
      const { link, grounding } = under;
      return readLink(link, grounding, at.meter, at.power, spot(at.red), spot(at.black), profile);
    }
  }
}

/** A reading as short as a display has it: '5.00 V', 'OL', 'beep', 'silent', 'glows', 'faint', 'dark'. */
export function displayText(reading: Reading): string {
  if (reading.shows === 'value') return sayReading(reading);
  return reading.shows === 'overload' ? 'OL' : reading.shows;
}

/** Least volts that count as a voltage of the thing under test (our choice: what a display of three digits shows). */
const LEAST_VOLTS = 1e-3;

/** Share by which two readings differ that are not the same (our choice: one count in a hundred). */
const DIFFERENT = 0.01;

/** Why the instrument shows what it shows, in one sentence. */
export function explainReading(under: UnderTest, at: Probing, profile: MeterProfile): string {
  const take = (meter: MeterFunction, swapped = false, power = at.power): Reading =>
    readUnder(
      under,
      { meter, power, red: swapped ? at.black : at.red, black: swapped ? at.red : at.black },
      profile,
    );
  const reading = take(at.meter);
  if (at.meter === 'loaded') return whyLoaded(under, at, volts(reading), volts(take('volts')));
  if (at.meter === 'volts') return whyVolts(under, at, volts(reading), volts(take('volts', false, 'idle')));
  if (at.meter === 'led') return whyLed(under, at, reading, take('led', true));
  if (isLive(under, at.power)) {
    const foreign = volts(take('volts'));
    return Math.abs(foreign) >= LEAST_VOLTS
      ? `With the power on there are ${sayMeterVolts(foreign)} here already and the meter adds its own, so this says nothing about the parts: switch off and read again.`
      : 'With the power on the test current may go by way of the supply, so this says little about the parts: switch off and read again.';
  }
  if (at.meter === 'diode') return whyDiode(reading, take('diode', true), profile);
  return whyOhms(reading, take, profile);
}

function whyVolts(under: UnderTest, { power }: Probing, value: number, idle: number): string {
  if (!isLive(under, power)) {
    return under.kind === 'lead'
      ? 'A lead alone has no supply, so there is no voltage to show.'
      : 'The power is off, so there is no voltage to show.';
  }
  if (power !== 'idle' && Math.abs(value - idle) >= LEAST_VOLTS) {
    return `At rest it is ${sayMeterVolts(idle)}; what is sent pulls it away for well under a hundredth of the time, and a slow meter shows the mean.`;
  }
  if (Math.abs(value) < LEAST_VOLTS)
    return 'Either both contacts are at the same voltage, or nothing drives a current from one to the other through the meter.';
  return value > 0
    ? 'The contact under the red probe is at a higher voltage than the one under the black probe.'
    : 'The minus sign says that the red probe is on the lower of the two voltages.';
}

/** Share of the volts without the resistor that is left with it, from which on a contact counts as fed strongly (our choice). */
const STRONG = 0.5;

function whyLoaded(under: UnderTest, { power }: Probing, value: number, open: number): string {
  if (!isLive(under, power) || Math.abs(open) < LEAST_VOLTS)
    return 'There is no voltage here, so nothing drives a current through the resistor.';
  const both = `Without the resistor it is ${sayMeterVolts(open)}, with it ${sayMeterVolts(value)}`;
  return value / open > STRONG
    ? `${both}: less than 1 kohm lies between the supply and these contacts, as behind an output.`
    : `${both}: more than 1 kohm lies between the supply and these contacts, as behind a pull-up.`;
}

function whyLed(under: UnderTest, { power }: Probing, reading: Reading, swapped: Reading): string {
  if (reading.shows === 'faint')
    return 'Current flows in short pulses only, and an eye sees their mean: in a dim room a faint glow, or a flicker with single notes.';
  if (reading.shows === 'glows')
    return 'The device drives enough current from the red probe through the LED to the black one to be seen.';
  if (!isLive(under, power)) return 'The LED tester has no battery, and nothing here is powered.';
  return swapped.shows !== 'dark'
    ? `The LED is the wrong way round for this voltage: with the probes swapped ${sayReading(swapped)}.`
    : 'Too little current flows through the LED for a glow, either way round.';
}

function whyDiode(reading: Reading, swapped: Reading, profile: MeterProfile): string {
  if (reading.shows === 'overload') {
    return swapped.shows === 'value'
      ? `This way round the current is blocked; with the probes swapped the meter shows ${sayReading(swapped)}, so there is a diode or an LED here.`
      : `The meter has at most ${sayMeterVolts(profile.diodeVolts)}, and that drives its test current neither this way nor the other.`;
  }
  const other = volts(swapped);
  if (swapped.shows === 'overload')
    return 'The test current flows from red to black at this voltage and not the other way: a diode or an LED is in its path.';
  return differs(volts(reading), other)
    ? `The test current flows at this voltage, and the other way at ${sayMeterVolts(other)}: the two directions take different paths.`
    : 'The test current flows alike both ways: through a resistor or a wire, with no diode in its path.';
}

function whyOhms(
  reading: Reading,
  take: (meter: MeterFunction, swapped?: boolean) => Reading,
  profile: MeterProfile,
): string {
  const ohms = take('ohms');
  if (reading.shows === 'beep')
    return `There are ${sayReading(ohms)} between the two contacts, and it beeps below ${profile.beepOhms} ohm.`;
  if (ohms.shows === 'value' && reading.shows === 'silent')
    return `There are ${sayReading(ohms)} between the two contacts, and it beeps only below ${profile.beepOhms} ohm.`;
  if (ohms.shows === 'value') {
    const swapped = take('ohms', true);
    return swapped.shows !== 'value' || differs(ohms.value, swapped.value)
      ? `With the probes swapped it is ${swapped.shows === 'value' ? sayReading(swapped) : 'overload'}: a semiconductor is in the path, so this is no plain resistor.`
      : 'The small test current finds a path of this resistance, the same both ways.';
  }
  const opens = [take('diode'), take('diode', true)].some(({ shows }) => shows === 'value');
  return opens
    ? `The only path is through a diode or an LED, and the ${sayMeterVolts(profile.ohmsVolts)} of this range cannot open it: try the diode test.`
    : 'There is no path from one contact to the other that this test can follow.';
}

function leadOf(under: Exclude<UnderTest, { kind: 'jack' }>): Lead {
  if (under.kind === 'lead') return under.lead;
  const lead = under.link.branches[0]?.leads[0];
  if (!lead) throw new Error('meter: a link under test needs one lead to its first input, got none');
  return lead;
}

function isLive(under: UnderTest, power: Power): boolean {
  return under.kind !== 'lead' && power !== 'off';
}

function volts(reading: Reading): number {
  return reading.shows === 'value' ? reading.value : NaN;
}

function differs(one: number, other: number): boolean {
  return Math.abs(one - other) > DIFFERENT * Math.max(Math.abs(one), Math.abs(other));
}
