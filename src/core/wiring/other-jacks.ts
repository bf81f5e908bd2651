/**
 * Jacks that take the same plug and are no control jacks: entries beside the catalogue, for telling a jack by meter.
 * All are common practice without a source; the values are the workbook's own defaults.
 */
import type { Collector } from './build.ts';
import { OUTPUT_GROUND, outputNode } from './build.ts';
import type { Connector, Contact } from './connectors.ts';
import { contactsOf, familyOf } from './connectors.ts';
import { PRACTICE } from './styles.ts';

/** Every kind of jack that looks like a control jack and is none. */
export const OTHER_JACKS = [
  'footswitch',
  'footswitch-double',
  'expression-ring',
  'expression-tip',
  'headphone',
  'line',
  'control-voltage',
] as const;
/** A jack that looks like a control jack and is none. */
export type OtherJackKind = (typeof OTHER_JACKS)[number];

/** Every value of such a jack that may be another in a real device, with its default. */
export interface OtherJackValues {
  /** Supply of a pull-up or of an expression input, or what a control-voltage output gives, volts. */
  readonly volts: number;
  /** Resistor to that supply, or of a headphone or line jack to ground, ohms. */
  readonly ohms: number;
  /** Resistor to ground on an expression input's other contact, ohms. */
  readonly senseOhms: number;
}

/** A jack that is no control jack, in words and values; `contacts` is the fewest that its connector needs. */
interface OtherJackEntry {
  readonly label: string;
  readonly about: string;
  readonly contacts: 2 | 3;
  readonly source: string;
  readonly values: OtherJackValues;
}

const jack = (
  label: string,
  about: string,
  contacts: 2 | 3,
  volts: number,
  ohms: number,
): OtherJackEntry => ({
  label,
  about,
  contacts,
  source: PRACTICE,
  values: { volts, ohms, senseOhms: 100e3 },
});

const ENTRIES: Readonly<Record<OtherJackKind, OtherJackEntry>> = {
  footswitch: jack(
    'footswitch input',
    '10 kohm pull-up to 3.3 V on the tip, nothing on the ring',
    2,
    3.3,
    10e3,
  ),
  'footswitch-double': jack(
    'footswitch input for two switches',
    '10 kohm pull-up to 3.3 V on tip and ring alike',
    3,
    3.3,
    10e3,
  ),
  'expression-ring': jack(
    'expression input, supply on the ring',
    '3.3 V behind 1 kohm on the ring, 100 kohm to ground on the tip',
    3,
    3.3,
    1e3,
  ),
  'expression-tip': jack(
    'expression input, supply on the tip',
    '3.3 V behind 1 kohm on the tip, 100 kohm to ground on the ring',
    3,
    3.3,
    1e3,
  ),
  headphone: jack('headphone output', '33 ohm to ground on tip and ring, 0 V', 3, 0, 33),
  line: jack('line or instrument input', '1 Mohm to ground on the tip', 2, 0, 1e6),
  'control-voltage': jack('control-voltage output', '0 to 5 V behind 1 kohm on the tip', 2, 2.5, 1e3),
};

/** Share by which resistors and supplies of such jacks may be off (our choice, as for a resistor of the loop). */
const SPREAD = 0.05;

/** What is known of such a jack. */
export function otherJackEntry(kind: OtherJackKind): OtherJackEntry {
  return ENTRIES[kind];
}

/** Whether such a jack can have this connector: phone jacks only, a TRS one where it needs three contacts. */
export function otherJackSuits(kind: OtherJackKind, connector: Connector): boolean {
  return familyOf(connector) !== 'din' && contactsOf(connector).length >= ENTRIES[kind].contacts;
}

/** Add the parts of such a jack; contacts are those of an output, ground is the output's. The sleeve is ground. */
export function addOtherJack(
  into: Collector,
  kind: OtherJackKind,
  more: Partial<OtherJackValues> = {},
): void {
  const out = into.at({ place: 'output' });
  const { volts, ohms, senseOhms } = { ...ENTRIES[kind].values, ...more };
  const spread = (name: string, part: string, nominal: number, low: number, high: number): void =>
    void into.spreads.push({ name, parts: [part], nominal: [nominal], low: [low], high: [high] });
  const resistor = (
    role: 'pull-up' | 'input-resistor',
    contact: Contact,
    to: string,
    value: number,
  ): void => {
    const name = `out ${contact} resistor`;
    out.resistor(role, name, outputNode(contact), to, value);
    spread(`${contact} resistor`, name, value, value * (1 - SPREAD), value * (1 + SPREAD));
  };
  const fed = (contact: Contact): void => resistor('pull-up', contact, 'out rail', ohms);
  const grounded = (contact: Contact, value: number): void =>
    resistor('input-resistor', contact, OUTPUT_GROUND, value);
  out.tie('out shield tie', outputNode('sleeve'), OUTPUT_GROUND);
  if (kind !== 'headphone' && kind !== 'line') {
    out.supply('out supply', 'out rail', OUTPUT_GROUND, volts);
    // Any voltage from 0 to 5 V is right at a control-voltage output: the corners are the whole range.
    if (kind === 'control-voltage') spread('supply', 'out supply', volts, 0, 5);
    else spread('supply', 'out supply', volts, volts * (1 - SPREAD), volts * (1 + SPREAD));
  }
  switch (kind) {
    case 'footswitch':
    case 'control-voltage':
      return fed('tip');
    case 'footswitch-double':
      fed('tip');
      return fed('ring');
    case 'expression-ring':
      fed('ring');
      return grounded('tip', senseOhms);
    case 'expression-tip':
      fed('tip');
      return grounded('ring', senseOhms);
    case 'headphone':
      grounded('tip', ohms);
      return grounded('ring', ohms);
    case 'line':
      return grounded('tip', ohms);
  }
}
