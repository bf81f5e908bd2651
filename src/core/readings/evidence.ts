/** What the reader knows of an unmarked jack before any reading, and how likely each jack is by that alone. */
import type { Connector } from '../wiring/index.ts';
import { jacksWith } from './catalogue.ts';
import type { MeterProfileName } from './instruments.ts';
import type { JackUnderTest } from './subjects.ts';

/** What may be printed beside the jack. */
export const MARKINGS = ['in', 'out', 'nothing'] as const;

/** What is printed beside one jack. */
export type Marking = (typeof MARKINGS)[number];

/** What the device's menu or switches can change, as far as it tells what the jack is. */
export const MENU_FACTS = [
  'type-a-or-b',
  'expression',
  'footswitch',
  'control-voltage',
  'in-or-out',
] as const;

/** One thing that a menu or a switch can change. */
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
  otherJack: 0.5,
  otherJackMarked: 0.1,
  menu: 6,
  /** A jack that is in no catalogue. */
  none: 0.15,
} as const;

/** A jack the reader may hold, and its share before any reading; shares sum to 1 less that of a jack in no catalogue. */
export interface Candidate {
  readonly under: JackUnderTest;
  readonly prior: number;
}

/** What a reader would call the jack: direction and style, or what else it is. Circuit and part are finer than that. */
export function nameOf(under: JackUnderTest): string {
  return under.kind === 'other' ? under.other : `${under.jack.direction} ${under.jack.style}`;
}

/** Every candidate with its prior: each name gets an equal share before evidence, divided among its circuits and parts. */
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
  if (marked !== 'nothing' && marked !== direction && !menu.includes('in-or-out')) weight *= W.markedWrong;
  if (menu.includes('type-a-or-b') && (style === 'type-a' || style === 'type-b')) weight *= W.menu;
  return weight;
}
