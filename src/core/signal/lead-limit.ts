/** How long a lead may be: the length at which edges pass the standard's bound, found by search on the simulation. */
import type { Transient } from '../circuit/trace.ts';
import type { Link } from '../wiring/link.ts';
import { STANDARD_METRES } from '../wiring/wire.ts';
import { driveLine } from './line.ts';
import { prepareTimeLink } from './time-link.ts';
import type { TimeLinkOptions } from './time-link.ts';
import { waveform } from './waveform.ts';

/** Longest rise or fall of the line current, seconds (MIDI 1.0 Detailed Specification 4.2.1, hardware; MMA CA-033). */
export const STANDARD_EDGE_SECONDS = 2e-6;

/** Longest lead looked at, metres. */
const MOST_METRES = 1024;
/** The search ends when the bounds are this close, metres. */
const NEAR_METRES = 0.1;
/** A 0 and a 1 of ten bits each: long enough for the slowest lead looked at to settle. */
const HOLD_SECONDS = 320e-6;
/** Grid on which an edge is measured, seconds. */
const GRID_SECONDS = 5e-9;

/** What can give way first as a lead grows. */
export const LEAD_LIMITS = ['rise', 'fall', 'current', 'nothing'] as const;
export type LeadGaveWay = (typeof LEAD_LIMITS)[number];

/** Edges of the current at an input: from a tenth to nine tenths of its swing and back, seconds; the current of a 0, amperes. */
export interface LineEdges {
  readonly riseSeconds: number;
  readonly fallSeconds: number;
  readonly amperes: number;
}

/** The longest lead that still works, what gives way just beyond it, and the edges there; `standardMetres` stays the advice. */
export interface LeadLimit {
  readonly metres: number;
  readonly gaveWay: LeadGaveWay;
  readonly edges: LineEdges;
  readonly standardMetres: number;
}

/** The same link with every lead of input 0 as long as makes `metres` of it in all, each keeping its share. */
export function withLength(link: Link, metres: number): Link {
  const [first, ...others] = link.branches;
  const now = first?.leads.reduce((sum, { lengthMetres }) => sum + lengthMetres, 0) ?? 0;
  if (!first || now === 0) throw new Error('link: needs a lead to be made longer, got none');
  const leads = first.leads.map((lead) => ({ ...lead, lengthMetres: (lead.lengthMetres * metres) / now }));
  return { ...link, branches: [{ ...first, leads }, ...others] };
}

/**
 * Measure the edges of the current into input 0 of a link whose outcome is flows or weak.
 * @throws for an input that is read by its level.
 */
export function lineEdges(link: Link, options: TimeLinkOptions = {}): LineEdges {
  const time = prepareTimeLink(link, options);
  const sense = time.model.senses[0];
  if (sense?.kind !== 'current') throw new Error('link: edges of a current need an input with an LED');
  const wave = waveform([
    { seconds: 0, level: false },
    { seconds: HOLD_SECONDS, level: true },
  ]);
  const { transient } = driveLine(time, wave, HOLD_SECONDS);
  const amperes = transient.amperes(sense.led, HOLD_SECONDS);
  const rest = transient.amperes(sense.led, 0);
  return {
    riseSeconds: edgeSeconds(transient, sense.led, 0, rest, amperes),
    fallSeconds: edgeSeconds(transient, sense.led, HOLD_SECONDS, amperes, rest),
    amperes,
  };
}

function edgeSeconds(run: Transient, led: string, start: number, from: number, to: number): number {
  const shareAt = (when: number): number => (run.amperes(led, when) - from) / (to - from);
  let tenth = NaN;
  for (let when = start; when < start + HOLD_SECONDS; when += GRID_SECONDS) {
    const share = shareAt(when);
    if (Number.isNaN(tenth) && share >= 0.1) tenth = when;
    if (share >= 0.9) return when - tenth;
  }
  return HOLD_SECONDS;
}

/**
 * The longest lead, metres, at which rise and fall of the current both stay within the standard's 2 us and a 0 still turns the
 * input on. Found by doubling, then halving; 0 when not even the shortest does.
 */
export function longestLead(link: Link, options: TimeLinkOptions = {}): LeadLimit {
  const turnOn = prepareTimeLink(link, options).probes[0]?.on ?? 0;
  const attempt = (metres: number): { edges: LineEdges; gaveWay: LeadGaveWay } => {
    const edges = lineEdges(withLength(link, metres), options);
    const gaveWay =
      edges.amperes < turnOn
        ? 'current'
        : edges.riseSeconds > STANDARD_EDGE_SECONDS
          ? 'rise'
          : edges.fallSeconds > STANDARD_EDGE_SECONDS
            ? 'fall'
            : 'nothing';
    return { edges, gaveWay };
  };
  let good = 0;
  let bad = 1;
  let found = attempt(bad);
  let edges = found.edges;
  while (found.gaveWay === 'nothing') {
    good = bad;
    edges = found.edges;
    if (good >= MOST_METRES)
      return { metres: good, gaveWay: 'nothing', edges, standardMetres: STANDARD_METRES };
    bad *= 2;
    found = attempt(bad);
  }
  let { gaveWay } = found;
  while (bad - good > NEAR_METRES) {
    const middle = (good + bad) / 2;
    const next = attempt(middle);
    if (next.gaveWay === 'nothing') {
      good = middle;
      edges = next.edges;
    } else {
      bad = middle;
      gaveWay = next.gaveWay;
    }
  }
  return { metres: good, gaveWay, edges, standardMetres: STANDARD_METRES };
}
