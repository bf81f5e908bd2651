/** Jack styles: which contact carries which line of the loop. */
import type { Connector, Contact } from './connectors.ts';
import { familyOf } from './connectors.ts';

/** The three lines of the loop. */
export const LINES = ['source', 'sink', 'shield'] as const;
/** A line of the loop. */
export type Line = (typeof LINES)[number];

/**
 * Every jack style. Loop: the first six. Ground-referenced: the last two.
 * `two-contact` comes either way round; both are common practice.
 */
export const STYLES = [
  'din',
  'type-a',
  'type-b',
  'two-contact',
  'two-contact-turned',
  'both-ways',
  'ring-signal',
  'tip-signal',
] as const;
/** A jack style. */
export type Style = (typeof STYLES)[number];

/** How far a value can be trusted: C read in the primary document, c in a secondary page, D worked out, M from memory, P common practice. */
export type Status = 'C' | 'c' | 'D' | 'M' | 'P';

/** The source of what is done and stands in no document. */
export const PRACTICE = 'common practice, no source';

/** A jack style: where its lines are, which connectors carry it, and how well it is documented. */
interface StyleEntry {
  readonly label: string;
  readonly family: 'loop' | 'ground-referenced';
  /** A two-contact loop needs tip and sleeve, which a TRS jack has too. */
  readonly connectors: readonly ReturnType<typeof familyOf>[];
  readonly lines: Readonly<Partial<Record<Line, Contact>>>;
  /** Outputs have this style. An input that takes either direction has no output of its kind. */
  readonly forOutput: boolean;
  readonly status: Status;
  readonly source: string;
}

const LOOP = { family: 'loop', forOutput: true, status: 'P', source: PRACTICE } as const;
const GROUND = { ...LOOP, family: 'ground-referenced' } as const;
const TYPE_A = { source: 'ring', sink: 'tip', shield: 'sleeve' } as const;

const ENTRIES: Readonly<Record<Style, StyleEntry>> = {
  din: {
    ...LOOP,
    label: 'DIN',
    connectors: ['din'],
    lines: { source: '4', sink: '5', shield: '2' },
    status: 'C',
    source: 'MIDI 1.0 Detailed Specification, Hardware; MMA CA-033',
  },
  'type-a': {
    ...LOOP,
    label: 'Type A',
    connectors: ['trs'],
    lines: TYPE_A,
    status: 'c',
    source: 'MMA RP-054 (2018), contact drawing by way of two reports',
  },
  'type-b': {
    ...LOOP,
    label: 'Type B',
    connectors: ['trs'],
    lines: { source: 'tip', sink: 'ring', shield: 'sleeve' },
  },
  'two-contact': {
    ...LOOP,
    label: 'two-contact, source on tip',
    connectors: ['ts', 'trs'],
    lines: { source: 'tip', sink: 'sleeve' },
  },
  'two-contact-turned': {
    ...LOOP,
    label: 'two-contact, source on sleeve',
    connectors: ['ts', 'trs'],
    lines: { source: 'sleeve', sink: 'tip' },
  },
  'both-ways': {
    ...LOOP,
    label: 'takes either direction',
    connectors: ['trs'],
    lines: TYPE_A,
    forOutput: false,
  },
  'ring-signal': {
    ...GROUND,
    label: 'signal on ring, to ground',
    connectors: ['trs'],
    lines: { sink: 'ring', shield: 'sleeve' },
  },
  'tip-signal': {
    ...GROUND,
    label: 'signal on tip, to ground',
    connectors: ['ts', 'trs'],
    lines: { sink: 'tip', shield: 'sleeve' },
  },
};

/** What is known of a style. */
export function styleEntry(style: Style): StyleEntry {
  return ENTRIES[style];
}

/** Whether a jack with this connector can have this style. */
export function styleSuits(style: Style, connector: Connector): boolean {
  return ENTRIES[style].connectors.includes(familyOf(connector));
}

/** The line a contact carries in a style, or undefined for a spare contact. */
export function lineAt(style: Style, contact: Contact): Line | undefined {
  return LINES.find((line) => ENTRIES[style].lines[line] === contact);
}
