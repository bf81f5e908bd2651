/** Jack styles: which contact carries which line of the loop. */
import type { Connector, Contact } from './connectors.ts';
import { familyOf } from './connectors.ts';

/** The three lines of the loop. */
export const LINES = ['source', 'sink', 'shield'] as const;
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
export type Style = (typeof STYLES)[number];

/** How far a value can be trusted: C read in the primary document, c in a secondary page, D worked out, M from memory, P common practice. */
export const STATUSES = ['C', 'c', 'D', 'M', 'P'] as const;
export type Status = (typeof STATUSES)[number];

/** A jack style: where its lines are, which connectors carry it, and how well it is documented. */
export interface StyleEntry {
  readonly style: Style;
  readonly label: string;
  readonly family: 'loop' | 'ground-referenced';
  readonly connectors: 'din' | 'trs' | 'ts';
  readonly lines: Readonly<Partial<Record<Line, Contact>>>;
  /** Outputs have this style. An input that takes either direction has no output of its kind. */
  readonly forOutput: boolean;
  readonly status: Status;
  readonly source: string;
}

const PRACTICE = 'common practice, no source';

const ENTRIES: Readonly<Record<Style, StyleEntry>> = {
  din: {
    style: 'din',
    label: 'DIN',
    family: 'loop',
    connectors: 'din',
    lines: { source: '4', sink: '5', shield: '2' },
    forOutput: true,
    status: 'C',
    source: 'MIDI 1.0 Detailed Specification, Hardware; MMA CA-033',
  },
  'type-a': {
    style: 'type-a',
    label: 'Type A',
    family: 'loop',
    connectors: 'trs',
    lines: { source: 'ring', sink: 'tip', shield: 'sleeve' },
    forOutput: true,
    status: 'c',
    source: 'MMA RP-054 (2018), contact drawing by way of two reports',
  },
  'type-b': {
    style: 'type-b',
    label: 'Type B',
    family: 'loop',
    connectors: 'trs',
    lines: { source: 'tip', sink: 'ring', shield: 'sleeve' },
    forOutput: true,
    status: 'P',
    source: PRACTICE,
  },
  'two-contact': {
    style: 'two-contact',
    label: 'two-contact, source on tip',
    family: 'loop',
    connectors: 'ts',
    lines: { source: 'tip', sink: 'sleeve' },
    forOutput: true,
    status: 'P',
    source: PRACTICE,
  },
  'two-contact-turned': {
    style: 'two-contact-turned',
    label: 'two-contact, source on sleeve',
    family: 'loop',
    connectors: 'ts',
    lines: { source: 'sleeve', sink: 'tip' },
    forOutput: true,
    status: 'P',
    source: PRACTICE,
  },
  'both-ways': {
    style: 'both-ways',
    label: 'takes either direction',
    family: 'loop',
    connectors: 'trs',
    lines: { source: 'ring', sink: 'tip', shield: 'sleeve' },
    forOutput: false,
    status: 'P',
    source: PRACTICE,
  },
  'ring-signal': {
    style: 'ring-signal',
    label: 'signal on ring, to ground',
    family: 'ground-referenced',
    connectors: 'trs',
    lines: { sink: 'ring', shield: 'sleeve' },
    forOutput: true,
    status: 'P',
    source: PRACTICE,
  },
  'tip-signal': {
    style: 'tip-signal',
    label: 'signal on tip, to ground',
    family: 'ground-referenced',
    connectors: 'trs',
    lines: { sink: 'tip', shield: 'sleeve' },
    forOutput: true,
    status: 'P',
    source: PRACTICE,
  },
};

/** What is known of a style. */
export function styleEntry(style: Style): StyleEntry {
  return ENTRIES[style];
}

/** Whether a jack with this connector can have this style: a two-contact loop needs tip and sleeve, which a TRS jack has too. */
export function styleSuits(style: Style, connector: Connector): boolean {
  const family = familyOf(connector);
  const wanted = ENTRIES[style].connectors;
  if (wanted === 'ts') return family === 'ts' || family === 'trs';
  if (style === 'tip-signal') return family === 'ts' || family === 'trs';
  return wanted === family;
}

/** The line a contact carries in a style, or undefined for a spare contact. */
export function lineAt(style: Style, contact: Contact): Line | undefined {
  return LINES.find((line) => ENTRIES[style].lines[line] === contact);
}
