/** What the reader knows of an unmarked jack before any reading, and how likely each jack is by that alone. */
import type { Connector } from '../wiring/index.ts';
import { jacksWith } from './catalogue.ts';
import type { MeterProfileName } from './instruments.ts';
import type { JackUnderTest } from './subjects.ts';

/** What may be printed beside the jack. */
export const MARKINGS = ['in', 'out', 'nothing'] as const;

/** What is printed beside the jack. */
export type Marking = (typeof MARKINGS)[number];

/** What the device's menu or switches can change, as far as it tells what the jack is. */
export const MENU_FACTS = [
  'type-a-or-b',
  'expression',
  'footswitch',
  'control-voltage',
  'in-or-out',
] as const;

/** Something that the device's menu or switches can change. */
export type MenuFact = (typeof MENU_FACTS)[number];

/** Everything known beforehand. `meter` 'not-known' tries every profile. */
export interface Evidence {
  readonly connector: Connector;
  readonly marked: Marking;
  readonly menu: readonly MenuFact[];
  readonly meter: MeterProfileName | 'not-known';
  /** Whether the device can be switched on, and whether it can send clock, while readings are taken. */
  readonly canSwitchOn: boolean;
  readonly canStreamClock: boolean;
}

/**
 * Weights by which evidence is taken into account. All are invented, and say so: how often a marking is right, how much
 * rarer a jack of another use is than a control jack, and how much a menu entry makes its jack more likely.
 */
export const FINDER_WEIGHTS = {
  markedWrong: 0.02,
  otherJack: 0.3,
  otherJackMarked: 0.03,
  menu: 6,
  /** How common each style is beside Type A and DIN, which count 1. */
  style: {
    din: 1,
    'type-a': 1,
    'type-b': 0.7,
    'two-contact': 0.15,
    'two-contact-turned': 0.15,
    'both-ways': 0.25,
    'ring-signal': 0.3,
    'tip-signal': 0.4,
  },
  /** A jack that is in no catalogue. */
  none: 0.03,
} as const;

/** A kind of jack the reader may hold, and its share before any reading; shares sum to 1 less that of a jack in no catalogue. */
interface Candidate {
  readonly under: JackUnderTest;
  readonly prior: number;
}

/**
 * What a reader would call the jack: direction and style, or what else it is. The circuit is finer than that. A footswitch input
 * and an input with its signal on the tip are one circuit, a contact with a pull-up, so that no meter tells them apart.
 */
export function nameOf(under: JackUnderTest): string {
  if (under.kind === 'other' && under.other === 'footswitch') return 'in tip-signal';
  return under.kind === 'other' ? under.other : `${under.jack.direction} ${under.jack.style}`;
}

/** Every candidate with its prior: each name gets its share before evidence, divided among its circuits. */
export function candidatesFor(evidence: Evidence): readonly Candidate[] {
  const all = jacksWith(evidence.connector);
  const counts = new Map<string, number>();
  for (const under of all) counts.set(nameOf(under), (counts.get(nameOf(under)) ?? 0) + 1);
  const weighed = all.map((under) => ({
    under,
    weight: weightOf(under, evidence) / (counts.get(nameOf(under)) ?? 1),
  }));
  const sum = weighed.reduce((total, { weight }) => total + weight, 0);
  return weighed.map(({ under, weight }) => ({ under, prior: ((1 - FINDER_WEIGHTS.none) * weight) / sum }));
}

function weightOf(under: JackUnderTest, { marked, menu }: Evidence): number {
  const W = FINDER_WEIGHTS;
  let weight = 1;
  if (under.kind === 'other') {
    weight *= marked === 'nothing' ? W.otherJack : W.otherJackMarked;
    if (menu.includes('expression') && under.other.startsWith('expression')) weight *= W.menu;
    if (menu.includes('footswitch') && under.other.startsWith('footswitch')) weight *= W.menu;
    if (menu.includes('control-voltage') && under.other === 'control-voltage') weight *= W.menu;
    return weight;
  }
  const { direction, style } = under.jack;
  weight *= W.style[style];
  if (marked !== 'nothing' && marked !== direction && !menu.includes('in-or-out')) weight *= W.markedWrong;
  if (menu.includes('type-a-or-b') && (style === 'type-a' || style === 'type-b')) weight *= W.menu;
  return weight;
}
