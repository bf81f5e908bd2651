/**
 * Jacks that take the same plug and are no control jacks: entries beside the catalogue, for telling a jack by meter.
 * All are common practice without a source; the values are the workbook's own defaults.
 */
import type { Collector } from './build.ts';
import { OUTPUT_GROUND, factorSpread, outputNode } from './build.ts';
import type { Connector, Contact } from './connectors.ts';
import { contactsOf, familyOf } from './connectors.ts';
import type { Status } from './styles.ts';

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
export type OtherJackKind = (typeof OTHER_JACKS)[number];

/** A jack that is no control jack, in words. */
export interface OtherJackEntry {
  readonly kind: OtherJackKind;
  readonly label: string;
  readonly about: string;
  /** Whether the thing at the jack sends or takes. */
  readonly direction: 'out' | 'in';
  /** Fewest contacts that its connector needs. */
  readonly contacts: 2 | 3;
  readonly status: Status;
  readonly source: string;
}

const PRACTICE = { status: 'P', source: 'common practice, no source' } as const;

const ENTRIES: Readonly<Record<OtherJackKind, OtherJackEntry>> = {
  footswitch: {
    kind: 'footswitch',
    label: 'footswitch input',
    about: '10 kohm pull-up to 3.3 V on the tip, nothing on the ring',
    direction: 'in',
    contacts: 2,
    ...PRACTICE,
  },
  'footswitch-double': {
    kind: 'footswitch-double',
    label: 'footswitch input for two switches',
    about: '10 kohm pull-up to 3.3 V on tip and ring alike',
    direction: 'in',
    contacts: 3,
    ...PRACTICE,
  },
  'expression-ring': {
    kind: 'expression-ring',
    label: 'expression input, supply on the ring',
    about: '3.3 V behind 1 kohm on the ring, 100 kohm to ground on the tip',
    direction: 'in',
    contacts: 3,
    ...PRACTICE,
  },
  'expression-tip': {
    kind: 'expression-tip',
    label: 'expression input, supply on the tip',
    about: '3.3 V behind 1 kohm on the tip, 100 kohm to ground on the ring',
    direction: 'in',
    contacts: 3,
    ...PRACTICE,
  },
  headphone: {
    kind: 'headphone',
    label: 'headphone output',
    about: '33 ohm to ground on tip and ring, 0 V',
    direction: 'out',
    contacts: 3,
    ...PRACTICE,
  },
  line: {
    kind: 'line',
    label: 'line or instrument input',
    about: '1 Mohm to ground on the tip',
    direction: 'in',
    contacts: 2,
    ...PRACTICE,
  },
  'control-voltage': {
    kind: 'control-voltage',
    label: 'control-voltage output',
    about: '0 to 5 V behind 1 kohm on the tip',
    direction: 'out',
    contacts: 2,
    ...PRACTICE,
  },
};

/** Every value of such a jack that may be another in a real device, with its default. */
export interface OtherJackValues {
  /** Supply of a pull-up or of an expression input, or what a control-voltage output gives, volts. */
  readonly volts: number;
  /** Resistor to that supply, or of a headphone or line jack to ground, ohms. */
  readonly ohms: number;
  /** Resistor to ground on an expression input's other contact, ohms. */
  readonly senseOhms: number;
}

const VALUES: Readonly<Record<OtherJackKind, OtherJackValues>> = {
  footswitch: { volts: 3.3, ohms: 10e3, senseOhms: 100e3 },
  'footswitch-double': { volts: 3.3, ohms: 10e3, senseOhms: 100e3 },
  'expression-ring': { volts: 3.3, ohms: 1e3, senseOhms: 100e3 },
  'expression-tip': { volts: 3.3, ohms: 1e3, senseOhms: 100e3 },
  headphone: { volts: 0, ohms: 33, senseOhms: 100e3 },
  line: { volts: 0, ohms: 1e6, senseOhms: 100e3 },
  'control-voltage': { volts: 2.5, ohms: 1e3, senseOhms: 100e3 },
};

/** Share by which resistors and supplies of such jacks may be off (our choice, as for a resistor of the loop). */
const SPREAD = 0.05;

/** What is known of such a jack. */
export function otherJackEntry(kind: OtherJackKind): OtherJackEntry {
  return ENTRIES[kind];
}

/** Its default values. */
export function otherJackValues(kind: OtherJackKind): OtherJackValues {
  return VALUES[kind];
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
  const owner = { place: 'output' } as const;
  const values = { ...VALUES[kind], ...more };
  into.add(owner, 'grounds', {
    kind: 'switch',
    name: 'out shield tie',
    a: outputNode('sleeve'),
    b: OUTPUT_GROUND,
    closed: true,
  });
  const resistor = (role: 'pull-up' | 'input-resistor', contact: Contact, to: string, ohms: number): void => {
    const name = `out ${contact} resistor`;
    into.add(owner, role, { kind: 'resistor', name, a: outputNode(contact), b: to, ohms });
    into.spreads.push(factorSpread(`${contact} resistor`, name, ohms, 1 - SPREAD, 1 + SPREAD));
  };
  const supply = (low: number, high: number): void => {
    into.add(owner, 'supply', {
      kind: 'voltage',
      name: 'out supply',
      plus: 'out rail',
      minus: OUTPUT_GROUND,
      volts: values.volts,
    });
    into.spreads.push({
      name: 'supply',
      parts: ['out supply'],
      nominal: [values.volts],
      low: [low],
      high: [high],
    });
  };
  const about = (): void => supply(values.volts * (1 - SPREAD), values.volts * (1 + SPREAD));
  switch (kind) {
    case 'footswitch':
    case 'footswitch-double':
      about();
      resistor('pull-up', 'tip', 'out rail', values.ohms);
      if (kind === 'footswitch-double') resistor('pull-up', 'ring', 'out rail', values.ohms);
      return;
    case 'expression-ring':
    case 'expression-tip': {
      const [fed, sensed]: readonly [Contact, Contact] =
        kind === 'expression-ring' ? ['ring', 'tip'] : ['tip', 'ring'];
      about();
      resistor('pull-up', fed, 'out rail', values.ohms);
      resistor('input-resistor', sensed, OUTPUT_GROUND, values.senseOhms);
      return;
    }
    case 'headphone':
      resistor('input-resistor', 'tip', OUTPUT_GROUND, values.ohms);
      resistor('input-resistor', 'ring', OUTPUT_GROUND, values.ohms);
      return;
    case 'line':
      resistor('input-resistor', 'tip', OUTPUT_GROUND, values.ohms);
      return;
    case 'control-voltage':
      // Any voltage from 0 to 5 V is right: the corners are the whole range.
      supply(0, 5);
      resistor('pull-up', 'tip', 'out rail', values.ohms);
      return;
  }
}
